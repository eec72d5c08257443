import { describe, expect, it } from 'vitest'
import type { Frame } from '../../../src/cuts/pins/frame.ts'
import { frameOf, placed, pointToProgram } from '../../../src/cuts/pins/frame.ts'
import { measuredFrame } from '../../../src/cuts/pins/measured-frame.ts'
import { pinPlate, zeroPoints } from '../../../src/cuts/pins/pin-plate.ts'
import { zeroCheck } from '../../../src/cuts/pins/zero-check.ts'
import { readingSchema } from '../../../src/piece/reading-schema.ts'
import { settingsOf } from '../../../src/steps/setting.ts'
import { worked } from '../../cases/asked.ts'
import { PLAIN } from '../../findings/harness.ts'

/** Pins tie what a machine cuts. */
const MACHINE = { castwright: 1 as const, machine: { x: 800, y: 600 } }

const work = worked({
  shop: MACHINE,
  piece: {
    ...PLAIN,
    outline: { rectangle: [300, 200], at: [10, 5] },
    mould: {
      shape: { rectangle: [312, 212], at: [10, 5] },
      bearers: 250,
      ears: [
        { rectangle: [50, 60], at: [-165, 5] },
        { rectangle: [50, 60], at: [185, 5] }
      ]
    },
    timbers: [],
    cuts: [
      { id: 'front pocket', face: 'front', shape: { rectangle: [40, 30], at: [60, 40] }, depth: 4 },
      { id: 'back pocket', face: 'back', shape: { rectangle: [40, 30], at: [-60, 40] }, depth: 4 }
    ]
  }
})
const settings = settingsOf(work.stack.steps)
const frames = settings.map(s => frameOf(work.piece, s, work.stack, work.pins.datum))
const at = (i: number) => ({ setting: settings[i]!, frame: frames[i]! })
const measured = (i: number, ...readings: object[]) =>
  measuredFrame(
    at(i).frame,
    at(i).setting,
    work.stack,
    work.pins,
    readings.map((r, k) => readingSchema.parse({ id: `reading-${k}0000`, at: `2026-11-28T0${k}:00Z`, ...r }))
  )

describe('a frame after readings', () => {
  it('turns and shifts the program of the face the marks were touched on, and no other', () => {
    const [drawnA, drawnB] = [
      [-100, -60],
      [120, 40]
    ] as const
    // Found turned by 0.2 degrees and shifted: worked from the rotation, for the face that is up second.
    const a = (0.2 * Math.PI) / 180
    const lies = ([x, y]: readonly [number, number]) => {
      const [X, Y] = pointToProgram(at(1).frame, x, y)
      return [Math.cos(a) * X - Math.sin(a) * Y + 0.5, Math.sin(a) * X + Math.cos(a) * Y - 0.3]
    }
    const reading = {
      kind: 'place',
      face: at(1).frame.up,
      marks: [drawnA, drawnB].map(d => ({ drawn: [...d], measured: lies(d) }))
    }
    const { frame, place } = measured(1, reading)
    expect(place!.rootMeanSquareMm).toBeLessThan(1e-9)
    expect(frame.turnDeg).toBeCloseTo(0.2, 9)
    const [X, Y] = placed(frame, ...pointToProgram(frame, ...drawnA))
    expect(X).toBeCloseTo(lies(drawnA)[0]!, 9)
    expect(Y).toBeCloseTo(lies(drawnA)[1]!, 9)
    expect(measured(0, reading).frame.turnDeg).toBe(0)
  })

  it('takes pins found in the bed for the second setting, where no marks were touched', () => {
    const [p, q] = work.pins.pins.map(pin => pointToProgram(at(1).frame, pin.x, pin.y))
    const found = [
      { kind: 'pin', pin: 1, x: p![0] + 0.2, y: p![1] + 0.1 },
      { kind: 'pin', pin: 2, x: q![0] + 0.2, y: q![1] + 0.1 }
    ]
    const { frame } = measured(1, ...found)
    expect(frame.shiftX).toBeCloseTo(0.2, 9)
    expect(frame.shiftY).toBeCloseTo(0.1, 9)
    expect(frame.turnDeg).toBeCloseTo(0, 9)
    expect(measured(0, ...found).place).toBeNull()
    expect(measured(1, found[0]!).place).toBeNull()
  })

  it('moves the bed one to one with a thickness, whichever flattening it belongs to', () => {
    const { frame, setting } = at(1)
    const planned = work.stack.states[setting.to]!
    const last = planned.highZ - planned.lowZ
    const first = work.stack.states[settings[0]!.to]!
    for (const mm of [last, first.highZ - first.lowZ]) {
      const { frame: after, thickness } = measured(1, { kind: 'thickness', thickness: mm + 0.4 })
      expect(thickness!.plannedMm).toBeCloseTo(mm, 9)
      expect(after.bedZ).toBeCloseTo(frame.bedZ - 0.4, 9)
    }
    expect(measured(1, { kind: 'thickness', thickness: 60 }).thickness).toBeNull()
  })
})

describe('the pin plate', () => {
  it('has each pin on one place in both settings', () => {
    const plate = pinPlate(work.pins, frames)
    expect(plate).toHaveLength(2)
    for (const pin of plate) expect(pin.at[0]).toEqual(pin.at[1])
    expect(plate[0]).toMatchObject({ number: 1, diameterMm: 8, bedHoleMm: 7.95, depthMm: 20 })
  })
})

describe('places to touch', () => {
  it('show every wrong placing of a rectangle to the zero check', () => {
    for (const frame of frames) {
      const { points, reachMm } = zeroPoints(frame, work.stack.geometry.outline)
      expect(reachMm).toBeCloseTo(Math.hypot(150, 100), 6)
      const check = (how: (x: number, y: number) => readonly [number, number]) => {
        const [centre, a, b] = points.map(p => ({ drawn: [p.x, p.y] as const, read: how(p.x, p.y) }))
        return zeroCheck({
          centre: centre!,
          marks: [a!, b!],
          heightMm: 0,
          reachMm,
          machineErrorMm: 0.1,
          toleranceMm: 0.3
        }).fault
      }
      expect(check((x, y) => [x, y])).toBeNull()
      expect(check((x, y) => [-x, -y])).toBe('half turn')
      expect(check((x, y) => [-x, y])).toBe('mirrored')
      expect(check((x, y) => [x, -y])).toBe('mirrored')
    }
  })

  it('stay on the plan of the setting they are of', () => {
    const [first, second] = frames as [Frame, Frame]
    expect(zeroPoints(first, work.stack.geometry.outline).points[0]).toMatchObject({ x: 0, y: 0, z: 0 })
    expect(zeroPoints(second, work.stack.geometry.outline).points[1].x).toBeCloseTo(135, 6)
  })
})
