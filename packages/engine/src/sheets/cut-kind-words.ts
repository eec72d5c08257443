import type { Work } from '../findings/work.ts'
import type { Lengths } from '../piece/lengths.ts'
import { lengthsOf } from '../piece/lengths.ts'
import { bounds } from '../shape/measure.ts'
import { offset } from '../shape/offset.ts'
import type { RunFact } from './run-part.ts'
import { fact } from './run-part.ts'

/** What a keyhole, a counterbore or an inlay is besides its size and depth, for the run sheet. */
export function kindFacts(work: Work, index: number): RunFact[] {
  const L = lengthsOf(work.shop)
  const { value } = work.entries.cuts[index]!
  if (value.kind === 'keyhole')
    return [
      fact('Neck', L.of(value.width!, 1), `${L.unit} wide`),
      fact('Head', L.of(value.head!, 1), `${L.unit} across`),
      fact('Lips', L.of(value.lip!, 1), `${L.unit} thick over the head`)
    ]
  if (value.kind === 'counterbore' && value.around !== undefined) return [fact('Round', value.around)]
  const { plug } = value
  if (plug === undefined) return []
  const pocket = work.stack.geometry.cutRegions[index]!
  const b = bounds(offset(pocket, -plug.gap, { join: 'round', tolMm: PLUG_TOL_MM }))
  const timber = work.materials.plugTimbers[index] ?? null
  return [
    fact(
      'Plug',
      `${L.of(b.maxX - b.minX, 2)} × ${L.of(b.maxY - b.minY, 2)}`,
      `${L.unit}, ${L.of(plug.gap, 2)} smaller all round, from ${L.of(plug.thickness, 1)} ${L.unit}${timber === null ? '' : ` ${timber.name}`}`
    ),
    fact(
      'Corners of both',
      L.of(plug.corner, 2),
      `${L.unit}: a cutter of at most ${L.of(2 * plug.corner, 1)}`
    ),
    ...(plug.relief > 0 ? [fact('Room under the plug', L.of(plug.relief, 1), `${L.unit} for glue`)] : [])
  ]
}

/** How far the outline of a plug may stray where its size is told, mm. */
const PLUG_TOL_MM = 0.005

/** The same in a few words, for the job card. */
export function kindWords(work: Work, index: number, L: Lengths): string[] {
  const { value } = work.entries.cuts[index]!
  if (value.kind === 'keyhole')
    return [
      `neck ${L.of(value.width!, 1)}, head ${L.of(value.head!, 1)}, lips ${L.of(value.lip!, 1)} ${L.unit}`
    ]
  if (value.plug !== undefined) return [`plug ${L.of(value.plug.gap, 2)} ${L.unit} smaller all round`]
  return value.kind === 'counterbore' && value.around !== undefined ? [`round ${value.around}`] : []
}
