import { hardwareLook } from '../catalogue/look.ts'
import { linearOf } from '../catalogue/pigment-optics.ts'
import { JUST_NOTICED } from '../colour/difference.ts'
import type { CoreInterval } from '../stack/core.ts'
import { coreAt } from '../stack/core.ts'
import type { Stack } from '../stack/stack.ts'
import type { Seen } from './core-colour.ts'
import { HOLLOW_MM, seenBetween } from './core-colour.ts'
import type { HardwareFit } from './hardware.ts'
import type { Looks } from './looks.ts'

/** A part that is cast in, seen from the front. */
export interface PartSeen {
  readonly hardware: number
  readonly pour: number
  /** Of its own pour in front of it, mm. */
  readonly coverMm: number
  readonly seen: Seen
  readonly noticed: boolean
}

/**
 * What parts that are cast in do to the colour of the front: the core at their middle with and without them.
 *
 * A part lies on the floor of its pour as cast, as deep as its body; it looks as its kind does (catalogue/look.ts), or as
 * a dark hollow where that shows more.
 *
 * Limits: its middle speaks for all of it; a part without a place or a depth is left out, and so is what flattening or a
 * later cut takes away of it.
 */
export function partsSeen(stack: Stack, looks: Looks, fits: readonly HardwareFit[]): PartSeen[] {
  return fits.flatMap((fit): PartSeen[] => {
    const { at } = stack.entries.hardware[fit.hardware]!.value
    if (fit.castIn === null || at === undefined || fit.part === null || !(fit.part.depthMm > 0)) return []
    const core = coreAt(stack.geometry, stack.events, fit.x, fit.y)
    const own = core.find(p => p.material.kind === 'pour' && p.material.index === fit.castIn)
    if (own === undefined) return []
    const low = Math.max(own.from, stack.pours[fit.castIn]!.floor)
    // Thinner than a hollow counts as one just as deep: what is seen is its face.
    const high = Math.min(own.to, low + Math.max(fit.part.depthMm, 1.01 * HOLLOW_MM))
    if (!(high > low)) return []
    const parted = core.flatMap((p): CoreInterval[] =>
      p === own
        ? [
            { ...p, to: low },
            { ...p, from: high }
          ].filter(q => q.to > q.from)
        : [p]
    )
    const seen = seenBetween(looks, parted, core, 'front', linearOf(hardwareLook(fit.record.kind)))
    return [
      {
        hardware: fit.hardware,
        pour: fit.castIn,
        coverMm: looks.frontUp ? own.to - high : low - own.from,
        seen,
        noticed: seen.band[1] >= JUST_NOTICED
      }
    ]
  })
}
