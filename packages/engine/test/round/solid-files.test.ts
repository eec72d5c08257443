import Module from 'manifold-3d'
import { SaxesParser } from 'saxes'
import { describe, expect, test } from 'vitest'
import { roundModel } from '../../src/round/round-model.ts'
import { solidsOf, stlOf, threeMfParts } from '../../src/round/solid-files.ts'
import { coreModelOf } from '../../src/sheets/model.ts'
import { finishedVolumes } from '../../src/stack/volume.ts'
import { PIECES } from './round-pieces.ts'

const manifold = await Module()
manifold.setup()

interface ReadObject {
  readonly name: string
  readonly points: number[]
  readonly corners: number[]
}

/** Reads a model part by a general XML parser, and keeps what the standard's rules are asked of. */
function readModel(text: string) {
  const objects = new Map<string, ReadObject>()
  const items: { id: string; transform: string }[] = []
  const bases: string[] = []
  let unit = ''
  let now: ReadObject | null = null
  const parser = new SaxesParser({ xmlns: true })
  parser.on('error', e => {
    throw e
  })
  parser.on('opentag', tag => {
    const of = (name: string) => tag.attributes[name]?.value ?? ''
    if (tag.uri !== 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02') throw new Error(tag.uri)
    if (tag.local === 'model') unit = of('unit')
    if (tag.local === 'base') bases.push(of('displaycolor'))
    if (tag.local === 'object') {
      now = { name: of('name'), points: [], corners: [] }
      objects.set(of('id'), now)
    }
    if (tag.local === 'vertex') now!.points.push(Number(of('x')), Number(of('y')), Number(of('z')))
    if (tag.local === 'triangle') now!.corners.push(Number(of('v1')), Number(of('v2')), Number(of('v3')))
    if (tag.local === 'item') items.push({ id: of('objectid'), transform: of('transform') })
  })
  parser.write(text).close()
  return { objects, items, bases, unit }
}

describe.each(PIECES)('%s as solids', (_name, make) => {
  const work = make()
  const model = roundModel(work, coreModelOf(work))
  const parts = threeMfParts(model)
  const read = readModel(parts.get('3D/3dmodel.model')!)

  // Rules of 3MF Core 1.4.0: each edge of exactly two triangles, in opposite directions; corners that differ; four
  // triangles at least; positive volume; the positive octant.
  test('keeps the rules of the standard', () => {
    expect(read.unit).toBe('millimeter')
    expect(read.items.map(i => i.id)).toEqual([...read.objects.keys()])
    for (const colour of read.bases) expect(colour).toMatch(/^#[0-9A-Fa-f]{6}([0-9A-Fa-f]{2})?$/)
    for (const { name, points, corners } of read.objects.values()) {
      expect(corners.length / 3, name).toBeGreaterThanOrEqual(4)
      const edges = new Map<number, number>()
      const key = (a: number, b: number) => a * 2 ** 26 + b
      let alike = 0
      for (let t = 0; t < corners.length; t += 3)
        for (let k = 0; k < 3; k++) {
          const [a, b] = [corners[t + k]!, corners[t + ((k + 1) % 3)]!]
          if (a === b) alike++
          edges.set(key(a, b), (edges.get(key(a, b)) ?? 0) + 1)
        }
      let open = 0
      for (const [edge, n] of edges) {
        const [a, b] = [Math.floor(edge / 2 ** 26), edge % 2 ** 26]
        if (n !== 1 || edges.get(key(b, a)) !== 1) open++
      }
      expect([open, alike], name).toEqual([0, 0])
      expect(points.every(Number.isFinite)).toBe(true)
    }
  })

  test('bodies lie in the positive octant where they are built', () => {
    const [, , , , , , , , , dx, dy, dz] = read.items[0]!.transform.split(' ').map(Number)
    let least = Number.POSITIVE_INFINITY
    for (const { points } of read.objects.values())
      for (let k = 0; k < points.length; k += 3)
        least = Math.min(least, points[k]! + dx!, points[k + 1]! + dy!, points[k + 2]! + dz!)
    expect(least).toBeGreaterThan(-0.001)
  })

  test('volumes by another library are those of the stack: 0.1 %, leaning sides 0.2 %', () => {
    const volumes = finishedVolumes(work.stack)
    const share = model.stepMm === 0 ? 0.001 : 0.002
    for (const [k, body] of solidsOf(model).entries()) {
      if (body.kind === 'stones') continue
      const object = [...read.objects.values()][k]!
      const solid = new manifold.Manifold(
        new manifold.Mesh({
          numProp: 3,
          vertProperties: Float32Array.from(object.points),
          triVerts: Uint32Array.from(object.corners)
        })
      )
      expect(solid.status(), body.name).toBe('NoError')
      const ml = volumes.get(`${body.kind} ${body.at.split('/').pop()}`)!
      expect(Math.abs(solid.volume() / 1000 - ml) / ml, body.name).toBeLessThan(share)
      solid.delete()
    }
  })

  test('STL holds the same triangles, with normals of length one', () => {
    const body = solidsOf(model)[0]!
    const bytes = stlOf(body)
    const view = new DataView(bytes.buffer)
    expect(bytes.length).toBe(84 + (50 * body.indices.length) / 3)
    expect(view.getUint32(80, true)).toBe(body.indices.length / 3)
    let six = 0
    for (let t = 0; t < body.indices.length / 3; t++) {
      const at = 84 + 50 * t
      const f = (k: number) => view.getFloat32(at + 4 * k, true)
      expect(Math.hypot(f(0), f(1), f(2))).toBeCloseTo(1, 4)
      // Signed volume of the tetrahedron to the origin (Gauss): summed, six times the body.
      six +=
        f(3) * (f(7) * f(11) - f(8) * f(10)) -
        f(4) * (f(6) * f(11) - f(8) * f(9)) +
        f(5) * (f(6) * f(10) - f(7) * f(9))
    }
    const ml = finishedVolumes(work.stack).get(`${body.kind} ${body.at.split('/').pop()}`)!
    expect(Math.abs(six / 6000 - ml) / ml).toBeLessThan(0.003)
  })
})
