import { batchesOf } from '../cast/batches.ts'
import { decimals, formatC, formatMinutes } from '../quantity/format.ts'
import type { WarmBath } from '../resin/warm-bath.ts'
import { bathOf } from './bubbles-stay.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** Parts warmed so far that the batch runs away or is too thick before it is out. */
export const warmParts: Check = {
  id: 'warm-parts',
  about: 'parts warmed before mixing, and a batch that does not last',
  cases: [],
  run: work => work.entries.pours.flatMap(({ index }) => one(work, index))
}

/** Parts this much over the room count as warmed, K. */
const WARMED_K = 2

function one(work: Work, i: number): Found[] {
  const { value, id, at } = work.entries.pours[i]!
  const { night, day } = work.shop.climate
  const roomC = (night + day) / 2
  const bathC = value.startTemperature
  if (bathC === undefined || bathC < roomC + WARMED_K) return []
  const bath = bathOf(work, i, bathC)
  if (bath === null || bath.refused === null) return []
  // What does not last at room temperature either is not the bath's doing.
  if (bathOf(work, i, roomC)?.refused !== null) return []
  const allowed = warmest(work, i, roomC, bathC)
  return [
    {
      severity: 'stop',
      at: `${at}/startTemperature`,
      says: `${id} is mixed from parts at ${formatC(bathC)}: ${decimals(1 / bath.viscosityRatio, 1)} times thinner than at the room’s ${formatC(roomC)}, but ${bath.refused === 'runaway' ? 'its batch may run away in the vessel before it is poured' : 'its batch may be too thick before it is poured'}${bath.minutesOut === null ? '' : `: out by ${formatMinutes(bath.minutesOut)} at the likeliest${bath.minutesOutAtRoom === null ? '' : `, ${formatMinutes(bath.minutesOutAtRoom)} from the room’s temperature`}`}. ${allowed === null ? 'Leave them at the room’s temperature' : `Warm them to ${formatC(allowed)} at most`}, or mix less at a time.`,
      value: bathC,
      unit: '°C',
      limit: allowed ?? roomC,
      basis:
        'cup model of a generic class at the early end of its times (±30 %); stirring and pouring as given, else common practice',
      settledBy: 'a cup test of this resin from warm parts',
      ...(allowed === null
        ? {
            fix: [{ op: 'remove' as const, path: `${at}/startTemperature` }],
            fixSays: 'Parts at the room’s temperature'
          }
        : {
            fix: setQuantity(work.document, `${at}/startTemperature`, 'temperature', allowed, 'down', 1),
            fixSays: `Parts at ${formatC(allowed)}`
          })
    }
  ]
}

/**
 * The bath as the pour would be planned with parts at `bathC`: a warmer mix is split into smaller batches, so a cooler
 * one may stand in larger ones.
 */
function bathAt(work: Work, i: number, bathC: number): WarmBath | null {
  const pours = work.piece.pours.map((p, k) => (k === i ? { ...p, startTemperature: bathC } : p))
  const { stack, materials, speeds, shop } = work
  const own = batchesOf(
    pours[i]!,
    stack.pours[i]!,
    materials.resins[i]!,
    materials.tints[i]!,
    speeds[i]!,
    shop
  )
  const batches = work.batches.map((b, k) => (k === i ? own : b))
  return bathOf({ ...work, piece: { ...work.piece, pours }, batches }, i, bathC)
}

/** The warmest whole degree over the room that is not refused, from above; null: none is let. */
function warmest(work: Work, i: number, roomC: number, refusedC: number): number | null {
  for (let c = Math.ceil(refusedC) - 1; c >= roomC + WARMED_K; c--)
    if (bathAt(work, i, c)?.refused === null) return c
  return null
}
