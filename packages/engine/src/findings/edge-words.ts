import type { Edge } from '../cast/whole/whole-cast.ts'
import { decimals, formatC } from '../quantity/format.ts'

/** A margin below this is none, mm and K. */
const NONE_MM = 0.05
const NONE_K = 0.1

/** How far a pour of this depth when poured is from the limit, in mm and °C; empty where there is no edge to tell of. */
export function edgeWords(edge: Edge, liquidDepthMm: number): string {
  const mm = edge.depthMm === null ? null : edge.depthMm - liquidDepthMm
  const limit = formatC(edge.limitC)
  const parts: string[] = []
  if (mm !== null && edge.depthMm! > 0 && Math.abs(mm) > NONE_MM)
    parts.push(`${decimals(Math.abs(mm), 1)} mm ${mm < 0 ? 'less' : 'more'}`)
  if (edge.roomK !== null && Math.abs(edge.roomK) > NONE_K)
    parts.push(`a room ${decimals(Math.abs(edge.roomK), 1)} °C ${edge.roomK < 0 ? 'cooler' : 'warmer'}`)
  if (parts.length === 0) return ''
  const over = (mm ?? 0) < 0 || (edge.roomK ?? 0) < 0
  return over
    ? `${parts.join(' or ')} keeps the top of its band at ${limit}`
    : `${parts.join(' or ')} brings the top of its band to ${limit}`
}
