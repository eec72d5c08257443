import type { Bands } from '../catalogue/pigment-optics.ts'
import { chromaOf, labOf } from './cielab.ts'
import { difference } from './difference.ts'
import { laidOn, type Optics, outsideBands } from './stacked.ts'

/**
 * Colours poured into each other: from strands of each to the full mixture.
 *
 *   (K, S) of the mixture = Σ share·(K, S) of each
 *   mud: both colours have a hue (chroma at least 15) and the mixture keeps less than half of the lesser chroma
 *
 * Source: coefficients add by volume (Kubelka-Munk; textbook); what counts as mud is common practice put into a number
 * of ours (no source).
 * Check: a colour with itself gives itself; blue and orange lose their chroma where blue and green keep it.
 *
 * Limits: shares by mass are taken as shares by volume (mixes are alike in density). How far strands have mixed is the
 * maker's hand: between the strands and the mixture any colour can come.
 */
export interface Marbled {
  /** Colour of each strand, deep, as seen, linear in light; and of all mixed through. */
  readonly strands: readonly Bands[]
  readonly mixed: Bands
  readonly chroma: readonly number[]
  readonly mixedChroma: number
  /** Greatest difference ΔE00 between strands, and of a strand from the mixture. */
  readonly apart: number
  readonly fromMixed: number
  /** The two strands that turn to mud, by index, with what is left of the lesser chroma, 0..1; null: none do. */
  readonly mud: { readonly pair: readonly [number, number]; readonly left: number } | null
}

/** Less chroma than this is a grey, white or black: it tints and shades, and muddies nothing. */
const HUED = 15
const LEFT = 0.5

/** `shares` sum to anything above 0; `mm` is how deep the pour is looked into; `behind` lies under it (inside, 0..1). */
export function marbled(
  colours: readonly { readonly optics: Optics; readonly share: number }[],
  mm: number,
  behind: Bands
): Marbled {
  const seen = (o: Optics): Bands =>
    outsideBands(
      [0, 1, 2].map(b => laidOn(o.scatterPerMm[b]!, o.absorbPerMm[b]!, mm, behind[b]!)) as unknown as Bands
    )
  const strands = colours.map(c => seen(c.optics))
  const labs = strands.map(labOf)
  const chroma = labs.map(chromaOf)
  const mixed = seen(mixture(colours))
  const mixedLab = labOf(mixed)
  let apart = 0
  let mud: Marbled['mud'] = null
  for (let i = 0; i < labs.length; i++)
    for (let j = 0; j < i; j++) {
      apart = Math.max(apart, difference(labs[i]!, labs[j]!))
      const lesser = Math.min(chroma[i]!, chroma[j]!)
      if (lesser < HUED) continue
      const left = chromaOf(labOf(seen(mixture([colours[j]!, colours[i]!])))) / lesser
      if (left < LEFT && (mud === null || left < mud.left)) mud = { pair: [j, i], left }
    }
  return {
    strands,
    mixed,
    chroma,
    mixedChroma: chromaOf(mixedLab),
    apart,
    fromMixed: Math.max(0, ...labs.map(l => difference(l, mixedLab))),
    mud
  }
}

function mixture(colours: readonly { readonly optics: Optics; readonly share: number }[]): Optics {
  const total = colours.reduce((sum, c) => sum + c.share, 0)
  const sum = (of: (o: Optics) => Bands): Bands =>
    [0, 1, 2].map(b =>
      colours.reduce((t, c) => t + (c.share * of(c.optics)[b]!) / total, 0)
    ) as unknown as Bands
  return { scatterPerMm: sum(o => o.scatterPerMm), absorbPerMm: sum(o => o.absorbPerMm) }
}
