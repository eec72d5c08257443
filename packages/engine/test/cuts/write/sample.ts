import type { CutterShape } from '../../../src/catalogue/cutter-shape.ts'
import type { Toolpath } from '../../../src/cuts/toolpath.ts'
import { PathPen } from '../../../src/cuts/toolpath.ts'
import type { CutterRun, ProgramInput } from '../../../src/cuts/write/program.ts'
import type { Dialect } from '../../../src/piece/dialect-field.ts'
import { usualDialect } from '../../../src/piece/dialect-field.ts'
import { chance } from '../../stack/random.ts'

export const flat = (diameterMm: number): CutterShape => ({
  form: 'flat',
  diameterMm,
  cornerMm: 0,
  angleDeg: 180,
  tipMm: 0,
  fluteMm: 30,
  shankMm: diameterMm,
  reachMm: 45,
  holderMm: 20,
  headMm: 0,
  neckMm: 0,
  plunges: true
})

export const dialect = (change: Partial<Dialect> = {}): Dialect => ({ ...usualDialect(), ...change })

export function run(path: Toolpath, change: Partial<CutterRun> = {}): CutterRun {
  return {
    number: 1,
    words: 'straight cutter 6, two edges',
    shape: flat(6),
    rpm: 18_000,
    minutes: 4,
    why: ['chip load of ash'],
    parts: [{ name: 'pocket', path, topMm: 0 }],
    ...change
  }
}

export function program(runs: readonly CutterRun[], change: Partial<ProgramInput> = {}): ProgramInput {
  return {
    kind: 'cut',
    name: 'back 1 pocket',
    piece: 'Möwe (Ø 300)',
    setting: ['back up, turned about the long way: left stays left'],
    zero: ['X0 Y0 is the middle of the outline, on the flip line'],
    holding: ['tape'],
    safety: [],
    notes: [],
    machine: '800 × 600 × 80 mm, spindle 800 W',
    bedMm: -28,
    intoBedMm: 0.5,
    stock: { minX: -150, maxX: 150, minY: -100, maxY: 100, minZ: -28, maxZ: 1.4 },
    clearMm: 6.4,
    checkAt: { x: 0, y: 0, topMm: 1.4 },
    tolMm: 0.01,
    spindle: true,
    visits: [],
    runs,
    ...change
  }
}

/** A square pocket in two passes: what the golden bytes are of. */
export function tiny(): Toolpath {
  const pen = new PathPen(6.4)
  for (const [k, z] of [-2, -4].entries()) {
    pen.pass(`pass ${k + 1} of 2, ${-z}.0 deep`)
    pen.over(10, 0)
    pen.down(1)
    pen.line(10, 0, z, 300)
    pen.line(20, 0, z, 900)
    pen.arc(20, 10, z, 20, 5, false, 900)
    pen.line(10, 10, z, 900)
    pen.arc(10, 0, z, 10, 5, false, 900)
  }
  return pen.done()
}

/** A path drawn by lot: lines, arcs, full circles, helices and ramps, from tiny to large. */
export function drawn(seed: number, passes = 3): Toolpath {
  const c = chance(seed)
  const pen = new PathPen(6.4)
  for (let p = 0; p < passes; p++) {
    pen.pass(`pass ${p + 1}`)
    pen.over(c.span(-140, 140), c.span(-90, 90))
    pen.down(c.span(1, 3))
    let { z } = pen
    for (let k = 0; k < 12; k++) {
      const feed = c.span(5, 4000)
      if (c.is(0.6)) z = c.span(-20, 0)
      const size = 10 ** c.span(-3, 2.3)
      const a = c.span(0, 7)
      if (c.is(0.4)) pen.line(pen.x + size * Math.cos(a), pen.y + size * Math.sin(a), z, feed)
      else {
        const cx = pen.x + size * Math.cos(a)
        const cy = pen.y + size * Math.sin(a)
        const sweep = c.is(0.2)
          ? 0
          : c.is(0.2)
            ? Math.max(1e-6 / size, 10 ** c.span(-6, 0))
            : c.span(0.001, 6.2831)
        const to = Math.atan2(pen.y - cy, pen.x - cx) + sweep
        const whole = sweep === 0
        pen.arc(
          whole ? pen.x : cx + size * Math.cos(to),
          whole ? pen.y : cy + size * Math.sin(to),
          z,
          cx,
          cy,
          c.is(0.5),
          feed
        )
      }
    }
  }
  return pen.done()
}
