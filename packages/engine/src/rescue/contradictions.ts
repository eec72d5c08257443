import { nearest } from '../piece/nearest.ts'
import type { Reading } from '../piece/reading-schema.ts'
import { decimals, formatMass, formatMm } from '../quantity/format.ts'
import { momentWords } from './moment-words.ts'

/** Readings that do not go together: kept, told, and never dropped. */
export interface Contradiction {
  readonly says: string
  /** The readings it is about, by id. */
  readonly readings: readonly string[]
}

/** Names that readings may be of, and what they are judged by. */
export interface Known {
  readonly pours: readonly string[]
  /** Pours that go into the mould. */
  readonly cast: ReadonlySet<string>
  readonly timbers: readonly string[]
  readonly cuts: readonly string[]
  readonly steps: readonly string[]
  /** By pour: height of what it is poured on, mm as cast; null where it is not cast into the mould. */
  readonly floorsMm: readonly (number | null)[]
}

/** Two heights of one pour closer than this are the same, mm: a rule read twice (practice). */
const SAME_HEIGHT_MM = 0.5
/** A clock may be off by this between two devices, min (practice). */
const CLOCK_MIN = 2
const STAGES = ['strings', 'tacky', 'gelled', 'hard'] as const

/**
 * What in some readings cannot be so all together: names the piece does not have, moments after now or in the wrong
 * order (a clock that went backwards shows so), heights that differ, a height under what lies below, more poured
 * than mixed. The readings all stay; the latest of its kind is the one that is planned by.
 */
export function contradictionsOf(readings: readonly Reading[], known: Known, asOf: string): Contradiction[] {
  return [
    ...nameless(readings, known),
    ...ahead(readings, asOf),
    ...wrongOrder(readings, known),
    ...stagesBack(readings),
    ...heightsApart(readings, known),
    ...moreThanMixed(readings)
  ]
}

function nameless(readings: readonly Reading[], known: Known): Contradiction[] {
  const lists = [
    ['pour', 'pour', known.pours],
    ['timber', 'timber', known.timbers],
    ['cut', 'cut', known.cuts],
    ['step', 'step', known.steps]
  ] as const
  return readings.flatMap(r =>
    lists.flatMap(([key, what, names]): Contradiction[] => {
      const name = (r as unknown as Record<string, unknown>)[key]
      if (typeof name !== 'string' || names.includes(name)) return []
      // A wait is named after what it stands before: a change of the order names it anew.
      if (key === 'step' && name.startsWith('wait')) return []
      const near = nearest(name, names)
      return [
        {
          says: `“${r.kind}” of ${momentWords(r.at)} is of the ${what} “${name}”, which the piece does not have${near === null ? '' : `; the nearest is “${near}”`}. It tells nothing.`,
          readings: [r.id]
        }
      ]
    })
  )
}

function ahead(readings: readonly Reading[], asOf: string): Contradiction[] {
  const now = Date.parse(asOf)
  return readings
    .filter(r => Date.parse(r.at) > now + CLOCK_MIN * 60_000)
    .map(r => ({
      says: `“${r.kind}” lies ahead of now: ${momentWords(r.at)}, and it is ${momentWords(asOf)}. A clock was wrong then, or is now.`,
      readings: [r.id]
    }))
}

