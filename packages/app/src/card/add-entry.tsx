import { bounds } from '../../../engine/src/shape/measure.ts'
import { chosen, edit, piece, view } from '../state/desk.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import type { List } from './new-entry.ts'
import { addPatch, entriesOf, newName, timberLike } from './new-entry.ts'

/** Buttons that lay a new entry on the sheet, in the middle of the piece, open to be changed. */
export function AddEntry({ lists }: { readonly lists: readonly List[] }) {
  const document = piece.value?.document
  if (document === undefined) return null
  return (
    <p class="ways add">
      <span class="q">{w.card.add}</span>
      {lists.map(list => (
        <button key={list} type="button" class="link" onClick={() => add(document, list)}>
          {w.card.one[list]}
        </button>
      ))}
    </p>
  )
}

function add(document: Json, list: List): void {
  edit(w.added(w.card.one[list]), addPatch(document, list, startedEntry(document, list)))
  chosen.value = `/${list}/${entriesOf(document, list).length}`
}

/** Sizes begun with are whole tens, mm. */
const ROUND_MM = 10

/** A plain entry of a size that fits the piece: what it is changed to is the maker's. mm. */
export function startedEntry(document: Json, list: List, where?: readonly [number, number]): Json {
  const model = view.value?.model
  const b =
    model === undefined ? { minX: -100, minY: -60, maxX: 100, maxY: 60 } : bounds(model.geometry.outline)
  const [wide, deep] = [b.maxX - b.minX, b.maxY - b.minY]
  const at: [number, number] =
    where === undefined ? [Math.round((b.minX + b.maxX) / 2), Math.round((b.minY + b.maxY) / 2)] : [...where]
  const some = (mm: number) => Math.max(ROUND_MM, Math.round(mm / ROUND_MM) * ROUND_MM)
  const thick = model === undefined ? 20 : model.castHeight
  const resin = entriesOf(document, 'pours')[0]?.['resin'] ?? 'deep'
  switch (list) {
    case 'timbers':
      return {
        id: newName(document, 'timber'),
        ...timberLike(document),
        outline: { rectangle: [some(wide / 4), some(deep / 2)], at }
      }
    case 'pours':
      return {
        id: newName(document, 'pour'),
        resin,
        depth: Math.min(10, Math.max(2, Math.round(thick / 3)))
      }
    case 'cuts':
      return {
        id: newName(document, 'pocket'),
        face: 'back',
        shape: { rectangle: [some(Math.min(60, wide / 3)), some(Math.min(40, deep / 3))], corner: 4, at },
        finishedDepth: Math.max(2, Math.round(thick / 3))
      }
    case 'hardware':
      return { id: newName(document, 'magnet'), kind: 'magnet-disc', at }
    case 'markings':
      return {
        id: newName(document, 'scale'),
        linear: {
          from: [b.minX + wide * 0.1, b.minY + deep * 0.1],
          to: [b.maxX - wide * 0.1, b.minY + deep * 0.1],
          length: 8,
          at: [0, 0.25, 0.5, 0.75, 1]
        },
        filled: [{ pigment: 'black-paste', percent: 3 }]
      }
  }
}
