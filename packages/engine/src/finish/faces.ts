import type { PourCast } from '../cast/cast.ts'
import type { Materials } from '../cast/facts.ts'
import type { CoatRecord } from '../catalogue/coat.ts'
import { latest } from '../cuts/pins/thickness-read.ts'
import type { Face } from '../piece/piece-schema.ts'
import type { Reading } from '../piece/reading-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { area, perimeter } from '../shape/measure.ts'
import type { Stack } from '../stack/stack.ts'
import { finishedThickness } from '../stack/stack.ts'
import type { Coating } from './coating.ts'
import { coatingOf } from './coating.ts'
import type { Flood } from './flood.ts'
import { floodCoat, floodPours } from './flood.ts'
import type { FaceGloss } from './gloss.ts'
import { glossOf } from './gloss.ts'
import type { FaceSanding } from './sanding.ts'
import { sandingOf } from './sanding.ts'

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
  /** Null where neither document nor coat asks for sanding. */
  readonly sanding: FaceSanding | null
  /** Null without a coat. */
  readonly coating: Coating | null
  /** Coats that level themselves: floods among the pours, then the coat of the finish if it is one. */
  readonly floods: readonly Flood[]
  readonly gloss: FaceGloss
  /** It meets food. */
  readonly food: boolean
}

/** What the finish of both faces follows from. */
export interface FacesInput {
  readonly stack: Stack
  readonly materials: Materials
  readonly shop: Shop
  readonly readings: readonly Reading[]
  readonly casts: readonly (PourCast | null)[]
}

/**
 * Finish of both faces.
 *
 *   ml = area in m² × wet film of all coats in µm / transfer          (1 µm over 1 m² is 1 ml)
 *
 * A coat that is brushed, wiped or sprayed covers half of the edge with each face and is taken at its thicker
 * film, so that it does not run out. A flood coat stands on the face alone, as deep as it is poured: the
 * middle of its range, one coat unless the piece says more. A film that the piece gives is laid wet at film
 * over volume solids; oils sink in, theirs tells nothing of what they take. Sanding goes over the face and half of
 * the edge, whatever the coat.
 * Source: geometry; films, solids, transfer of the catalogue (practice); models of coat/.
 * Check: a flood of 2.6 mm on 0.0682 m² at 0.9 takes 197 ml.
 */
export function facesOf(input: FacesInput): readonly [front: FaceFinish, back: FaceFinish] {
  const { stack, materials, shop } = input
  const { piece } = stack
  const faceM2 = area(stack.geometry.outline) / 1e6
  // A piece of which flattening leaves nothing has no edge; a finding says so.
  const edgeM2 = (perimeter(stack.geometry.outline) * Math.max(0, finishedThickness(stack))) / 1e6
  const one = (face: Face): FaceFinish => {
    const document = piece.finish[face] ?? piece.finish.both
    const coat = materials.coats[face]
    const flood = coat?.kind === 'flood'
    const areaM2 = flood ? faceM2 : faceM2 + edgeM2 / 2
    const sanding = sandingOf(stack, shop, face, document, coat, faceM2 + edgeM2 / 2)
    const coats =
      coat === null
        ? 0
        : (document?.coats ?? (flood ? coat.coats[0] : Math.round((coat.coats[0] + coat.coats[1]) / 2)))
    const film = document?.film
    const coating = coat === null ? null : coatingOf(coat, coats, film, areaM2)
    const poured = coat === null ? null : floodCoat(input, face, document, coat, coating!.wetUm)
    const given = document?.grits?.[document.grits.length - 1] ?? document?.grit
    return {
      face,
      coat,
      coats,
      grit: given ?? sanding?.last.grit ?? null,
      filmMm: coat === null ? [0, 0, 0] : filmOf(coat, coats, filmRead(input.readings, face) ?? film),
      areaM2,
      needMl: coats * (coating?.eachMl ?? 0),
      sanding,
      coating,
      floods: [...floodPours(input, face), ...(poured === null ? [] : [poured])],
      gloss: glossOf(document?.gloss ?? null, coat, sanding),
      food: piece.food === face || piece.food === 'both'
    }
  }
  return [one('front'), one('back')]
}

// The last film that was measured on a face stands in the place of what its coats build.
function filmRead(readings: readonly Reading[], face: Face): number | undefined {
  const last = latest(readings.flatMap(r => (r.kind === 'film' && r.face === face ? [r] : [])))
  return last?.film
}

function filmOf(coat: CoatRecord, coats: number, film: number | undefined): FaceFinish['filmMm'] {
  if (film !== undefined) return [film, film, film]
  const [low, high] = coat.dryFilmUm
  return [(coats * low) / 1000, (coats * (low + high)) / 2000, (coats * high) / 1000]
}
