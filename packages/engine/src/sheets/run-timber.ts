import type { Work } from '../findings/work.ts'
import type { Lengths } from '../piece/lengths.ts'
import { dayWords } from '../quantity/day.ts'
import { decimals } from '../quantity/format.ts'
import type { RunBlank, RunFact } from './run-part.ts'
import { blank, fact, newLine } from './run-part.ts'

type Season = Work['seasons'][number]
type Facts = Work['timberFacts'][number]
type Range = readonly [low: number, central: number, high: number]

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
          `${ready.reached ? 'since about' : 'about'} ${dayWords(ready.on)}`,
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

/** The board to start from, as sentences. */
export function roughWords({ rough }: Facts, L: Lengths): string[] {
  if (rough === null) return []
  const { parts, startMm, givenMm } = rough
  const reckoned = parts.some(p => p.from.startsWith('not measured'))
  return [
    `Start from a board of ${L.of(startMm, 1)} ${L.unit}: ${parts.map(p => `${p.what} ${L.of(p.mm, 1)}`).join(', ')}.${givenMm === null ? '' : ` The one at hand has ${L.of(givenMm, 1)}.`}${reckoned ? ' What was not measured of the board is reckoned: lay it on a flat table first.' : ''}`
  ]
}

/** Where a timber will stand and what it does there, as figures. */
export function standFacts({ stand, cupping }: Facts, L: Lengths): RunFact[] {
  const out = [
    newLine(fact('Air it stands in now', decimals(stand.nowPct, 1), '% is its balance')),
    fact(
      'Where it will live',
      `${decimals(stand.winterPct, 1)} to ${decimals(stand.summerPct, 1)}`,
      '%, driest to dampest air'
    ),
    fact(
      'Settles in',
      days(stand.finishedDays),
      `days at least, ${stand.faces}; bare ${days(stand.bareDays)}`
    )
  ]
  if (stand.widthMm !== null)
    out.push(
      newLine(
        fact(
          'Over a year its width moves',
          L.of(stand.widthMm[1], 1),
          `${L.unit} (${band(stand.widthMm, 1, L)})${stand.radialMm === null || stand.tangentialMm === null ? '' : `; quartersawn ${L.of(stand.radialMm[1], 1)}, flat-sawn ${L.of(stand.tangentialMm[1], 1)}`}`
        )
      )
    )
  if (stand.thicknessMm !== null)
    out.push(
      fact(
        'Its thickness',
        L.of(stand.thicknessMm[1], 2),
        `${L.unit}, so at a joint ${L.of(stand.thicknessMm[1] / 2, 2)} a face; its length ${L.of(stand.lengthMm[1], 2)}`
      )
    )
  out.push(...cupFacts(cupping, L).map((f, i) => (i === 0 ? newLine(f) : f)))
  return out
}

/** Cupping below this is not worth a line, mm. */
const SHOWN_MM = 0.1

function cupFacts(c: Facts['cupping'], L: Lengths): RunFact[] {
  const out: RunFact[] = []
  if (c.ringsDryMm !== null && c.ringsDampMm !== null) {
    const most = Math.max(Math.abs(c.ringsDryMm), Math.abs(c.ringsDampMm))
    if (most >= SHOWN_MM)
      out.push(
        fact(
          'Free, its rings cup it by',
          L.of(most, 1),
          `${L.unit} over the year; pith ${L.of(c.pithMm, 0)} ${L.unit} off${c.pithGiven ? '' : ', assumed'}`
        )
      )
  }
  if (c.planedMm !== null && Math.abs(c.planedMm) >= SHOWN_MM)
    out.push(
      fact(
        'Uneven planing leaves',
        L.of(Math.abs(c.planedMm), 1),
        `${L.unit} of hollow, once it has evened out`
      )
    )
  if (c.oneSidedMm >= SHOWN_MM)
    out.push(
      fact(
        'Free, its unlike faces pull it hollow by',
        L.of(c.oneSidedMm, 1),
        `${L.unit} at most, for days or weeks`
      )
    )
  if (Math.abs(c.charMm) >= SHOWN_MM)
    out.push(
      fact('Its charred top pulls it hollow by', L.of(Math.abs(c.charMm), 1), `${L.unit} at most, on the day`)
    )
  if (c.restDays[1] >= 1)
    out.push(fact('Rests', days(c.restDays), 'days at least, until its core is within a point of that air'))
  return out
}

/** The seal coat of a timber, as figures. */
export function sealFacts({ seal }: Facts): RunFact[] {
  if (seal === null) return []
  return [
    newLine(
      fact(
        'Seal coat',
        decimals(seal.massG[2], seal.massG[2] < 20 ? 1 : 0),
        `g at most over ${decimals(seal.areaM2, 3)} m² of sides and top; ${decimals(seal.gPerM2[0], 0)} to ${decimals(seal.gPerM2[1], 0)} g a m² (practice), ${seal.because}`
      )
    )
  ]
}

function days([low, , high]: Range): string {
  return `${decimals(low, 0)} to ${decimals(high, 0)}`
}

function band([low, , high]: Range, places: number, L: Lengths): string {
  return `${L.of(low, places)} to ${L.of(high, places)}`
}
