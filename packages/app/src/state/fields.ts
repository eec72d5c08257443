import { signal } from '@preact/signals'
import type { FieldTable } from '../worker/field-table.ts'
import { engineAnswer } from './engine.ts'

/** The fields of every kind of entry; null until they are asked for. */
export const fields = signal<FieldTable | null>(null)
let asked = false

export function readFields(): void {
  if (asked) return
  asked = true
  void engineAnswer({ kind: 'fields' }).then(answer => {
    if (answer.kind === 'fields') fields.value = answer.fields
    else asked = false
  })
}
