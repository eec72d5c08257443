import { describe, expect, it } from 'vitest'
import type { CutterShape } from '../../../src/catalogue/cutter-shape.ts'
import { chance } from '../../stack/random.ts'
import { cutter } from '../program.ts'
import { slab, swept } from './slab.ts'
import { stamp } from './stamp.ts'

const CUTTERS: Record<string, CutterShape> = {
  flat: cutter(),
  ball: cutter({ form: 'ball' }),
  bull: cutter({ form: 'bull', cornerMm: 1.2 }),
  v: cutter({ form: 'v', angleDeg: 60, tipMm: 0.4 }),
  'wide v': cutter({ form: 'v', angleDeg: 120 }),
  drill: cutter({ form: 'drill', angleDeg: 118 })
}

type Way = [number, number, number][]

// A walk of some moves: long and short, level and sloped, up and down on the spot, there and back again.
function walkOf(seed: number): Way {
  const { next } = chance(seed)
  const way: Way = [[next() * 20 - 10, next() * 12 - 6, 1]]
  for (let k = 0; k < 10; k++) {
    const [x, y, z] = way[way.length - 1]!
    const kind = next()
    if (kind < 0.15) way.push([x, y, -5 * next()])
    else if (kind < 0.3 && way.length > 1) way.push(way[way.length - 2]!)
    else {
      const long = next() < 0.5 ? 0.3 + next() : 10 * next()
      const a = 2 * Math.PI * next()
      const to = next() < 0.4 ? z : Math.max(-8, Math.min(1, z + (next() - 0.6) * 2 * long))
      way.push([
        Math.max(-14, Math.min(14, x + long * Math.cos(a))),
        Math.max(-9, Math.min(9, y + long * Math.sin(a))),
        to
      ])
    }
  }
  return way
}

// A curve in short chords that turns, rises and falls gently: most moves of real programs.
function curveOf(seed: number): Way {
  const { next } = chance(seed)
  const way: Way = [[next() * 8 - 12, next() * 8 - 4, -1]]
  let a = next() - 0.5
  let [bend, slope] = [0, 0]
  for (let k = 0; k < 60; k++) {
    if (k % 12 === 0) {
      bend = k === 24 ? 0 : 0.12 * (next() - 0.5)
      slope = next() < 0.4 ? 0 : 0.8 * (next() - 0.6)
    }
    a += bend
    const long = 0.15 + 0.4 * next()
    const [x, y, z] = way[way.length - 1]!
    way.push([x + long * Math.cos(a), y + long * Math.sin(a), Math.max(-8, Math.min(1, z + long * slope))])
  }
  return way
}

const STEP_MM = 0.04

describe('sweeping by closed form', () => {
  for (const [name, c] of Object.entries(CUTTERS))
    for (const [kind, wayOf] of [
      ['walks', walkOf],
      ['curves', curveOf]
    ] as const)
      it(`leaves what stamping at every ${STEP_MM} mm leaves: ${name}, ${kind}`, () => {
        for (let seed = 1; seed <= 4; seed++) {
          const block = slab(0.8, 40, 28)
          const way = wayOf(100 * seed + name.length)
          swept(block, c, way)
          block.ensure(0, 0, block.nx - 1, block.ny - 1)
          const top = new Float64Array(block.nx * block.ny).fill(0)
          stamp(
            top,
            block.nx,
            i => block.xOf(i),
            j => block.yOf(j),
            c,
            way,
            STEP_MM
          )
          let beyond = 0
          let least = 0
          let cut = 0
          for (let p = 0; p < top.length; p++) {
            const ours = Math.max(-20, block.top[p]!)
            // The twin stands at most half a step off: it leaves more by the slope there, and misses what only the
            // very edge of the cutter grazes.
            const over = Math.max(-20, top[p]!) - ours
            least = Math.min(least, over)
            if (over > 1.5 * STEP_MM) beyond++
            if (ours < 0) cut++
          }
          expect(least, `seed ${seed}`).toBeGreaterThan(-2e-4)
          expect(beyond, `seed ${seed} of ${cut}`).toBeLessThan(0.02 * cut + 2)
        }
      })
})
