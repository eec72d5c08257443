import { area } from '../../shape/measure.ts'
import type { Region } from '../../shape/region.ts'
import { rotate } from '../../shape/transform.ts'
import type { CutJob, NoPath } from '../cut-job.ts'
import type { Toolpath } from '../toolpath.ts'
import { PathPen } from '../toolpath.ts'
import { depthPasses, flatRadius } from './depth-passes.ts'
import { overTop } from './entry.ts'

/** How a face is surfaced. */
export interface FlattenOptions {
  /** Direction of the rows, degrees counter-clockwise from x: along the grain. */
  readonly alongDeg: number
  /** How far the edge of the cutter runs past the edge of the stock at both ends of a row, mm, above 0. */
  readonly beyondMm: number
  /** Each row in the same direction, the cutter lifted between them: else to and fro. */
  readonly oneWay?: boolean
}

/** Rows overlap by at least so much of the flat of the cutter. */
const LEAST_OVERLAP = 0.05

/**
 * Surfaces the face `region` (the stock as it lies, mm) in rows and passes: material from `topMm` to `floorMm`.
 *
 * Every row begins and ends outside the stock, the cutter down beside it, for a surfacing bit has no edge in its
 * middle: it never goes down onto the work. From row to row at depth, outside. The first row takes one side
 * step, so that all take the same. Rows are `feeds.stepMm` apart, at most 95 % of the flat of the cutter.
 *
 * Check: test/cuts/area/flatten-path.test.ts (coverage, rows and length of a board, entries outside).
 * Limits: a row runs straight over holes and between parts of the face.
 *
 * @throws Error for a way past the edge not above 0
 */
export function flattenPath(job: CutJob, region: Region, options: FlattenOptions): Toolpath | NoPath {
  const { alongDeg, beyondMm, oneWay = false } = options
  if (!(beyondMm > 0)) throw new Error(`${beyondMm} mm past the edge; it must be above 0`)
  const flat = flatRadius(job.cutter)
  if (!(flat > 0)) return { says: 'it leaves no flat face: surfacing wants a flat cutter', largestMm: null }
  if (!(area(region) > 0)) return { says: 'there is no face to flatten', largestMm: null }
  const half = job.cutter.diameterMm / 2
  const rows = rowsOver(
    rotate(region, -alongDeg),
    half,
    flat,
    Math.min(job.feeds.stepMm, 2 * flat * (1 - LEAST_OVERLAP))
  )
  const [c, s] = [Math.cos((alongDeg * Math.PI) / 180), Math.sin((alongDeg * Math.PI) / 180)]
  const placed = (u: number, v: number): readonly [number, number] => [u * c - v * s, u * s + v * c]
  const pen = new PathPen(job.clearMm)
  const to = (u: number, v: number, z: number) => {
    const [x, y] = placed(u, v)
    pen.line(x, y, z, job.feeds.feedMmMin)
  }
  const past = half + beyondMm
  for (const pass of depthPasses(job)) {
    pen.pass(pass.name)
    const z = pass.toMm
    let atEnd = Number.NaN
    rows.forEach(({ v, from, to: end }, i) => {
      const back = !oneWay && i % 2 === 1
      let start = back ? end + past : from - past
      const finish = back ? from - past : end + past
      if (oneWay || Number.isNaN(atEnd)) {
        const [x, y] = placed(start, v)
        pen.over(x, y)
        pen.down(overTop(job))
        pen.line(x, y, z, job.feeds.plungeMmMin)
      } else {
        // Beside the stock to whichever of the two rows reaches farther, then across to the next.
        start = back ? Math.max(start, atEnd) : Math.min(start, atEnd)
        to(start, rows[i - 1]!.v, z)
        to(start, v, z)
      }
      to(finish, v, z)
      atEnd = finish
    })
  }
  return pen.done()
}

interface Row {
  readonly v: number
  /** Where the stock under the cutter begins and ends along the row. */
  readonly from: number
  readonly to: number
}

// Rows along u, `stepMm` apart, until the flat has reached the far edge.
function rowsOver(region: Region, half: number, flat: number, stepMm: number): Row[] {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const ring of region.rings) {
    for (let k = 1; k < ring.length; k += 2) {
      low = Math.min(low, ring[k]!)
      high = Math.max(high, ring[k]!)
    }
  }
  const first = low - flat + stepMm
  const count = Math.max(1, Math.ceil((high - flat - first) / stepMm - 1e-9) + 1)
  // A row over the middle does for a board narrower than the cutter.
  if (count === 1 || high - low <= 2 * flat * (1 - LEAST_OVERLAP)) {
    const span = spanIn(region, low, high)
    return span === null ? [] : [{ v: (low + high) / 2, ...span }]
  }
  const rows: Row[] = []
  for (let i = 0; i < count; i++) {
    const v = first + i * stepMm
    const span = spanIn(region, v - half, v + half)
    if (span !== null) rows.push({ v, ...span })
  }
  return rows
}

// From where to where the region reaches within a band.
function spanIn(region: Region, low: number, high: number): { from: number; to: number } | null {
  let from = Number.POSITIVE_INFINITY
  let to = Number.NEGATIVE_INFINITY
  const take = (u: number) => {
    from = Math.min(from, u)
    to = Math.max(to, u)
  }
  for (const ring of region.rings) {
    const n = ring.length
    for (let k = 0, p = n - 2; k < n; p = k, k += 2) {
      const [au, av, bu, bv] = [ring[p]!, ring[p + 1]!, ring[k]!, ring[k + 1]!]
      if (Math.max(av, bv) < low || Math.min(av, bv) > high) continue
      for (const edge of [low, high])
        if ((av - edge) * (bv - edge) < 0) take(au + ((bu - au) * (edge - av)) / (bv - av))
      if (av >= low && av <= high) take(au)
      if (bv >= low && bv <= high) take(bu)
    }
  }
  return from <= to ? { from, to } : null
}
