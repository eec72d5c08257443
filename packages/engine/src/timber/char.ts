import { inRange } from '../quantity/range.ts'

/**
 * How deep a flame chars timber.
 *
 *   depth = β·t                           β  charring rate, mm/min    t  time under the flame, min
 *   panels: β = β_0·√(450/ρ)·max(1, √(20/h))
 *   layer without strength under the char: 7 mm·min(1, t/20 min)
 *
 * Source: EN 1995-1-2:2004, Table 3.1 and clause 4.2.2 (memory, but the rates of laminated veneer lumber and
 * the 7 mm layer, which were read in a worked example; a 2025 edition exists and may differ). The char front
 * is the 300 °C isotherm (read). Hardwood between 290 and 450 kg/m³ is interpolated, as the standard asks.
 * Check: softwood 30 min: 19.5 mm one-dimensional; 30 s: 0.33 mm.
 *
 * Limits: the rates are for a standard furnace fire on a large piece. A hand torch for looks is neither: 30 s
 * give about 0.3 mm at full fire intensity, while practice reports {@link DECORATIVE_CHAR_MM}. Use the depth
 * only as what must be brushed off and sealed before resin can hold. Nothing here says how a piece behaves in
 * a fire.
 */

/** Depth of decorative charring, mm (practice; memory). */
export const DECORATIVE_CHAR_MM = { low: 0.5, high: 3 }

export type CharringKind =
  | 'softwood'
  | 'glulam'
  | 'hardwood'
  | 'laminated veneer'
  | 'panelling'
  | 'plywood'
  | 'board'

interface CharRow {
  /** One-dimensional and notional (corners, fissures) rate, mm/min; panels have the first only. */
  readonly oneDimensional: number
  readonly notional: number | null
  readonly leastKgM3: number
}

const ROWS: Readonly<Record<CharringKind, CharRow>> = {
  softwood: { oneDimensional: 0.65, notional: 0.8, leastKgM3: 290 },
  glulam: { oneDimensional: 0.65, notional: 0.7, leastKgM3: 290 },
  hardwood: { oneDimensional: 0.65, notional: 0.7, leastKgM3: 290 },
  'laminated veneer': { oneDimensional: 0.65, notional: 0.7, leastKgM3: 480 },
  panelling: { oneDimensional: 0.9, notional: null, leastKgM3: 200 },
  plywood: { oneDimensional: 1, notional: null, leastKgM3: 200 },
  board: { oneDimensional: 0.9, notional: null, leastKgM3: 200 }
}

/** Hardwood of 450 kg/m³ and more chars slower: one-dimensional and notional rate, mm/min. */
const DENSE_HARDWOOD = { fromKgM3: 450, oneDimensional: 0.5, notional: 0.55 }

/**
 * Charring rate, mm/min.
 *
 * @param kind what is charred; beech counts as softwood (the table lists it there)
 * @param densityKgM3 the row's least density (290; 480 laminated veneer; 200 panels) to 1500
 * @param thicknessMm of a panel, 3..200; others ignore it
 * @param rate one-dimensional (a wide flat face) or notional (rounded corners and fissures included)
 * @throws RangeError for a density below the row's, or a notional rate of a panel
 */
export function charringRateMmPerMin(
  kind: CharringKind,
  densityKgM3: number,
  thicknessMm = 20,
  rate: 'one-dimensional' | 'notional' = 'one-dimensional'
): number {
  const row = ROWS[kind]
  inRange(`density of ${kind}`, densityKgM3, row.leastKgM3, 1500, 'kg/m³')
  const wanted = rate === 'notional' ? row.notional : row.oneDimensional
  if (wanted === null) throw new RangeError(`no notional charring rate is tabulated for ${kind}`)
  if (kind === 'hardwood') {
    const dense = rate === 'notional' ? DENSE_HARDWOOD.notional : DENSE_HARDWOOD.oneDimensional
    const part = Math.min(1, (densityKgM3 - row.leastKgM3) / (DENSE_HARDWOOD.fromKgM3 - row.leastKgM3))
    return wanted + (dense - wanted) * part
  }
  if (row.notional !== null) return wanted
  inRange('thickness of the panel', thicknessMm, 3, 200, 'mm')
  return wanted * Math.sqrt(450 / densityKgM3) * Math.max(1, Math.sqrt(20 / thicknessMm))
}

/** Char depth after `timeMin` (0..240 min) at a rate, mm. */
export function charDepthMm(rateMmPerMin: number, timeMin: number): number {
  inRange('charring rate', rateMmPerMin, 0, 5, 'mm/min')
  inRange('time under the flame', timeMin, 0, 240, 'min')
  return rateMmPerMin * timeMin
}

/** Layer under the char that counts as without strength, mm: 7 mm from 20 min on, in proportion before. */
export function weakLayerMm(timeMin: number): number {
  inRange('time under the flame', timeMin, 0, 240, 'min')
  return 7 * Math.min(1, timeMin / 20)
}

/**
 * What decorative charring leaves to brush and seal, mm. Low end: the lesser of the furnace rate over the
 * seconds of flame and practice's least; high end: the greater of that rate and practice's most.
 */
export function decorativeCharMm(
  flameS: number,
  densityKgM3: number,
  kind: 'softwood' | 'hardwood'
): { readonly lowMm: number; readonly highMm: number } {
  inRange('time under the flame', flameS, 0, 3600, 's')
  const byRate = charDepthMm(charringRateMmPerMin(kind, densityKgM3), flameS / 60)
  if (flameS === 0) return { lowMm: 0, highMm: 0 }
  return {
    lowMm: Math.min(byRate, DECORATIVE_CHAR_MM.low),
    highMm: Math.max(byRate, DECORATIVE_CHAR_MM.high)
  }
}
