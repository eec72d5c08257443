import { decimals, formatC, formatMass } from '../quantity/format.ts'
import { cupHistory, HOT_C } from '../resin/cup.ts'
import { RUNAWAY_ABOVE_C } from '../resin/limits.ts'
import type { Vessel } from '../resin/vessel.ts'
import { inBatches, standsWell } from './batches.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Mass left in one cup from which it may heat by itself, g: the mass that pot lives are printed for (practice). */
const LEFT_G = 100
/** Spread thinner than this, mm, a leftover cannot keep its heat (practice). */
const SPREAD_MM = 10

/** Mix that stays behind in a vessel, deep enough to heat by itself. */
export const leftoverCup: Check = {
  id: 'leftover-cup',
  about: 'a leftover in a cup that heats by itself after the pour',
  cases: ['C03'],
  run: work => work.entries.pours.flatMap(({ index }) => one(work, index))
}

/** What stays in the vessel that holds most, g: its share of every batch, and all that was mixed too much. */
function leftG(mixedG: number, pouredG: number, count: number, leftover: number): number {
  return (leftover * mixedG) / count + Math.max(0, mixedG * (1 - leftover) - pouredG)
}

function one(work: Work, i: number): Found[] {
  // What is mixed for several blanks together stays behind together.
  const { batches, blanks } = work.rounds[i]!
  if (!batches) return []
  const { id, at } = work.entries.pours[i]!
  const count = batches.mixed?.count ?? 1
  const left = kept(work, i, batches.mixedG, count)
  if (left === null) return []
  const { massG, depthMm, hotC } = left
  return [
    {
      severity: 'caution',
      at,
      says: `of ${id} about ${formatMass(massG)} stay in one vessel, ${decimals(depthMm, 0)} mm deep${hotC === null ? '' : `; left there they may come to ${hotC > RUNAWAY_ABOVE_C ? 'a runaway' : formatC(hotC)}`}. Spread leftovers to under 10 mm deep on a surface that does not burn and watch them until cold.`,
      value: massG,
      unit: 'g',
      limit: LEFT_G,
      basis:
        'mixed less poured, share left in a vessel as the shop says; 100 g and 10 mm: common practice, no source; temperature: cup model of a generic class at the hot end of its band',
      settledBy: null,
      ...(blanks === 1 ? less(work, i, count) : {})
    }
  ]
}

// What stays in the vessel that holds most, where it is enough and deep enough to heat by itself; else null.
function kept(
  work: Work,
  i: number,
  mixedG: number,
  count: number
): { readonly massG: number; readonly depthMm: number; readonly hotC: number | null } | null {
  const { pouredG, mixed } = work.rounds[i]!.batches!
  const massG = leftG(mixedG, pouredG, count, work.shop.leftover / 100)
  if (massG <= LEFT_G * (1 + 1e-9)) return null
  const { minutes } = work.piece.pours[i]!
  const vesselMl = mixed?.count === count ? mixed.vesselMl : inBatches(work, i, count, minutes).vesselMl
  const vessel = vesselOf(work, vesselMl, massG)
  const depthMm = (massG / densityOf(work, i)) * 1000 * (4 / (Math.PI * vessel.diameterMm ** 2))
  if (depthMm < SPREAD_MM) return null
  const hotC = hottest(work, i, massG, vessel)
  return hotC !== null && hotC <= HOT_C ? null : { massG, depthMm, hotC }
}

function densityOf(work: Work, i: number): number {
  return work.materials.resins[i]!.densityGMl
}

function vesselOf(work: Work, capacityMl: number | null, leftoverG: number): Vessel {
  const capacity = capacityMl ?? leftoverG * 2
  const known = work.shop.vessels.find(v => Math.abs(v.capacity - capacity) < 1)
  return {
    capacityMl: capacity,
    // A vessel that the shop does not list is taken as wide as it is high.
    diameterMm: known?.diameter ?? Math.cbrt((4 * capacity * 1000) / Math.PI)
  }
}

// Peak of the leftover where it stands, at the hot end of the class's band, °C; null when not predicted.
function hottest(work: Work, i: number, massG: number, vessel: Vessel): number | null {
  const { record } = work.materials.resins[i]!
  if (record.model === null) return null
  const { night, day, doubt } = work.shop.climate
  const roomC = (night + day) / 2 + doubt
  const startC = work.piece.pours[i]!.startTemperature ?? roomC
  const rateFactor = work.speeds[i]!.factor / (1 - record.band.time)
  // By the density that the cup itself reckons with: a label's may differ.
  const ml = (massG / record.model.bulk.liquidKgM3) * 1000
  const roomy = { ...vessel, capacityMl: Math.max(vessel.capacityMl, ml * 1.001) }
  return cupHistory({
    resin: record.model,
    massG,
    vessel: roomy,
    roomC,
    startC,
    rateFactor,
    effort: 'quick'
  }).peakC
}

// Less mix where too much is mixed, else more batches, if they stand: the least that clears it.
function less(work: Work, i: number, count: number): Pick<Found, 'fix' | 'fixSays'> {
  const { at, value } = work.entries.pours[i]!
  const { mixedG, pouredG } = work.batches[i]!
  const share = work.shop.leftover / 100
  const needed = pouredG / (1 - share)
  // By mass alone: less mix may go into another vessel, where it stands deeper.
  if (value.mixed !== undefined && leftG(needed, pouredG, count, share) <= LEFT_G) {
    const mixed = Math.max(needed, (LEFT_G + pouredG) / (share / count + 1 - share))
    return {
      fix: setQuantity(work.document, `${at}/mixed`, 'mass', mixed, 'down', 1),
      fixSays: `Mix ${formatMass(Math.floor(mixed))}`
    }
  }
  const spare = leftG(mixedG, pouredG, Number.POSITIVE_INFINITY, share)
  if (spare >= LEFT_G) return {}
  const enough = Math.ceil((mixedG * share) / (LEFT_G - spare) - 1e-9)
  const more = edge(enough, count, n => kept(work, i, mixedG, n) === null)
  if (!standsWell(work, i, inBatches(work, i, more, value.minutes))) return {}
  return {
    fix: setValue(work.document, `${at}/batches`, more),
    fixSays: `${more} batches of ${formatMass(mixedG / more)}`
  }
}

// The whole number nearest to `bad` that does, between `good`, which does, and `bad`, which does not.
function edge(good: number, bad: number, does: (n: number) => boolean): number {
  let [yes, no] = [good, bad]
  while (Math.abs(no - yes) > 1) {
    const middle = Math.trunc((yes + no) / 2)
    if (does(middle)) yes = middle
    else no = middle
  }
  return yes
}
