import { DrawingError, quote } from './drawing-error.ts'
import type { Matrix } from './matrix.ts'
import { IDENTITY, multiply } from './matrix.ts'
import { LARGEST_NUMBER, numberList, Scanner } from './scanner.ts'

// How many numbers each function takes.
const COUNTS: Readonly<Record<string, readonly number[]>> = {
  matrix: [6],
  translate: [1, 2],
  scale: [1, 2],
  rotate: [1, 3],
  skewX: [1],
  skewY: [1]
}

/** A shift. */
export function shift(x: number, y: number): Matrix {
  return [1, 0, 0, 1, x, y]
}

/**
 * The map a `transform` attribute stands for: of a list, the last is done first.
 *
 * Source: SVG 1.1, section 7.6 "The transform attribute" (W3C; memory). Angles are degrees; positive turns
 * from +x to +y, which on SVG's y down is clockwise to the eye.
 *
 * @throws DrawingError for another function, a wrong count of numbers, numbers or a stretch beyond 1e7
 */
export function readTransform(text: string): Matrix {
  if (text.trim() === 'none') return IDENTITY
  let m: Matrix = IDENTITY
  const s = new Scanner(text)
  s.skipBlanks()
  while (!s.done) {
    const from = s.at
    const name = s.word()
    s.skipBlanks()
    const open = s.at + 1
    const end = text.indexOf(')', open)
    if (!Object.hasOwn(COUNTS, name) || !s.take('(') || end < 0) {
      throw new DrawingError(
        `transform=${quote(text.slice(from, from + 60))}; allowed: matrix, translate, scale, rotate, skewX ` +
          'and skewY with plain numbers in brackets'
      )
    }
    const numbers = numberList(text.slice(open, end), `transform ${name}`)
    if (!COUNTS[name]!.includes(numbers.length)) {
      throw new DrawingError(`${name} with ${numbers.length} numbers; allowed: ${COUNTS[name]!.join(' or ')}`)
    }
    m = within(multiply(m, one(name, numbers)))
    s.at = end + 1
    s.skipComma()
  }
  return m
}

/** The map itself. @throws DrawingError for one that stretches or shifts so far that no sense is left in it */
export function within(m: Matrix): Matrix {
  for (const [k, value] of m.entries()) {
    const most = k < 4 ? LARGEST_NUMBER : LARGEST_NUMBER ** 2
    if (!(Math.abs(value) <= most)) {
      const does = k < 4 ? 'stretches' : 'shifts'
      throw new DrawingError(`a transform that ${does} by ${value}; allowed: up to ${most}`)
    }
  }
  return m
}

function one(name: string, n: readonly number[]): Matrix {
  switch (name) {
    case 'matrix':
      return [n[0]!, n[1]!, n[2]!, n[3]!, n[4]!, n[5]!]
    case 'translate':
      return shift(n[0]!, n[1] ?? 0)
    case 'scale':
      return [n[0]!, 0, 0, n[1] ?? n[0]!, 0, 0]
    case 'rotate': {
      const [cos, sin] = cosSin(n[0]!)
      const turn: Matrix = [cos, sin, -sin, cos, 0, 0]
      if (n.length === 1) return turn
      return multiply(multiply(shift(n[1]!, n[2]!), turn), shift(-n[1]!, -n[2]!))
    }
    case 'skewX':
      return [1, 0, tangent(n[0]!), 1, 0, 0]
    default:
      return [1, tangent(n[0]!), 0, 1, 0, 0]
  }
}

// Quarter turns are exact.
function cosSin(degrees: number): readonly [number, number] {
  const quarters = degrees / 90
  if (Number.isInteger(quarters)) {
    const q = ((quarters % 4) + 4) % 4
    return [[1, 0, -1, 0][q]!, [0, 1, 0, -1][q]!]
  }
  const a = ((degrees % 360) * Math.PI) / 180
  return [Math.cos(a), Math.sin(a)]
}

function tangent(degrees: number): number {
  return Math.tan(((degrees % 180) * Math.PI) / 180)
}
