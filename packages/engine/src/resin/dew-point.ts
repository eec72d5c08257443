import { inRange } from '../quantity/range.ts'

/**
 * Dew point of air: a surface colder than this gets wet.
 *
 *   γ  = ln(h) + b·T/(c + T)        Td = c·γ/(b − γ)
 *
 *   h relative humidity, 0..1     T air, °C     Td dew point, °C     b 17.62     c 243.12 °C
 *
 * Source: Magnus formula over water with the constants of Sonntag (Z. Meteorol. 70 (1990) 340), as the WMO
 * Guide to Meteorological Instruments (WMO-No. 8, annex 4.B) gives them (memory); −45 to 60 °C.
 * Check: saturation pressures of the steam tables, 0 to 30 °C: dew points within 0.05 K (test).
 *
 * Limits: the air's own dew point. Hardener draws water before the surface is wet, so blush can come earlier.
 */
export function dewPointC(tempC: number, humidityPct: number): number {
  inRange('air in °C', tempC, -45, 60)
  inRange('relative humidity in %', humidityPct, 0.1, 100)
  const gamma = Math.log(humidityPct / 100) + (B * tempC) / (C + tempC)
  return (C * gamma) / (B - gamma)
}

/** Magnus constants over water (Sonntag 1990): b without unit, c in °C. */
const B = 17.62
const C = 243.12
