import { effect, signal } from '@preact/signals'
import type { ShapeDocument } from '../../../engine/src/piece/shape-field.ts'
import { at as valueAt } from '../card/document-place.ts'
import { chosen, piece, view } from '../state/desk.ts'
import type { ToolAnswer } from '../worker/changes.ts'
import type { Json } from '../worker/document.ts'
import { askTool } from './tools.ts'

/** The part in hand as it stands in the document: its frame, handles and points. */
export interface Held extends Required<Pick<ToolAnswer, 'frame' | 'handles' | 'vertices'>> {
  readonly at: string
  readonly shape: ShapeDocument
}

/** Set while a part with an outline is in hand; what it was stays until what it is has been read. */
export const held = signal<Held | null>(null)
/** Whether the hand sizes the part, or works on its points. */
export const grip = signal<'size' | 'points'>('size')
/** The point of the outline in hand. */
export const point = signal<{ readonly ring: number; readonly index: number } | null>(null)

effect(() => {
  const at = chosen.value
  const document = piece.value?.document
  // A drawing that came later can make a shape readable.
  void view.value
  const known = held.peek()
  if (known !== null && known.at !== at) held.value = null
  if (at === null || document === undefined || !/^\/(timbers|cuts)\/\d+$/.test(at)) {
    held.value = null
    return
  }
  const shape = (valueAt(document, at) as Json | undefined)?.[
    at.startsWith('/timbers') ? 'outline' : 'shape'
  ] as ShapeDocument | undefined
  if (shape === undefined) return
  void askTool({ tool: 'handles', at }).then(got => {
    const { frame, handles, vertices } = got ?? {}
    if (frame === undefined || handles === undefined || vertices === undefined) return
    if (chosen.peek() === at) held.value = { at, shape, frame, handles, vertices }
  })
})

// Another part is taken hold of by its sides first.
chosen.subscribe(() => {
  grip.value = 'size'
  point.value = null
})
