import type { HandCut } from '../cuts/hand/hand-cut.ts'
import type { Work } from '../findings/work.ts'
import type { Lengths } from '../piece/lengths.ts'
import { lengthsOf } from '../piece/lengths.ts'
import { formatMinutes } from '../quantity/format.ts'
import type { RunDetail, RunFact } from './run-part.ts'
import { fact } from './run-part.ts'

/** The cuts by hand of a step. */
function handAt(work: Work, i: number): readonly HandCut[] {
  return work.hand.filter(h => h.step === i)
}

/** A step's detail with how its cut is made by hand before it. */
export function byHand(work: Work, i: number, own: RunDetail): RunDetail {
  const L = lengthsOf(work.shop)
  const cuts = handAt(work, i)
  if (cuts.length === 0) return own
  return {
    ...own,
    does: [...own.does, ...new Set(cuts.flatMap(handDoes))],
    facts: [...own.facts, ...cuts.flatMap(h => handFacts(h, cuts.length > 1, L))]
  }
}

function handDoes(h: HandCut): readonly string[] {
  if (h.cannot !== null) return [`Cannot be made by ${h.way}: ${h.cannot}.`]
  if (h.way === 'sent out')
    return [
      'A drawing with its numbers goes along: place, size, depth from which face, and what it must fit.'
    ]
  return h.doing?.does ?? []
}

function handFacts(h: HandCut, several: boolean, L: Lengths): RunFact[] {
  const { doing } = h
  if (doing === null) return []
  const named = (label: string) => (several ? `${label}, ${h.id}` : label)
  const out = [fact(named('Tool'), doing.tool)]
  if (doing.bushMm !== null && doing.bitMm !== null && doing.offsetMm !== null)
    out.push(
      fact(
        'Template',
        L.of(doing.offsetMm, 2),
        `${L.unit} outside the line: half of ${L.of(doing.bushMm, 1)} less ${L.of(doing.bitMm, 1)}`
      ),
      fact('Inside corners', `${L.of(doing.leastRadiusMm!, 1)}`, `${L.unit} at least; half of the bit`)
    )
  else if (doing.bushMm !== null)
    out.push(fact('Template', `slot ${L.of(doing.bushMm, 1)}`, `${L.unit} wide, as the bush`))
  else if (doing.offsetMm === 0 && h.of !== 'edge') out.push(fact('Template', 'the finished outline itself'))
  if (doing.passes !== null)
    out.push(fact('Passes', `${doing.passes.count} × ${L.of(doing.passes.eachMm, 1)}`, L.unit))
  if (doing.sled !== null)
    out.push(fact('Carriage sags', L.of(doing.sled.sagMm, 2), `${L.unit} under the router`))
  out.push(fact(named('At the bench'), `about ${formatMinutes(doing.minutes + h.makingMinutes)}`))
  return out
}

/** The same in few words, for the card. */
export function handPhrases(work: Work, i: number, L: Lengths): string[] {
  return handAt(work, i).flatMap(({ doing, of }) => {
    if (doing === null) return []
    const passes = doing.passes
    return [
      doing.tool,
      of !== 'edge' && doing.offsetMm !== null && doing.offsetMm > 0 && doing.bitMm !== null
        ? `template ${L.of(doing.offsetMm, 2)} outside`
        : '',
      passes === null || passes.count < 2 ? '' : `${passes.count} × ${L.of(passes.eachMm, 1)}`
    ].filter(words => words !== '')
  })
}
