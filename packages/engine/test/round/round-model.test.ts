import { performance } from 'node:perf_hooks'
import Module from 'manifold-3d'
import { describe, expect, test } from 'vitest'
import type { Mesh } from '../../src/round/prism.ts'
import { meshVolumeMl } from '../../src/round/prism.ts'
import type { RoundBody } from '../../src/round/round-model.ts'
import { roundModel } from '../../src/round/round-model.ts'
import { ringArea } from '../../src/shape/measure.ts'
import { coreModelOf } from '../../src/sheets/model.ts'
import { finishedVolumes } from '../../src/stack/volume.ts'
import { PIECES } from './round-pieces.ts'

const manifold = await Module()
manifold.setup()

/** Edges that are not the edge of exactly two triangles, in opposite directions (practice: a closed surface). */
function openEdges({ indices }: Pick<Mesh, 'indices'>): number {
  const edges = new Map<number, number>()
  const key = (a: number, b: number) => a * 2 ** 26 + b
  for (let t = 0; t < indices.length; t += 3) {
    for (let k = 0; k < 3; k++) {
      const e = key(indices[t + k]!, indices[t + ((k + 1) % 3)]!)
      edges.set(e, (edges.get(e) ?? 0) + 1)
    }
  }
  let open = 0
  for (const [e, n] of edges) {
    const [a, b] = [Math.floor(e / 2 ** 26), e % 2 ** 26]
    if (n !== 1 || edges.get(key(b, a)) !== 1) open++
  }
  return open
}

/**
 * Holes through a body by its outlines: to topology a prism over c outlines with h holes is c bodies with h handles,
 * and Euler's formula for a closed surface, V − E + F = 2c − 2h, makes its genus 1 − c + h in all.
 */
function genusOf({ rings, positions, kind }: RoundBody): number {
  let genus = 1
  for (let k = 0; k < rings.length; k += 3) {
    const ring = new Float64Array(2 * (rings[k + 2]! - rings[k + 1]!))
    for (let p = rings[k + 1]!, i = 0; p < rings[k + 2]!; p++) {
      ring[i++] = positions[3 * p]!
      ring[i++] = positions[3 * p + 1]!
    }
    // A stone has one outline, and no hole whichever way it runs.
    genus += kind !== 'stones' && ringArea(ring) < 0 ? 1 : -1
  }
  return genus
}

function materialOf({ at, kind }: RoundBody): string {
  return `${kind} ${at.split('/').pop()}`
}

/** Share by which the volume of a mesh may differ from the stack's own integral. */
const SHARE = 0.002

describe.each(PIECES)('%s in the round', (_name, make) => {
  const work = make()
  const start = performance.now()
  const model = roundModel(work, coreModelOf(work))
  const ms = performance.now() - start
  const bytes = model.bodies.reduce((sum, b) => sum + b.positions.byteLength + b.indices.byteLength, 0)

  test('each material has the volume of the finished stack', () => {
    const volumes = finishedVolumes(work.stack)
    const seen = model.bodies.filter(b => b.kind !== 'stones' && b.kind !== 'hardware')
    for (const [key, ml] of volumes) {
      const body = seen.find(b => materialOf(b) === key)
      expect(body, key).toBeDefined()
      expect(Math.abs(meshVolumeMl(body!) - ml) / ml, `${key}, ${ml} ml`).toBeLessThan(SHARE)
    }
    expect(seen.length).toBe(volumes.size)
  })

  test('meshes are closed, and solids to another library', () => {
    for (const body of model.bodies) {
      expect(openEdges(body), body.name).toBe(0)
      if (body.indices.length > 300_000) continue
      const solid = new manifold.Manifold(
        new manifold.Mesh({ numProp: 3, vertProperties: body.positions, triVerts: body.indices })
      )
      expect(solid.status(), body.name).toBe('NoError')
      const own = meshVolumeMl(body)
      expect(Math.abs(solid.volume() / 1000 - own), body.name).toBeLessThan(1e-3 * own)
      expect(solid.genus(), body.name).toBe(genusOf(body))
      solid.delete()
    }
  })

  test('heights stay between the faces; numbers alone are posted', () => {
    for (const b of model.bodies) {
      expect(b.fromMm).toBeGreaterThan(-1e-3)
      expect(b.toMm).toBeLessThan(model.thicknessMm + 1e-3)
      expect(b.toMm).toBeGreaterThan(b.fromMm)
    }
    // What cannot be posted between threads throws here.
    expect(structuredClone(model).bodies.length).toBe(model.bodies.length)
  })

  test('time and room are bounded', () => {
    // Measured on two idle cores: at most 0.3 s and 1.1 MB for every example; a busy machine is given more.
    expect(ms, `${bytes / 1e6} MB`).toBeLessThan(6000)
    expect(bytes).toBeLessThan(40e6)
  })
})
