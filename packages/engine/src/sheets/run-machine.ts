import type { MachineCut } from '../cuts/run/machine-cut.ts'
import type { Work } from '../findings/work.ts'
import type { Lengths } from '../piece/lengths.ts'
import { lengthsOf } from '../piece/lengths.ts'
import { decimals } from '../quantity/format.ts'
import type { RunDetail, RunFact } from './run-part.ts'
import { fact } from './run-part.ts'

// What the machine cuts in a step. Both faces are flattened with one bit, reckoned once.
function machineAt(work: Work, i: number): MachineCut | null {
  const { cuts } = work.machineCuts
  if (work.steps[i]!.kind === 'flatten') return cuts.find(c => c.of === 'flatten') ?? null
  return cuts.find(c => c.step === i) ?? null
}

/** A step's detail with the cutter and how it is run. */
export function byMachine(work: Work, i: number, own: RunDetail): RunDetail {
  const L = lengthsOf(work.shop)
  const cut = machineAt(work, i)
  if (cut === null || !('cutter' in cut.choice) || cut.run === null) return own
  const { cutter, limits } = cut.choice
  return {
    ...own,
    does: [...own.does, ...limits.map(sentence)],
    // What the drawing asked of the cutter is answered by the cutter itself.
    facts: [...own.facts.filter(f => f.label !== 'Cutter'), ...runFacts(cut.run, cutter, L)]
  }
}

function runFacts(
  run: NonNullable<MachineCut['run']>,
  cutter: { readonly name: string; readonly own: boolean; readonly id: string },
  L: Lengths
): RunFact[] {
  return [
    fact(
      'Cutter',
      cutter.own ? `${cutter.id}: ${cutter.name}` : cutter.name,
      cutter.own ? '' : '(usual size)'
    ),
    fact('Turns', decimals(run.rpm, 0), '1/min'),
    fact('Feed', L.feed(run.feedMmMin), `${L.unit}/min, straight down ${L.feed(run.plungeMmMin)}`),
    fact('A pass', L.of(run.depthMm, 2), `${L.unit} deep at most`)
  ]
}

/** The same in few words, for the card. */
export function machinePhrases(work: Work, i: number, L: Lengths): string[] {
  const cut = machineAt(work, i)
  if (cut === null || !('cutter' in cut.choice) || cut.run === null) return []
  const { rpm, feedMmMin, depthMm } = cut.run
  return [
    cut.choice.cutter.name,
    `${decimals(rpm, 0)} 1/min, ${L.feed(feedMmMin)} ${L.unit}/min`,
    `${L.of(depthMm, 2)} a pass`
  ]
}

function sentence(words: string): string {
  return `${words[0]!.toUpperCase()}${words.slice(1)}.`
}
