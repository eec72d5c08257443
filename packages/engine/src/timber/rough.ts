import { inRange } from '../quantity/range.ts'

/**
 * What planing a board flat takes off its thickness: the flat board that lies inside the crooked one.
 *
 *   loss = cup + bow + twist/2
 *
 *   cup, bow  hollow across and along the board, greatest gap under a straightedge, mm
 *   twist     what one corner stands off a flat table while the other three lie on it, mm
 *
 * A crooked board of even thickness t lies between two copies of one surface z(x, y); the flat board inside it is as
 * thick as t less the span of z. A hollow of depth f spans f. A twist is z = 4·c·xy/(L·W) with c at the corners: three
 * corners on the table lift the fourth by 4·c, and z spans 2·c, half of that: shim the board evenly at two corners.
 * Spans add at most.
 *
 * Source: geometry (derived). Check: brute force over a grid (test).
 *
 * Limits: the surfaces are taken as those three shapes; kinks and hollows beside them are not. Laid on the table without
 * shims a twisted board loses up to twice as much of the first face.
 */
export interface Crooked {
  readonly cupMm: number
  readonly bowMm: number
  readonly twistMm: number
}

/** Thickness lost to flatness, mm, and what each of the three takes. */
export function flatnessLoss({ cupMm, bowMm, twistMm }: Crooked): {
  readonly cupMm: number
  readonly bowMm: number
  readonly twistMm: number
  readonly allMm: number
} {
  inRange('cup', cupMm, 0, 100, 'mm')
  inRange('bow', bowMm, 0, 200, 'mm')
  inRange('twist', twistMm, 0, 200, 'mm')
  const twist = twistMm / 2
  return { cupMm, bowMm, twistMm: twist, allMm: cupMm + bowMm + twist }
}
