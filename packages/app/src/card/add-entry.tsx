import { bounds } from '../../../engine/src/shape/measure.ts'
import { chosen, edit, piece, view } from '../state/desk.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/messages.ts'

export type List = 'timbers' | 'pours' | 'cuts' | 'hardware' | 'markings'

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
  const entries = (document[list] ?? []) as Json[]
  const value = startedEntry(document, list)
  edit(w.added(w.card.one[list]), [
    document[list] === undefined
      ? { op: 'add', path: `/${list}`, value: [value] }
      : { op: 'add', path: `/${list}/-`, value }
  ])
  chosen.value = `/${list}/${entries.length}`
}

const ROUND_MM = 10

// A plain entry of a size that fits the piece: what it is changed to is the maker's.
export function startedEntry(document: Json, list: List, where?: readonly [number, number]): Json {
  const model = view.value?.model
  const b =
    model === undefined ? { minX: -100, minY: -60, maxX: 100, maxY: 60 } : bounds(model.geometry.outline)
  const [wide, deep] = [b.maxX - b.minX, b.maxY - b.minY]
  const at: [number, number] =
    where === undefined ? [Math.round((b.minX + b.maxX) / 2), Math.round((b.minY + b.maxY) / 2)] : [...where]
  const some = (mm: number) => Math.max(ROUND_MM, Math.round(mm / ROUND_MM) * ROUND_MM)
  const thick = model === undefined ? 20 : model.castHeight
  const first = ((document['timbers'] ?? []) as Json[])[0]
  const resin = ((document['pours'] ?? []) as Json[])[0]?.['resin'] ?? 'deep'
  switch (list) {
    case 'timbers':
      return {
        id: fresh(document, list, 'timber'),
        species: first?.['species'] ?? 'ash-white',
        outline: { rectangle: [some(wide / 4), some(deep / 2)], at },
        thickness: first?.['thickness'] ?? Math.round(thick),
        moisture: first?.['moisture'] ?? 8.5
      }
    case 'pours':
      return {
        id: fresh(document, list, 'pour'),
        resin,
        depth: Math.min(10, Math.max(2, Math.round(thick / 3)))
      }
    case 'cuts':
      return {
        id: fresh(document, list, 'pocket'),
        face: 'back',
        shape: { rectangle: [some(Math.min(60, wide / 3)), some(Math.min(40, deep / 3))], corner: 4, at },
        finishedDepth: Math.max(2, Math.round(thick / 3))
      }
    case 'hardware':
      return { id: fresh(document, list, 'magnet'), kind: 'magnet-disc', at }
    case 'markings':
      return {
        id: fresh(document, list, 'scale'),
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

/** A name that no entry of the piece has yet. */
function fresh(document: Json, list: List, word: string): string {
  const used = new Set(
    (['timbers', 'pours', 'cuts', 'hardware', 'markings'] as const).flatMap(l =>
      ((document[l] ?? []) as Json[]).map(e => e['id'])
    )
  )
  for (let n = ((document[list] ?? []) as Json[]).length + 1; ; n++)
    if (!used.has(`${word} ${n}`)) return `${word} ${n}`
}