/** Pairs of readings of which the second cannot come before the first. */
function wrongOrder(readings: readonly Reading[], known: Known): Contradiction[] {
  const out: Contradiction[] = []
  const judge = (first: Reading | undefined, then: Reading | undefined, why: string) => {
    if (first === undefined || then === undefined) return
    if (Date.parse(then.at) >= Date.parse(first.at) - CLOCK_MIN * 60_000) return
    out.push({
      says: `${why}: ${momentWords(then.at)} against ${momentWords(first.at)}. One of the moments is wrong; a clock may have gone backwards.`,
      readings: [first.id, then.id]
    })
  }
  const by = new Map<string, { began?: Reading; done?: Reading; mixed?: Reading; poured?: Reading }>()
  const at = (key: string) => {
    const had = by.get(key) ?? {}
    by.set(key, had)
    return had
  }
  for (const r of readings) {
    if (r.kind === 'began') at(`step ${r.step}`).began ??= r
    if (r.kind === 'done') at(`step ${r.step}`).done = r
    if (r.kind === 'mixed') at(`pour ${r.pour}`).mixed ??= r
    if (r.kind === 'poured') at(`pour ${r.pour}`).poured = r
  }
  for (const [key, s] of by) {
    const name = key.slice(5)
    judge(s.began, s.done, `“${name}” was done before it was begun`)
    judge(s.mixed, s.poured, `${name} was poured before it was mixed`)
  }
  // Out of the mould nothing is cast any more.
  const demoulded = readings.find(r => r.kind === 'demoulded')
  const cast = readings.filter(r => (r.kind === 'poured' || r.kind === 'mixed') && known.cast.has(r.pour))
  for (const r of cast) judge(r, demoulded, 'it left the mould before a pour into it')
  return out
}

function stagesBack(readings: readonly Reading[]): Contradiction[] {
  const out: Contradiction[] = []
  const own = readings.flatMap(r => (r.kind === 'stage' ? [r] : []))
  for (const pour of new Set(own.map(r => r.pour))) {
    const list = own.filter(r => r.pour === pour).sort((a, b) => Date.parse(a.at) - Date.parse(b.at))
    list.forEach((r, i) => {
      const before = list[i - 1]
      if (before === undefined || STAGES.indexOf(r.stage) >= STAGES.indexOf(before.stage)) return
      out.push({
        says: `${pour} was “${before.stage}” at ${momentWords(before.at)} and “${r.stage}” after that, at ${momentWords(r.at)}: resin does not go back.`,
        readings: [before.id, r.id]
      })
    })
  }
  return out
}

function heightsApart(readings: readonly Reading[], known: Known): Contradiction[] {
  const out: Contradiction[] = []
  const own = readings.flatMap(r => (r.kind === 'height' ? [r] : []))
  for (const pour of new Set(own.map(r => r.pour))) {
    const list = own.filter(r => r.pour === pour).sort((a, b) => Date.parse(a.at) - Date.parse(b.at))
    const last = list[list.length - 1]!
    const other = list.find(r => Math.abs(r.height - last.height) > SAME_HEIGHT_MM)
    if (other !== undefined)
      out.push({
        says: `${pour} was read ${formatMm(other.height)} high, and ${formatMm(last.height)} at ${momentWords(last.at)}: the last one is planned by.`,
        readings: [other.id, last.id]
      })
    const floor = known.floorsMm[known.pours.indexOf(pour)] ?? null
    if (floor !== null && last.height <= floor)
      out.push({
        says: `${pour} was read ${formatMm(last.height)} high, and what it lies on stands at ${formatMm(floor)}: one of the two is wrong. It is not planned by.`,
        readings: [last.id]
      })
  }
  return out
}

/** More out of the vessels than was in them by this share is a slip (a scale read twice agrees to a hundredth). */
const MORE_SHARE = 0.02

function moreThanMixed(readings: readonly Reading[]): Contradiction[] {
  const sums = new Map<string, { mixed: number; poured: number; ids: string[] }>()
  for (const r of readings) {
    if ((r.kind !== 'mixed' && r.kind !== 'poured') || r.mass === undefined) continue
    const s = sums.get(r.pour) ?? { mixed: 0, poured: 0, ids: [] }
    s[r.kind] += r.mass
    s.ids.push(r.id)
    sums.set(r.pour, s)
  }
  return [...sums].flatMap(([pour, { mixed, poured, ids }]): Contradiction[] =>
    mixed === 0 || poured <= mixed * (1 + MORE_SHARE)
      ? []
      : [
          {
            says: `${formatMass(poured)} were poured of ${pour}, and ${formatMass(mixed)} mixed: ${decimals((poured / mixed - 1) * 100, 0)} % more than there was.`,
            readings: ids
          }
        ]
  )
}
