import type { Work } from '../findings/work.ts'
import { decimals } from '../quantity/format.ts'
import { bounds } from '../shape/measure.ts'
import { offset } from '../shape/offset.ts'
import type { RunFact } from './run-part.ts'
import { fact } from './run-part.ts'

/** What a keyhole, a counterbore or an inlay is besides its size and depth, for the run sheet. */
export function kindFacts(work: Work, index: number): RunFact[] {
  const { value } = work.entries.cuts[index]!
  if (value.kind === 'keyhole')
    return [
      fact('Neck', decimals(value.width!, 1), 'mm wide'),
      fact('Head', decimals(value.head!, 1), 'mm across'),
      fact('Lips', decimals(value.lip!, 1), 'mm thick over the head')
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
      `${decimals(b.maxX - b.minX, 2)} × ${decimals(b.maxY - b.minY, 2)}`,
      `mm, ${decimals(plug.gap, 2)} smaller all round, from ${decimals(plug.thickness, 1)} mm${timber === null ? '' : ` ${timber.name}`}`
    ),
    fact(
      'Corners of both',
      decimals(plug.corner, 2),
      `mm: a cutter of at most ${decimals(2 * plug.corner, 1)}`
    ),
    ...(plug.relief > 0 ? [fact('Room under the plug', decimals(plug.relief, 1), 'mm for glue')] : [])
  ]
}

/** How far the outline of a plug may stray where its size is told, mm. */
const PLUG_TOL_MM = 0.005

/** The same in a few words, for the job card. */
export function kindWords(work: Work, index: number): string[] {
  const { value } = work.entries.cuts[index]!
  if (value.kind === 'keyhole')
    return [
      `neck ${decimals(value.width!, 1)}, head ${decimals(value.head!, 1)}, lips ${decimals(value.lip!, 1)} mm`
    ]
  if (value.plug !== undefined) return [`plug ${decimals(value.plug.gap, 2)} mm smaller all round`]
  return value.kind === 'counterbore' && value.around !== undefined ? [`round ${value.around}`] : []
}
