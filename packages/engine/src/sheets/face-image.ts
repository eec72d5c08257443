import { colourKernel } from '../fits/colour-kernel.ts'
import { bounds } from '../shape/measure.ts'
import type { Bounds } from '../shape/region.ts'
import { coreGrid } from '../stack/core-grid.ts'
import type { CoreModel } from './core-model.ts'

/** A picture of a face: four bytes a pixel (red, green, blue, opacity), rows from the top, as it is looked at. */
export interface FaceImage {
  readonly width: number
  readonly height: number
  readonly rgba: Uint8ClampedArray<ArrayBuffer>
  /** Where it lies on the plan, mm; the back is seen mirrored. */
  readonly box: Bounds
}

export interface FaceImageOptions {
  readonly face: 'front' | 'back'
  /** Side of a pixel, mm. */
  readonly pixelMm: number
  /** Only where heights vary over the plan, the rest left open: what lies level a drawing fills by itself. */
  readonly varyingOnly?: boolean
}

/**
 * The computed colour of a face at every point: the core of every pixel, seen from that side.
 *
 * Limits: scales are lines of a drawing and not in it; edges as they are before a chamfer or a rounding; no gloss and
 * no shadow.
 * @throws RangeError for more pixels than {@link coreGrid} takes
 */
export function faceImage(model: CoreModel, options: FaceImageOptions): FaceImage {
  const { face, pixelMm, varyingOnly } = options
  const box = bounds(model.geometry.outline)
  const events = model.events.filter(e => e.kind !== 'mark' && !(e.kind === 'fill' && e.what === 'marking'))
  const grid = coreGrid(model.geometry, events, box, pixelMm, [model.finishedLow, model.finishedHigh])
  const kernel = colourKernel(model.looks, face)
  const colours = Int32Array.from(grid.cores, core => kernel.colour(core))
  const { nx, ny, at, varies } = grid
  const rgba = new Uint8ClampedArray(4 * nx * ny)
  for (let row = 0; row < ny; row++) {
    const from = (ny - 1 - row) * nx
    for (let i = 0; i < nx; i++) {
      const pixel = from + (face === 'front' ? i : nx - 1 - i)
      if (at[pixel]! < 0 || (varyingOnly && varies[pixel] === 0)) continue
      const colour = colours[at[pixel]!]!
      if (colour < 0) continue
      const to = 4 * (row * nx + i)
      rgba[to] = colour >> 16
      rgba[to + 1] = (colour >> 8) & 255
      rgba[to + 2] = colour & 255
      rgba[to + 3] = 255
    }
  }
  const whole = { ...box, maxX: box.minX + nx * pixelMm, maxY: box.minY + ny * pixelMm }
  return { width: nx, height: ny, rgba, box: whole }
}

/** Whether heights vary anywhere on the plan: whether {@link faceImage} has anything to add to a drawing. */
export function variesOnPlan(model: CoreModel): boolean {
  return (
    model.geometry.timbers.some(t => t.lofts !== null || t.top.kind !== 'flat') ||
    model.events.some(
      e => e.kind === 'cut' && e.removal.region === null && e.removal.profile!.kind !== 'flat'
    )
  )
}

/** The width of a pixel, mm, that keeps a face to a number of pixels, and no finer than `leastMm`. */
export function pixelFor(box: Bounds, most: number, leastMm: number): number {
  return Math.max(leastMm, Math.sqrt(((box.maxX - box.minX) * (box.maxY - box.minY)) / most))
}
