import { inRange } from '../quantity/range.ts'

/**
 * What a moisture meter's figure says of the timber: temperature, species and how deep the pins went.
 *
 *   temperature  f(R, T) = (R + 0.567 − 0.0260·T + 0.000051·T²)/(0.881·1.0056^T)
 *                M = R + f(R, T) − f(R, 20)          the meter is right at 20 °C
 *   depth        M(z) = M_s + (M_c − M_s)·sin(πz/L)  a slab that dries from both faces, first mode of diffusion
 *                mean = M_s + (M(z) − M_s)·(2/π)/sin(πz/L)
 *                core = M_s + (M(z) − M_s)/sin(πz/L)
 *
 *   R  the meter's figure, %     T  temperature of the timber, °C     M  moisture, %
 *   M_s surface, M_c core, %     z  depth of the pins, mm             L  thickness, mm
 *
 * Pins read the mean at sin(πz/L) = 2/π: z = 0.2197·L. With a parabola instead of the sine it is 0.2113·L: the
 * trade's "a fifth to a quarter of the thickness".
 *
 * Source: temperature: Pfaff and Garrahan, Forest Products Journal 36 (1986), correction of resistance meters set
 * to Douglas-fir (memory); depth: Crank, plane sheet (derived).
 * Check: a figure of 12 % reads 0.11 to 0.12 % less a degree about 10 °C, 0.09 about 30 °C; the mean over the
 * sine by quadrature.
 *
 * Limits: resistance tells little under 6 % and nothing above fibre saturation, about 28 %. Frozen timber, salt,
 * glue and metal mislead. No table of species corrections is carried: the meter's own goes before, and a
 * setting for other timber widens the band. The profile holds once timber has dried for a while from both faces;
 * shallower than a tenth of the thickness the pins say little of the core, and the figure is carried no further than
 * from there.
 */

/** How moisture was taken. */
export type MeterWay = 'pins' | 'pinless' | 'oven-dry'

/** Temperature at which a meter reads right, °C (practice: makers set them at 20, or at 70 °F). */
const METER_AT_C = 20

/**
 * What a figure may be out, points of moisture: pins on the timber's own setting 1, on another or an unknown one 2;
 * pinless 2; a sample dried in the oven 0.3; the temperature not known 0.5 (practice: makers of meters, EN 13183-1
 * to 3; memory).
 */
const DOUBT_PCT = { own: 1, other: 2, pinless: 2, oven: 0.3, temperature: 0.5 } as const

/** Pins shallower than this share of the thickness are taken as this deep. */
const LEAST_DEPTH = 0.1

export interface MeterReading {
  /** The figure, 0..100 %. */
  readonly readingPct: number
  readonly way: MeterWay
  /** Temperature of the timber, −10 to 60 °C; left out when nobody took it. */
  readonly tempC?: number
  /** Whether the meter was set to this very timber. */
  readonly ownSetting?: boolean
}

/** A moisture with what it may be out to either side, points. */
export interface MeterMoisture {
  readonly pct: number
  readonly doubtPct: number
}

/** Points to add to a figure of a resistance meter for the temperature of the timber. */
export function temperatureCorrectionPct(readingPct: number, tempC: number): number {
  inRange('figure of the meter', readingPct, 0, 100, '%')
  inRange('temperature of the timber', tempC, -10, 60, '°C')
  return garrahan(readingPct, tempC) - garrahan(readingPct, METER_AT_C)
}

/** The moisture a figure stands for, where it was taken. */
export function meterMoisture(reading: MeterReading): MeterMoisture {
  const { readingPct, way, tempC, ownSetting = false } = reading
  inRange('figure of the meter', readingPct, 0, 100, '%')
  if (way === 'oven-dry') return { pct: readingPct, doubtPct: DOUBT_PCT.oven }
  if (way === 'pinless') return { pct: readingPct, doubtPct: DOUBT_PCT.pinless }
  const setting = ownSetting ? DOUBT_PCT.own : DOUBT_PCT.other
  return tempC === undefined
    ? { pct: readingPct, doubtPct: Math.hypot(setting, DOUBT_PCT.temperature) }
    : { pct: Math.max(0, readingPct + temperatureCorrectionPct(readingPct, tempC)), doubtPct: setting }
}

/** Depth, as a share of the thickness, at which pins read the mean of a slab that dries from both faces. */
export const MEAN_DEPTH = Math.asin(2 / Math.PI) / Math.PI

/**
 * Mean and core of a slab from the moisture at one depth and at its surface, %.
 *
 * @param depthMm of the pins, 0.1 mm to the whole thickness: past the middle it counts from the other face
 * @param surfacePct balance of the air it stands in
 */
export function throughThickness(input: {
  readonly atDepthPct: number
  readonly depthMm: number
  readonly thicknessMm: number
  readonly surfacePct: number
}): { readonly meanPct: number; readonly corePct: number } {
  const { atDepthPct, depthMm, thicknessMm, surfacePct } = input
  inRange('moisture at the pins', atDepthPct, 0, 100, '%')
  inRange('moisture of the surface', surfacePct, 0, 100, '%')
  inRange('thickness', thicknessMm, 0.2, 1000, 'mm')
  inRange('depth of the pins', depthMm, 0.1, thicknessMm, 'mm')
  const share = depthMm / thicknessMm
  const sine = Math.sin(Math.PI * Math.max(LEAST_DEPTH, Math.min(share, 1 - share)))
  const over = (atDepthPct - surfacePct) / sine
  return {
    meanPct: Math.max(0, surfacePct + (over * 2) / Math.PI),
    corePct: Math.max(0, surfacePct + over)
  }
}

function garrahan(readingPct: number, tempC: number): number {
  return (readingPct + 0.567 - 0.026 * tempC + 0.000051 * tempC * tempC) / (0.881 * 1.0056 ** tempC)
}
