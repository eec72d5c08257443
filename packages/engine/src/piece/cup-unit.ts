import { toFixedUnit } from '../quantity/unit.ts'
import type { Columns, CupUnit } from './cup-header.ts'
import { at } from './cup-table.ts'
import type { Refuse } from './cup-taken.ts'

/** Fresh resin warmer than this was warmed, or is °F taken for °C; °F below the other is °C taken for °F. */
const WARM_FRESH_C = 48
const COLD_FRESH_C = 4
/** Resin is read from the start or nearly so, min: only then does the first reading tell its unit. */
const FRESH_MIN = 10

/** The unit of the thermometer: named by header, numbers or asked for; else only where it can be no other. */
export function unitOf(
  typed: readonly { line: number; value: number; unit: CupUnit | null; min: number }[],
  columns: Columns,
  asked: CupUnit | undefined,
  says: string[],
  refuse: Refuse
): CupUnit {
  const named = typed.find(t => t.unit !== null)
  const odd = typed.find(t => t.unit !== null && t.unit !== (named!.unit ?? t.unit))
  if (odd) refuse(at(odd.line, `${odd.unit} after ${named!.unit}`, 'one unit throughout'))
  const inFile = named?.unit ?? columns.unit
  if (asked !== undefined) {
    if (inFile !== null && inFile !== asked)
      says.push(`The file says ${inFile}; taken as ${asked}, as asked for.`)
    return asked
  }
  const { value, line, min } = typed[0]!
  const ask = (taken: CupUnit, other: CupUnit): never =>
    refuse(
      at(
        line,
        `${value} ${inFile ?? 'without a unit'} in fresh resin`,
        `resin is mixed at 10 to 40 °C: if these are ${other}, say --unit ${other.slice(-1)}; if they are ${taken} all the same, say --unit ${taken.slice(-1)}`
      )
    )
  const fresh = min <= FRESH_MIN
  if (inFile === '°C' && fresh && value > WARM_FRESH_C) return ask('°C', '°F')
  if (inFile === '°F' && fresh && toFixedUnit(value, '°F') < COLD_FRESH_C) return ask('°F', '°C')
  if (inFile !== null) return inFile
  // Without a unit: 5 to 48 in fresh resin can only be °C; beyond, or later in the course, either may be meant.
  if (fresh && value >= COLD_FRESH_C && value <= WARM_FRESH_C) {
    says.push('Temperatures are taken as °C.')
    return '°C'
  }
  return ask('°C', '°F')
}
