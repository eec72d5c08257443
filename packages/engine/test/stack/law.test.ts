import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { bounds } from '../../src/shape/measure.ts'
import type { FreeSpace } from '../../src/stack/free.ts'
import { freeSpace } from '../../src/stack/free.ts'
import { breaksOf, openArea } from '../../src/stack/level-cut.ts'
import type { Stack } from '../../src/stack/stack.ts'
import { finishedVolumes } from '../../src/stack/volume.ts'
import { plainFacts, stackOf } from './build.ts'
import { chance } from './random.ts'
import { seededPiece } from './seeded-piece.ts'
import { turnedPiece } from './turned.ts'

/** The space each pour into the mould finds, gaps under timbers left out. */
function spacesOf(stack: Stack): { index: number; space: FreeSpace; events: Stack['events'] }[] {
  return stack.events.flatMap((e, i) => {
    if (e.kind !== 'pour') return []
    const events = stack.events.slice(0, i)
    return [{ index: e.index, events, space: freeSpace(stack.geometry, events, e.region, 0) }]
  })
}

const withoutMeasuredTops = (piece: PieceDocument): PieceDocument => ({
  ...piece,
  timbers: (piece.timbers ?? []).map(({ measured: _, ...rest }) => rest)
})

function expectAlike(a: Stack, b: Stack, what: string, share: number): void {
  const [va, vb] = [finishedVolumes(a), finishedVolumes(b)]
  expect([...vb.keys()].sort(), what).toEqual([...va.keys()].sort())
  // Points move by the clipping grid, 1e-4 mm: along a metre of edge 30 mm high that is 3 mm³.
  for (const [key, ml] of va)
    expect(Math.abs(vb.get(key)! - ml), `${what}: ${key} ${ml} ml`).toBeLessThan(share * ml + 0.003)
  a.pours.forEach((p, i) => {
    expect(Math.abs(b.pours[i]!.level - p.level), `${what}: level of pour ${i}`).toBeLessThan(2e-4)
    expect(Math.abs(b.pours[i]!.liquidMl - p.liquidMl), what).toBeLessThan(share * p.liquidMl + 0.003)
  })
}

describe('free volume', () => {
  it('grows with the level, by the open area', () => {
    for (let seed = 0; seed < 12; seed++) {
      for (const { index, space } of spacesOf(stackOf(seededPiece(seed)))) {
        let before = 0
        for (let k = 0; k <= 12; k++) {
          const z = space.floor + k * 2.7
          const volume = space.volumeTo(z)
          expect(volume, `seed ${seed} pour ${index} at ${z}`).toBeGreaterThanOrEqual(before - 1e-6)
          before = volume
        }
      }
    }
  })

  it('between two heights is the sum of what is open on level cuts between them', () => {
    for (const seed of [5, 11, 16, 21, 33, 54, 77, 156]) {
      const stack = stackOf(seededPiece(seed))
      const c = chance(seed)
      for (const { index, space, events } of spacesOf(stack)) {
        const pour = stack.events.find(e => e.kind === 'pour' && e.index === index)!
        const region = (pour.kind === 'pour' ? pour.region : null) ?? stack.geometry.mould
        const a = space.floor + c.span(0, 6)
        const b = a + c.span(3, 12)
        // Middles of slices, ten to each stretch between two breaks: the slow and obvious way.
        const stops = [a, ...breaksOf(stack.geometry, events).filter(z => z > a && z < b), b]
        let sum = 0
        stops.slice(1).forEach((to, k) => {
          const from = stops[k]!
          for (let n = 0; n < 10; n++) {
            const z = from + ((n + 0.5) / 10) * (to - from)
            sum += (openArea(stack.geometry, events, region, z) * (to - from)) / 10
          }
        })
        const ours = space.volumeTo(b) - space.volumeTo(a)
        expect(Math.abs(ours - sum) / sum, `seed ${seed} pour ${index} from ${a} to ${b}`).toBeLessThan(1e-3)
      }
    }
  })

  it('gives the mass back that a level was found from', () => {
    for (let seed = 0; seed < 8; seed++) {
      const document = seededPiece(seed)
      const by = stackOf(document)
      const again = stackOf({
        ...document,
        pours: document.pours.map((p, i) => {
          if ((p.kind ?? 'cast') !== 'cast') return p
          const { depth: _d, height: _h, fill: _f, mass: _m, ...rest } = p
          return { ...rest, mass: by.pours[i]!.massG }
        })
      })
      by.pours.forEach((p, i) => {
        expect(again.pours[i]!.level, `seed ${seed} pour ${i}`).toBeCloseTo(p.level, 4)
        expect(again.pours[i]!.massG).toBeCloseTo(p.massG, 6)
      })
    }
  })
})

