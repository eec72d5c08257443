import { signal } from '@preact/signals'
import { addFile, chosen, edit, piece, view } from '../state/desk.ts'
import { engineAnswer } from '../state/engine.ts'
import { w } from '../text/words.ts'
import type { ToolAnswer, ToolChange } from '../worker/changes.ts'

type Pair = readonly [number, number]

/** What a press on the plan does. */
export type Mode =
  | { readonly kind: 'rest' }
  | { readonly kind: 'place'; readonly what: 'timbers' | 'cuts' | 'hardware' | 'markings' | 'stones' }
  | { readonly kind: 'edge'; readonly top: readonly Pair[] | null; readonly line: readonly Pair[] }

export const mode = signal<Mode>({ kind: 'rest' })
/** What the last tool met; empty when it went well. */
export const toolSays = signal('')

/** Asks the engine to work a tool on the piece in hand. */
export async function askTool(change: ToolChange): Promise<ToolAnswer | null> {
  const at = piece.value
  if (at === null) return null
  const answer = await engineAnswer({ kind: 'tool', document: at.document, files: at.files, change })
  if (piece.value?.document !== at.document) return null
  if (answer.kind === 'tool') return answer.done
  toolSays.value =
    answer.kind === 'failed'
      ? answer.says
      : answer.kind === 'refused'
        ? (answer.problems[0]?.found ?? '')
        : ''
  return null
}

/** Works a tool and makes its patch as one edit. Whether it was done. */
export async function workTool(says: string, change: ToolChange): Promise<boolean> {
  toolSays.value = ''
  const got = await askTool(change)
  if (got === null) return false
  toolSays.value = got.problem ?? got.says.join('; ')
  if (got.problem !== null || got.patch.length === 0) return false
  for (const [name, text] of Object.entries(got.files ?? {}))
    if (piece.value?.files[name] !== text) await addFile(name, text)
  edit(says, got.patch)
  return true
}

const CLIP = 'castwright-clip'

/** Copies an entry, for this piece and others: to the clipboard where the browser allows it, and here. */
export async function copyEntry(at: string): Promise<void> {
  const got = await askTool({ tool: 'copy', at })
  if (got?.text === undefined) return
  let kept = false
  try {
    localStorage.setItem(CLIP, got.text)
    kept = true
  } catch {
    // Storage may be shut off: then the clipboard alone holds it.
  }
  kept =
    (await navigator.clipboard?.writeText(got.text).then(
      () => true,
      () => kept
    )) ?? kept
  toolSays.value = kept ? w.draw.copied(nameOf(at)) : w.draw.notCopied
}

/** Pastes what was copied, here or in another window. */
export async function pasteEntry(text?: string): Promise<void> {
  let clip = text ?? null
  if (clip === null) clip = (await navigator.clipboard?.readText?.().catch(() => null)) ?? null
  if (clip === null || !clip.includes('"castwright"')) {
    try {
      clip = localStorage.getItem(CLIP)
    } catch {
      clip = null
    }
  }
  if (clip === null) {
    toolSays.value = w.draw.nothing
    return
  }
  await workTool(w.draw.pasted, { tool: 'paste', text: clip })
}

export function removeEntry(at: string): void {
  const name = nameOf(at)
  chosen.value = null
  edit(w.removed(name), [{ op: 'remove', path: at }])
}

export function nameOf(at: string): string {
  return view.value?.entries.find(e => e.at === at)?.name ?? at
}

// What a tool said holds until another part is taken in hand.
chosen.subscribe(() => {
  toolSays.value = ''
})
