import { decimals } from '../../quantity/format.ts'
import { keptOf } from '../../quantity/kept.ts'
import { inradius } from '../../shape/inradius.ts'
import { area, inside, perimeter } from '../../shape/measure.ts'
import type { SharpCorner } from '../../shape/narrow.ts'
import { sharpInnerCorners } from '../../shape/narrow.ts'
import type { Region } from '../../shape/region.ts'
import { alongMinutes, pocketMinutes } from './bench-minutes.ts'
import { bushFor, bushOffsetMm } from './bush.ts'
import type { Drawer, RouterBit } from './drawer.ts'
import type { Doing, HandJob } from './hand-cut.ts'
import { routerPasses } from './pass-depth.ts'
import { lineLengthMm, opensAtEdge } from './plan-form.ts'

/** Two sizes nearer than this are one, mm. */
const SAME_MM = 0.05
/** Less than this is a slip of the drawing, mm². */
const LEAST_MM2 = 0.01
/** What a cutter leaves in a corner counts from here, mm: less goes with one stroke of sandpaper. */
const LEAST_CORNER_MM = 0.15

/**
 * A router along a template: the largest bit that leaves no corner and reaches the floor through the template, in the
 * smallest bush it goes through; the way round an outline, and holes roughed out first, with a bearing. A text says
 * why it cannot be done.
 */
export function byRouter(job: HandJob, drawer: Drawer, templateMm: number): Doing | string {
  const fitting = routerBits(job, drawer)
  if (typeof fitting === 'string') return fitting
  if (job.profile === 'v') return vGroove(job, drawer, templateMm)
  if (job.kind === 'outline') return trimmed(job, drawer, templateMm)
  const needMm = job.depthMm + templateMm
  const reaches = (b: RouterBit) =>
    b.reachMm >= needMm - SAME_MM && (b.shankMm <= b.diameterMm || b.lengthMm >= job.depthMm - SAME_MM)
  const long = fitting.filter(reaches)
  const list = long.length > 0 ? long : [longest(fitting)]
  const chosen = chooseBit(list, job.region, job.outline)
  const bit = chosen.bit
  const bushMm = bushFor(bit.diameterMm, drawer.bushesMm)!
  const offsetMm = bushOffsetMm(bushMm, bit.diameterMm)
  const passes = routerPasses(job.depthMm, bit.diameterMm, job.tears)
  return {
    tool: `bush ${decimals(bushMm, 1)}, ${job.profile === 'round' ? 'round-nosed bit' : 'bit'} ${decimals(bit.diameterMm, 1)}`,
    offsetMm,
    bushMm,
    bitMm: bit.diameterMm,
    leastRadiusMm: bit.diameterMm / 2,
    openingCornerMm: bushMm / 2,
    corners: chosen.corners,
    reach: {
      needMm,
      hasMm: long.length > 0 ? bit.reachMm : Math.min(bit.reachMm, bit.lengthMm + templateMm)
    },
    passes,
    holes: [],
    tipMm: 0,
    sled: null,
    minutes:
      job.region === null
        ? alongMinutes(
            job.lines!.reduce((sum, l) => sum + lineLengthMm(l), 0),
            passes.count
          )
        : pocketMinutes(area(job.region), perimeter(job.region), bit.diameterMm, passes.count),
    does: doesOf(job, passes.count, templateMm)
  }
}

/** The bits that go into a cut and through a bush, narrowest first; or why none does. Of a V or an outline none is asked for. */
export function routerBits(job: HandJob, drawer: Drawer): readonly RouterBit[] | string {
  if (job.figures > 0) return 'no: figures'
  if (job.profile === 'v' || job.kind === 'outline') return []
  if (job.region !== null && !(area(job.region) > LEAST_MM2)) return 'no: nothing to cut'
  const ready = drawer.bits.filter(b => bushFor(b.diameterMm, drawer.bushesMm) !== null)
  if (ready.length === 0) return 'no: no guide bush for any bit'
  const narrowMm = job.region === null ? job.widthMm : widthOf(job.region)
  const fitting = ready.filter(b => b.diameterMm <= narrowMm + SAME_MM)
  return fitting.length > 0
    ? fitting
    : `no: ${decimals(narrowMm, 1)} wide, narrower than the smallest bit, ${decimals(ready[0]!.diameterMm, 1)}`
}

function widthOf(region: Region): number {
  return keptOf(widths, region, '', () => 2 * inradius(region, 0.02).radiusMm)
}

function longest(bits: readonly RouterBit[]): RouterBit {
  return bits.reduce((a, b) => (b.reachMm > a.reachMm ? b : a))
}

// The largest that leaves no corner of the drawing; where each leaves some, the one that leaves least.
function chooseBit(
  bits: readonly RouterBit[],
  region: Region | null,
  outline: Region
): { readonly bit: RouterBit; readonly corners: readonly SharpCorner[] } {
  if (region === null) return { bit: bits[bits.length - 1]!, corners: [] }
  for (let k = bits.length - 1; k >= 0; k--) {
    const corners = cornersLeft(region, bits[k]!.diameterMm / 2, outline)
    if (corners.length === 0 || k === 0) return { bit: bits[k]!, corners }
  }
  throw new Error('a choice of no bit')
}

