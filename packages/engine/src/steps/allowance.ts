import type { Face, Piece } from '../piece/piece-schema.ts'
import { pourFace } from './step.ts'

/** What sanding takes off after lines or an inlay are filled, mm: 0.3 (common practice). */
export const SANDED_AFTER_FILL_MM = 0.3

/** What the cutter takes off a face: the allowance less what sanding takes later, mm. */
export function flattenBy(piece: Piece, face: Face): number {
  return piece.flatten[face] - sandBy(piece, face)
}

/** What sanding takes of the allowance of a face, after lines and inlays in it are filled, mm. */
export function sandBy(piece: Piece, face: Face): number {
  const lines = piece.markings
    .filter(m => m.face === face && (m.filled !== undefined || m.sandedAfter !== undefined))
    .map(m => m.sandedAfter ?? SANDED_AFTER_FILL_MM)
  const inlays = piece.pours
    .filter(p => p.kind === 'inlay' && pourFace(p, piece) === face)
    .map(() => SANDED_AFTER_FILL_MM)
  return Math.min(piece.flatten[face], Math.max(0, ...lines, ...inlays))
}
