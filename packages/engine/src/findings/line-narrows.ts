import type { Patch } from '../piece/patch.ts'
import { decimals } from '../quantity/format.ts'
import { halfWidthAt } from '../stack/groove.ts'
import type { Check, Found } from './finding.ts'
import { typedAt } from './fix.ts'
import type { Work } from './work.ts'

/** Change of a line's width that the eye sees beside others, mm (judgement, no source). */
const SEEN_MM = 0.05

/** A V line whose width changes after it is cut. */
export const lineNarrows: Check = {
  id: 'line-narrows',
  about: 'a V line whose width is changed by sanding or a coat after it is cut',
  cases: ['O11'],
  run
}

function run(work: Work): Found[] {
  return work.stack.cuts.flatMap((cut): Found[] => {
    const { at, id, value } = work.entries.cuts[cut.index]!
    if (value.along === undefined || value.profile !== 'v' || value.depth === undefined) return []
    if (cut.day === null || cut.finished === null) return []
    const width = (depth: number) => 2 * halfWidthAt({ kind: 'v', widthMm: 0, angleDeg: value.angle }, depth)
    const drawn = width(cut.day)
    const finished = width(cut.finished)
    if (Math.abs(finished - drawn) < SEEN_MM) return []
    const right = cut.day + (cut.day - cut.finished)
    const fix: Patch = [
      { op: 'remove', path: `${at}/depth` },
      { op: 'add', path: `${at}/finishedDepth`, value: typedAt(work.document, `${at}/depth`) }
    ]
    return [
      {
        severity: 'caution',
        at,
        says: `${id} is cut ${decimals(drawn, 2)} mm wide; after that the face ${cut.finished < cut.day ? 'is worked down' : 'grows'} by ${decimals(Math.abs(cut.day - cut.finished), 2)} mm, and the line is ${decimals(finished, 2)} mm wide. Cut ${decimals(right, 2)} deep on the day for ${decimals(drawn, 2)}${cut.finished <= 0 ? '; as it is, nothing of it is left' : ''}.`,
        value: finished,
        unit: 'mm',
        basis: 'width = 2·depth·tan(half the angle); heights of the face by the order of the steps',
        fix,
        fixSays: `${id} ${decimals(right, 2)} deep on the day`
      }
    ]
  })
}
