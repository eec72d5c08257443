import type { TintPigment } from '../cast/facts.ts'
import { find } from '../catalogue/find.ts'
import type { Bands, Srgb } from '../catalogue/pigment-optics.ts'
import type { TimberRecord } from '../catalogue/timber-record.ts'
import type { Work } from '../findings/work.ts'
import type { Looks, PourLook } from './look.ts'
import { insideOf } from './look.ts'

/**
 * Looks of fresh, oiled timber by name, sRGB: by eye (estimate), the first word that fits counts. The catalogue
 * has no colours of timber; a guess is better on a drawing than none.
 */
const TIMBER_LOOKS: readonly (readonly [words: RegExp, look: Srgb])[] = [
  [/ebony|wenge/, [62, 48, 40]],
  [/walnut/, [122, 88, 62]],
  [/rosewood/, [104, 62, 46]],
  [/purpleheart/, [112, 58, 84]],
  [/teak|iroko|afrormosia/, [164, 118, 70]],
  [/ipe|lignum|ironbark/, [106, 78, 54]],
  [/jatoba|jarrah|red gum|karri/, [146, 78, 56]],
  [/mahogany|sapele|cedar|redwood|toona/, [162, 98, 66]],
  [/cherry|larch|douglas|eucalyptus/, [190, 134, 90]],
  [/elm|olive|robinia|locust|butternut/, [182, 142, 94]],
  [/oak|chestnut|blackwood/, [198, 162, 114]],
  [/beech|alder|sycamore|hickory|pecan/, [214, 176, 134]],
  [/maple|birch|lime|basswood|aspen|holly|balsa/, [232, 210, 172]],
  [/ash|hackberry/, [219, 196, 155]],
  [/pine|spruce|fir|hemlock|cypress|poplar|obeche|limba/, [226, 196, 146]]
]

/** What is taken when no word fits: light, middling and dark timber by its density at 12 %, kg/m³. */
function byDensity(record: TimberRecord): Srgb {
  const d = record.density12KgM3 ?? (record.gravity12 ?? 0.6) * 1120
  return d > 850 ? [138, 88, 62] : d > 600 ? [196, 152, 106] : [222, 188, 140]
}

/** Looks of everything in a piece. */
export function looksOf(work: Work): Looks {
  const { materials, piece } = work
  return {
    timbers: materials.timbers.map(t => insideOf(timberSrgb(t))),
    pours: piece.pours.map((_, i) => mixLook(materials.tints[i]!, materials.resins[i]!.densityGMl)),
    markings: piece.markings.map((m, i) =>
      mixLook(
        (m.filled ?? []).map(t => ({ pigment: find('pigment', t.pigment)!, share: t.percent / 100 })),
        materials.markingResins[i]!.densityGMl
      )
    )
  }
}

function timberSrgb(record: TimberRecord): Srgb {
  const name = `${record.name} ${record.botanical}`.toLowerCase()
  return TIMBER_LOOKS.find(([words]) => words.test(name))?.[1] ?? byDensity(record)
}

/** Scattering and absorption of a tinted mix, 1/mm: shares add (see colour/hiding.ts). */
function mixLook(tint: readonly TintPigment[], densityGMl: number): PourLook {
  let scatterPerMm = 0
  const absorb: [number, number, number] = [0, 0, 0]
  for (const { pigment, share } of tint) {
    const c = share * pigment.pigmentFraction * densityGMl * 1000
    scatterPerMm += c * pigment.scatterM2PerG
    for (let b = 0; b < 3; b++) absorb[b]! += c * pigment.absorbBandsM2PerG[b]!
  }
  return { scatterPerMm, absorbPerMm: absorb as Bands }
}
