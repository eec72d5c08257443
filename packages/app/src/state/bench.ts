import { effect, signal } from '@preact/signals'
import { newId } from '../net/api.ts'
import type { BenchView } from '../worker/bench-view.ts'
import type { Json } from '../worker/document.ts'
import { momentAt } from './clock.ts'
import { askEngine } from './engine.ts'
import { piece } from './open-piece.ts'
import { probe } from './rescue.ts'
import { record } from './sending.ts'
import { shop } from './shop.ts'

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
  'poured'
]

/** Keeps the steps those of what is on the desk, until it is told to stop. */
export function watchBench(): () => void {
  let made = ''
  let asked = 0
  const end = effect(() => {
    const at = piece.value
    const document = shop.value?.document ?? null
    if (at === null) return
    const key = JSON.stringify([at.document, document, at.readings, at.files])
    if (key === made) return
    made = key
    const { files, readings = [] } = at
    asked = askEngine(
      {
        kind: 'bench',
        document: at.document,
        files,
        readings,
        shop: document,
        asOf: new Date().toISOString()
      },
      answer => {
        if (answer.seq !== asked) return
        if (answer.kind === 'bench') {
          bench.value = answer.view
          benchFailure.value = null
        } else {
          made = ''
          benchFailure.value =
            answer.kind === 'failed'
              ? answer.says
              : answer.kind === 'refused'
                ? answer.problems.map(p => `${p.path}: ${p.found}; ${p.allowed}`).join('\n')
                : null
        }
      }
    )
  })
  return () => {
    end()
    bench.value = null
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
