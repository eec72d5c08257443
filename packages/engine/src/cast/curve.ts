import type { ResinResult } from '../resin/column-result.ts'

/** A pour's course for drawing: hottest temperature and viscosity over minutes, at most 120 points. */
export interface Curve {
  readonly min: readonly number[]
  readonly hottestC: readonly number[]
  readonly viscosityPaS: readonly number[]
  readonly conversion: readonly number[]
}

/** Thins a history to a curve: denser where something happens, as the samples are. */
export function curveOf(own: ResinResult): Curve {
  const h = own.history
  const step = Math.max(1, Math.ceil(h.timeS.length / 120))
  const min: number[] = []
  const hottestC: number[] = []
  const viscosity: number[] = []
  const conversion: number[] = []
  for (let i = 0; i < h.timeS.length; i += step) {
    min.push(round(h.timeS[i]! / 60, 1))
    hottestC.push(round(h.maxC[i]!, 2))
    viscosity.push(Number(h.meanViscosityPaS[i]!.toPrecision(4)))
    conversion.push(round(h.meanConversion[i]!, 4))
  }
  return { min, hottestC, viscosityPaS: viscosity, conversion }
}

function round(x: number, digits: number): number {
  return Number(x.toFixed(digits))
}
