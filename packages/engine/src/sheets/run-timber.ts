import type { Work } from '../findings/work.ts'
import { readyWords } from '../fits/drying-now.ts'
import { dayWords } from '../quantity/day.ts'
import { decimals } from '../quantity/format.ts'
import type { RunBlank, RunFact } from './run-part.ts'
import { blank, fact } from './run-part.ts'

type Season = Work['seasons'][number]

const KNOWN = {
  document: 'given, not measured',
  storage: 'not measured: the balance of the air it is stored in',
  room: 'not measured: the balance of the air of the shop'
} as const

/** Moisture and drying of a timber, as figures. */
export function moistureFacts(work: Work, k: number): RunFact[] {
  const season = work.seasons[k]!
  return [
    fact('Moisture', decimals(season.moisturePct, 1), `% ${moistureWords(season)}`),
    ...logFacts(season)
  ]
}

/** Weekly weights are asked for while a timber dries. */
export function weightBlanks(work: Work, k: number): RunBlank[] {
  return work.seasons[k]!.log === null ? [] : [blank('Weight', 'g'), blank('Weighed on', 'day')]
}

/** The drying of a timber in a few words; empty when it was not weighed. */
export function dryingWords({ log }: Season): string {
  if (log === null) return ''
  if (log.ready === null) return `drying log: ${log.why}`
  return `ready on ${readyWords(log.ready)}`
}

function moistureWords({ source, how, corePct, moisturePct, bandPct }: Season): string {
  const known = source === 'reading' ? how : source === 'log' ? `by ${how}` : KNOWN[source]
  const [low, high] = bandPct
  const core = Math.abs(corePct - moisturePct) < 0.05 ? '' : `, ${decimals(corePct, 1)} at its core`
  return `(${decimals(low, 1)} to ${decimals(high, 1)})${core}; ${known}`
}

function logFacts(season: Season): RunFact[] {
  const { log } = season
  if (log === null) return []
  const { ready, why, fit, wantedPct } = log
  const label = `Core at ${decimals(wantedPct, 1)} %`
  const out = [
    ready === null
      ? fact(label, 'no day', why ?? '')
      : fact(
          label,
          `about ${dayWords(ready.on)}`,
          ready.to === null
            ? `not before ${dayWords(ready.from)}; it may never in the air it stands in`
            : `between ${dayWords(ready.from)} and ${dayWords(ready.to)}`
        )
  ]
  if (fit !== null)
    out.push(
      fact(
        'It settles at',
        decimals(fit.settlesPct[1], 1),
        `% (${decimals(fit.settlesPct[0], 1)} to ${decimals(fit.settlesPct[2], 1)}) where it stands`
      )
    )
  return out
}
