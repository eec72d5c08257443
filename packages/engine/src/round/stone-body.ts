import type { Work } from '../findings/work.ts'
import { difference, intersection } from '../shape/combine.ts'
import { bounds } from '../shape/measure.ts'
import { bedOf, stoneAt } from '../sheets/stone-marks.ts'
import { finishedHeight, finishedThickness } from '../stack/stack.ts'
import type { Mesh } from './prism.ts'

/** Colour of stones and shells, sRGB: by eye (estimate); the catalogue has none. */
const STONE_PAINT = '#b8b0a2'
/** A stone of a bed is about this high for its length (estimate). */
const FLATNESS = 0.55
/** Heights of the rings of points about a stone, as shares of half its height, between its two ends. */
const RINGS = [-0.75, -0.3, 0.3, 0.75] as const

export interface SolidBody extends Mesh {
  readonly kind: 'stones' | 'hardware'
  readonly name: string
  readonly words: string
  readonly at: string
  readonly paint: `#${string}`
}

/**
 * Stones of each entry: placed ones where they are placed, rounded off above and below; a zone as a bed on its
 * floor of the usual size, one layer of it, by the same seed as on the plan. What flattening takes off is off.
 */
export function stoneBodies(work: Work): SolidBody[] {
  const { piece, stack, materials, entries } = work
  const g = stack.geometry
  return piece.pours.flatMap((pour, p) =>
    pour.stones.flatMap((stones, s): SolidBody[] => {
      const record = materials.stones[p]![s]!
      const shell = record.id.startsWith('shell')
      const floor = stack.pours[p]!.floor
      const mesh = new StoneMesh()
      const put = (outline: Float64Array, x: number, y: number, base: number, heightMm: number) => {
        const a = finishedHeight(stack, base)
        const b = finishedHeight(stack, base + heightMm)
        mesh.add(outline, x, y, Math.min(a, b), Math.max(a, b), finishedThickness(stack))
      }
      if (stones.placed !== undefined) {
        stones.placed.forEach((one, i) => {
          const [x, y] = one.at
          const { outline } = stoneAt(x, y, one.size[0], one.size[1], shell, i + 31 * p)
          put(outline, x, y, one.height ?? floor, one.size[2])
        })
      } else {
        const whole = g.zones[p]![s] ?? g.pourRegions[p] ?? g.outline
        const zone = g.timbers.reduce((rest, t) => difference(rest, t.upper), intersection(whole, g.outline))
        if (zone.rings.length === 0) return []
        const size = (record.sizeMm[0] + record.sizeMm[1]) / 2
        const base = Math.max(floor, stones.from ?? floor)
        const room = (stones.to ?? stack.pours[p]!.level) - base
        for (const { outline } of bedOf(zone, bounds(zone), size, p * 7 + s + 1)) {
          const [x, y] = middleOf(outline)
          put(outline, x, y, base, Math.min(FLATNESS * size, room))
        }
      }
      const body = mesh.done()
      if (body.indices.length === 0) return []
      return [
        {
          ...body,
          kind: 'stones',
          name: record.name,
          words: `in ${entries.pours[p]!.id}`,
          at: `/pours/${p}/stones/${s}`,
          paint: STONE_PAINT
        }
      ]
    })
  )
}

function middleOf(outline: Float64Array): [number, number] {
  const b = bounds({ rings: [outline] })
  return [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2]
}

/** Gathers closed, rounded bodies: a point at each end and rings of points between. */
class StoneMesh {
  readonly #positions: number[] = []
  readonly #indices: number[] = []
  readonly #prisms: number[] = []
  readonly #heights: number[] = []
  readonly #rings: number[] = []

  /** One of the outline given, from z0 to z1, mm; flat where the faces of the piece cut it. */
  add(outline: Float64Array, x: number, y: number, z0: number, z1: number, thicknessMm: number): void {
    const low = Math.max(0, z0)
    const high = Math.min(thicknessMm, z1)
    if (high - low < 1e-3) return
    const first = this.#positions.length / 3
    const firstIndex = this.#indices.length
    const n = outline.length / 2
    const mid = (z0 + z1) / 2
    const half = (z1 - z0) / 2
    const z = (share: number) => Math.min(high, Math.max(low, mid + half * share))
    this.#positions.push(x, y, z(-1), x, y, z(1))
    for (const share of RINGS) {
      const r = Math.sqrt(1 - share * share)
      for (let k = 0; k < n; k++)
        this.#positions.push(x + r * (outline[2 * k]! - x), y + r * (outline[2 * k + 1]! - y), z(share))
    }
    const ring = (j: number, k: number) => first + 2 + j * n + (k % n)
    for (let k = 0; k < n; k++) {
      this.#indices.push(first, ring(0, k + 1), ring(0, k))
      for (let j = 0; j + 1 < RINGS.length; j++) {
        this.#indices.push(ring(j, k), ring(j, k + 1), ring(j + 1, k + 1))
        this.#indices.push(ring(j, k), ring(j + 1, k + 1), ring(j + 1, k))
      }
      this.#indices.push(first + 1, ring(RINGS.length - 1, k), ring(RINGS.length - 1, k + 1))
    }
    // On the plan a stone is as wide as at its widest: the ring nearest its middle.
    this.#rings.push(this.#prisms.length / 4, ring(1, 0), ring(1, 0) + n)
    this.#prisms.push(first, this.#positions.length / 3, firstIndex, this.#indices.length)
    this.#heights.push(low, high)
  }

  done(): Mesh {
    return {
      positions: Float32Array.from(this.#positions),
      indices: Uint32Array.from(this.#indices),
      prisms: Uint32Array.from(this.#prisms),
      heights: Float32Array.from(this.#heights),
      rings: Uint32Array.from(this.#rings),
      rims: new Float32Array(0)
    }
  }
}
