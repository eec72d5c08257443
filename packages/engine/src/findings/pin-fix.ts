import type { PinPlan } from '../cuts/pins/pin-plan.ts'
import { pinPlan } from '../cuts/pins/pin-plan.ts'
import type { Patch } from '../piece/patch.ts'
import type { Pins } from '../piece/piece-schema.ts'
import { decimals } from '../quantity/format.ts'
import type { Found } from './finding.ts'
import { setValue, typedAt } from './fix.ts'
import type { Work } from './work.ts'

/** The pins as they would be with something else in their field. */
export function pinsWith(work: Work, change: Partial<Pins>): PinPlan {
  const { piece, stack, shop, seasons, clock } = work
  const pins: Pins = { diameter: [8, 6], depth: 20, play: 0.05, tolerance: 0.3, ...piece.pins, ...change }
  return pinPlan(stack, { ...piece, pins }, shop, { seasons, clock })
}

/** The fix that puts the pins where the casting takes them: on free places, else in two ears of waste. */
export function placesFix(work: Work): Pick<Found, 'fix' | 'fixSays'> {
  const free = pinsWith(work, { at: undefined })
  const { document } = work
  const sets = document.pins !== undefined
  if (free.pins.length > 0) {
    const at = free.pins.map(p => [p.x, p.y])
    const turns = document.pins?.about !== undefined && document.pins.about !== free.datum.about
    return {
      fix: [
        ...setValue(document, '/pins/at', at),
        ...(turns ? setValue(document, '/pins/about', free.datum.about) : [])
      ],
      fixSays: `Pins at ${at.map(p => p.map(v => decimals(v!, 0)).join(', ')).join(' and ')}`
    }
  }
  if (free.ears === null) return {}
  return {
    fix: [
      ...earsPatch(work, free.ears),
      ...(sets
        ? setValue(
            document,
            '/pins/at',
            free.ears.map(e => [...e.pin])
          )
        : [])
    ],
    fixSays: 'Two ears of waste for the pins'
  }
}

function earsPatch({ document }: Work, ears: NonNullable<PinPlan['ears']>): Patch {
  const shapes = ears.map(e => ({ rectangle: [...e.rectangle], at: [...e.at] }))
  if (typedAt(document, '/mould/ears') === undefined) return setValue(document, '/mould/ears', shapes)
  return shapes.map(value => ({ op: 'add' as const, path: '/mould/ears/-', value }))
}
