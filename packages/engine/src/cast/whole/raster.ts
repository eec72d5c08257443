import { bounds, inside } from '../../shape/measure.ts'
import type { CoreInterval } from '../../stack/core.ts'
import { coreAt } from '../../stack/core.ts'
import type { Stack } from '../../stack/stack.ts'
import type { Fineness, Levels } from './levels.ts'

/** A mould in cells: what each holds. */
export interface Raster {
  readonly nx: number
  readonly ny: number
  readonly dxMm: number
  readonly dyMm: number
  /** Corner of the first cell on the plan, mm. */
  readonly x0: number
  readonly y0: number
  readonly levels: Levels
  /** Key of what each cell holds, z fastest, then x, then y; 0: nothing. */
  readonly cells: Uint8Array
  readonly keys: readonly CellKey[]
}

/** What a cell holds. `stones`: which entry of the pour's stones lies in it. */
export type CellKey =
  | { readonly kind: 'timber'; readonly index: number }
  | { readonly kind: 'former'; readonly index: number }
  | { readonly kind: 'pour'; readonly index: number; readonly stones: number | null }

/** Numbers of a byte: what a cell can be told from. */
const MOST_KEYS = 255

/**
 * The mould in cells, by what stands at the middle of each. Columns whose middle lies outside the mould hold nothing.
 * null when there are more different contents than a byte tells apart.
 *
 * Limits: outlines become staircases; what is narrower than a cell is met or missed as its middle falls.
 */
export function rasterOf(stack: Stack, fineness: Fineness, levels: Levels): Raster | null {
  const { mould } = stack.geometry
  const b = bounds(mould)
  const [w, h] = [b.maxX - b.minX, b.maxY - b.minY]
  const nz = levels.dzM.length
  const wanted = Math.min(fineness.wideMm, Math.min(w, h) / fineness.leastColumns)
  // A cell of the mould is at most twice as wide as it must be for the number of cells to hold.
  const wide = Math.max(wanted, Math.sqrt((w * h * nz) / fineness.mostCells))
  const nx = Math.max(1, Math.round(w / wide))
  const ny = Math.max(1, Math.round(h / wide))
  const [dx, dy] = [w / nx, h / ny]
  const cells = new Uint8Array(nx * ny * nz)
  const keys: CellKey[] = []
  const known = new Map<string, number>()
  const numberOf = (key: CellKey): number => {
    const name = `${key.kind} ${key.index} ${key.kind === 'pour' ? key.stones : ''}`
    const had = known.get(name)
    if (had !== undefined) return had
    keys.push(key)
    known.set(name, keys.length)
    return keys.length
  }
  const events = stack.events.slice(0, inMould(stack))
  const middles = levels.dzM.map((_, k) => (levels.facesMm[k]! + levels.facesMm[k + 1]!) / 2)
  for (let iy = 0; iy < ny; iy++) {
    const y = b.minY + (iy + 0.5) * dy
    for (let ix = 0; ix < nx; ix++) {
      const x = b.minX + (ix + 0.5) * dx
      if (!inside(mould, x, y)) continue
      const core = coreAt(stack.geometry, events, x, y)
      const at = (iy * nx + ix) * nz
      for (let iz = 0; iz < nz; iz++) {
        const key = keyAt(stack, core, x, y, middles[iz]!)
        if (key !== null) cells[at + iz] = numberOf(key)
      }
    }
    if (keys.length > MOST_KEYS) return null
  }
  return { nx, ny, dxMm: dx, dyMm: dy, x0: b.minX, y0: b.minY, levels, cells, keys }
}

/** How many events lie before the casting leaves its mould or is cut: what the cast sees. */
function inMould(stack: Stack): number {
  const end = stack.events.findIndex(e => e.kind !== 'timber' && e.kind !== 'former' && e.kind !== 'pour')
  return end < 0 ? stack.events.length : end
}

function keyAt(stack: Stack, core: readonly CoreInterval[], x: number, y: number, z: number): CellKey | null {
  const found = core.find(part => part.from <= z && part.to > z)
  if (found === undefined) return null
  const { kind, index } = found.material
  if (kind === 'timber' || kind === 'former') return { kind, index }
  if (kind !== 'pour') return null
  const pour = stack.piece.pours[index]!
  const { floor, level } = stack.pours[index]!
  const stones = pour.stones.findIndex((s, j) => {
    if (s.placed !== undefined || z < (s.from ?? floor) || z > (s.to ?? level)) return false
    const zone = stack.geometry.zones[index]![j]!
    return zone === null || inside(zone, x, y)
  })
  return { kind: 'pour', index, stones: stones < 0 ? null : stones }
}
