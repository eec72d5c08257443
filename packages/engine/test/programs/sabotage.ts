/**
 * What goes wrong with a program, done to its text: knows nothing of how it was made. Distances are 1.5 times what
 * proving says it tells apart.
 */
export type Sabotage =
  | 'zero along x'
  | 'zero up'
  | 'zero down'
  | 'mirrored'
  | 'half turned'
  | 'wrong cutter'
  | 'deeper'
  | 'missing retract'
  | 'swapped arc'
  | 'wrong plane'
  | 'inch for mm'

export interface Limits {
  readonly upMm: number
  readonly acrossMm: number
}

const word = (letter: string) => new RegExp(`(^|[^A-Z0-9.])${letter}(-?[0-9]*\\.?[0-9]+)`)

// Lines that move: comments and what is before the first move are left alone.
function moved(text: string, change: (line: string) => string): string {
  return text
    .split('\n')
    .map(line => (line.startsWith('(') || line.startsWith('M') ? line : change(line)))
    .join('\n')
}

function added(line: string, letter: string, by: (v: number) => number): string {
  return line.replace(
    word(letter),
    (_, before: string, v: string) => `${before}${letter}${by(Number(v)).toFixed(3)}`
  )
}

const negated = (line: string, letters: string) => [...letters].reduce((l, c) => added(l, c, v => -v), line)
const turned = (line: string) => line.replace(/G([23])(?![0-9])/, (_, g: string) => `G${g === '2' ? 3 : 2}`)

/** The sabotaged text; null where this program has nothing to do it to. */
export function sabotaged(text: string, how: Sabotage, limits: Limits): string | null {
  const up = 1.5 * limits.upMm
  switch (how) {
    case 'zero along x':
      return moved(text, l => added(l, 'X', v => v + 1.5 * limits.acrossMm))
    case 'zero up':
      return moved(text, l => added(l, 'Z', v => v + up))
    case 'zero down':
      return moved(text, l => added(l, 'Z', v => v - up))
    case 'deeper':
      return moved(text, l => added(l, 'Z', v => (v < 0 ? v - up : v)))
    case 'mirrored':
      return moved(text, l => turned(negated(l, 'XI')))
    case 'half turned':
      return moved(text, l => negated(l, 'XYIJ'))
    case 'wrong cutter':
      return text
    case 'inch for mm':
      return text.includes('\nG21\n') ? text.replace('\nG21\n', '\nG20\n') : null
    case 'wrong plane': {
      const lines = text.split('\n')
      const arc = lines.findIndex(l => /G[23](?![0-9])/.test(l) && !l.startsWith('('))
      if (arc < 0) return null
      lines.splice(arc, 0, 'G18')
      return lines.join('\n')
    }
    case 'swapped arc': {
      const lines = text.split('\n')
      // The longest arc that is no full circle: about a corner of the part.
      let best = -1
      let most = 3
      lines.forEach((l, i) => {
        const [x, a, b] = ['X', 'I', 'J'].map(c => word(c).exec(l)?.[2])
        if (!/G[23](?![0-9])/.test(l) || l.startsWith('(') || x === undefined) return
        const r = Math.hypot(Number(a ?? 0), Number(b ?? 0))
        if (r <= most) return
        most = r
        best = i
      })
      if (best < 0) return null
      lines[best] = turned(lines[best]!)
      return lines.join('\n')
    }
    case 'missing retract': {
      const lines = text.split('\n')
      // A lift between two places: up at rapid out of the work, then across. Remarks may stand between.
      const next = (from: number) => lines.findIndex((l, i) => i > from && l !== '' && !l.startsWith('('))
      const at = lines.findIndex(
        (l, i) =>
          /^G0 Z[0-9]/.test(l) && /^(G1 )?X/.test(lines[i - 1] ?? '') && /^(G0 )?X/.test(lines[next(i)] ?? '')
      )
      if (at < 0) return null
      const across = next(at)
      // The way across stays at rapid speed.
      lines[across] = `G0 ${lines[across]!.replace(/^G0 /, '')}`
      lines[at] = ''
      return lines.join('\n')
    }
  }
}
