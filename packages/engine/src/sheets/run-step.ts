import type { Work } from '../findings/work.ts'
import { grainDegOf } from '../piece/grain.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { Plan } from '../plan.ts'
import { decimals, formatMass, formatMinutes } from '../quantity/format.ts'
import { bounds } from '../shape/measure.ts'
import { wasteReachMm } from '../stack/waste.ts'
import { bowFacts } from './bow-words.ts'
import { floodFacts } from './run-coat.ts'
import { cutDetail, fillDetail, flattenDetail, markDetail } from './run-cut.ts'
import { coatDetail, deliverDetail, fitDetail } from './run-finish.ts'
import { byHand } from './run-hand.ts'
import { byMachine } from './run-machine.ts'
import { mouldDetail, place, signed } from './run-mould.ts'
import type { RunDetail, RunFact } from './run-part.ts'
import { blank, detail, fact } from './run-part.ts'
import { pinsDetail, turnDetail } from './run-pins.ts'
import { pourDetail, stonesDetail } from './run-pour.ts'
import { sanded } from './run-sanding.ts'
import { moistureFacts, roughWords, sealFacts, standFacts, weightBlanks } from './run-timber.ts'
import { liftFacts } from './use-words.ts'

/** What the run sheet says of step `i` beyond its heading and its few words. */
export function stepDetail(plan: Plan, work: Work, i: number): RunDetail {
  const L = lengthsOf(work.shop)
  const step = work.steps[i]!
  switch (step.kind) {
    case 'prepare timber':
      return step.timber === undefined ? detail({}) : timberDetail(work, step.timber.index)
    case 'make mould':
      return mouldDetail(plan, work)
    case 'set timber':
      return step.timber === undefined ? detail({}) : setDetail(plan, work, step.timber.index)
    case 'pour':
      return sanded(work, i, floodDetail(work, i, pourDetail(plan, work, i)))
    case 'set stones':
      return stonesDetail(plan, work, i)
    case 'wait':
      return waitDetail(work, i)
    case 'demould':
      return demouldDetail(work, i)
    case 'turn over':
      return turnDetail(work, i)
    case 'drill pins':
      return pinsDetail(work)
    case 'flatten':
    case 'sand':
      return sanded(work, i, byMachine(work, i, byHand(work, i, flattenDetail(work, i))))
    case 'cut':
      return byMachine(work, i, byHand(work, i, cutDetail(plan, work, i)))
    case 'mark':
      return byMachine(work, i, byHand(work, i, markDetail(work, step.marking!.index)))
    case 'fill':
      return fillDetail(work, step.marking!.index)
    case 'trim':
      return byHand(work, i, trimDetail(plan, work))
    case 'work edges':
      return byHand(
        work,
        i,
        detail({
          does: work.piece.edges.map(
            e =>
              `${e.profile === 'chamfer' ? 'Chamfer' : 'Round'} ${e.face === 'both' ? 'both faces' : `the ${e.face}`} ${L.of(e.size, 1)} ${L.unit}, finished${e.way === 'router' ? '' : `; ${e.way}`}.`
          )
        })
      )
    case 'coat':
      return sanded(work, i, coatDetail(plan, work, step))
    case 'fit':
      return step.hardware === undefined ? detail({}) : fitDetail(plan, work, step.hardware.index)
    case 'deliver':
      return deliverDetail(plan, work)
  }
}

// A flood among the pours: how it lies on the face.
function floodDetail(work: Work, i: number, own: RunDetail): RunDetail {
  const L = lengthsOf(work.shop)
  const floods = work.faces.flatMap(f => f.floods.filter(flood => flood.step === i))
  return floods.length === 0
    ? own
    : { ...own, facts: [...own.facts, ...floods.flatMap(flood => floodFacts(flood, L))] }
}

const SEALED = {
  tacky: 'still tacky when the resin comes.',
  hard: 'hard when the resin comes.',
  keyed: 'hard and sanded dull when the resin comes.'
} as const

/** How the sides of a timber meet the resin: by a seal pour of the document, else by the pour's own resin. */
function sealWords(work: Work, k: number): string[] {
  const t = work.piece.timbers[k]!
  const cast = work.steps.some(s => s.pour?.value.kind === 'cast')
  const seal = work.entries.pours.find(p => p.value.kind === 'seal')
  if (!cast) return []
  if (t.sealed === 'no') return ['Its sides go in without a seal coat.']
  if (seal !== undefined)
    return [
      `Its sides are sealed with ${seal.id}, ${SEALED[t.sealed === 'hard' && t.keyed ? 'keyed' : t.sealed]}`
    ]
  if (t.sealed === 'tacky')
    return [
      'Shortly before the pour brush a thin coat of its resin on the sides: it is to be tacky when the resin comes.'
    ]
  return [
    `Brush a thin coat of the resin that is poured on the sides and let it harden${t.keyed ? '; then sand it dull' : ''}.`
  ]
}

