import type { Measured } from './across.ts'
import type { SizeChain } from './chain.ts'
import type { HardwareFit } from './hardware.ts'
import type { Band } from './share.ts'

/** A cut's width through the build, mm. */
export interface CutSize {
  readonly measured: Measured
  /** As drawn: what the drawing cuts. */
  readonly drawnMm: number
  /** What to cut on the day so that its part ends with the gap wanted; without a part, as drawn. */
  readonly cutMm: number
  /** What it ends at, cut as drawn. */
  readonly finalMm: Band
  /** Depth it ends at, from the face with its coats; null right through. */
  readonly depthMm: Band | null
  readonly coats: number
}

/** The size of one cut, from the chains and the parts in them; null for a cut without a chain. */
export function cutSize(
  work: { readonly chains: readonly SizeChain[]; readonly fits: readonly HardwareFit[] },
  cut: number
): CutSize | null {
  const chain = work.chains.find(c => c.of === 'cut' && c.index === cut)
  if (chain === undefined) return null
  const fit = work.fits.find(f => f.chain === chain && f.cutMm !== null)
  const { measured, drawnMm, finalMm, depthMm, coats } = chain
  return { measured, drawnMm, cutMm: fit?.cutMm ?? drawnMm, finalMm, depthMm, coats }
}
