import type { CoatRecord } from '../catalogue/coat.ts'
import type { GlossWord } from '../coat/gloss.ts'
import { GLOSS_BANDS, glossWords, rubbedGloss } from '../coat/gloss.ts'
import type { FaceSanding } from './sanding.ts'

/** How a face shines. */
export interface FaceGloss {
  /** What the document asks for; null: nothing. */
  readonly wanted: GlossWord | null
  /** What its coat or its rubbing reaches, units at 60°. */
  readonly low: number
  readonly high: number
  readonly words: readonly GlossWord[]
  /** Whether the coat or the rubbing alone makes it: a coat can be had in the gloss that is wanted. */
  readonly by: 'coat' | 'rubbing'
}

/** Bare timber, units: however fine it is sanded (practice). */
const BARE_TIMBER = [0, 15] as const

/**
 * Gloss that a face reaches: its coat's range, or without a film that of the last grain on resin. Wax keeps what
 * resin was rubbed to.
 * Source: ranges of the catalogue and of coat/gloss (practice).
 */
export function glossOf(
  wanted: GlossWord | null,
  coat: CoatRecord | null,
  sanding: FaceSanding | null
): FaceGloss {
  const rubbed = (coat === null || coat.id === 'wax') && sanding !== null && sanding.shown.includes('resin')
  const [low, high] = rubbed ? rubbedGloss(lastGrainUm(sanding)) : (coat?.gloss60 ?? BARE_TIMBER)
  return { wanted, low, high, words: glossWords(low, high), by: rubbed ? 'rubbing' : 'coat' }
}

/** From this gloss on scratches show that a duller face hides, units: where satin ends. */
const BRIGHT = GLOSS_BANDS.gloss[0]

/** Whether a face comes out so bright that scratches show: by what is wanted, if it is reached, else by its coat. */
export function showsScratches({ wanted, words, low }: FaceGloss): boolean {
  if (wanted !== null && words.includes(wanted)) return GLOSS_BANDS[wanted][0] >= BRIGHT
  return low >= BRIGHT
}

function lastGrainUm({ last, pastesUm }: FaceSanding): number {
  return pastesUm[pastesUm.length - 1] ?? last.grainUm
}
