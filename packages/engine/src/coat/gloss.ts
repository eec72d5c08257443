import { inRange } from '../quantity/range.ts'

/**
 * Gloss in words and figures.
 *
 *   gloss = 100 × light thrown back like a mirror, over that of black glass of index 1.567 at 587.6 nm
 *
 * Geometry: 60° in general; 20° when the 60° value is above 70; 85° when it is below 10.
 *
 * Source: ISO 2813:2014 (definition, read in an excerpt); ASTM D523 (choice of geometry, read). Bands of the words
 * at 60°: usage of wood finishing, no published source; EN 13300 for wall paints has its own (memory): matt below
 * 10 at 85°, dead matt below 5, mid sheen below 60 at 60°.
 * Check: no coat of the catalogue is brighter than a smooth film by Fresnel's equations (test).
 *
 * Limits: figures of a flat even face. The words on tins are not bound to any figure.
 */
export type GlossWord = 'matt' | 'satin' | 'gloss' | 'polished'

/** Bands at 60°, gloss units, without gaps: matt to 18, satin to 45, gloss to 85, polished beyond (practice). */
export const GLOSS_BANDS: Readonly<Record<GlossWord, readonly [low: number, high: number]>> = {
  matt: [0, 18],
  satin: [18, 45],
  gloss: [45, 85],
  polished: [85, 100]
}

/** The words, dull to bright. */
const GLOSS_WORDS = ['matt', 'satin', 'gloss', 'polished'] as const

/**
 * Gloss that a face without a film is rubbed to, by the grain of the last abrasive, units: matt down to P400, satin
 * to P1200, gloss to P2500; a paste of 3 µm and finer polishes (practice; above 85 a roughness below about 0.1 µm).
 */
const RUBBED: readonly (readonly [grainUm: number, word: GlossWord, grit: number])[] = [
  [30, 'matt', 400],
  [14, 'satin', 1200],
  [4, 'gloss', 2500],
  [0, 'polished', 2500]
]

/** Gloss of bare resin rubbed with a grain last, units. */
export function rubbedGloss(grainUm: number): readonly [low: number, high: number] {
  inRange('grain', grainUm, 0.1, 2000, 'µm')
  return GLOSS_BANDS[RUBBED.find(([from]) => grainUm >= from)![1]]
}

/** The last grade of paper to rub bare resin to a gloss; for polished, pastes follow. */
export function rubTo(word: GlossWord): number {
  return RUBBED.find(([, w]) => w === word)![2]
}

/** The words that a range of gloss touches, dull to bright. */
export function glossWords(low: number, high: number): readonly GlossWord[] {
  return GLOSS_WORDS.filter(w => {
    const [from, to] = GLOSS_BANDS[w]
    return high > from && low < to
  })
}

/** Angle at which to read it, degrees, from the value at 60°. */
export function readAtDeg(gu60: number): 20 | 60 | 85 {
  if (gu60 > 70) return 20
  return gu60 < 10 ? 85 : 60
}
