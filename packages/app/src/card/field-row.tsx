import { QuantityField } from '../look/field.tsx'
import { TypedInput } from '../look/typed-input.tsx'
import { w } from '../text/words.ts'
import type { Field } from '../worker/field-table.ts'

/** One field: its name, its value to edit in place, its help a press away. */
export function FieldRow(p: {
  readonly field: Field
  readonly value: unknown
  readonly name: string
  readonly onChange: (stored: unknown) => void
}) {
  const { field: f, value } = p
  const label = labelOf(f.key)
  const id = `${p.name}-${f.key}`.replace(/\W+/g, '-')
  return (
    <dl class="field" data-key={f.key}>
      <dt>
        <details class="help">
          <summary>{label}</summary>
          <p id={`${id}-help`}>{f.description}</p>
        </details>
      </dt>
      <dd>
        <Control field={f} value={value} label={`${p.name}: ${label}`} onChange={p.onChange} />
      </dd>
    </dl>
  )
}

function Control({
  field: f,
  value,
  label,
  onChange
}: {
  readonly field: Field
  readonly value: unknown
  readonly label: string
  readonly onChange: (stored: unknown) => void
}) {
  if (f.type === 'quantity')
    return (
      <QuantityField
        label={label}
        value={(value as number | string | undefined) ?? (f.fallback as number | undefined)}
        dimension={f.dimension!}
        min={f.min}
        max={f.max}
        placeholder={f.required ? undefined : w.card.leave}
        usual={value === undefined}
        onChange={onChange}
      />
    )
  if (f.catalogue !== undefined)
    return (
      <select
        aria-label={label}
        value={String(value ?? f.fallback ?? '')}
        onChange={e => onChange(e.currentTarget.value)}
      >
        {f.catalogue.some(([id]) => id === value) || value === undefined ? null : (
          <option value={String(value)}>{String(value)}</option>
        )}
        {value === undefined && f.fallback === undefined ? <option value="" /> : null}
        {f.catalogue.map(([id, name]) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    )
  if (f.type === 'choice')
    return (
      <select
        aria-label={label}
        value={String(value ?? f.fallback ?? '')}
        onChange={e => onChange(e.currentTarget.value === '' ? undefined : e.currentTarget.value)}
      >
        {f.fallback === undefined && !f.required ? <option value="">{w.card.leave}</option> : null}
        {f.options!.map(o => (
          <option key={o} value={o}>
            {o}
          </option>
        ))}
      </select>
    )
  if (f.type === 'yes')
    return (
      <label class="check">
        <input
          type="checkbox"
          aria-label={label}
          checked={(value ?? f.fallback ?? false) === true}
          onChange={e => onChange(e.currentTarget.checked ? true : f.fallback === true ? false : undefined)}
        />
        {(value ?? f.fallback ?? false) === true ? w.card.yes : w.card.no}
      </label>
    )
  if (f.type === 'number' || f.type === 'whole')
    return (
      <span class={`qf${value === undefined ? ' usual' : ''}`}>
        <TypedInput
          type="number"
          look="number"
          label={label}
          shown={value === undefined ? (f.fallback === undefined ? '' : String(f.fallback)) : String(value)}
          min={f.min}
          max={f.max}
          {...(f.type === 'whole' ? { step: 1 } : {})}
          placeholder={w.card.leave}
          onCommit={(text, input) => {
            const n = Number(text)
            if (text === '') onChange(undefined)
            else if (input.checkValidity() && Number.isFinite(n)) onChange(n)
            else {
              input.reportValidity()
              return false
            }
            return undefined
          }}
        />
        <u>{f.unit}</u>
      </span>
    )
  if (f.type === 'point') {
    const [x, y] = (value as [number | string, number | string] | undefined) ?? [undefined, undefined]
    return (
      <span class="pair">
        <QuantityField
          label={`${label}, x`}
          value={x}
          dimension="length"
          min={-10000}
          max={10000}
          bare
          onChange={v => onChange([v ?? 0, y ?? 0])}
        />
        <QuantityField
          label={`${label}, y`}
          value={y}
          dimension="length"
          min={-10000}
          max={10000}
          onChange={v => onChange([x ?? 0, v ?? 0])}
        />
      </span>
    )
  }
  return (
    <TypedInput
      type="text"
      look="words"
      label={label}
      shown={value === undefined ? '' : String(value)}
      placeholder={
        f.required ? undefined : typeof f.fallback === 'string' ? w.card.usually(f.fallback) : w.card.leave
      }
      maxLength={f.key === 'id' ? 60 : 2000}
      onCommit={text => {
        onChange(text.trim() === '' ? (f.required ? value : undefined) : text)
        return undefined
      }}
    />
  )
}

/** "finishedDepth" as "finished depth". */
export function labelOf(key: string): string {
  if (key === 'id') return 'name'
  return key.replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`)
}
