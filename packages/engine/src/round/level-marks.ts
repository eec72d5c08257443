import { inside } from '../shape/measure.ts'
import { thinnedRing } from '../shape/thin.ts'
import type { Mark, RegionMark } from '../sheets/mark.ts'
import type { Level, LevelSlab } from './level-stack.ts'
import { edgeHeights } from './level-stack.ts'
import type { LevelView, Wall } from './level-wall.ts'
import { edgeKey, wallsOf } from './level-wall.ts'
import type { RoundBody } from './round-model.ts'

/** What outlines may stray on the plan of a level, mm: a fifth of a millimetre of the piece does not show. */
const STRAY_MM = 0.1
/** Heights that differ by less are the same, mm. */
const SAME_MM = 1e-3

/** A slab with outlines of few points, each body's edges by their keys. */
interface ThinSlab {
  readonly fromMm: number
  readonly toMm: number
  readonly parts: readonly {
    readonly body: RoundBody
    readonly rings: readonly Float64Array[]
    readonly edges: ReadonlySet<string>
  }[]
}

/**
 * A level as a solid in oblique projection, slab upon slab from the foot: walls towards the reader, the farthest
 * first, then the tops, so that what lies before covers what lies behind: a pocket shows its floor, and a channel
 * in the far face does not show. Edges where the level ends or a cut does; none at steps of a side that leans.
 */
export function levelMarks(level: Level, view: LevelView): Mark[] {
  const slabs = level.slabs.map(thinSlab)
  if (view.over) slabs.reverse()
  const all = level.toMm - level.fromMm
  const lift = (z: number) => (view.over ? level.toMm - z : z - level.fromMm) / all
  const out: Mark[] = []
  let uprights: Float64Array[] = []
  slabs.forEach((slab, k) => {
    const drawn = slabMarks(slab, slabs[k - 1], slabs[k + 1], view, lift)
    out.push(...drawn.marks)
    uprights = [...uprights, ...drawn.uprights].filter(u => !under(u, drawn.tops))
  })
  // Corners last: slabs would paint over the ends of each other's. Those under a top are hidden.
  if (uprights.length > 0) out.push({ kind: 'path', ink: 'edge', lines: uprights })
  for (const { body, rings } of level.small) {
    if (body.kind === 'marking' && !onTop(body, level, view.over)) continue
    const lines = rings.map(r => spots(r, 1, view))
    if (body.kind === 'marking')
      out.push({ kind: 'region', rings: lines, paint: body.paint, hatch: null, edge: null, bleeds: true })
    else
      out.push({
        kind: 'path',
        ink: body.kind === 'hardware' ? 'hardware' : 'stone-dark',
        lines,
        closed: true
      })
  }
  return out
}

/** Whether a filled line reaches the face of a level that is looked at: from behind it is not seen. */
export function onTop(body: RoundBody, level: Pick<Level, 'fromMm' | 'toMm'>, over: boolean): boolean {
  return over ? body.fromMm <= level.fromMm + 0.1 : body.toMm >= level.toMm - 0.1
}

function under(upright: Float64Array, tops: readonly RegionMark[]): boolean {
  return tops.some(t => inside(t, upright[0]!, (upright[1]! + upright[3]!) / 2))
}

function thinSlab({ fromMm, toMm, parts }: LevelSlab): ThinSlab {
  return {
    fromMm,
    toMm,
    parts: parts.map(({ body, rings }) => {
      const thin = rings.map(r => thinnedRing(r, STRAY_MM)).filter(r => r.length >= 6)
      const edges = new Set<string>()
      for (const ring of thin) eachEdge(ring, (p, k) => edges.add(edgeKey(ring, p, k)))
      return { body, rings: thin, edges }
    })
  }
}

function slabMarks(
  slab: ThinSlab,
  under: ThinSlab | undefined,
  over: ThinSlab | undefined,
  view: LevelView,
  lift: (z: number) => number
): { marks: Mark[]; tops: RegionMark[]; uprights: Float64Array[] } {
  const [footZ, topZ] = view.over ? [slab.toMm, slab.fromMm] : [slab.fromMm, slab.toMm]
  const [foot, top] = [lift(footZ), lift(topZ)]
  const walls: (Wall & { readonly body: RoundBody })[] = []
  const tops: RegionMark[] = []
  const rims: Float64Array[] = []
  for (const { body, rings } of slab.parts) {
    const heights = edgeHeights(body)
    const ends = (z: number, next: ThinSlab | undefined) =>
      next === undefined || heights.some(e => Math.abs(e - z) < SAME_MM)
    const goesOn = ends(footZ, under) ? edgesIn(under, body) : null
    const beside = slab.parts.filter(p => p.body !== body)
    for (const ring of rings)
      for (const wall of wallsOf(ring, foot, top, view, beside, goesOn)) walls.push({ ...wall, body })
    tops.push({
      kind: 'region',
      rings: rings.map(r => spots(r, top, view)),
      paint: body.paint,
      hatch: null,
      edge: null,
      bleeds: true
    })
    if (ends(topZ, over)) rims.push(...rimLines(rings, edgesIn(over, body), top, view))
  }
  walls.sort((a, b) => b.far - a.far)
  const marks: Mark[] = walls.flatMap(({ body, area, foot: lines }): Mark[] => {
    const wall: Mark = {
      kind: 'region',
      rings: [area],
      paint: body.paint,
      hatch: null,
      edge: null,
      bleeds: true
    }
    return lines.length === 0 ? [wall] : [wall, { kind: 'path', ink: 'edge', lines }]
  })
  marks.push(...tops)
  if (rims.length > 0) marks.push({ kind: 'path', ink: 'edge', lines: rims })
  return { marks, tops, uprights: walls.flatMap(w => w.ends) }
}

function edgesIn(slab: ThinSlab | undefined, body: RoundBody): ReadonlySet<string> {
  return slab?.parts.find(p => p.body === body)?.edges ?? new Set()
}

// Outlines at the top of a slab, but for edges that go on in the next one: they lie in the middle of a wall.
function rimLines(
  rings: readonly Float64Array[],
  goesOn: ReadonlySet<string>,
  lift: number,
  { put }: LevelView
): Float64Array[] {
  const out: Float64Array[] = []
  for (const ring of rings) {
    let line: number[] = []
    const close = () => {
      if (line.length > 0) out.push(Float64Array.from(line))
      line = []
    }
    eachEdge(ring, (p, k) => {
      if (goesOn.has(edgeKey(ring, p, k))) {
        close()
        return
      }
      if (line.length === 0) line.push(...put(ring[p]!, ring[p + 1]!, lift))
      line.push(...put(ring[k]!, ring[k + 1]!, lift))
    })
    close()
  }
  return out
}

function eachEdge(ring: Float64Array, edge: (p: number, k: number) => void): void {
  for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2) edge(p, k)
}

function spots(ring: Float64Array, lift: number, { put }: LevelView): Float64Array {
  const out = new Float64Array(ring.length)
  for (let k = 0; k < ring.length; k += 2) out.set(put(ring[k]!, ring[k + 1]!, lift), k)
  return out
}
