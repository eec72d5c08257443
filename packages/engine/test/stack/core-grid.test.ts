import { describe, expect, it } from 'vitest'
import { bounds, inside } from '../../src/shape/measure.ts'
import type { CoreInterval } from '../../src/stack/core.ts'
import { coreAt } from '../../src/stack/core.ts'
import { coreGrid, STEP_MM } from '../../src/stack/core-grid.ts'
import { pixelX, pixelY } from '../../src/stack/grid-rows.ts'
import type { Stack } from '../../src/stack/stack.ts'
import { plainPiece, stackOf } from './build.ts'
import { seededPiece } from './seeded-piece.ts'

const gridOf = (stack: Stack, pixelMm: number) =>
  coreGrid(stack.geometry, stack.events, bounds(stack.geometry.outline), pixelMm, [
    stack.finishedLow,
    stack.finishedHigh
  ])

const at = (core: readonly CoreInterval[], z: number) => {
  const part = core.find(p => p.from <= z && z < p.to)
  return part === undefined ? 'air' : `${part.material.kind} ${part.material.index}`
}

// Places of one core, well within its stretches and gaps, at which the other says something else.
function unlike(a: readonly CoreInterval[], b: readonly CoreInterval[]): number {
  const marks = [a, b].flatMap(core => core.flatMap(p => [p.from, p.to])).sort((p, q) => p - q)
  let sum = 0
  for (let k = 0; k + 1 < marks.length; k++) {
    if (marks[k + 1]! - marks[k]! < 1.5 * STEP_MM) continue
    const z = (marks[k]! + marks[k + 1]!) / 2
    if (at(a, z) !== at(b, z)) sum++
  }
  return sum
}

describe('the cores over a grid', () => {
  it('are those of every pixel asked by itself, on 60 seeded pieces', () => {
    let pixels = 0
    for (let seed = 1; seed <= 60; seed++) {
      const stack = stackOf(seededPiece(seed))
      const box = bounds(stack.geometry.outline)
      const grid = gridOf(stack, Math.max(box.maxX - box.minX, box.maxY - box.minY) / 40)
      for (let p = 0; p < grid.at.length; p++) {
        const [x, y] = [pixelX(grid, p % grid.nx), pixelY(grid, Math.floor(p / grid.nx))]
        const within = inside(stack.geometry.outline, x, y)
        expect(grid.at[p]! >= 0, `seed ${seed}, pixel ${p}`).toBe(within)
        if (!within) continue
        const core = coreAt(stack.geometry, stack.events, x, y)
        expect(unlike(grid.cores[grid.at[p]!]!, core), `seed ${seed} at ${x}, ${y}`).toBe(0)
        pixels++
      }
    }
    expect(pixels).toBeGreaterThan(40_000)
  })

  it('take few cores for level layers, however fine the grid', () => {
    const grid = gridOf(stackOf(plainPiece()), 0.5)
    expect(grid.at.length).toBeGreaterThan(50_000)
    expect(grid.cores.length).toBeLessThan(12)
  })

  it('are refused where the image would not fit in memory', () => {
    expect(() => gridOf(stackOf(plainPiece()), 0.001)).toThrow(/allowed 1 to 16000000/)
  })
})
