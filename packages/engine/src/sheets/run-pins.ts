import type { PinPlan } from '../cuts/pins/pin-plan.ts'
import type { Work } from '../findings/work.ts'
import { decimals } from '../quantity/format.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { lengthIn } from '../quantity/shown-units.ts'
import { nearest } from '../shape/measure.ts'
import { place, signed } from './run-mould.ts'
import type { RunDetail, RunFact } from './run-part.ts'
import { blank, detail, fact, newLine } from './run-part.ts'
import { liftFacts } from './use-words.ts'

/** The step that drills the pin holes: where, how wide, how deep, and what they are for. */
export function pinsDetail(work: Work): RunDetail {
  const { pins, misfit, playMm } = work.pins
  const does = ['Drill into waste that stays to the end; both faces are measured from these holes.']
  if (pins.length === 0)
    return detail({
      does,
      blanks: [blank('Pin 1, x', 'mm'), blank('y', 'mm'), blank('Pin 2, x', 'mm'), blank('y', 'mm')]
    })
  does.push(
    'Drill piece and bed in one go, as it lies: then the pins stand where the holes are.',
    ...(pins.some(p => p.slotMm > 0)
      ? ['The slot lies in line with the pins: the timber moves along it, and it still holds across.']
      : [])
  )
  const facts = pins.flatMap((p, i): RunFact[] => {
    const out = nearest(work.stack.geometry.outline, p.x, p.y).distanceMm
    const depth = p.depthMm === null ? 'through' : `${decimals(p.depthMm, 1)} deep`
    return [
      newLine(
        fact(
          `Pin ${i + 1}`,
          `Ø ${decimals(p.diameterMm, 1)}`,
          `mm at ${place(p.x, p.y)}, ${decimals(Math.abs(out), 1)} mm ${out > 0 ? 'outside' : 'inside'} the outline`
        )
      ),
      fact(
        p.slotMm > 0 ? 'Slot' : 'Hole',
        p.slotMm > 0
          ? `${decimals(p.holeMm, 2)} × ${decimals(p.holeMm + p.slotMm, 1)}`
          : `Ø ${decimals(p.holeMm, 2)}`,
        `mm, ${depth}; bed ${decimals(p.bedMm, 1)} mm`
      ),
      ...(p.pin === null
        ? []
        : [fact('Of steel', `${decimals(p.pin.lengthMm, 0)} long`, `mm: ${p.pin.name}`)])
    ]
  })
  if (misfit !== null)
    facts.push(
      newLine(fact('Play', decimals(playMm, 2), 'mm')),
      fact(
        'The faces may miss by',
        decimals(misfit.mm[1], 2),
        `mm (at most ${decimals(misfit.mm[2], 2)}; ${decimals(work.pins.toleranceMm, 2)} is borne)`
      )
    )
  return detail({
    does,
    facts,
    blanks: pins.flatMap((p, i) => [
      blank(`Pin ${i + 1}, x`, 'mm', signed(p.x, 1)),
      blank('y', 'mm', signed(p.y, 1))
    ])
  })
}

/** A turning over: about which line, onto the pins, and what a wrong one would show. */
export function turnDetail(work: Work, i: number): RunDetail {
  return detail({
    does: onPins(work, i) ? turnWords(work.pins) : [],
    facts: [...liftFacts(work, i), ...(onPins(work, i) ? touchFacts(work, i) : [])]
  })
}

// What is touched before the first cut of the setting that begins here, and how the piece was found to lie.
function touchFacts(work: Work, i: number): RunFact[] {
  const up = work.steps[i + 1]?.up
  const setting = work.pins.settings.findLast(s => s.up === up)
  if (setting === undefined) return []
  const [, a, b] = setting.touch
  const facts = [a, b].flatMap(p =>
    p === undefined ? [] : [newLine(fact('Touch', p.name, `at ${place(p.x, p.y)} from the zero`))]
  )
  const { place: found, names, thickness } = setting
  if (found !== null) {
    const off = found.outliers.map(
      k => `${names[k]} is ${decimals(found.residualsMm[k]!, 2)} mm off: touch it again`
    )
    facts.push(
      newLine(fact('Found turned by', decimals(found.turnDeg, 3), '°')),
      fact('shifted', `x ${signed(found.shiftX, 2)}, y ${signed(found.shiftY, 2)}`, 'mm'),
      fact('left over', decimals(Math.max(...found.residualsMm), 2), ['mm at most', ...off].join('; '))
    )
  }
  if (thickness !== null)
    facts.push(
      newLine(
        fact(
          'Thickness read',
          decimals(thickness.measuredMm, 2),
          `mm, planned ${decimals(thickness.plannedMm, 2)}: the bed lies ${decimals(-setting.bedMm, 2)} under the zero`
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

function turnWords(plan: PinPlan): string[] {
  const [other, unturned] = plan.wrong
  const out = [`Turn it over ${lineWords(plan)}, and press it down onto the pins.`]
  if (other !== undefined)
    out.push(
      other.fits
        ? `Mind the way: turned about the other line it goes on as well, upside-down left to right${other.offMm !== null && other.offMm >= 1 ? ` and ${decimals(other.offMm, 1)} mm off` : ''}.`
        : 'Turned about the other line, upside-down left to right, it does not go on: do not force it.'
    )
  if (unturned?.fits) out.push('It goes on with the wrong face up too: the face that is done lies down.')
  return out
}
