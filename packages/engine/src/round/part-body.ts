import type { Work } from '../findings/work.ts'
import { circle, rectangle } from '../shape/build.ts'
import { rotate } from '../shape/transform.ts'
import { finishedThickness } from '../stack/stack.ts'
import { prismMesh } from './prism.ts'
import type { SolidBody } from './stone-body.ts'

/** Colour parts are drawn in, sRGB: a light grey, so that they read as not of the piece. */
const PART_PAINT = '#c9ccd0'

/** Bought-in parts as plain solids of their size, from the face they sit at; those without a known size are left out. */
export function partBodies(work: Work): SolidBody[] {
  const thick = finishedThickness(work.stack)
  return work.fits.flatMap((fit, i): SolidBody[] => {
    const { part } = fit
    const entry = work.entries.hardware[i]!
    if (part === null || part.depthMm <= 0) return []
    const depth = Math.min(part.depthMm, thick)
    const region =
      part.shape === 'round'
        ? circle(part.widthMm, 0.02, fit.x, fit.y)
        : rotate(
            rectangle(part.lengthMm, part.widthMm, 0, 0.02, fit.x, fit.y),
            entry.value.turn,
            fit.x,
            fit.y
          )
    const [from, to] = entry.value.face === 'back' ? [0, depth] : [thick - depth, thick]
    const mesh = prismMesh([{ region, from, to, stepsBelow: false, stepsAbove: false }], 1)
    return [
      { ...mesh, kind: 'hardware', name: entry.id, words: fit.record.name, at: entry.at, paint: PART_PAINT }
    ]
  })
}
