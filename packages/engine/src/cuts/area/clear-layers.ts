import { offset } from '../../shape/offset.ts'
import type { Region, Ring } from '../../shape/region.ts'
import type { CutJob, NoPath } from '../cut-job.ts'
import type { PathPen } from '../toolpath.ts'
import type { Layer } from './clearing-tree.ts'
import type { DepthPass } from './depth-passes.ts'
import { downFree, helixDown, helixSizes, rampDown } from './entry.ts'
import type { Ground } from './free-way.ts'
import { freeWay, nearestCorner } from './free-way.ts'
import { ringFrom, ringSpan, ringTrack, runAlong, stretch, turnedRound } from './track.ts'

/** What the clearing of every pass needs to know. */
export interface Field {
  /** Where the middle of the cutter may go. */
  readonly ground: Ground
  /** Where it may come down into free ground. */
  readonly entries: Region
  readonly stepMm: number
}

/** Side steps a link at depth may be long; beyond it the cutter is lifted. */
const LINK_STEPS = 4
/** Places of a ring that are asked for one near another ring. */
const ASKED = 48

/** What a cutter says that finds no way down. */
export const NO_WAY_DOWN: NoPath = {
  says: 'its middle does not cut, and there is no room to take it down on a helix or a ramp',
  largestMm: null
}

/** Cuts one pass of all layers, each from its middle out, islands and outside alike. null: done. */
export function clearLayers(
  pen: PathPen,
  job: CutJob,
  layers: readonly Layer[],
  field: Field,
  pass: DepthPass
): NoPath | null {
  for (const layer of layers) if (!clearLayer(pen, job, layer, field, pass)) return NO_WAY_DOWN
  return null
}

function clearLayer(pen: PathPen, job: CutJob, layer: Layer, field: Field, pass: DepthPass): boolean {
  for (const inner of layer.inner) if (!clearLayer(pen, job, inner, field, pass)) return false
  const done: Ring[] = layer.inner.flatMap(l => [...l.rings])
  const left = [...layer.rings]
  while (left.length > 0) {
    const ring = takeNearest(left, pen)
    const way = job.feeds.climb ? ring : turnedRound(ring)
    if (!cutRing(pen, job, way, layer, done, field, pass)) return false
    done.push(ring)
  }
  return true
}

function takeNearest(left: Ring[], pen: PathPen): Ring {
  let best = 0
  if (left.length > 1 && !Number.isNaN(pen.x)) {
    const mm = left.map(r => nearestCorner(r, pen.x, pen.y).mm)
    mm.forEach((d, i) => {
      if (d < mm[best]!) best = i
    })
  }
  return left.splice(best, 1)[0]!
}

// Gets to a ring by the cheapest safe way, and once round it.
function cutRing(
  pen: PathPen,
  job: CutJob,
  ring: Ring,
  layer: Layer,
  done: readonly Ring[],
  field: Field,
  pass: DepthPass
): boolean {
  const z = pass.toMm
  const { feedMmMin } = job.feeds
  const round = (from: Ring, atMm = 0) => {
    const track = ringTrack(from, job)
    runAlong(pen, stretch(track, atMm, atMm + track.lengthMm), z, feedMmMin)
    return true
  }
  const across = (): boolean => {
    const from = ringFrom(ring, pen.x, pen.y)
    if (!freeWay(field.ground, pen.x, pen.y, from[0]!, from[1]!)) return false
    pen.line(from[0]!, from[1]!, z, feedMmMin)
    return round(from)
  }
  const linkMm = LINK_STEPS * field.stepMm
  if (pen.z === z && nearestCorner(ring, pen.x, pen.y).mm <= linkMm + job.cutter.diameterMm && across())
    return true
  const cleared = nearCleared(ring, done, field, linkMm)
  if (cleared !== null) {
    downFree(pen, job, cleared.x, cleared.y, z)
    if (across()) return true
  }
  const outside = freeEntry(ring, field)
  if (outside !== null) {
    downFree(pen, job, outside.x, outside.y, z)
    if (across()) return true
  }
  const turn = layer.inner.length === 0 ? helixPlace(job, layer, field.stepMm) : null
  if (turn !== null) {
    helixDown(pen, job, turn, pass.fromMm, z)
    if (across()) return true
  }
  const track = ringTrack(ring, job)
  const atMm = rampDown(pen, job, track, ringSpan(ring), pass.fromMm, z)
  return atMm !== null && round(ring, atMm)
}

// Where a helix goes down in a layer: as wide as it may be, else as narrow as it must; null where neither fits.
function helixPlace(
  job: CutJob,
  layer: Layer,
  stepMm: number
): { cx: number; cy: number; radius: number } | null {
  const sizes = helixSizes(job)
  if (sizes === null) return null
  for (const radius of sizes) {
    // Every place of the layer lies as many steps from the edge as the layer is deep.
    const lacking = radius - layer.level * stepMm
    const core =
      lacking <= 0 ? layer.region : offset(layer.region, -lacking, { join: 'round', tolMm: job.tolMm / 4 })
    const ring = core.rings[0]
    if (ring !== undefined) return { cx: ring[0]!, cy: ring[1]!, radius }
  }
  return null
}

// A place this pass has already cut, next to the ring.
function nearCleared(
  ring: Ring,
  done: readonly Ring[],
  { ground }: Field,
  mostMm: number
): { x: number; y: number } | null {
  let best: { x: number; y: number } | null = null
  let least = mostMm
  for (const other of done) {
    const every = 2 * Math.max(1, Math.floor(other.length / 2 / ASKED))
    for (let k = 0; k < other.length; k += every) {
      const [x, y] = [other[k]!, other[k + 1]!]
      const near = nearestCorner(ring, x, y)
      if (near.mm >= least || !freeWay(ground, x, y, near.x, near.y)) continue
      least = near.mm
      best = { x, y }
    }
  }
  return best
}

// A place in free ground from which the straight way to the ring stays on the ground.
function freeEntry(ring: Ring, { ground, entries }: Field): { x: number; y: number } | null {
  let best: { x: number; y: number } | null = null
  let least = Number.POSITIVE_INFINITY
  for (const edge of entries.rings) {
    const every = 2 * Math.max(1, Math.floor(edge.length / 2 / (4 * ASKED)))
    for (let k = 0; k < edge.length; k += every) {
      const [x, y] = [edge[k]!, edge[k + 1]!]
      const near = nearestCorner(ring, x, y)
      if (near.mm >= least) continue
      const from = ringFrom(ring, x, y)
      if (!freeWay(ground, x, y, from[0]!, from[1]!)) continue
      least = near.mm
      best = { x, y }
    }
  }
  return best
}
