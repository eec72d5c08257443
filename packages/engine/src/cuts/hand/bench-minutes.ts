/**
 * Minutes at the bench for cuts by hand, attended.
 *
 * Basis: common practice, no source: a router in two hands moves about 1.2 m/min in the cut, a hand or rail saw
 * 0.6 m/min, a flattening cutter on a sled 2.5 m/min with a third more for turning round; setting up, trying on scrap
 * and clearing chips are counted once a cut. Good to half as much again either way; they sum to an evening or a day,
 * which is what they are for.
 */
const ROUTER_MM_MIN = 1200
const SAW_MM_MIN = 600
const SLED_MM_MIN = 2500
const SLED_TURNING = 1.33

const SET_UP_MIN = { router: 12, drill: 6, saw: 8, sled: 25 } as const
/** Making a template with its test cut in scrap; a copy of one costs nothing. */
export const TEMPLATE_MIN = 30
const HOLE_MIN = 2
const SIDE_MIN = 3

/** Rounded to five minutes, at least five. */
function five(minutes: number): number {
  return Math.max(5, 5 * Math.round(minutes / 5))
}

/** A pocket: rows half a bit apart and once round, each pass. */
export function pocketMinutes(areaMm2: number, aroundMm: number, bitMm: number, passes: number): number {
  return five(SET_UP_MIN.router + (passes * (areaMm2 / (bitMm / 2) + aroundMm)) / ROUTER_MM_MIN)
}

/** A way along a line or an edge. */
export function alongMinutes(wayMm: number, passes: number): number {
  return five(SET_UP_MIN.router + (passes * wayMm) / ROUTER_MM_MIN)
}

export function drillMinutes(holes: number): number {
  return five(SET_UP_MIN.drill + HOLE_MIN * holes)
}

export function sawMinutes(wayMm: number, sides: number): number {
  return five(SET_UP_MIN.saw + SIDE_MIN * sides + wayMm / SAW_MM_MIN)
}

export function sledMinutes(wayMm: number, passes: number): number {
  return five(SET_UP_MIN.sled + (SLED_TURNING * wayMm) / SLED_MM_MIN + 3 * passes)
}
