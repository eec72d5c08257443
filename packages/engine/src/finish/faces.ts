import type { Materials } from '../cast/facts.ts'
import type { CoatRecord } from '../catalogue/coat.ts'
import type { Face } from '../piece/piece-schema.ts'
import { area, perimeter } from '../shape/measure.ts'
import type { Stack } from '../stack/stack.ts'
import { finishedThickness } from '../stack/stack.ts'

/** The finish of one face. */
export interface FaceFinish {
  readonly face: Face
  readonly coat: CoatRecord | null
  readonly coats: number
  readonly grit: number | null
  /** Dry film of all coats, mm: low, middle, high. */
  readonly filmMm: readonly [low: number, middle: number, high: number]
  /** Area of the face, half of the edge included, m². */
  readonly areaM2: number
  /** What to have of it, ml: wet film over the area, over the transfer, all coats. */
  readonly needMl: number
}

/** Finish of both faces. */
export function facesOf(stack: Stack, materials: Materials): readonly [front: FaceFinish, back: FaceFinish] {
  const one = (face: Face): FaceFinish => {
    const document = stack.piece.finish[face] ?? stack.piece.finish.both
    const coat = materials.coats[face]
    const areaM2 =
      (area(stack.geometry.outline) + (perimeter(stack.geometry.outline) * finishedThickness(stack)) / 2) /
      1e6
    if (coat === null)
      return { face, coat, coats: 0, grit: document?.grit ?? null, filmMm: [0, 0, 0], areaM2, needMl: 0 }
    const coats = document?.coats ?? Math.round((coat.coats[0] + coat.coats[1]) / 2)
    const film = document?.film
    const dry: FaceFinish['filmMm'] =
      film !== undefined
        ? [film, film, film]
        : [
            (coats * coat.dryFilmUm[0]) / 1000,
            (coats * (coat.dryFilmUm[0] + coat.dryFilmUm[1])) / 2000,
            (coats * coat.dryFilmUm[1]) / 1000
          ]
    // 1 µm over 1 m² is 1 ml; the thicker film and the poorer transfer, so that it does not run out.
    const wetUm = coat.wetFilmUm?.[1] ?? coat.dryFilmUm[1]
    return {
      face,
      coat,
      coats,
      grit: document?.grit ?? coat.lastGrit[1],
      filmMm: dry,
      areaM2,
      needMl: (areaM2 * wetUm * coats) / Math.max(0.05, coat.transfer[0])
    }
  }
  return [one('front'), one('back')]
}
