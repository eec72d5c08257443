import { find, nearestIds } from '../catalogue/find.ts'
import type { PigmentRecord } from '../catalogue/pigment.ts'
import { type Bands, linearOf, luminanceOf, ratioOfSeen, srgbOf } from '../catalogue/pigment-optics.ts'
import { type CardFit, fitCard } from '../colour/card.ts'
import { linearOfLab } from '../colour/cielab.ts'
import { coverDepthMm } from '../colour/cover-depth.ts'
import { deepReflectance } from '../colour/hiding.ts'
import { mixOptics, type Optics, outsideBands } from '../colour/stacked.ts'
import { InputProblem, type Problem } from '../piece/problem.ts'
import { chooseResin } from '../piece/resin-choice.ts'
import type { Shop } from '../piece/shop-schema.ts'

type ShopCard = Shop['cards'][number]

/** Density of the mix when a card does not say its resin, kg/m³. */
const USUAL_KG_M3 = 1100
/** A card is read by eye and knife: its strength is never taken as surer than this factor. */
const LEAST_FACTOR = 1.03

/**
 * Pigments as the maker's own cards show them; what has no card stays as the catalogue has it. The one place that
 * decides what a pigment is. The last card of a pigment counts; one that tells less than the catalogue knows is left.
 * @throws InputProblem for a card of a pigment or a resin that is not known
 */
export function ownPigments(shop: Shop): (record: PigmentRecord) => PigmentRecord {
  const last = new Map<string, () => PigmentRecord>()
  const problems: Problem[] = []
  shop.cards.forEach((card, i) => {
    const record = find('pigment', card.pigment)
    if (record === null) {
      const near = nearestIds('pigment', card.pigment, 4)
      problems.push({
        path: `/cards/${i}/pigment`,
        found: `a pigment "${card.pigment}", which the catalogue does not have`,
        allowed: `an id or a name of the catalogue; nearest: ${near.join(', ')}`,
        example: `"${near[0]}"`
      })
      return
    }
    const resin = card.resin === undefined ? null : chooseResin(card.resin, shop, `/cards/${i}/resin`)
    if (resin !== null && 'found' in resin) problems.push(resin)
    else {
      const mixKgM3 = resin === null ? USUAL_KG_M3 : resin.densityGMl * 1000
      last.set(record.id, () => learned(record, card, mixKgM3))
    }
  })
  if (problems.length > 0) throw new InputProblem('shop', problems)
  // Fitted when it is asked for: of a shop's many cards a piece wants those of its own pigments.
  return record => last.get(record.id)?.() ?? record
}

function learned(record: PigmentRecord, card: ShopCard, mixKgM3: number): PigmentRecord {
  const massFraction = (card.percent / 100) * record.pigmentFraction
  const same = record.scatterM2PerG
  const generic = mixOptics(
    [{ massFraction, scatterM2PerG: [same, same, same], absorbM2PerG: record.absorbBandsM2PerG }],
    mixKgM3
  )
  const perMass = 1 / (massFraction * mixKgM3)
  if (card.wedge !== undefined) {
    const { shows, hides } = card.wedge
    const deep = coverDepthMm(generic)
    return deep === null
      ? record
      : better(
          record,
          scaled(generic, (deep / Math.sqrt(shows * hides)) * perMass),
          Math.sqrt(hides / shows),
          'wedge'
        )
  }
  const fit = fitOf(card, generic)
  return better(record, scaled(fit.optics, perMass), fit.strengthFactor, 'colours')
}

function better(
  record: PigmentRecord,
  perMass: Optics,
  factor: number,
  card: NonNullable<PigmentRecord['card']>
): PigmentRecord {
  // A card on which every step hides, or none does, says less than what is commonly known.
  if (!(factor < record.bandFactor)) return record
  const scatterM2PerG = luminanceOf(perMass.scatterPerMm)
  return {
    ...record,
    scatterM2PerG,
    scatterBandsM2PerG: perMass.scatterPerMm,
    absorbBandsM2PerG: perMass.absorbPerMm,
    absorbM2PerG:
      scatterM2PerG === 0
        ? luminanceOf(perMass.absorbPerMm)
        : scatterM2PerG * ratioOfSeen(luminanceOf(outsideBands(deepOf(perMass)))),
    bandFactor: Math.max(LEAST_FACTOR, factor),
    card,
    source: `${record.source}. Strength: the maker’s own card`
  }
}

function deepOf({ scatterPerMm: s, absorbPerMm: k }: Optics): Bands {
  const band = (b: 0 | 1 | 2) => deepReflectance({ scatterPerMm: s[b], absorbPerMm: k[b] })
  return [band(0), band(1), band(2)]
}

function scaled({ scatterPerMm: s, absorbPerMm: k }: Optics, by: number): Optics {
  return {
    scatterPerMm: [s[0] * by, s[1] * by, s[2] * by],
    absorbPerMm: [k[0] * by, k[1] * by, k[2] * by]
  }
}

// The last few fits are kept by what they were made from: a plan is made at every edit.
const fits = new Map<string, CardFit>()
const MOST_KEPT = 40

function fitOf(card: ShopCard, generic: Optics): CardFit {
  const key = JSON.stringify([card, generic])
  const known = fits.get(key)
  if (known !== undefined) return known
  const fit = fitCard(
    {
      steps: card.steps!.map(s => ({
        mm: s.depth,
        overBlack: bandsOf(s.overBlack),
        overWhite: bandsOf(s.overWhite)
      })),
      black: bandsOf(card.black),
      white: bandsOf(card.white),
      colourDoubt: card.doubt.colour,
      depthDoubtMm: card.doubt.depth
    },
    generic
  )
  if (fits.size >= MOST_KEPT) fits.delete(fits.keys().next().value!)
  fits.set(key, fit)
  return fit
}

function bandsOf(colour: ShopCard['black']): Bands {
  return typeof colour === 'string' ? linearOf(srgbOf(colour)) : linearOfLab(colour)
}
