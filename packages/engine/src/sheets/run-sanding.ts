import { likeUnlettered } from '../coat/grain.ts'
import type { Ladder } from '../coat/ladder.ts'
import type { Work } from '../findings/work.ts'
import type { SandedThere } from '../finish/sands-at.ts'
import { sandedAt } from '../finish/sands-at.ts'
import { lengthsOf } from '../piece/lengths.ts'
import { decimals, formatMinutes } from '../quantity/format.ts'
import { capital } from './model.ts'
import type { RunDetail, RunTable } from './run-part.ts'
import { fact } from './run-part.ts'

/** Sanding of a step with its name: "Front", "Each face". */
type StepLadder = SandedThere & { readonly name: string }

const LEFT_WORDS = {
  machined: 'the machine',
  sled: 'the sled',
  planed: 'the planer',
  sawn: 'the saw',
  'sanded to 80': 'P80',
  cast: 'the mould',
  poured: 'the pour'
} as const

/** The ladders of step `i`; faces that are sanded alike are one. */
function laddersAt(work: Work, i: number): StepLadder[] {
  const out = sandedAt(work.faces, work.steps, i).map(t => ({ ...t, name: capital(t.face) }))
  const [a, b] = out
  const alike = out.length === 2 && grits(a!.ladder) === grits(b!.ladder) && a!.under === b!.under
  return alike ? [{ ...a!, name: 'Each face' }] : out
}

function grits(ladder: Ladder): string {
  return ladder.steps.map(s => `${s.grade.grit} ${s.passes}`).join('-')
}

/** What a step says with its sanding: the table of grades, and how it is done. */
export function sanded(work: Work, i: number, own: RunDetail): RunDetail {
  const L = lengthsOf(work.shop)
  const ladders = laddersAt(work, i)
  if (ladders.length === 0) return own
  const several = ladders.length > 1
  const left = [...new Set(ladders.map(l => LEFT_WORDS[l.left]))]
  const wet = ladders.flatMap(l => l.ladder.steps).find(s => s.grade.wet)
  const last = ladders[0]!.ladder.steps.at(-1)!.grade.grit
  const like = last > 220 ? likeUnlettered(last) : null
  const pastes = ladders.find(l => l.pastesUm.length > 0)?.pastesUm ?? []
  const under = ladders.some(l => l.under)
  return {
    ...own,
    does: [
      ...own.does,
      `${under ? 'Sand for the flood' : 'Sand'} until all marks of ${left.length === 1 ? left[0] : 'the last tool'} are gone, then each grit until those of the one before are: passes across each other, dust wiped off between, raking light.`,
      ...(wet === undefined
        ? []
        : [`From P${wet.grade.grit} wet, with a drop of soap, by hand or with an air sander.`]),
      ...(pastes.length === 0
        ? []
        : [`Then polish with pastes of ${pastes.join(' and ')} µm, a pad for each, slow and cool.`]),
      ...(like === null
        ? []
        : [`P grades are meant: paper marked ${last} without a P has the grain of P${like.grit}.`])
    ],
    sanding: table(work, ladders, several),
    facts: [
      ...own.facts,
      fact(
        'Sanding',
        formatMinutes(ladders.reduce((sum, l) => sum + l.ladder.minutes, 0)),
        minutesOf(ladders)
      ),
      fact('Sanding takes off', L.of(Math.max(...ladders.map(l => l.ladder.offMm)), 2), `${L.unit} in all`)
    ]
  }
}

function minutesOf(ladders: readonly StepLadder[]): string {
  return ladders.some(l => l.name === 'Each face') ? 'a face, by practice' : 'by practice'
}

function table(work: Work, ladders: readonly StepLadder[], several: boolean): RunTable {
  const L = lengthsOf(work.shop)
  const { disc } = work.shop.sander
  return {
    title: `Sanding, disc of ${L.of(disc, 0)} ${L.unit}${ladders[0]!.name === 'Each face' ? ', each face' : ''}`,
    head: ['Grit', 'Passes', 'Minutes', 'Discs'],
    rows: ladders.flatMap(l =>
      l.ladder.steps.map(s => [
        `${several ? `${l.name}, ` : ''}P${s.grade.grit}`,
        String(s.passes),
        decimals(s.minutes, 0),
        decimals(s.discs, 1)
      ])
    )
  }
}

/** The sanding of a step in few words: "P80 to P240, 45 min". */
export function sandingWords(work: Work, i: number): string[] {
  const ladders = laddersAt(work, i)
  if (ladders.length === 0) return []
  const all = ladders.flatMap(l => l.ladder.steps)
  const [from, to] = [Math.min(...all.map(s => s.grade.grit)), Math.max(...all.map(s => s.grade.grit))]
  const faces = ladders[0]!.name === 'Each face' ? 2 : 1
  const minutes = faces * ladders.reduce((sum, l) => sum + l.ladder.minutes, 0)
  return [`sand ${from === to ? `P${to}` : `P${from} to P${to}`}, ${formatMinutes(minutes)}`]
}
