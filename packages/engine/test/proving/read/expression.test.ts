import { describe, expect, it } from 'vitest'
import { Complaints } from '../../../src/proving/read/complaint.ts'
import { Values } from '../../../src/proving/read/expression.ts'
import { Parameters } from '../../../src/proving/read/parameters.ts'
import { Scanner } from '../../../src/proving/read/scanner.ts'
import { randomFrom } from '../../shape/random.ts'
import { movesOf } from './moves.ts'
import { yard } from './yard.ts'

const PARAMETERS = { 1: 2, 2: 30.5, 3: 1, 4: -7, 5: 0, 17: 5 }

function worth(text: string): number {
  const complaints = new Complaints()
  const scanner = new Scanner(text, complaints)
  scanner.line(0, text.length)
  return new Values(scanner, new Parameters(complaints, PARAMETERS)).real()
}

const OPERATORS = ['+', '-', '*', '/', '**', 'MOD', 'AND', 'OR', 'XOR']
const FUNCTIONS = ['ABS', 'ACOS', 'ASIN', 'COS', 'EXP', 'FIX', 'FUP', 'LN', 'ROUND', 'SIN', 'SQRT', 'TAN']

// A seeded expression; numbers are quarters, so that rounding cannot tip FIX, FUP, ROUND and MOD.
function grow(random: () => number, depth: number): string {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!
  const kind = depth <= 0 ? random() * 0.4 : random()
  if (kind < 0.3) return `${random() < 0.2 ? '-' : ''}${Math.floor(random() * 40) / 4}`
  if (kind < 0.4) return `#${pick(['1', '2', '3', '4', '5', '17', '#3', '[1+1]'])}`
  if (kind < 0.55) return `${pick(FUNCTIONS)}[${grow(random, depth - 1)}]`
  if (kind < 0.6) return `ATAN[${grow(random, depth - 1)}]/[${grow(random, depth - 1)}]`
  let text = grow(random, depth - 1)
  for (let k = Math.ceil(random() * 4); k > 0; k--) text += `${pick(OPERATORS)}${grow(random, depth - 1)}`
  return `[${text}]`
}

const odd = (random: () => number, text: string): string =>
  [...text].map(c => (random() < 0.5 ? c.toLowerCase() : c) + (random() < 0.1 ? ' ' : '')).join('')

describe('expressions', () => {
  it('agree with their slow twin on 10,000 seeded ones, errors too', () => {
    const random = randomFrom(21)
    let sound = 0
    let bad = 0
    for (let n = 0; n < 10_000; n++) {
      const text = odd(random, grow(random, 3))
      let twin: number
      try {
        twin = yard(text, PARAMETERS)
      } catch {
        twin = Number.NaN
      }
      let ours: number
      try {
        ours = worth(text)
      } catch {
        ours = Number.NaN
        bad++
      }
      expect(Number.isNaN(ours), `${text}: ${ours}, twin ${twin}`).toBe(Number.isNaN(twin))
      if (Number.isNaN(ours)) continue
      sound++
      expect(
        Math.abs(ours - twin) <= 1e-9 * Math.max(1, Math.abs(twin)),
        `${text}: ${ours}, twin ${twin}`
      ).toBe(true)
    }
    expect(sound).toBeGreaterThan(5000)
    expect(bad).toBeGreaterThan(500)
  })

  // Handbook values and plain arithmetic.
  it.each([
    ['[2**3**2]', 64],
    ['[1-2-3]', -4],
    ['[8/4/2]', 1],
    ['[1+2*3**2]', 19],
    ['[-7 MOD 3]', 2],
    ['[7 MOD -3]', 1],
    ['[3 AND 0 OR 1]', 1],
    ['[1 XOR 1]', 0],
    ['SIN[30]', 0.5],
    ['COS[60]', 0.5],
    ['TAN[45]', 1],
    ['ASIN[1]', 90],
    ['ACOS[-1]', 180],
    ['ATAN[1]/[-1]', 135],
    ['ATAN[-1]/[0]', -90],
    ['EXP[0]', 1],
    ['LN[EXP[2]]', 2],
    ['FIX[-2.5]', -3],
    ['FUP[-2.5]', -2],
    ['ROUND[2.5]', 3],
    ['ROUND[-2.5]', -3],
    ['SQRT[2.25]', 1.5],
    ['##3', 2],
    ['a b s [ - 3 ]', 3],
    [`${'['.repeat(64)}5${']'.repeat(64)}`, 5]
  ])('%s is %d', (text, value) => {
    expect(worth(text)).toBeCloseTo(value, 12)
  })

  it('stand wherever a number may: codes, line after line, parameters by number', () => {
    const text = 'G[10+11] G[180/2]\n#[1+1]=4 #5=[#17 * 2]\nG0 X#2 Y##6 Z[#5]\nM[1+1]'
    expect(movesOf(text, { parameters: { 17: 5, 6: 2 } })).toEqual([['rapid', 4, 4, 10]])
  })
})
