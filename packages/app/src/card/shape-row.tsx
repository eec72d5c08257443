import { QuantityField } from '../look/field.tsx'
import { TypedInput } from '../look/typed-input.tsx'
import { edit } from '../state/desk.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import type { Field } from '../worker/field-table.ts'
import { labelOf } from './field-row.tsx'

type Stored = number | string

/** A shape by its numbers: its own sizes, where it lies, how it is turned. */
export function ShapeRow(p: {
  readonly field: Field
  readonly shape: Json | undefined
  readonly name: string
  readonly at: string
}) {
  const { shape } = p
  const label = labelOf(p.field.key)
  if (shape === undefined) return null
  const put = (key: string, value: unknown) =>
    edit(w.changed(p.name, label), [
      value === undefined
        ? { op: 'remove', path: `${p.at}/${key}` }
        : { op: shape[key] === undefined ? 'add' : 'replace', path: `${p.at}/${key}`, value }
    ])
  const pair = (key: 'rectangle' | 'at', words: readonly [string, string], least: number) => {
    const [a, b] = (shape[key] as [Stored, Stored] | undefined) ?? [0, 0]
    return (
      <>
        <QuantityField
          label={`${p.name}, ${label}: ${words[0]}`}
          value={a}
          dimension="length"
          min={least}
          max={10000}
          bare
          onChange={v => put(key, [v ?? a, b])}
        />
        <span class="q">{key === 'at' ? ', ' : ' × '}</span>
        <QuantityField
          label={`${p.name}, ${label}: ${words[1]}`}
          value={b}
          dimension="length"
          min={least}
          max={10000}
          onChange={v => put(key, [a, v ?? b])}
        />
      </>
    )
  }
  return (
    <dl class="field" data-key={p.field.key}>
      <dt>
        <details class="help">
          <summary>{label}</summary>
          <p>{p.field.description}</p>
        </details>
      </dt>
      <dd class="shape">
        {shape['rectangle'] === undefined ? null : (
          <span class="pair">{pair('rectangle', [w.shape.width, w.shape.depth], 0.01)}</span>
        )}
        {shape['circle'] === undefined ? null : (
          <span class="pair">
            <span class="q">Ø</span>
            <QuantityField
              label={`${p.name}, ${label}: ${w.shape.diameter}`}
              value={shape['circle'] as Stored}
              dimension="length"
              min={0.01}
              max={10000}
              onChange={v => v !== undefined && put('circle', v)}
            />
          </span>
        )}
        {shape['rectangle'] === undefined ? null : (
          <span class="pair">
            <span class="q">{w.shape.corner}</span>
            <QuantityField
              label={`${p.name}, ${label}: ${w.shape.corner}`}
              value={shape['corner'] as Stored | undefined}
              dimension="length"
              min={0}
              max={5000}
              placeholder="0"
              onChange={v => put('corner', v)}
            />
          </span>
        )}
        {shape['rectangle'] !== undefined || shape['circle'] !== undefined ? null : (
          <span class="q">{w.shape.drawn(kindOf(shape))}</span>
        )}
        <span class="pair">
          <span class="q">{w.shape.at}</span>
          {pair('at', ['x', 'y'], -10000)}
        </span>
        <span class="pair">
          <span class="q">{w.shape.turn}</span>
          <TypedInput
            type="number"
            look="number"
            min={-360}
            max={360}
            label={`${p.name}, ${label}: ${w.shape.turn}`}
            shown={String(shape['turn'] ?? 0)}
            onCommit={text => {
              const n = Number(text)
              if (Number.isFinite(n) && Math.abs(n) <= 360) put('turn', n)
              return undefined
            }}
          />
          <u>°</u>
        </span>
      </dd>
    </dl>
  )
}

function kindOf(shape: Json): string {
  return (
    ['polygon', 'path', 'file', 'union', 'difference', 'common'].find(k => shape[k] !== undefined) ?? 'shape'
  )
}
