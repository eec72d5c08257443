import { decimals, formatC, formatMinutes } from '../../quantity/format.ts'
import { toFixedUnit } from '../../quantity/unit.ts'
import { type CupFit, fitCup } from './cup-fit.ts'
import type { CupTest } from './cup-test.ts'

/** Why a cup test is not to be believed as it stands. */
export interface CupDoubt {
  readonly kind: 'cold' | 'mark' | 'stray' | 'height' | 'unit'
  readonly found: string
  readonly allowed: string
}

/** A cup that cures warms by this at least, K (practice: below it a draught does as much). */
const LEAST_RISE_K = 1
/** A mark may lie so far beyond the last reading, min, or that share of it: the thermometer was put away first. */
const MARK_BEYOND_MIN = 15
const MARK_BEYOND = 0.1
/** The fit strays grossly: by this, K, or this share of the rise where that is more, or so many standard deviations. Practice. */
const GROSS_K = 10
const GROSS_SHARE = 0.1
const GROSS_SIGMAS = 5
/** Higher than so many diameters it is no cup. */
const MOST_DIAMETERS = 5
/** A first reading that is as well °F as °C, and rooms that are °C. */
const EITHER: readonly [number, number] = [68, 110]
const ROOM_C: readonly [number, number] = [15, 30]
/** As °F it fits no worse than this many times as °C. */
const NO_WORSE = 1.1

/** A cup whose course is none of curing resin: it cools only, or never passes the room. null: it warms. */
function coldDoubt({ readings, roomC }: CupTest): CupDoubt | null {
  let least = Number.POSITIVE_INFINITY
  let most = Number.NEGATIVE_INFINITY
  let rise = 0
  for (const { tempC } of readings) {
    least = Math.min(least, tempC)
    most = Math.max(most, tempC)
    rise = Math.max(rise, tempC - least)
  }
  if (rise >= LEAST_RISE_K && most - roomC >= LEAST_RISE_K) return null
  return {
    kind: 'cold',
    found: `a cup that never warmed: from ${formatC(readings[0]!.tempC)} to ${formatC(readings[readings.length - 1]!.tempC)} at most ${decimals(Math.max(0, rise), 1)} K up, in a room of ${formatC(roomC)}`,
    allowed: `a cup that warms by ${LEAST_RISE_K} K at least and passes its room by as much; a larger batch warms more`
  }
}

/** What is odd about a test and its fit; empty where nothing is. `unit`: of the thermometer as typed. */
export function cupDoubts(test: CupTest, fit: CupFit, unit: string): readonly CupDoubt[] {
  const out: CupDoubt[] = []
  const cold = coldDoubt(test)
  if (cold) out.push(cold)
  const last = test.readings[test.readings.length - 1]!.timeMin
  const latest = last + Math.max(MARK_BEYOND_MIN, MARK_BEYOND * last)
  for (const { mark, toldMin, sigmas } of fit.marks) {
    if (toldMin > latest)
      out.push({
        kind: 'mark',
        found: `${mark} at ${formatMinutes(toldMin)}, readings that end at ${formatMinutes(last)}`,
        allowed: 'a time within the readings, in minutes from mixing; leave it out if it was not seen'
      })
    else if (Math.abs(sigmas) > GROSS_SIGMAS)
      out.push({
        kind: 'stray',
        found: `${mark} at ${formatMinutes(toldMin)}, ${decimals(Math.abs(sigmas), 0)} times its doubt beside any course that fits the readings`,
        allowed: `within ${GROSS_SIGMAS} times; look at the time again`
      })
  }
  const hottest = Math.max(...fit.residuals.map(r => r.measuredC))
  const gross = Math.max(GROSS_K, GROSS_SHARE * (hottest - test.roomC))
  const worst = fit.residuals.reduce((a, b) => (Math.abs(b.offK) > Math.abs(a.offK) ? b : a))
  const odd =
    Math.abs(worst.offK) > gross ? worst : fit.residuals.find(r => Math.abs(r.sigmas) > GROSS_SIGMAS)
  if (odd)
    out.push({
      kind: 'stray',
      found: `${formatC(odd.measuredC)} after ${formatMinutes(odd.timeMin)}, where the best fit shows ${formatC(odd.fittedC)}`,
      allowed: `readings within ${decimals(gross, 0)} K and ${GROSS_SIGMAS} times their doubt; look at that reading, the mass, the cup, the room and the marks again`
    })
  const heightMm = test.massG / (fit.base.bulk.liquidKgM3 * 1e-6) / ((Math.PI / 4) * test.diameterMm ** 2)
  if (heightMm > MOST_DIAMETERS * test.diameterMm)
    out.push({
      kind: 'height',
      found: `${decimals(test.massG, 0)} g in a cup of ${decimals(test.diameterMm, 0)} mm: it would stand ${decimals(heightMm, 0)} mm high`,
      allowed: `at most ${MOST_DIAMETERS} diameters; look at the mass and the cup again`
    })
  const fahrenheit = unitDoubt(test, fit, unit)
  const height = out.filter(d => d.kind === 'height')
  // What explains the others goes first.
  return [...(fahrenheit ? [fahrenheit] : []), ...height, ...out.filter(d => d.kind !== 'height')]
}

function unitDoubt(test: CupTest, fit: CupFit, unit: string): CupDoubt | null {
  const first = test.readings[0]!
  const within = (x: number, [low, high]: readonly [number, number]): boolean => x >= low && x <= high
  if (unit !== '°C' || !within(first.tempC, EITHER) || !within(test.roomC, ROOM_C)) return null
  const readings = test.readings.map(r => ({ timeMin: r.timeMin, tempC: toFixedUnit(r.tempC, '°F') }))
  const other = fitCup({ ...test, readings }, fit.base)
  if (other.noise.sigmaK > NO_WORSE * fit.noise.sigmaK) return null
  return {
    kind: 'unit',
    found: `${decimals(first.tempC, 1)} °C as the first reading, after ${formatMinutes(first.timeMin)}, in a room of ${formatC(test.roomC)}: as °F the readings fit as well or better`,
    allowed:
      'the unit of the thermometer: if these are °F, say --unit F; if they are °C all the same, say --unit C'
  }
}
