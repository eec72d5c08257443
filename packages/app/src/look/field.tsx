import { useState } from 'preact/hooks'
import type { Entry, Refused, Shown } from '../../../engine/src/draw/units.ts'
import {
  entered,
  readLength,
  readMass,
  readQuantity,
  readTemperature,
  showLength,
  showMass,
  showStored,
  showTemperature
} from '../../../engine/src/draw/units.ts'
import { decimals } from '../../../engine/src/quantity/format.ts'
import type { ShownUnits } from '../../../engine/src/quantity/shown-units.ts'
import { massIn } from '../../../engine/src/quantity/shown-units.ts'
import type { Dimension } from '../../../engine/src/quantity/unit.ts'
import { FIXED_UNIT, fromFixedUnit } from '../../../engine/src/quantity/unit.ts'
import { units } from '../state/preferences.ts'

export interface QuantityProps {
  readonly label: string
  readonly value: number | string | undefined
  readonly dimension: Dimension
  readonly min?: number | undefined
  readonly max?: number | undefined
  /** Shown in an empty field. */
  readonly placeholder?: string | undefined
  readonly describedBy?: string | undefined
  /** Stored as it is to stand in the document; undefined: left out. */
  readonly onChange: (stored: number | string | undefined) => void
  readonly bare?: boolean
  /** The value is the usual one: nobody said it. */
  readonly usual?: boolean
}

/** How a dimension is shown and read in the units chosen. */
function unitsOf(dimension: Dimension): {
  show: (value: number) => Shown
  read: (text: string, range?: { min: number; max: number }) => Entry | Refused
} {
  const u = units.value
  switch (dimension) {
    case 'length':
      return { show: mm => showLength(mm, { unit: u.length }), read: (t, r) => readLength(t, u.length, r) }
    case 'temperature':
      return {
        show: c => showTemperature(c, { unit: u.temperature }),
        read: (t, r) => readTemperature(t, u.temperature, r)
      }
    case 'mass':
      return { show: g => showMass(g, { unit: u.mass }), read: (t, r) => readMass(t, u.mass, r) }
    default: {
      const unit = FIXED_UNIT[dimension]
      return {
        show: v => ({ text: decimals(v, 3), unit, exact: true }),
        read: (t, r) => readQuantity(t, dimension, unit, r)
      }
    }
  }
}

/** A field for one quantity: shown in the units chosen, stored as typed, unchanged when it was not touched. */
export function QuantityField(p: QuantityProps) {
  const { show, read } = unitsOf(p.dimension)
  const shown =
    p.value === undefined
      ? { text: '', unit: show(p.min ?? 0).unit, exact: true }
      : showStored(p.value, p.dimension, show)
  const [typed, setTyped] = useState<string | null>(null)
  const [problem, setProblem] = useState<string | null>(null)
  const id = `q-${p.label.replace(/\W+/g, '-')}`
  const commit = (text: string) => {
    setTyped(null)
    setProblem(null)
    if (text.trim() === '') {
      if (p.value !== undefined && p.placeholder !== undefined) p.onChange(undefined)
      return
    }
    const range = p.min === undefined || p.max === undefined ? undefined : { min: p.min, max: p.max }
    const entry = entered(shown, text, t => read(t, range))
    if (entry === null) return
    if ('problem' in entry) {
      setTyped(text)
      setProblem(entry.problem)
    } else p.onChange(entry.stored)
  }
  return (
    <span class={`qf${problem === null ? '' : ' bad'}${p.usual ? ' usual' : ''}`}>
      <input
        type="text"
        inputMode="text"
        autocomplete="off"
        spellcheck={false}
        aria-label={p.label}
        aria-invalid={problem === null ? undefined : 'true'}
        aria-describedby={problem === null ? p.describedBy : `${id}-bad`}
        value={typed ?? shown.text}
        placeholder={p.placeholder}
        onInput={e => setTyped(e.currentTarget.value)}
        onBlur={e => commit(e.currentTarget.value)}
        onKeyDown={e => {
          if (e.key === 'Enter') commit(e.currentTarget.value)
          else if (e.key === 'Escape') {
            setTyped(null)
            setProblem(null)
          }
        }}
      />
      {p.bare ? null : <u>{shown.unit}</u>}
      {problem === null ? null : (
        <span class="says-bad" id={`${id}-bad`} role="alert">
          {problem}
        </span>
      )}
    </span>
  )
}

/** From this mass on a figure to read is in kg, g. */
const KILO_G = 1000

/** A quantity to read: its figure and its unit in small type. `bare` leaves the unit out. */
export function Figure({
  value,
  dimension,
  digits,
  bare
}: {
  value: number
  dimension: Dimension
  digits?: number
  bare?: boolean
}) {
  const u = units.value
  const [text, unit] = figureOf(value, dimension, digits, u)
  return (
    <>
      {text}
      {bare ? null : <u>{unit}</u>}
    </>
  )
}

function figureOf(
  value: number,
  dimension: Dimension,
  digits: number | undefined,
  u: ShownUnits
): [string, string] {
  // A figure to read says no more than it did: it is rounded in the unit it is shown in.
  if (dimension === 'mass') {
    if (u.mass === 'g' && value >= KILO_G) return [decimals(value / 1000, value >= 10 * KILO_G ? 0 : 1), 'kg']
    if (u.mass === 'oz') return massIn(u, value, String).split(' ') as [string, string]
  }
  if (dimension === 'temperature' && digits !== undefined)
    return [decimals(fromFixedUnit(value, u.temperature), digits, digits), u.temperature]
  const shown = unitsOf(dimension).show(digits === undefined ? value : Number(value.toFixed(digits)))
  const fixed = shown.unit === FIXED_UNIT[dimension]
  return [fixed && digits !== undefined ? decimals(value, digits, digits) : shown.text, shown.unit]
}
