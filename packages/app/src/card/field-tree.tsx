import type { Patch } from '../../../engine/src/piece/patch.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import type { Field } from '../worker/field-table.ts'
import { setPatch } from './document-edit.ts'
import { FieldRow, labelOf } from './field-row.tsx'
import { ShapeRow } from './shape-row.tsx'

export interface TreeProps {
  readonly fields: readonly Field[]
  /** The whole document, and where in it these fields stand. */
  readonly document: Json
  readonly at: string
  readonly value: Json
  readonly name: string
  readonly onEdit: (says: string, patch: Patch) => void
}

/** Fields of a group, one under the other; groups and lists open in place. */
export function FieldTree(p: TreeProps) {
  return (
    <div class="rows">
      {p.fields.map(f => (
        <One key={f.key} p={p} f={f} />
      ))}
    </div>
  )
}

function One({ p, f }: { readonly p: TreeProps; readonly f: Field }) {
  const at = `${p.at}/${f.key}`
  const value = p.value[f.key]
  const put = (v: unknown) =>
    p.onEdit(w.changed(p.name, labelOf(f.key)), withOthersOut(p, f, setPatch(p.document, at, v), v))
  if (f.type === 'shape')
    return <ShapeRow field={f} shape={value as Json | undefined} name={p.name} at={at} />
  if (f.type === 'group' && f.fields !== undefined)
    return (
      <details class="group" open={value !== undefined || f.fallback !== undefined}>
        <summary>
          {labelOf(f.key)} <span class="q">{furtherWords(f)}</span>
        </summary>
        <FieldTree
          {...p}
          fields={f.fields}
          at={at}
          value={(value as Json | undefined) ?? (f.fallback as Json | undefined) ?? {}}
          name={`${p.name}, ${labelOf(f.key)}`}
        />
      </details>
    )
  if (f.type === 'list' && f.fields !== undefined) return <List p={p} f={f} at={at} />
  if (f.type === 'lines') {
    const lines = (value as string[] | undefined) ?? (f.fallback as string[] | undefined) ?? []
    const words: Field = { ...f, type: 'words', required: false }
    return (
      <FieldRow
        field={words}
        value={lines.length === 0 ? undefined : lines.join(', ')}
        name={p.name}
        onChange={v =>
          put(
            v === undefined
              ? undefined
              : String(v)
                  .split(',')
                  .map(x => x.trim())
                  .filter(x => x !== '')
          )
        }
      />
    )
  }
  if (f.type === 'other') return null
  // A union that was given in its longer form stays as it is here.
  if (value !== null && typeof value === 'object' && f.type !== 'point') return null
  return <FieldRow field={f} value={value} name={p.name} onChange={put} />
}

function List({ p, f, at }: { readonly p: TreeProps; readonly f: Field; readonly at: string }) {
  const own = p.value[f.key] as Json[] | undefined
  const list = own ?? (f.fallback as Json[] | undefined) ?? []
  const label = labelOf(f.key)
  const put = (says: string, next: readonly Json[]) =>
    p.onEdit(says, setPatch(p.document, at, next.length === 0 ? undefined : next))
  // Usual entries that were never written down are, before one of them is changed.
  const edit = (says: string, patch: Patch) => {
    p.onEdit(says, own === undefined ? [...setPatch(p.document, at, list), ...patch] : patch)
  }
  const shown = own === undefined ? ({ ...p.document, ...nested(at, list) } as Json) : p.document
  return (
    <details class="group" open={list.length > 0 && list.length < 4}>
      <summary>
        {label} <span class="q">{list.length === 0 ? furtherWords(f) : String(list.length)}</span>
      </summary>
      {list.map((entry, i) => {
        const name = `${p.name}, ${label} ${String(entry['id'] ?? i + 1)}`
        return (
          <div class="one-of" key={`${at}/${i}`} role="group" aria-label={name}>
            <FieldTree
              fields={f.fields!}
              document={shown}
              at={`${at}/${i}`}
              value={entry}
              name={name}
              onEdit={edit}
            />
            <button
              type="button"
              class="link"
              aria-label={`${w.card.remove} ${name}`}
              onClick={() =>
                put(
                  w.removed(name),
                  list.filter((_, k) => k !== i)
                )
              }
            >
              {w.card.remove}
            </button>
          </div>
        )
      })}
      <button
        type="button"
        class="link"
        aria-label={`${w.card.add} ${label}`}
        onClick={() => put(w.added(label), [...list, started(f)])}
      >
        {w.card.add}
      </button>
    </details>
  )
}

// A list of the top level of a document laid in it, for reading.
function nested(at: string, list: readonly Json[]): Json {
  const [, key, ...rest] = at.split('/')
  return rest.length === 0 ? { [key!]: list } : {}
}

/** A new entry of a list: the schema's own example, else what it must have. */
function started(f: Field): Json {
  const example = Array.isArray(f.example) ? (f.example[0] as Json | undefined) : undefined
  if (example !== undefined) return { ...example }
  const out: Json = {}
  for (const field of f.fields ?? [])
    if (field.required) out[field.key] = field.catalogue?.[0]?.[0] ?? field.options?.[0] ?? field.example ?? 1
  return out
}

// Fields of which exactly one stands in an entry: setting one takes the others out.
const ONE_OF: Readonly<Record<string, readonly string[]>> = {
  pours: ['depth', 'height', 'mass', 'fill'],
  cuts: ['depth', 'finishedDepth', 'through'],
  stones: ['zone', 'placed', 'all']
}

function withOthersOut(p: TreeProps, f: Field, patch: Patch, value: unknown): Patch {
  const others = ONE_OF[p.at.split('/').at(-2) ?? ''] ?? []
  if (value === undefined || !others.includes(f.key)) return patch
  return [
    ...others
      .filter(k => k !== f.key && p.value[k] !== undefined)
      .map(k => ({ op: 'remove' as const, path: `${p.at}/${k}` })),
    ...patch
  ]
}

// What a group says of itself beyond its name.
function furtherWords(f: Field): string {
  const words = f.description.replace(/^the /, '')
  return words === f.key
    ? ''
    : words.startsWith(`${f.key};`)
      ? words.slice(f.key.length + 1).trim()
      : f.description
}
