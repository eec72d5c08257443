import { LIQUID_FROM_C, liquidBelow } from '../../resin/column-grid.ts'
import type { FieldKernel } from './field-kernel.ts'
import type { ResinMaterial } from './field-problem.ts'

/** A resin that mixes itself while it is liquid: its number in the kernel, and the conversion up to which it does. */
export interface Liquid {
  readonly number: number
  readonly material: ResinMaterial
  /** By whole °C, see {@link liquidBelow}. */
  readonly below: Float64Array
}

/** Those of the resins whose liquid conducts better than their solid. */
export function liquidsOf(resins: readonly ResinMaterial[]): readonly Liquid[] {
  return resins.flatMap((material, i) =>
    (material.liquidMultiplier ?? 1) === 1
      ? []
      : [{ number: i + 1, material, below: liquidBelow(material.resin) }]
  )
}

/** A liquid that mixes itself conducts better: the factor stands while it is thin and little cured. Allocates nothing. */
export function mixLiquid({ number, material, below }: Liquid, kernel: FieldKernel): void {
  const conversion = kernel.conversion()
  const k = material.stones?.k ?? 1
  const { bulk } = material.resin
  const { resin, tempC, kBase, kSlope } = kernel
  for (let c = 0; c < resin.length; c++) {
    if (resin[c] !== number) continue
    const at = Math.round(tempC[c]!) - LIQUID_FROM_C
    const limit = below[at < 0 ? 0 : at < below.length ? at : below.length - 1]!
    const times = conversion[c]! < limit ? k * material.liquidMultiplier! : k
    kBase[c] = bulk.kLiquidWmK * times
    kSlope[c] = bulk.kSlopeWmK * times
  }
}
