import { decimals } from '../../quantity/format.ts'
import { perimeter } from '../../shape/measure.ts'
import { sawMinutes } from './bench-minutes.ts'
import type { Doing, HandJob } from './hand-cut.ts'
import { isStraight, lineLengthMm, opensAtEdge } from './plan-form.ts'

/**
 * A saw: outlines, and straight grooves that come out at an edge. What is left outside the line is planed off.
 *
 * @param grainDeg direction of the grain, degrees from x; null where there is none
 */
export function bySaw(
  job: HandJob,
  saw: { readonly kerf: number; readonly leave: number },
  grainDeg: number | null
): Doing | string {
  if (job.kind === 'marking') return 'no: lines'
  if (job.kind === 'outline') return outlined(job.outline, saw, grainDeg)
  if (job.region !== null) {
    if (!opensAtEdge(job.region, job.outline)) return 'no: closed pocket'
    if (!job.through) return 'no: a floor'
  } else {
    if (job.profile !== 'flat') return 'no: not a flat groove'
    if (!job.lines!.every(isStraight)) return 'no: curved'
    if (job.widthMm < saw.kerf - 0.05) return `no: narrower than the saw, ${decimals(saw.kerf, 1)}`
    if (!job.lines!.every(l => opensAtBothEnds(l, job))) return 'no: ends inside'
  }
  const way =
    job.region === null ? job.lines!.reduce((s, l) => s + lineLengthMm(l), 0) : perimeter(job.region)
  const cuts = job.region === null ? Math.ceil(job.widthMm / saw.kerf - 1e-9) : 1
  return doing(way * cuts, job.region === null ? job.lines!.length * cuts : 3, [
    job.region === null
      ? `${cuts === 1 ? 'One cut' : `${cuts} cuts side by side`} along a fence, ${decimals(saw.kerf, 1)} mm each.`
      : `Outside the line by ${decimals(saw.leave, 1)} mm, on the waste side.`,
    'A backer where the saw comes out.'
  ])
}

/** The outline of a piece, sawn outside its line. */
export function outlined(
  outline: HandJob['outline'],
  saw: { readonly kerf: number; readonly leave: number },
  grainDeg: number | null
): Doing {
  const ring = outline.rings[0]!
  const sides = straightSides(ring)
  const order =
    grainDeg === null || sides.length === 0
      ? null
      : { across: sides.filter(d => across(d, grainDeg)).length, all: sides.length }
  return doing(perimeter(outline), Math.max(1, sides.length), [
    `Leave ${decimals(saw.leave, 1)} mm outside the line for the plane; the saw takes ${decimals(saw.kerf, 1)} mm on the waste side.`,
    order === null || order.across === 0 || order.across === order.all
      ? 'A backer where the saw comes out.'
      : `First the ${order.across} side${order.across === 1 ? '' : 's'} across the grain, then the ${order.all - order.across} along it: what breaks out at the ends comes off with them.`
  ])
}

function doing(wayMm: number, sides: number, does: readonly string[]): Doing {
  return {
    tool: 'fine blade, along a rail or a line',
    offsetMm: null,
    bushMm: null,
    bitMm: null,
    leastRadiusMm: null,
    openingCornerMm: null,
    corners: [],
    reach: null,
    passes: null,
    holes: [],
    tipMm: 0,
    sled: null,
    minutes: sawMinutes(wayMm, sides),
    does
  }
}

/** A side at least this share of the longest is one to be set up for. */
const SIDE_SHARE = 0.1

/** Directions of the straight sides of a ring, degrees; chords of curves are left out. */
function straightSides(ring: Float64Array): number[] {
  const n = ring.length
  const sides: { readonly deg: number; readonly long: number }[] = []
  for (let k = 0; k < n; k += 2) {
    const dx = ring[(k + 2) % n]! - ring[k]!
    const dy = ring[(k + 3) % n]! - ring[k + 1]!
    sides.push({ deg: (Math.atan2(dy, dx) * 180) / Math.PI, long: Math.hypot(dx, dy) })
  }
  const longest = Math.max(...sides.map(s => s.long))
  const around = sides.reduce((sum, s) => sum + s.long, 0)
  // A circle of a hundred chords has no side.
  if (longest < around / 24) return []
  return sides.filter(s => s.long >= SIDE_SHARE * longest && s.long >= around / 40).map(s => s.deg)
}

function across(sideDeg: number, grainDeg: number): boolean {
  const off = Math.abs((((sideDeg - grainDeg) % 180) + 180) % 180)
  return off > 45 && off < 135
}

function opensAtBothEnds(line: Float64Array, job: HandJob): boolean {
  const n = line.length
  const dot = (x: number, y: number) => ({
    rings: [Float64Array.of(x - 1, y - 1, x + 1, y - 1, x + 1, y + 1, x - 1, y + 1)]
  })
  return (
    opensAtEdge(dot(line[0]!, line[1]!), job.outline) &&
    opensAtEdge(dot(line[n - 2]!, line[n - 1]!), job.outline)
  )
}
