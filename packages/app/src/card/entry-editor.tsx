import { useEffect, useRef, useState } from 'preact/hooks'
import { chosen, edit, piece } from '../state/desk.ts'
import { fields, readFields } from '../state/fields.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import type { EntryKind, Field } from '../worker/field-table.ts'
import { at as valueAt } from './document-place.ts'
import { wantedField } from './edited-figure.tsx'
import { FieldTree } from './field-tree.tsx'
import { FIRST_FIELDS } from './first-fields.ts'

/** Lists of the piece that have entries of their own on the card: not offered among its fields. */
const ELSEWHERE = new Set(['timbers', 'pours', 'cuts', 'hardware', 'markings', 'mould', 'steps'])

/** The fields of one entry, each an edit of its own. Those a maker changes most come first. */
export function EntryEditor(p: { readonly at: string; readonly kind: EntryKind; readonly name: string }) {
  const [all, setAll] = useState(false)
  const host = useRef<HTMLDivElement>(null)
  const wanted = wantedField.value?.at === p.at ? wantedField.value.key : null
  useEffect(readFields, [])
  // The hand goes where it was asked to, once that stands there.
  useEffect(() => {
    if (wanted === null) return
    const row = host.current?.querySelector(`:scope > .rows > [data-key="${wanted}"]`)
    const input = row?.querySelector<HTMLElement>('dd input, dd select')
    if (input === null || input === undefined) return
    wantedField.value = null
    input.focus()
    if (input instanceof HTMLInputElement) input.select()
    input.scrollIntoView({ block: 'center' })
  })
  // A field that was asked for stays in sight.
  const [kept, setKept] = useState<string | null>(null)
  if (wanted !== null && wanted !== kept) setKept(wanted)
  const table = fields.value?.[p.kind]
  const document = piece.value?.document
  if (table === undefined || document === undefined) return null
  const value = (valueAt(document, p.at) as Json | undefined) ?? {}
  const first = FIRST_FIELDS[p.kind]
  const known = table.filter(f => f.type !== 'other' && !(p.kind === 'piece' && ELSEWHERE.has(f.key)))
  const shown = known
    .filter(f => all || first.includes(f.key) || value[f.key] !== undefined || f.key === kept)
    .sort((a, b) => order(first, a) - order(first, b))
  return (
    <div class="fields" role="group" aria-label={p.name} ref={host}>
      <FieldTree fields={shown} document={document} at={p.at} value={value} name={p.name} onEdit={edit} />
      <p class="ways">
        {known.length > shown.length || all ? (
          <button
            type="button"
            class="link"
            aria-label={`${p.name}: ${all ? w.card.fewer : w.card.more}`}
            onClick={() => setAll(!all)}
          >
            {all ? w.card.fewer : w.card.more}
          </button>
        ) : null}
        {/^\/(timbers|pours|cuts|hardware|markings)\/\d+$/.test(p.at) ? (
          <button
            type="button"
            class="link"
            aria-label={`${w.card.remove} ${p.name}`}
            onClick={() => remove(p.at, p.name)}
          >
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
