import { find, nearestIds } from '../catalogue/find.ts'
import { nearest } from '../piece/nearest.ts'
import type { Reading } from '../piece/reading-schema.ts'
import { decimals } from '../quantity/format.ts'
import type { Found } from './finding.ts'
import type { Work } from './work.ts'

type OfTimber = Extract<Reading, { kind: 'moisture' | 'weight' | 'sample' }>

/** Readings of timber that tell nothing, or tell it of another timber. */
export function oddTimberReadings(work: Work): Found[] {
  return [
    ...work.readings.flatMap(r =>
      r.kind === 'moisture' || r.kind === 'weight' || r.kind === 'sample' ? oddOne(work, r) : []
    ),
    ...work.seasons.flatMap(s => oddLog(work, s))
  ]
}

function oddOne(work: Work, r: OfTimber): Found[] {
  const when = r.at.replace('T', ' ').slice(0, 16)
  const ids = work.entries.timbers.map(t => t.id)
  const timber = work.entries.timbers.find(t => t.id === r.timber)
  if (timber === undefined) {
    const near = nearest(r.timber, ids)
    return [
      caution(
        '/timbers',
        `a reading of ${when} is of the timber “${r.timber}”, which the piece does not have${near === null ? '.' : `; did you mean ${near}?`} It tells nothing.`,
        'the names of the document'
      )
    ]
  }
  if (r.kind !== 'moisture') return []
  const { thickness } = timber.value
  const out: Found[] = []
  if (r.depth !== undefined && r.depth > thickness)
    out.push(
      caution(
        timber.at,
        `the moisture of ${timber.id} of ${when} was read ${decimals(r.depth, 0)} mm deep, and it is ${decimals(thickness, 1)} mm thick: the depth is left out of account.`,
        'the thickness of the document'
      )
    )
  if (r.setting !== undefined && find('timber', r.setting) === null)
    out.push(
      caution(
        timber.at,
        `the meter of ${when} was set to “${r.setting}”, which the catalogue does not have; nearest: ${nearestIds('timber', r.setting, 3).join(', ')}. It counts as another timber’s setting.`,
        'the catalogue of timbers'
      )
    )
  return out
}

function oddLog(work: Work, season: Work['seasons'][number]): Found[] {
  const { log, timber } = season
  if (log === null || log.fit !== null || log.why === null || log.doubt === null) return []
  const { at, id } = work.entries.timbers[timber]!
  return [
    caution(
      at,
      `the drying log of ${id} forecasts nothing: ${log.why}.`,
      'drying timber loses water: a gain, or a miss of the curve through the other weights, of over 1 % of the mass is none (practice)'
    )
  ]
}

function caution(at: string, says: string, basis: string): Found {
  return { severity: 'caution', at, says, basis, settledBy: 'the reading taken again' }
}
