import { inRange } from '../quantity/range.ts'

/**
 * Equilibrium moisture content: the moisture that timber settles to in air of a temperature and humidity.
 *
 *   EMC = (1800/W)·{ K·h/(1 − K·h) + (K1·K·h + 2·K1·K2·K²·h²)/(1 + K1·K·h + K1·K2·K²·h²) }
 *
 *   EMC  equilibrium moisture content   % of the oven-dry mass
 *   h    relative humidity              1, 0..1
 *   T    temperature                    °C
 *   W    349  + 1.29·T     + 0.0135·T²
 *   K    0.805 + 0.000736·T − 0.00000273·T²
 *   K1   6.27 − 0.00938·T  − 0.000303·T²
 *   K2   1.91 + 0.0407·T   − 0.000293·T²
 *
 * Source: USDA Forest Products Laboratory, Wood Handbook (FPL-GTR-190, 2010; FPL-GTR-282, 2021), chapter 4,
 * equation 4-5, Celsius set; fit by Simpson, Wood and Fiber 5 (1973) 41. Coefficients read in
 * several independent transcriptions; copies with a dropped zero or a flipped sign are about, so the
 * handbook's own table guards them.
 * Check: 20 °C, 65 % gives 12.00 %; all 228 cells of the handbook's table within 0.07.
 *
 * Limits: the handbook's table spans −1.1 to 132 °C (30 to 270 °F) and 5 to 95 % humidity; outside that the
 * temperature is refused and the humidity extrapolated. One curve stands for all species: they differ little
 * in dry air and a lot in damp air. The curve lies between absorption and desorption (see
 * {@link equilibriumMoistureBand}). Heartwood extractives, heat treatment and finishes lower the true value.
 */

/** Span of the handbook's table, 30 to 270 °F, in °C. */
export const MOISTURE_TEMP_RANGE_C: readonly [low: number, high: number] = [
  ((30 - 32) * 5) / 9,
  ((270 - 32) * 5) / 9
]

/**
 * Equilibrium moisture content, % of the oven-dry mass.
 *
 * @param tempC air temperature, −1.1 to 132.2 °C (the span of the handbook's table)
 * @param humidity relative humidity as a fraction, 0 to 1
 * @throws RangeError outside either range
 */
export function equilibriumMoisturePct(tempC: number, humidity: number): number {
  inRange('temperature', tempC, ...MOISTURE_TEMP_RANGE_C, '°C')
  inRange('relative humidity', humidity, 0, 1, '(as a fraction)')
  const t = tempC
  const w = 349 + 1.29 * t + 0.0135 * t * t
  const k = 0.805 + 0.000736 * t - 0.00000273 * t * t
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t
  const kh = k * humidity
  const bound = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh)
  return (1800 / w) * (kh / (1 - kh) + bound)
}

/**
 * Points of moisture between drying and wetting curve at 50 % humidity: 1 to 4. Read in Swedish timber
 * guidance; species and history decide.
 */
const HYSTERESIS_POINTS_AT_HALF: readonly [least: number, most: number] = [1, 4]

/**
 * The equilibrium with its band from hysteresis: a board that dries stops high in the band, one that takes up
 * moisture stops low in it. Half of the widest read hysteresis (4 points at 50 %, about ±22 % of the value)
 * is taken to either side, in proportion at other humidities: the ratio of wetting to drying curve is nearly
 * constant (derived; the source gives 50 % only).
 */
export function equilibriumMoistureBand(
  tempC: number,
  humidity: number
): { readonly centralPct: number; readonly lowPct: number; readonly highPct: number } {
  const centralPct = equilibriumMoisturePct(tempC, humidity)
  const part = HYSTERESIS_POINTS_AT_HALF[1] / 2 / equilibriumMoisturePct(tempC, 0.5)
  return { centralPct, lowPct: centralPct * (1 - part), highPct: centralPct * (1 + part) }
}

/**
 * Relative humidity (fraction) at which timber of this moisture neither takes up nor gives off water: the
 * inverse of {@link equilibriumMoisturePct}, by bisection, because the curve is monotone in humidity.
 *
 * @throws RangeError when the timber is wetter than saturated air could make it at that temperature
 */
export function humidityForMoisture(moisturePct: number, tempC: number): number {
  const most = equilibriumMoisturePct(tempC, 1)
  inRange('moisture content', moisturePct, 0, most, `% at ${tempC} °C (saturated air)`)
  let low = 0
  let high = 1
  // 60 halvings leave less than one part in 1e18: past the last bit of a double.
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (equilibriumMoisturePct(tempC, middle) < moisturePct) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/**
 * Moisture content by the oven-dry method, % of the oven-dry mass: (wet − dry)/dry, dried at 103 ± 2 °C until
 * the mass no longer changes (EN 13183-1, read). The two masses share any one unit.
 *
 * @throws RangeError when the dry mass is not positive or exceeds the wet mass
 */
export function ovenDryMoisturePct(wetMassG: number, dryMassG: number): number {
  inRange('oven-dry mass', dryMassG, Number.MIN_VALUE, 1e9, 'g')
  inRange('mass before drying', wetMassG, dryMassG, 1e9, 'g')
  return ((wetMassG - dryMassG) / dryMassG) * 100
}
