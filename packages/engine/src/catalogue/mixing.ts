import type { CatalogueRecord } from './record.ts'

/** A way of mixing, as pours name it: its id with a blank for the hyphen. */
type MixingName = 'two cups' | 'one cup' | 'paddle'

/**
 * A generic way of stirring two parts together.
 *
 * Limits: ways, not tools; all figures are common practice without a source, and say so. What is beaten in
 * depends more on the hand than on the way: stir slowly, keep the paddle under.
 */
export interface MixingWay extends CatalogueRecord {
  /** Stirring from the first stroke until the mix is even, min. */
  readonly minutes: number
  /** Air beaten in, share of the mix by volume: careful to careless. */
  readonly airShare: readonly [low: number, high: number]
  /** Bubbles it makes, mm: smallest and largest that matter. */
  readonly bubbleMm: readonly [low: number, high: number]
  /** Turns a second, and width of what turns, mm: what sets the heat of stirring. */
  readonly turnsPerS: number
  readonly widthMm: number
  /** Whether what clings to the wall is mixed in, or left behind by a change of cups. */
  readonly wallMixed: boolean
}

const PRACTICE = 'common practice of casting resin, no published source'

export const MIXING: readonly MixingWay[] = [
  {
    id: 'two-cups',
    name: 'by hand in two cups',
    source: PRACTICE,
    confidence: 'practice',
    note: 'stirred, poured over, stirred again, three minutes in each; the second cup leaves behind what clung to the wall of the first',
    minutes: 6,
    airShare: [0.005, 0.02],
    bubbleMm: [0.1, 3],
    turnsPerS: 1.5,
    widthMm: 20,
    wallMixed: true
  },
  {
    id: 'one-cup',
    name: 'by hand in one cup',
    source: PRACTICE,
    confidence: 'practice',
    note: 'scrape wall and floor while stirring, and do not scrape them into the mould',
    minutes: 4,
    airShare: [0.005, 0.015],
    bubbleMm: [0.1, 3],
    turnsPerS: 1.5,
    widthMm: 20,
    wallMixed: false
  },
  {
    id: 'paddle',
    name: 'with a paddle in a drill',
    source: PRACTICE,
    confidence: 'practice',
    note: 'slow, under the surface, and scraped by hand once in between',
    minutes: 2,
    airShare: [0.02, 0.08],
    bubbleMm: [0.05, 1],
    turnsPerS: 6,
    widthMm: 60,
    wallMixed: true
  }
]

/** The way a pour names. */
export function mixingOf(name: MixingName): MixingWay {
  return MIXING.find(m => m.id === name.replace(' ', '-'))!
}
