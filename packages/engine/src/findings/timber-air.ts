import { decimals, formatC } from '../quantity/format.ts'
import { STUCK_PAS } from '../resin/fluidity.ts'
import { airGivenOff, bubblesOf } from '../resin/outgassing.ts'
import { area, perimeter } from '../shape/measure.ts'
import { airFraction } from '../timber/density.ts'
import { countWords } from './count-words.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/**
 * Air of unsealed timber that comes out into the resin as it warms.
 *
 * Limits: the hottest place of the pour while it is liquid stands for the timber beside it; what the base of the
 * mould covers lets nothing out.
 */
export const timberAir: Check = {
  id: 'timber-air',
  about: 'unsealed timber that gives off its air into warm resin',
  cases: ['C40'],
  run
}

/** Bubbles of 1 mm on a square decimetre of timber from which they are said: a hundred (judgement). */
const BUBBLES_PER_DM2 = 100

function run(work: Work): Found[] {
  const { night, day } = work.shop.climate
  const roomC = (night + day) / 2
  return work.entries.timbers.flatMap(({ index, id, at, value }): Found[] => {
    if (value.sealed !== 'no') return []
    const solid = work.stack.geometry.timbers[index]!
    const thick = Math.max(0.1, solid.high - solid.base)
    let most: {
      readonly ml: number
      readonly mm2: number
      readonly toC: number
      readonly pour: string
    } | null = null
    work.stack.pours.forEach((p, i) => {
      const cast = work.casts[i]
      if (!cast || work.piece.pours[i]!.kind !== 'cast') return
      const beside = Math.min(p.liquidLevel, solid.high) - Math.max(p.liquidLevel - p.liquidDepth, solid.base)
      if (beside <= 0) return
      const sides = perimeter(solid.upper) * beside
      const covered = sides + (p.liquidLevel > solid.high ? area(solid.upper) : 0)
      const open = perimeter(solid.upper) * thick + area(solid.upper)
      const toC = whileLiquid(cast.curve)
      const ml = airGivenOff({
        volumeMl: (area(solid.upper) * thick) / 1000,
        airFraction: airOf(work, index),
        fromC: roomC,
        toC,
        coveredShare: Math.min(1, covered / open)
      })
      if (most === null || ml / covered > most.ml / most.mm2)
        most = { ml, mm2: covered, toC, pour: work.entries.pours[i]!.id }
    })
    if (most === null) return []
    const { ml, mm2, toC, pour } = most as { ml: number; mm2: number; toC: number; pour: string }
    const perDm2 = bubblesOf(ml, 1) / (mm2 / 1e4)
    if (perDm2 <= BUBBLES_PER_DM2) return []
    return [
      {
        severity: 'caution',
        at: `${at}/sealed`,
        says: `${id} is not sealed: in ${pour} it warms to ${formatC(toC)} while the resin is liquid, and up to ${decimals(ml, 1)} ml of its air come out into it, ${countWords(perDm2)} bubbles of 1 mm on a square decimetre. Seal it, or pour with the timber as warm as it will get.`,
        value: perDm2,
        unit: 'bubbles of 1 mm a dm²',
        limit: BUBBLES_PER_DM2,
        basis:
          'air in the timber (Siau), ideal gas from the room to the hottest while liquid, all of the timber warmed (the unfavourable end); a hundred bubbles: judgement; seal coat: common practice, no source',
        settledBy: 'an offcut under a spoonful of warm resin',
        fix: setValue(work.document, `${at}/sealed`, 'tacky'),
        fixSays: `Seal ${id}`
      }
    ]
  })
}

function whileLiquid(curve: {
  readonly hottestC: readonly number[]
  readonly viscosityPaS: readonly number[]
}): number {
  let hottest = curve.hottestC[0]!
  for (let i = 0; i < curve.hottestC.length && curve.viscosityPaS[i]! < STUCK_PAS; i++)
    hottest = Math.max(hottest, curve.hottestC[i]!)
  return hottest
}

// Air of a timber as it goes in, from its density and moisture.
function airOf(work: Work, index: number): number {
  const { moisturePct } = work.seasons[index]!
  const moist = Math.min(moisturePct, 100)
  const gravity = work.floating[index]!.densityKgM3 / 1000 / (1 + moist / 100)
  return airFraction(Math.min(1.5, Math.max(0.1, gravity)), moist)
}
