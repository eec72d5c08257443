/**
 * What a peak temperature means for a clear casting: the ladder of findings.
 *
 *   to 60 °C   note      the target for clear work
 *   60-100     caution   warping, yellowing, soft moulds of polyethylene or polypropylene
 *   above 100  stop      moisture boils, bubbles; amber and sink cracks from about 120
 *   above 150  stop      a runaway: volatiles, cracking, then smoke; the number itself is no longer quoted
 *
 * Source: engineering judgement, ±15 K (memory); the data sheet of the resin at hand goes before it. In
 * part confirmed: an ambient structural epoxy little changed after 30 days at 80-120 °C, falling fast at
 * 140 °C (Li, Gong & Lv, IJHT 40 (2022) 706, read).
 *
 * Limits: moulds, magnets, electronics and wax have lower limits of their own.
 */
export const CAUTION_ABOVE_C = 60
export const STOP_ABOVE_C = 100
export const RUNAWAY_ABOVE_C = 150

/**
 * Glass transition under which a finished piece softens in use, °C: a warm room or a hand, 30 to 35 (judgement;
 * sun and hot cups ask for more).
 */
export const LEAST_TG_C = 35

/** Coldest room of an epoxy whose label does not say, °C (common practice; slow hardeners say 60 °F, 15.6). */
export const LEAST_ROOM_C = 15

export type HeatSeverity = 'note' | 'caution' | 'stop'

export interface HeatVerdict {
  readonly severity: HeatSeverity
  /** Above {@link RUNAWAY_ABOVE_C}: say "runaway" in place of the figure. */
  readonly runaway: boolean
  /** The step of the ladder that was passed, °C; null below all. */
  readonly limitC: number | null
  readonly confidence: 'memory'
}

/** Judges one peak temperature in °C. Throws on NaN. */
export function judgePeak(peakC: number): HeatVerdict {
  if (Number.isNaN(peakC)) throw new Error('the peak temperature is NaN; a number in °C')
  const runaway = peakC > RUNAWAY_ABOVE_C
  if (peakC > STOP_ABOVE_C)
    return {
      severity: 'stop',
      runaway,
      limitC: runaway ? RUNAWAY_ABOVE_C : STOP_ABOVE_C,
      confidence: 'memory'
    }
  if (peakC > CAUTION_ABOVE_C)
    return { severity: 'caution', runaway, limitC: CAUTION_ABOVE_C, confidence: 'memory' }
  return { severity: 'note', runaway, limitC: null, confidence: 'memory' }
}

/**
 * Judges a band of peaks: a stop when the central value is past 100 °C or a runaway lies in the band;
 * a caution when either the central value or the upper end is past 60 °C; else a note.
 */
export function judgePeakBand(centralC: number, highC: number): HeatVerdict {
  const central = judgePeak(centralC)
  const high = judgePeak(Math.max(centralC, highC))
  if (central.severity === 'stop' || high.runaway) return high
  return high.severity === 'note' ? central : { ...high, severity: 'caution' }
}

export interface HeatEffect {
  readonly aboveC: number
  readonly says: string
}

/** What happens on the way up, for the words of a finding (memory, ±15 K). */
const HEAT_EFFECTS: readonly HeatEffect[] = [
  { aboveC: 60, says: 'beyond the soft limit for clear work' },
  { aboveC: 80, says: 'warping and yellowing; polyethylene and polypropylene moulds soften' },
  { aboveC: 100, says: 'moisture boils and leaves bubbles' },
  { aboveC: 120, says: 'visibly amber; sink cracks on cooling' },
  { aboveC: 150, says: 'volatiles are lost, the casting cracks' },
  { aboveC: 180, says: 'fumes and scorching' },
  { aboveC: 250, says: 'decomposition' }
]

/** The worst effect of a peak, or null below all. */
export function heatEffect(peakC: number): HeatEffect | null {
  return HEAT_EFFECTS.findLast(effect => peakC > effect.aboveC) ?? null
}
