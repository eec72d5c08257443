import type { PourBand } from '../resin/bands.ts'
import type { ResinResult } from '../resin/column-result.ts'

/** A pour's course for drawing: hottest temperature and viscosity over minutes, at most 120 points, with bands. */
export interface Curve {
  readonly min: readonly number[]
  readonly hottestC: readonly number[]
  /** Least and most of the hottest temperature at that moment within the band. */
  readonly lowC: readonly number[]
  readonly highC: readonly number[]
  readonly viscosityPaS: readonly number[]
  readonly lowPaS: readonly number[]
  readonly highPaS: readonly number[]
  readonly conversion: readonly number[]
}

/**
 * Thins a history to a curve: denser where something happens, as the samples are. Its band is the hull, moment by
 * moment, of the runs at the corners, carried over as the figures are (cast.ts): times in proportion to the peak's,
 * rises so that each corner's peak keeps its offset. `doubt`: factor by which a class's viscosity may be off.
 */
export function curveOf(own: ResinResult, band: PourBand, doubt: number): Curve {
  const h = own.history
  const step = Math.max(1, Math.ceil(h.timeS.length / 120))
  const { central, corners } = band.runs
  // A pour that is hottest as it goes in has no peak to go by.
  const late = own.peakAtS > 0 && central.peakAtS > 0 ? own.peakAtS / central.peakAtS : 1
  const carried = corners.map(({ run }) => {
    const start = run.history.maxC[0]!
    const rise = run.peakC - start
    const asked = own.peakC + run.peakC - central.peakC - start
    return { run, start, grown: rise > 1 ? Math.max(0, asked / rise) : 1, at: 0 }
  })
  const out = {
    min: [] as number[],
    hottestC: [] as number[],
    lowC: [] as number[],
    highC: [] as number[],
    viscosityPaS: [] as number[],
    lowPaS: [] as number[],
    highPaS: [] as number[],
    conversion: [] as number[]
  }
  for (let i = 0; i < h.timeS.length; i += step) {
    const timeS = h.timeS[i]!
    const tempC = h.maxC[i]!
    const thick = h.meanViscosityPaS[i]!
    let [lowC, highC, low, high] = [tempC, tempC, thick / doubt, thick * doubt]
    for (const c of carried) {
      const { history } = c.run
      // The samples of a corner are gone through once.
      while (c.at + 2 < history.timeS.length && history.timeS[c.at + 1]! * late < timeS) c.at++
      const part = partOf(history.timeS, c.at, timeS / late)
      const warm = c.start + (between(history.maxC, c.at, part) - c.start) * c.grown
      lowC = Math.min(lowC, warm)
      highC = Math.max(highC, warm)
      const log = between(history.meanViscosityPaS, c.at, part)
      low = Math.min(low, log / doubt)
      high = Math.max(high, log * doubt)
    }
    out.min.push(round(timeS / 60, 1))
    out.hottestC.push(round(tempC, 2))
    out.lowC.push(round(lowC, 2))
    out.highC.push(round(highC, 2))
    out.viscosityPaS.push(four(thick))
    out.lowPaS.push(four(low))
    out.highPaS.push(four(high))
    out.conversion.push(round(h.meanConversion[i]!, 4))
  }
  return out
}

function partOf(timeS: ArrayLike<number>, k: number, at: number): number {
  const [from, to] = [timeS[k]!, timeS[Math.min(k + 1, timeS.length - 1)]!]
  return to > from ? Math.min(1, Math.max(0, (at - from) / (to - from))) : 0
}

function between(values: ArrayLike<number>, k: number, part: number): number {
  const from = values[k]!
  return from + part * (values[Math.min(k + 1, values.length - 1)]! - from)
}

const four = (x: number): number => Number(x.toPrecision(4))

function round(x: number, digits: number): number {
  return Number(x.toFixed(digits))
}
