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
  /** Area it goes on, m²: the face, and half of the edge unless it is a flood coat. */
  readonly areaM2: number
  /** What to have of it, ml: wet film over the area, over the transfer, all coats. */
  readonly needMl: number
}

/**
 * Finish of both faces.
 *
 *   ml = area in m² × wet film of all coats in µm / transfer          (1 µm over 1 m² is 1 ml)
 *
 * A coat that is brushed, wiped or sprayed covers half of the edge with each face and is taken at its thicker
 * film, so that it does not run out. A flood coat stands on the face alone, as deep as it is poured: the
 * middle of its range, one coat unless the piece says more. A film that the piece gives is laid wet at film
 * over volume solids; oils sink in, theirs tells nothing of what they take.
 * Source: geometry; films, solids, transfer of the catalogue (practice).
 * Check: a flood of 2.6 mm on 0.0682 m² at 0.9 takes 197 ml.
 */
export function facesOf(stack: Stack, materials: Materials): readonly [front: FaceFinish, back: FaceFinish] {
  const faceM2 = area(stack.geometry.outline) / 1e6
  const edgeM2 = (perimeter(stack.geometry.outline) * finishedThickness(stack)) / 1e6
  const one = (face: Face): FaceFinish => {
    const document = stack.piece.finish[face] ?? stack.piece.finish.both
    const coat = materials.coats[face]
    const grit = document?.grit ?? null
    const flood = coat?.kind === 'flood'
    const areaM2 = flood ? faceM2 : faceM2 + edgeM2 / 2
    if (coat === null) return { face, coat, coats: 0, grit, filmMm: [0, 0, 0], areaM2, needMl: 0 }
    const coats = document?.coats ?? (flood ? coat.coats[0] : Math.round((coat.coats[0] + coat.coats[1]) / 2))
    const film = document?.film
    const [low, high] = coat.dryFilmUm
    return {
      face,
      coat,
      coats,
      grit: grit ?? coat.lastGrit[1],
      filmMm:
        film !== undefined
          ? [film, film, film]
          : [(coats * low) / 1000, (coats * (low + high)) / 2000, (coats * high) / 1000],
      areaM2,
      needMl: (areaM2 * wetUm(coat, coats, film)) / Math.max(0.05, coat.transfer[0])
    }
  }
  return [one('front'), one('back')]
}

/** Wet film of all coats, µm; `filmMm` is the dry film that the piece asks for. */
function wetUm(coat: CoatRecord, coats: number, filmMm: number | undefined): number {
  if (filmMm !== undefined && coat.kind !== 'penetrating') {
    // The poorer solids, so that it does not run out.
    return (1000 * filmMm) / ((coat.solidsPct?.[0] ?? 100) / 100)
  }
  const [low, high] = coat.wetFilmUm ?? coat.dryFilmUm
  return coats * (coat.kind === 'flood' ? (low + high) / 2 : high)
}