function timberDetail(work: Work, k: number): RunDetail {
  const L = lengthsOf(work.shop)
  const t = work.piece.timbers[k]!
  const solid = work.stack.geometry.timbers[k]!
  const b = bounds(solid.upper)
  const facts = work.timberFacts[k]!
  const does = [...roughWords(facts, L), 'Cut it to its outline.']
  if (t.underside !== undefined) does.push('Its side runs slanting from the upper edge to the lower one.')
  if (t.charred > 0)
    does.push(
      `Char its sides ${L.of(t.charred, 1)} ${L.unit} deep${t.brushed ? ' and brush the loose char out' : ''}.`
    )
  if (t.charredTop > 0)
    does.push(
      `Char its top ${L.of(t.charredTop, 1)} ${L.unit} deep${t.brushed ? ' and brush the loose char out' : ''}.`
    )
  does.push(...sealWords(work, k))
  if (t.bark) does.push('Bark stays on its sides.')
  const season = work.seasons[k]!
  return detail({
    does,
    facts: [
      fact(
        work.mould.needsMould ? 'In the mould' : 'Size',
        `${L.of(b.maxX - b.minX, 0)} × ${L.of(b.maxY - b.minY, 0)} × ${L.of(solid.high - solid.base, 1)}`,
        L.unit
      ),
      fact('Grain', `${signed(grainDegOf(t, solid.upper), 0)}°`, 'from x'),
      ...moistureFacts(work, k),
      ...standFacts(facts, L),
      ...sealFacts(facts)
    ],
    blanks: [
      blank('Moisture', '%', decimals(season.moisturePct, 1)),
      blank('Thickness', L.unit, L.of(t.thickness, 1)),
      ...weightBlanks(work, k)
    ]
  })
}

function setDetail(plan: Plan, work: Work, k: number): RunDetail {
  const L = lengthsOf(work.shop)
  const t = work.piece.timbers[k]!
  const { liftG, holdG, massG } = plan.timbers[k]!
  const solid = work.stack.geometry.timbers[k]!
  const b = bounds(solid.upper)
  const by = work.timberFacts[k]!.holding?.says
  const held =
    t.held === 'nothing' ? 'The document holds it down with nothing.' : `Hold it down with ${by ?? t.held}.`
  return detail({
    does: [
      `Its middle at ${place((b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2, L)}, its underside ${Math.abs(t.base) < 0.05 ? 'on' : `${L.of(t.base, 1, 1)} ${L.unit} over`} the mould base.`,
      holdG >= 1 || liftG > 0 ? held : 'It stays down by its own mass.'
    ],
    facts: [
      fact('It weighs', formatMass(massG)),
      ...(liftG > 0 ? [fact('Resin lifts it by', formatMass(liftG))] : []),
      ...(holdG >= 1 ? [fact('Hold down with', formatMass(holdG), 'at least')] : [])
    ],
    blanks: [blank('Gap under it', L.unit, L.of(t.level, 1, 1))]
  })
}

const WAIT_DOES = {
  recoat: 'Ready when a gloved finger leaves a print and pulls no string.',
  demould: 'Ready when a nail leaves no mark and the casting is no warmer than the room.',
  machine: 'Leave it flat, aired on both faces. Dust of half-cured resin still sensitises.',
  sand: 'Ready when it sands to powder and does not clog.',
  load: 'Nothing stands on it, nothing is fitted or wrapped until then.'
} as const

function waitDetail(work: Work, i: number): RunDetail {
  const L = lengthsOf(work.shop)
  const step = work.steps[i]!
  const before = lastPour(work, i)
  const windows = before === null ? undefined : work.casts[before]?.windows
  const facts: RunFact[] = []
  if (step.why === 'demould' && windows !== undefined)
    facts.push(fact('Hard enough from', formatMinutes(windows.demould.open), 'after that pour'))
  return detail({
    does: step.why === undefined ? [] : [WAIT_DOES[step.why]],
    facts,
    blanks:
      step.why === 'recoat' || step.why === 'demould'
        ? [
            blank('It strings at', 'h:min'),
            blank(step.why === 'recoat' ? 'Tacky at' : 'Hard at', 'h:min'),
            blank('Hottest felt', L.degree)
          ]
        : []
  })
}

// The pour that was made last before step i, by index.
function lastPour(work: Work, i: number): number | null {
  for (let k = i - 1; k >= 0; k--) {
    const s = work.steps[k]!
    if (s.kind === 'pour') return s.pour!.index
  }
  return null
}

// What stands round the piece comes off: the pins with it.
function trimDetail(plan: Plan, work: Work): RunDetail {
  const L = lengthsOf(work.shop)
  const [x, y] = plan.totals.sizeMm
  const reach = wasteReachMm(work.piece, work.stack.geometry)
  return detail({
    does: [
      'Saw along the outside of the line, then take the rest down to it with a router along a template, or saw to the line.',
      work.steps.some(s => s.kind === 'drill pins')
        ? 'What is measured from the pins or from the waste is cut by now: both go.'
        : 'What is measured from the waste is cut by now: it goes.'
    ],
    facts: [
      fact('Finished size', `${L.of(x, 1)} × ${L.of(y, 1)}`, L.unit),
      ...(reach < 0.05 ? [] : [fact('Waste round it', `up to ${L.of(reach, 1)}`, L.unit)])
    ],
    blanks: [blank('Length', L.unit, L.of(x, 1, 1)), blank('Width', L.unit, L.of(y, 1, 1))]
  })
}

function demouldDetail(work: Work, i: number): RunDetail {
  const L = lengthsOf(work.shop)
  const s = work.stack.states[i]!
  const formers = work.entries.formers.filter(f => f.value.released).map(f => f.id)
  return detail({
    does: [
      'Walls first, then the base; ease it off from one corner.',
      ...(formers.length === 0 ? [] : [`Push out the former of ${formers.join(', ')}.`])
    ],
    facts: [...bowFacts(work, i, 'Bows'), ...liftFacts(work, i)],
    blanks: [blank('Thickness', L.unit, L.of(s.highZ - s.lowZ, 1, 1)), blank('Out of flat', L.unit)]
  })
}
