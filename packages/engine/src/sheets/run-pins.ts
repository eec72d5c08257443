import type { PinPlan } from '../cuts/pins/pin-plan.ts'
import type { Work } from '../findings/work.ts'
import type { Lengths } from '../piece/lengths.ts'
import { lengthsOf } from '../piece/lengths.ts'
import { decimals } from '../quantity/format.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { lengthIn } from '../quantity/shown-units.ts'
import { nearest } from '../shape/measure.ts'
import { place } from './run-mould.ts'
import type { RunDetail, RunFact } from './run-part.ts'
import { blank, detail, fact, newLine } from './run-part.ts'
import { liftFacts } from './use-words.ts'

/** The step that drills the pin holes: where, how wide, how deep, and what they are for. */
export function pinsDetail(work: Work): RunDetail {
  const L = lengthsOf(work.shop)
  const { pins, misfit, playMm } = work.pins
  const does = ['Drill into waste that stays to the end; both faces are measured from these holes.']
  if (pins.length === 0)
    return detail({
      does,
      blanks: [blank('Pin 1, x', L.unit), blank('y', L.unit), blank('Pin 2, x', L.unit), blank('y', L.unit)]
    })
  does.push(
    'Drill piece and bed in one go, as it lies: then the pins stand where the holes are.',
    ...(pins.some(p => p.slotMm > 0)
      ? ['The slot lies in line with the pins: the timber moves along it, and it still holds across.']
      : [])
  )
  const facts = pins.flatMap((p, i): RunFact[] => {
    const out = nearest(work.stack.geometry.outline, p.x, p.y).distanceMm
    const depth = p.depthMm === null ? 'through' : `${L.of(p.depthMm, 1)} deep`
    return [
      newLine(
        fact(
          `Pin ${i + 1}`,
          `Ø ${L.of(p.diameterMm, 1)}`,
          `${L.unit} at ${place(p.x, p.y, L)}, ${L.of(Math.abs(out), 1)} ${L.unit} ${out > 0 ? 'outside' : 'inside'} the outline`
        )
      ),
      fact(
        p.slotMm > 0 ? 'Slot' : 'Hole',
        p.slotMm > 0 ? `${L.of(p.holeMm, 2)} × ${L.of(p.holeMm + p.slotMm, 1)}` : `Ø ${L.of(p.holeMm, 2)}`,
        `${L.unit}, ${depth}; bed ${L.of(p.bedMm, 1)} ${L.unit}`
      ),
      ...(p.pin === null
        ? []
        : [fact('Of steel', `${L.of(p.pin.lengthMm, 0)} long`, `${L.unit}: ${p.pin.name}`)])
    ]
  })
  if (misfit !== null)
    facts.push(
      newLine(fact('Play', L.of(playMm, 2), L.unit)),
      fact(
        'The faces may miss by',
        L.of(misfit.mm[1], 2),
        `${L.unit} (at most ${L.of(misfit.mm[2], 2)}; ${L.of(work.pins.toleranceMm, 2)} is borne)`
      )
    )
  return detail({
    does,
    facts,
    blanks: pins.flatMap((p, i) => [
      blank(`Pin ${i + 1}, x`, L.unit, L.signed(p.x, 1)),
      blank('y', L.unit, L.signed(p.y, 1))
    ])
  })
}

/** A turning over: about which line, onto the pins, and what a wrong one would show. */
export function turnDetail(work: Work, i: number): RunDetail {
  const L = lengthsOf(work.shop)
  return detail({
    does: onPins(work, i) ? turnWords(work.pins, L) : [],
    facts: [...liftFacts(work, i), ...(onPins(work, i) ? touchFacts(work, i) : [])]
  })
}

// What is touched before the first cut of the setting that begins here, and how the piece was found to lie.
function touchFacts(work: Work, i: number): RunFact[] {
  const L = lengthsOf(work.shop)
  const up = work.steps[i + 1]?.up
  const setting = work.pins.settings.findLast(s => s.up === up)
  if (setting === undefined) return []
  const [, a, b] = setting.touch
  const facts = [a, b].flatMap(p =>
    p === undefined ? [] : [newLine(fact('Touch', p.name, `at ${place(p.x, p.y, L)} from the zero`))]
  )
  const { place: found, names, thickness } = setting
  if (found !== null) {
    const off = found.outliers.map(
      k => `${names[k]} is ${L.of(found.residualsMm[k]!, 2)} ${L.unit} off: touch it again`
    )
    facts.push(
      newLine(fact('Found turned by', decimals(found.turnDeg, 3), '°')),
      fact('shifted', `x ${L.signed(found.shiftX, 2)}, y ${L.signed(found.shiftY, 2)}`, L.unit),
      fact('left over', L.of(Math.max(...found.residualsMm), 2), [`${L.unit} at most`, ...off].join('; '))
    )
  }
  if (thickness !== null)
    facts.push(
      newLine(
        fact(
          'Thickness read',
          L.of(thickness.measuredMm, 2),
          `${L.unit}, planned ${L.of(thickness.plannedMm, 2)}: the bed lies ${L.of(-setting.bedMm, 2)} under the zero`
        )
      )
    )
  return facts
}

/** The same in few words. */
export function turnPhrase(work: Work, i: number): string[] {
  return onPins(work, i) ? [`${lineWords(work.pins)}, onto the pins`] : []
}

/** The pins in few words: "2 pins, Ø 8 and 6, 599 apart". */
export function pinPhrases(work: Work, shown: ShownUnits): string[] {
  const { pins } = work.pins
  const [a, b] = pins
  if (a === undefined || b === undefined) return []
  const mm = (x: number) => lengthIn(shown, x, 0)
  const sizes = [...new Set(pins.map(p => lengthIn(shown, p.diameterMm, 1)))]
  return [
    `${pins.length} pins, Ø ${sizes.join(' and ')}`,
    `${mm(Math.hypot(a.x - b.x, a.y - b.y))} apart`,
    a.depthMm === null ? 'right through' : `${mm(a.depthMm)} deep`
  ]
}

// Turned over once the holes are drilled.
function onPins(work: Work, i: number): boolean {
  if (work.pins.pins.length === 0) return false
  const drilled = work.steps.findIndex(s => s.kind === 'drill pins')
  return drilled >= 0 && drilled < i
}

function lineWords({ datum }: PinPlan): string {
  return datum.about === 'x'
    ? 'about the line from left to right: left stays left'
    : 'about the line from near to far: near stays near'
}

function turnWords(plan: PinPlan, L: Lengths): string[] {
  const [other, unturned] = plan.wrong
  const out = [`Turn it over ${lineWords(plan)}, and press it down onto the pins.`]
  if (other !== undefined)
    out.push(
      other.fits
        ? `Mind the way: turned about the other line it goes on as well, upside-down left to right${other.offMm !== null && other.offMm >= 1 ? ` and ${L.of(other.offMm, 1)} ${L.unit} off` : ''}.`
        : 'Turned about the other line, upside-down left to right, it does not go on: do not force it.'
    )
  if (unturned?.fits) out.push('It goes on with the wrong face up too: the face that is done lies down.')
  return out
}
