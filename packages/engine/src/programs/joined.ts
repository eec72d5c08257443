import type { Motions } from '../proving/motion.ts'

/**
 * Programs run one after the other as one list of moves. Lines count on: those of the second begin after the last line
 * of the first at which a move is made.
 */
export function joined(parts: readonly Motions[]): Motions {
  if (parts.length === 1) return parts[0]!
  const count = parts.reduce((sum, p) => sum + p.count, 0)
  const out: Motions = {
    count,
    kind: new Uint8Array(count),
    line: new Uint32Array(count),
    x: new Float64Array(count),
    y: new Float64Array(count),
    z: new Float64Array(count),
    a: new Float64Array(count),
    b: new Float64Array(count),
    plane: new Uint8Array(count),
    feed: new Float32Array(count),
    spindle: new Float32Array(count),
    tool: new Uint16Array(count),
    offset: new Uint16Array(count)
  }
  let at = 0
  let lines = 0
  for (const p of parts) {
    for (const key of [
      'kind',
      'x',
      'y',
      'z',
      'a',
      'b',
      'plane',
      'feed',
      'spindle',
      'tool',
      'offset'
    ] as const)
      out[key].set(p[key].subarray(0, p.count), at)
    for (let i = 0; i < p.count; i++) out.line[at + i] = p.line[i]! + lines
    if (p.count > 0) lines += p.line[p.count - 1]!
    at += p.count
  }
  return out
}

/** Which of the joined programs a line is of, and its line there. */
export function partOfLine(
  parts: readonly { readonly lastLine: number }[],
  line: number
): [part: number, line: number] {
  let left = line
  for (const [i, { lastLine }] of parts.entries()) {
    if (left <= lastLine || i === parts.length - 1) return [i, left]
    left -= lastLine
  }
  return [0, line]
}
