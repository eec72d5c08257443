import { effect, signal } from '@preact/signals'
import { newId } from '../net/api.ts'
import type { BenchView } from '../worker/bench-view.ts'
import type { Json } from '../worker/document.ts'
import { momentAt } from './clock.ts'
import { askedOnce, deskFacts } from './desk-ask.ts'
import { probe } from './rescue.ts'
import { record } from './sending.ts'

/** The steps of the piece on the desk as the bench shows them. */
export const bench = signal<BenchView | null>(null)
export const benchFailure = signal<string | null>(null)
/** Key of the step that is looked at; null: the one that is to be done. */
export const looked = signal<string | null>(null)
/** What was recorded last, so that it can be taken back. */
export const lastRecord = signal<{ readonly id: string; readonly says: string; readonly ms: number } | null>(
  null
)

/** Readings that a rescue may be found from. */
const MEASURED = [
  'height',
  'thickness',
  'flatness',
  'temperature',
  'stage',
  'film',
  'size',
  'water test',
  'poured',
  'note'
]

/** Keeps the steps those of what is on the desk, until it is told to stop. */
export function watchBench(): () => void {
  const ask = askedOnce(benchFailure)
  const end = effect(() => {
    const facts = deskFacts()
    if (facts === null) return
    ask(JSON.stringify(facts), { kind: 'bench', ...facts, asOf: new Date().toISOString() }, answer => {
      if (answer.kind === 'bench') bench.value = answer.view
    })
  })
  return () => {
    end()
    bench.value = null
    benchFailure.value = null
    looked.value = null
    lastRecord.value = null
  }
}

/** Records something measured or done now. */
export function take(what: Json, says: string): void {
  const id = newId()
  const ms = Date.now()
  lastRecord.value = { id, says, ms }
  void record({ ...what, id, at: momentAt(ms) })
  // A number may break the plan: then the ways on appear by themselves.
  if (MEASURED.includes(String(what['kind']))) void probe(id)
}

/** Takes back what was recorded last: both stay on record, neither counts. */
export function takeBack(): void {
  const last = lastRecord.value
  if (last === null) return
  lastRecord.value = null
  void record({ kind: 'withdrawn', reading: last.id, id: newId(), at: momentAt(Date.now()) })
}