describe('the stack', () => {
  it('keeps liquid·(1 − fall) = filled − stones in every pour', () => {
    for (let seed = 0; seed < 16; seed++) {
      const stack = stackOf(seededPiece(seed))
      const facts = plainFacts(stack.piece.pours)
      stack.pours.forEach((p, i) => {
        const kept = p.liquidMl * (1 - facts[i]!.levelFall)
        expect(Math.abs(kept - (p.filledMl - p.stonesMl)), `seed ${seed} pour ${i}`).toBeLessThan(
          1e-7 * p.filledMl + 1e-6
        )
        expect(p.massG).toBeCloseTo(p.liquidMl * facts[i]!.densityGMl, 6)
        expect(p.liquidDepth).toBeGreaterThanOrEqual(p.depth - 1e-9)
      })
    }
  })

  it('does not mind in which order timbers are listed', () => {
    for (let seed = 0; seed < 8; seed++) {
      const document = seededPiece(seed)
      const turned = { ...document, timbers: [...(document.timbers ?? [])].reverse() }
      const [a, b] = [stackOf(document), stackOf(turned)]
      const [va, vb] = [finishedVolumes(a), finishedVolumes(b)]
      const last = a.geometry.timbers.length - 1
      for (const [key, ml] of va) {
        const [kind, index] = key.split(' ')
        const other = kind === 'timber' ? `timber ${last - Number(index)}` : key
        expect(Math.abs(vb.get(other)! - ml), `seed ${seed} ${key}`).toBeLessThan(1e-9 * ml + 1e-6)
      }
      a.pours.forEach((p, i) => {
        expect(b.pours[i]!.level).toBeCloseTo(p.level, 7)
      })
    }
  })

  it('has the same volumes turned by 90°, 180° and 270°', () => {
    for (let seed = 0; seed < 4; seed++) {
      const plain = withoutMeasuredTops(seededPiece(seed))
      const at = stackOf(turnedPiece(plain, 0, 0, 0))
      for (const quarters of [1, 2, 3])
        expectAlike(at, stackOf(turnedPiece(plain, quarters, 0, 0)), `seed ${seed}, ${90 * quarters}°`, 1e-5)
    }
  })

  it('has the same volumes turned by 180° with measured tops', () => {
    for (let seed = 0; seed < 10; seed++) {
      const document = seededPiece(seed)
      if (!document.timbers?.some(t => t.measured)) continue
      const at = stackOf(turnedPiece(document, 0, 0, 0))
      expectAlike(at, stackOf(turnedPiece(document, 2, 0, 0)), `seed ${seed}`, 1e-5)
    }
  })

  it('has the same volumes a metre away', () => {
    for (let seed = 0; seed < 10; seed++) {
      const document = seededPiece(seed)
      expectAlike(stackOf(document), stackOf(turnedPiece(document, 0, 1000, -700)), `seed ${seed}`, 1e-5)
    }
  })

  it('keeps everything inside the mould and between its faces', () => {
    for (let seed = 0; seed < 10; seed++) {
      const stack = stackOf(seededPiece(seed))
      expect(stack.finishedHigh, `seed ${seed}`).toBeGreaterThan(stack.finishedLow)
      const box = bounds(stack.geometry.outline)
      const most = (box.maxX - box.minX) * (box.maxY - box.minY) * (stack.finishedHigh - stack.finishedLow)
      const total = [...finishedVolumes(stack).values()].reduce((a, b) => a + b, 0)
      expect(total * 1000).toBeLessThanOrEqual(most * (1 + 1e-6))
    }
  })
})