// Corners of a pocket that a bit of this radius leaves uncut; what lies beyond the edge of the piece is air.
function cornersLeft(region: Region, radiusMm: number, outline: Region): readonly SharpCorner[] {
  const all = keptOf(corners, region, `${radiusMm}`, () =>
    sharpInnerCorners(region, radiusMm, { side: 'inside', leastMm: LEAST_CORNER_MM })
  )
  return all.filter(c => inside(outline, c.x, c.y))
}

const corners = new WeakMap<object, Map<string, readonly SharpCorner[]>>()
const widths = new WeakMap<object, Map<string, number>>()

/** What is left for the bearing bit to take off after roughing out, mm (practice). */
const ROUGH_MM = 1

// Along a template of the size of the piece, after it is sawn: the bearing runs on the template, one full-depth pass.
function trimmed(job: HandJob, drawer: Drawer, templateMm: number): Doing | string {
  // The bearing has at least 2 mm of the template to run on (practice).
  const ready = drawer.bearings.filter(
    b => b.lengthMm >= job.depthMm && b.lengthMm + 2 <= job.depthMm + templateMm
  )
  const bit = ready[ready.length - 1]
  if (bit === undefined) {
    const lengths = [...new Set(drawer.bearings.map(b => decimals(b.lengthMm, 0)))].join(', ')
    return lengths === ''
      ? 'no: no bit with a bearing'
      : `no: ${decimals(job.depthMm, 1)} thick with ${decimals(templateMm, 1)} of template; bits with a bearing are ${lengths} long`
  }
  const around = perimeter(job.outline)
  return {
    tool: `bit ${decimals(bit.diameterMm, 1)} with bearing`,
    offsetMm: 0,
    bushMm: null,
    bitMm: bit.diameterMm,
    leastRadiusMm: bit.diameterMm / 2,
    openingCornerMm: null,
    corners: keptOf(corners, job.outline, `outside ${bit.diameterMm}`, () =>
      sharpInnerCorners(job.outline, bit.diameterMm / 2, { leastMm: LEAST_CORNER_MM })
    ),
    reach: { needMm: job.depthMm, hasMm: bit.lengthMm },
    passes: { count: 1, eachMm: job.depthMm },
    holes: [],
    tipMm: 0,
    sled: null,
    minutes: alongMinutes(around, 2),
    does: [
      `Saw it ${decimals(ROUGH_MM, 0)} mm outside the line first.`,
      'Template of the finished outline on top, screwed into waste or stuck down flat; the bearing runs on it.',
      'Against the turn of the bit; sides across the grain first, with a backer at each corner the bit runs out of.'
    ]
  }
}

// A V follows its middle line: the slot is as wide as the bush.
function vGroove(job: HandJob, drawer: Drawer, templateMm: number): Doing | string {
  if (job.lines === null) return 'no: a V with a floor'
  const alike = drawer.vs.filter(v => Math.abs(v.angleDeg - job.angleDeg) < 0.5)
  if (alike.length === 0) return `no: no V bit of ${decimals(job.angleDeg, 0)}°`
  const v = alike.find(x => x.widthMm >= job.widthMm)
  if (v === undefined) return `no: ${decimals(job.widthMm, 1)} wide, wider than the V bit`
  const bushMm = bushFor(v.widthMm, drawer.bushesMm)
  if (bushMm === null) return 'no: no guide bush for the V bit'
  const passes = routerPasses(job.depthMm, Math.max(2 * job.depthMm, v.widthMm), job.tears)
  return {
    tool: `bush ${decimals(bushMm, 1)}, V bit ${decimals(job.angleDeg, 0)}°`,
    offsetMm: bushMm / 2,
    bushMm,
    bitMm: null,
    leastRadiusMm: null,
    openingCornerMm: bushMm / 2,
    corners: [],
    reach: null,
    passes,
    holes: [],
    tipMm: 0,
    sled: null,
    minutes:
      alongMinutes(
        job.lines.reduce((sum, l) => sum + lineLengthMm(l), 0),
        passes.count
      ) + job.lines.length,
    does: [
      job.kind === 'marking'
        ? 'A straight fence or a slot as wide as the bush, set to each line in turn; stops at both ends.'
        : 'The slot of the template is as wide as the bush: its middle is the middle of the groove.',
      `Set the depth over the template, ${decimals(templateMm, 1)} mm, and try the width on scrap.`
    ]
  }
}

function doesOf(job: HandJob, passes: number, templateMm: number): readonly string[] {
  const out = [
    `Template on top, ${decimals(templateMm, 1)} mm thick, screwed into waste or glued at spots; tape shifts. Depth is set over the template.`
  ]
  if (passes > 1) out.push(`${passes} passes; clean up the walls in the last.`)
  if (job.region !== null && job.through) out.push('Bore most of it out first; a backer beneath.')
  const region = job.region
  if (region !== null && opensAtEdge(region, job.outline))
    out.push('End grain first; a backer clamped where the bit leaves the edge.')
  return out
}
