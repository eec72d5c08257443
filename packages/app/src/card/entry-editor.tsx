import { useEffect, useState } from 'preact/hooks'
import type { Patch } from '../../../engine/src/piece/patch.ts'
import { chosen, edit, piece } from '../state/desk.ts'
import { fields, readFields } from '../state/fields.ts'
import { w } from '../text/words.ts'
import type { EntryKind, Field, Json } from '../worker/messages.ts'
import { at as valueAt } from './document-place.ts'
import { FieldRow } from './field-row.tsx'
import { FIRST_FIELDS } from './first-fields.ts'
import { ShapeRow } from './shape-row.tsx'

/** The fields of one entry, each an edit of its own. Those a maker changes most come first. */
export function EntryEditor(p: {
  readonly at: string
  readonly kind: EntryKind
  readonly name: string
  readonly open?: boolean
}) {
  const [all, setAll] = useState(false)
  useEffect(readFields, [])
  const table = fields.value?.[p.kind]
  const document = piece.value?.document
  const entry = document === undefined ? undefined : (valueAt(document, p.at) as Json | undefined)
  if (table === undefined || document === undefined) return null
  const value = entry ?? {}
  const first = FIRST_FIELDS[p.kind]
  const shown = table
    .filter(f => f.type !== 'other' && (all || first.includes(f.key) || value[f.key] !== undefined))
    .sort((a, b) => order(first, a) - order(first, b))
  const hidden = table.filter(f => f.type !== 'other').length - shown.length
  const change = (field: Field, stored: unknown) =>
    edit(w.changed(p.name, field.key), changed(document, p.at, entry, field, stored))
  return (
    <div class="fields" role="group" aria-label={p.name}>
      <dl>
        {shown.map(f =>
          f.type === 'shape' ? (
            <ShapeRow
              key={f.key}
              field={f}
              shape={value[f.key] as Json | undefined}
              name={p.name}
              at={`${p.at}/${f.key}`}
            />
          ) : (
            <FieldRow key={f.key} field={f} value={value[f.key]} name={p.name} onChange={v => change(f, v)} />
          )
        )}
      </dl>
      <p class="ways">
        {hidden > 0 || all ? (
          <button type="button" class="link" onClick={() => setAll(!all)}>
            {all ? w.card.fewer : w.card.more}
          </button>
        ) : null}
        {/^\/(timbers|pours|cuts|hardware|markings)\/\d+$/.test(p.at) ? (
          <button type="button" class="link" onClick={() => remove(p.at, p.name)}>
            {w.card.remove}
          </button>
        ) : null}
      </p>
    </div>
  )
}

function order(first: readonly string[], f: Field): number {
  const k = first.indexOf(f.key)
  return k < 0 ? 100 : k
}

function remove(at: string, name: string): void {
  chosen.value = null
  edit(w.removed(name), [{ op: 'remove', path: at }])
}

// Fields of which exactly one stands in an entry: setting one takes the others out.
const ONE_OF: Readonly<Record<string, readonly string[]>> = {
  pours: ['depth', 'height', 'mass', 'fill'],
  cuts: ['depth', 'finishedDepth', 'through']
}

function changed(document: Json, at: string, entry: Json | undefined, field: Field, stored: unknown): Patch {
  const path = `${at}/${field.key}`
  const patch: Patch[number][] = []
  // An entry that was left out altogether is begun.
  if (entry === undefined && at !== '') patch.push({ op: 'add', path: at, value: {} })
  const value = entry ?? (at === '' ? document : {})
  const others = ONE_OF[at.split('/')[1] ?? ''] ?? []
  if (stored !== undefined && others.includes(field.key))
    for (const key of others)
      if (key !== field.key && value[key] !== undefined) patch.push({ op: 'remove', path: `${at}/${key}` })
  if (stored === undefined) {
    if (value[field.key] !== undefined) patch.push({ op: 'remove', path })
  } else patch.push({ op: value[field.key] === undefined ? 'add' : 'replace', path, value: stored })
  return patch
}
