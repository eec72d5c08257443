import { InputProblem } from '../../../engine/src/piece/problem.ts'
import { bounds } from '../../../engine/src/shape/measure.ts'
import type { Region } from '../../../engine/src/shape/region.ts'
import { readSvg, SvgError } from '../../../engine/src/shape/svg.ts'
import type { DrawingPart } from './views.ts'

const TOL_MM = 0.01
/** Places after the point of the path shown, mm. */
const TENTHS = 10

/**
 * The named closed shapes of an SVG text, each with its size and its outline as path data the engine wrote
 * itself: the text of the file never reaches the page. "" is all of them together.
 * @throws InputProblem with line and column for what cannot be read
 */
export function drawingParts(text: string, name: string): DrawingPart[] {
  try {
    const all = readSvg(text, { tolMm: TOL_MM })
    const named = all.shapes.flatMap(s => (s.id === null || s.id === '' ? [] : [partOf(s.id, s.region)]))
    return [partOf('', all.region), ...named]
  } catch (e) {
    if (!(e instanceof SvgError)) throw e
    throw new InputProblem(name, [
      { path: '', found: e.message, allowed: 'an SVG file of paths and basic shapes', example: '' }
    ])
  }
}

function partOf(id: string, region: Region): DrawingPart {
  const b = bounds(region)
  const at = (mm: number) => Math.round(mm * TENTHS) / TENTHS
  const path = region.rings
    .map(ring => {
      let d = ''
      for (let k = 0; k < ring.length; k += 2)
        d += `${k === 0 ? 'M' : 'L'}${at(ring[k]! - b.minX)} ${at(b.maxY - ring[k + 1]!)}`
      return `${d}Z`
    })
    .join('')
  return {
    id,
    fromLeftMm: b.minX,
    fromTopMm: -b.maxY,
    widthMm: b.maxX - b.minX,
    heightMm: b.maxY - b.minY,
    path
  }
}
