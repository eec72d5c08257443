import type { AbrasiveRecord } from '../catalogue/abrasive.ts'
import { PASTES } from '../coat/grain.ts'
import type { FaceFinish } from '../finish/faces.ts'
import { add } from './needs.ts'

/** Paste that a square metre takes, ml (practice: a walnut of it a patch of half a metre square, twice). */
const PASTE_ML_PER_M2 = 20

/** Discs of each grade, not rounded, and pastes, ml: of both faces and what is sanded under floods, all blanks. */
export function abrasiveNeeds(
  faces: readonly FaceFinish[],
  blanks: number
): { readonly discs: Map<AbrasiveRecord, number>; readonly pastes: Map<AbrasiveRecord, number> } {
  const discs = new Map<AbrasiveRecord, number>()
  const pastes = new Map<AbrasiveRecord, number>()
  for (const f of faces) {
    const ladders = [
      ...f.floods.flatMap(flood => (flood.under === null ? [] : [flood.under.ladder])),
      ...(f.sanding === null ? [] : [f.sanding.ladder])
    ]
    for (const s of ladders.flatMap(l => l.steps)) add(discs, s.grade, s.discs * blanks)
    for (const um of f.sanding?.pastesUm ?? []) {
      const paste = PASTES.find(p => p.grainUm === um)
      if (paste !== undefined) add(pastes, paste, f.areaM2 * PASTE_ML_PER_M2 * blanks)
    }
  }
  return { discs: new Map([...discs].sort(([a], [b]) => (a.grit ?? 0) - (b.grit ?? 0))), pastes }
}
