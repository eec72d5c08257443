import type { Work } from '../findings/work.ts'
import { lengthsOf } from '../piece/lengths.ts'
import { kilos, roughMass } from '../quantity/rough.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { lengthIn, massIn } from '../quantity/shown-units.ts'
import type { RunFact } from './run-part.ts'
import { fact } from './run-part.ts'

/** From this mass on a lift is said on the sheet, g: lighter ones nobody asks about. */
const SAID_G = 8000

/** A sag whose upper end is less is none to a maker, mm. */
const LEAST_MM = 0.05

/** What is lifted or turned at a step, when it is more than is lifted without thinking. */
export function liftFacts(work: Work, step: number): RunFact[] {
  const move = work.moves.find(m => m.step === step)
  if (move === undefined || move.massG < SAID_G) return []
  const mould = move.mouldG > 0 ? `with its mould (${kilos(move.mouldG)})` : ''
  return [fact('To lift, about', roughMass(move.massG), mould)]
}

/** The same in few words: "about 12 kg to turn". */
export function liftPhrase(work: Work, step: number, shown: ShownUnits): string[] {
  const move = work.moves.find(m => m.step === step)
  if (move === undefined || move.massG < SAID_G) return []
  return [`about ${massIn(shown, move.massG, roughMass)} to lift`]
}

/** How it lies on its supports, for the day it is delivered. */
export function useFacts(work: Work): RunFact[] {
  const L = lengthsOf(work.shop)
  const use = work.inUse
  if (use === null) return []
  const out: RunFact[] = []
  const mm = (x: number) => L.of(x, 1, 1)
  for (const [label, sag] of [
    ['Sags between supports', use.sag],
    [`Sags where its ${use.overhang?.side ?? ''} side hangs over`, use.overhang]
  ] as const)
    if (sag !== null && sag.bandMm[1] >= LEAST_MM)
      out.push(
        fact(
          label,
          mm(sag.mm),
          `${L.unit} over the years; ${mm(sag.bandMm[0])} to ${mm(sag.bandMm[1])}, of ${mm(sag.limitMm)}`
        )
      )
  if (use.tipsAtG !== null) out.push(fact('Tips, by itself, under', roughMass(use.tipsAtG), 'on its edge'))
  const worst = Math.max(0, ...use.screws.map(s => s.needMm[1]))
  if (worst >= 1)
    out.push(fact('Slots for its screws', `± ${mm(worst / 2)}`, `${L.unit}, with washers that slide`))
  return out
}

/** The same in few words, each a phrase. */
export function usePhrases(work: Work, shown: ShownUnits): string[] {
  const use = work.inUse
  if (use === null) return []
  const worst = Math.max(0, ...use.screws.map(s => s.needMm[1]))
  return [
    ...(use.sag === null || use.sag.mm < 0.05
      ? []
      : [`sags about ${lengthIn(shown, use.sag.mm, 1, 1)} in time`]),
    ...(worst < 1 ? [] : [`slots of ± ${lengthIn(shown, worst / 2, 1, 1)}`])
  ]
}
