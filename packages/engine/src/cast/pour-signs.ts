import type { Pour } from '../piece/piece-schema.ts'
import type { Reading } from '../piece/reading-schema.ts'
import type { PourSign } from './activity.ts'

/** What the readings of one pour say of its cure, and which of them say nothing and why. */
export interface PourSigns {
  readonly signs: readonly PourSign[]
  /** In the maker's words, one a sign: "strings after 1 h 25". */
  readonly words: readonly string[]
  readonly unused: readonly string[]
}

/** Readings later than this, min after mixing, are of a cured piece: the pour is followed no longer. */
const LATEST_MIN = 7 * 24 * 60

/**
 * The stages and temperatures read of a pour, in minutes after it was mixed: by its `mixed` reading, else its
 * first `poured` one, else the start that the document gives. null when there are none.
 */
export function pourSigns(
  id: string,
  pour: Pick<Pour, 'start'>,
  begins: string | undefined,
  readings: readonly Reading[],
  spoken: (minutes: number) => string
): PourSigns | null {
  const own = readings.filter(r => 'pour' in r && r.pour === id)
  const read = own.filter(r => r.kind === 'stage' || r.kind === 'temperature')
  if (read.length === 0) return null
  const zero =
    earliest(own.filter(r => r.kind === 'mixed')) ??
    earliest(own.filter(r => r.kind === 'poured')) ??
    moment(begins ?? pour.start)
  const signs: PourSign[] = []
  const words: string[] = []
  const unused: string[] = []
  for (const r of [...read].sort((a, b) => Date.parse(a.at) - Date.parse(b.at))) {
    const name = r.kind === 'stage' ? `“${r.stage}”` : `${Math.round(r.temperature * 10) / 10} °C`
    const say = (why: string) =>
      unused.push(`${name} of ${id} at ${r.at.replace('T', ' ').slice(0, 16)} ${why}`)
    if (zero === null) {
      say('tells nothing yet: when it was mixed is not known; read “mixed”, or give the pour its start')
      continue
    }
    const afterMin = (Date.parse(r.at) - zero) / 60_000
    if (afterMin <= 0) {
      say('lies before it was mixed: one of the two moments is wrong')
      continue
    }
    if (afterMin > LATEST_MIN) {
      say('comes later than the seven days that are followed')
      continue
    }
    signs.push(
      r.kind === 'stage'
        ? { sign: r.stage, afterMin }
        : { sign: 'temperature', afterMin, tempC: r.temperature }
    )
    words.push(`${name} after ${spoken(afterMin)}`)
  }
  return { signs, words, unused }
}

function earliest(list: readonly Reading[]): number | null {
  return list.length === 0 ? null : Math.min(...list.map(r => Date.parse(r.at)))
}

function moment(begins: string | undefined): number | null {
  return begins === undefined ? null : Date.parse(begins)
}
