import { find } from '../catalogue/find.ts'
import type { ResinChoice } from '../piece/resin-choice.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { figureLines } from '../stack/figure-lines.ts'
import type { Stack } from '../stack/stack.ts'
import { leastWeighedG } from './batches.ts'
import type { Materials, TintPigment } from './facts.ts'

/** What a filled marking takes: for the run sheet, and for the buy list. */
export interface Fill {
  readonly resin: ResinChoice
  readonly tint: readonly TintPigment[]
  readonly linesMl: number
  /** Mass mixed, tint inside it, g. */
  readonly mixedG: number
}

/** Steps of the scale that a fill's pigment takes at least: half a step in three is 17 %, which no eye tells in a line. */
const FILL_STEPS = 3
/** More than this is not mixed for a fill only to weigh its pigment better, g (practice: a small cup). */
const MOST_FILL_G = 50

/**
 * The mix for a filled marking: what its lines hold and as much again, at least what the scale weighs within
 * 5 % of ratio. A line of depth d by a V of included angle φ holds d²·tan(φ/2) for its length (geometry).
 *
 * Limits: numerals of outlines are not counted, and ends and crossings of lines are counted twice; as much again is
 * meant to cover them and the scraping.
 */
export function fillOfMarking(stack: Stack, materials: Materials, shop: Shop, marking: number): Fill {
  const document = stack.piece.markings[marking]!
  const resin = materials.markingResins[marking]!
  const depth = stack.markings[marking]!.day ?? 0
  const lines = [...stack.geometry.markingLines[marking]!, ...figureLines(document)]
  const long = lines.reduce((sum, line) => sum + lengthOf(line), 0)
  const linesMl = (long * depth * depth * Math.tan((document.angle * Math.PI) / 360)) / 1000
  const tint = materials.markingTints[marking]!
  const scantest = Math.max(0, ...tint.map(t => (FILL_STEPS * shop.scale.resolution) / t.share))
  const mixedG = Math.max(
    2 * linesMl * resin.densityGMl,
    leastWeighedG(resin, tint, shop),
    Math.min(scantest, MOST_FILL_G)
  )
  return { resin, tint, linesMl, mixedG }
}

/** Pigments by the words of a piece that was looked up already. @throws Error for one that was not */
export function tintOf(
  parts: readonly { readonly pigment: string; readonly percent: number }[]
): TintPigment[] {
  return parts.map((t): TintPigment => {
    const pigment = find('pigment', t.pigment)
    if (pigment === null) throw new Error(`no pigment "${t.pigment}"`)
    return { pigment, share: t.percent / 100 }
  })
}

function lengthOf(line: Float64Array): number {
  let sum = 0
  for (let i = 2; i + 1 < line.length; i += 2)
    sum += Math.hypot(line[i]! - line[i - 2]!, line[i + 1]! - line[i - 1]!)
  return sum
}
