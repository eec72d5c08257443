import { machineField } from '../../piece/machine-field.ts'
import type { Shop, ShopMachine } from '../../piece/shop-schema.ts'

/** A small gantry machine, for a shop that names none: the schema's defaults over a usual travel (practice). */
const USUAL: ShopMachine = machineField.parse({ x: 800, y: 600 })

/** The machine that runs the cuts: the shop's, else a usual small one. */
export function machineOf(shop: Pick<Shop, 'machine'>): ShopMachine {
  return shop.machine ?? USUAL
}
