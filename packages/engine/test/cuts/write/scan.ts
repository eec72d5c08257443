/**
 * A reader of programs for these tests alone: it knows the words that the writer may use and nothing of the writer, and
 * refuses everything else. Rules from RS274/NGC (NISTIR 6556): 256 letters a line, one word of a letter a line but G
 * and M, one G of a modal group, comments not nested, numbers without exponent, arcs with radii that agree.
 */
export interface Scanned {
  readonly moves: readonly ScannedMove[]
  readonly comments: readonly string[]
  readonly stops: number
  readonly words: readonly string[]
}

/** Lengths in mm, whatever the program is written in. */
export interface ScannedMove {
  readonly line: number
  readonly motion: 0 | 1 | 2 | 3
  readonly from: readonly [x: number, y: number, z: number]
  readonly to: readonly [x: number, y: number, z: number]
  readonly centre: readonly [x: number, y: number] | null
  readonly feed: number
  readonly spindle: number
  readonly tool: number
}

const GROUPS = [
  ['0', '1', '2', '3', '80', '81', '82', '83'],
  ['17', '18', '19'],
  ['90', '91'],
  ['93', '94'],
  ['20', '21'],
  ['40', '41', '42'],
  ['43', '49'],
  ['98', '99'],
  ['54', '55', '56', '57', '58', '59'],
  ['4']
]

export function scan(text: string): Scanned {
  const moves: ScannedMove[] = []
  const comments: string[] = []
  const words: string[] = []
  let at: [number, number, number] = [Number.NaN, Number.NaN, Number.NaN]
  let motion = ''
  let feed = 0
  let spindle = 0
  let speed = 0
  let tool = 0
  let unit = 0
  let stops = 0
  let ended = false
  let cycle: { z: number; r: number; q: number } | null = null
  if (!text.endsWith('\n')) throw new Error('the last line is not ended')
  text
    .slice(0, -1)
    .split('\n')
    .forEach((whole, index) => {
      const line = index + 1
      const fail = (what: string): never => {
        throw new Error(`line ${line}: ${what}: ${whole}`)
      }
      if (whole.length > 256) fail('too long')
      if (!/^[ -~]+$/.test(whole)) fail('not plain ASCII')
      const bare = whole.replace(/\(([^()]*)\)/g, (_, c: string) => {
        comments.push(c)
        return ''
      })
      if (/[()]/.test(bare)) fail('a bracket too many')
      if (bare.trim() === '') return
      if (ended) fail('after the end')
      const parts = bare.trim().split(' ')
      const of = new Map<string, string>()
      const gs: string[] = []
      const ms: string[] = []
      for (const part of parts) {
        if (!/^[A-Z]-?[0-9]+(\.[0-9]*)?$/.test(part)) fail(`no word: ${part}`)
        if (/^[A-Z]-0*(\.0*)?$/.test(part)) fail('minus nought')
        const letter = part[0]!
        const value = part.slice(1)
        if (letter === 'G') gs.push(value)
        else if (letter === 'M') ms.push(value)
        else if (of.has(letter)) fail('a letter twice')
        else of.set(letter, value)
        if (!'NGMXYZIJFSTPRQ'.includes(letter)) fail('a letter the writer has no use for')
        words.push(part)
      }
      for (const group of GROUPS) if (gs.filter(g => group.includes(g)).length > 1) fail('two of a group')
      for (const g of gs) if (!GROUPS.flat().includes(g)) fail(`G${g}`)
      const has = (letter: string) => of.has(letter)
      const value = (letter: string) => Number(of.get(letter))
      if (has('N') && !/^[0-9]{1,5}$/.test(of.get('N')!)) fail('a line number')
      if (gs.includes('21')) unit = 1
      if (gs.includes('20')) unit = 25.4
      if (has('F')) feed = value('F') * unit
      if (has('F') && !(value('F') > 0)) fail('no feed')
      if (has('S')) speed = value('S')
      if (has('T')) {
        if (!ms.includes('6')) fail('T without M6')
        tool = value('T')
      }
      if (ms.includes('6')) {
        if (spindle !== 0) fail('a change under a turning spindle')
        motion = ''
      }
      if (ms.includes('3')) spindle = speed
      if (ms.includes('3') && !(speed > 0)) fail('a spindle without speed')
      if (ms.includes('5')) spindle = 0
      if (gs.includes('4') && !has('P')) fail('a wait without length')
      const said = gs.find(g => GROUPS[0]!.includes(g))
      if (said !== undefined) motion = said
      const axes = has('X') || has('Y') || has('Z')
      if (axes && unit === 0) fail('a move before the unit')
      const to: [number, number, number] = [
        has('X') ? value('X') * unit : at[0],
        has('Y') ? value('Y') * unit : at[1],
        has('Z') ? value('Z') * unit : at[2]
      ]
      const go = (kind: 0 | 1 | 2 | 3, place: [number, number, number], centre: [number, number] | null) => {
        moves.push({ line, motion: kind, from: at, to: place, centre, feed, spindle, tool })
        at = place
      }
      if (axes && (motion === '0' || motion === '1')) go(motion === '0' ? 0 : 1, to, null)
      else if (motion === '2' || motion === '3') {
        if (axes || said !== undefined) {
          if (!has('I') || !has('J') || !(has('X') && has('Y'))) fail('an arc that lacks a word')
          const c: [number, number] = [at[0] + value('I') * unit, at[1] + value('J') * unit]
          const apart = Math.abs(
            Math.hypot(at[0] - c[0], at[1] - c[1]) - Math.hypot(to[0] - c[0], to[1] - c[1])
          )
          if (!(apart <= (unit === 1 ? 0.002 : 0.0002 * 25.4) + 1e-9)) fail(`radii ${apart} apart`)
          go(motion === '2' ? 2 : 3, to, c)
        }
      } else if (axes && /^8[123]$/.test(motion)) {
        // NISTIR 6556, 3.5.16: over, down to R, down to Z by Q, out to where it stood (G98).
        const clear = at[2]
        cycle = {
          z: has('Z') ? value('Z') * unit : cycle!.z,
          r: has('R') ? value('R') * unit : cycle!.r,
          q: has('Q') ? value('Q') * unit : (cycle?.q ?? 0)
        }
        if (motion === '83' && !(cycle.q > 0)) fail('no Q')
        if (cycle.r < cycle.z) fail('R under Z')
        go(0, [to[0], to[1], clear], null)
        go(0, [to[0], to[1], cycle.r], null)
        for (let z = cycle.r; z > cycle.z; ) {
          z = motion === '83' ? Math.max(cycle.z, z - cycle.q) : cycle.z
          go(1, [to[0], to[1], z], null)
          go(0, [to[0], to[1], clear], null)
          if (z > cycle.z) go(0, [to[0], to[1], z], null)
        }
      } else if (axes) fail('a place without a motion')
      if (motion === '80') cycle = null
      if (ms.includes('0')) {
        if (spindle !== 0 && !ms.includes('6')) fail('a stop under a turning spindle')
        stops++
      }
      if (ms.includes('2') || ms.includes('30')) {
        ended = true
        if (spindle !== 0) fail('it ends with the spindle on')
      }
    })
  if (!ended) throw new Error('it does not end')
  return { moves, comments, stops, words }
}
