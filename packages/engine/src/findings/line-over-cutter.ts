import type { Cutter } from '../cuts/run/cutters.ts'
import { cuttersOf } from '../cuts/run/cutters.ts'
import { decimals } from '../quantity/format.ts'
import { halfWidthAt } from '../stack/groove.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Angles of a V and of its cutter nearer than this are the same, degrees: cutters are ground no closer. */
const SAME_DEG = 0.5

/** A V line that no V of the shop can cut. */
export const lineOverCutter: Check = {
  id: 'line-over-cutter',
  about: 'a V line of an angle, or of a width, that no V of the shop can cut',
  cases: [],
  run
}

/** A V line as it is cut. */
interface Line {
  readonly at: string
  readonly id: string
  readonly angle: number
  readonly named: string | undefined
  /** Depth from the face of that day, and from the finished one, mm. */
  readonly day: number
  readonly finished: number
  readonly depthAt: string | null
}

function run(work: Work): Found[] {
  if (work.shop.machine === undefined) return []
  const vees = cuttersOf(work.shop).cutters.filter(c => c.own && c.shape.form === 'v')
  // A shop that lists none says nothing of its V cutters.
  return vees.length === 0 ? [] : linesOf(work).flatMap(line => judged(work, line, vees))
}

function linesOf(work: Work): Line[] {
  const { cuts, markings } = work.stack
  return [
    ...work.entries.cuts.flatMap(({ at, id, index, value }): Line[] => {
      const cut = cuts[index]!
      if (value.way !== 'machine' || value.along === undefined || value.profile !== 'v') return []
      if (cut.day === null || cut.finished === null) return []
      const { day, finished } = cut
      const depthAt = `${at}/${value.depth === undefined ? 'finishedDepth' : 'depth'}`
      return [{ at, id, angle: value.angle, named: value.cutter, day, finished, depthAt }]
    }),
    ...work.entries.markings.flatMap(({ at, id, index, value }): Line[] => {
      const cut = markings[index]!
      if (value.way !== 'machine' || cut.day === null || cut.finished === null) return []
      const { day, finished } = cut
      return [{ at, id, angle: value.angle, named: value.cutter, day, finished, depthAt: null }]
    })
  ]
}

function judged(work: Work, line: Line, vees: readonly Cutter[]): Found[] {
  const own = line.named === undefined ? vees : vees.filter(c => c.id === line.named)
  const width = (depth: number, angle: number) =>
    2 * halfWidthAt({ kind: 'v', widthMm: 0, angleDeg: angle }, depth)
  const wide = width(line.day, line.angle)
  const fitting = own.filter(c => Math.abs(c.shape.angleDeg - line.angle) < SAME_DEG)
  if (fitting.length === 0) {
    const known = (own.length > 0 ? own : vees).map(c => c.shape.angleDeg)
    const nearest = known.reduce((a, b) => (Math.abs(b - line.angle) < Math.abs(a - line.angle) ? b : a))
    return [
      {
        severity: 'caution',
        at: line.at,
        says: `${line.id} is a V of ${decimals(line.angle, 0)}°; the V cutters of the shop are of ${[...new Set(known)].map(a => `${decimals(a, 0)}°`).join(', ')}. With another angle the line is wider or narrower than drawn.`,
        value: line.angle,
        unit: '°',
        limit: nearest,
        basis: 'the angle of a V is that of its cutter; the cutters of the shop',
        fix: setValue(work.document, `${line.at}/angle`, nearest),
        fixSays: `A V of ${decimals(nearest, 0)}°`
      }
    ]
  }
  const widest = Math.max(...fitting.map(c => c.shape.diameterMm))
  if (wide <= widest + 1e-6) return []
  // What is taken off the face later is cut as well: the line is the narrower by it.
  const off = width(Math.max(0, line.day - line.finished), line.angle)
  const most = widest - off
  const deepest = most / (2 * Math.tan((line.angle * Math.PI) / 360))
  const fix =
    most <= 0
      ? null
      : line.depthAt === null
        ? setQuantity(work.document, `${line.at}/width`, 'length', most, 'down')
        : setQuantity(
            work.document,
            line.depthAt,
            'length',
            line.depthAt.endsWith('finishedDepth') ? deepest : deepest + line.day - line.finished,
            'down'
          )
  return [
    {
      severity: 'caution',
      at: line.at,
      says: `${line.id} is ${decimals(wide, 1)} mm wide at the face as it is cut; the widest V of ${decimals(line.angle, 0)}° in the shop is ${decimals(widest, 1)} mm across, and above it the shank rubs. A V of ${decimals(Math.ceil(wide), 0)} mm would do.`,
      value: wide,
      unit: 'mm',
      limit: widest,
      basis: 'width = 2·depth·tan(half the angle), from the face of that day; the cutters of the shop',
      fix,
      fixSays: fix === null ? null : `${line.id} no wider than ${decimals(most, 1)} mm`
    }
  ]
}
