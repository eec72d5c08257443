import { afterAll, describe, expect, it } from 'vitest'
import type { CutterShape } from '../../src/catalogue/cutter-shape.ts'
import { findingsOfCuts } from '../../src/cuts-plan.ts'
import { CHECKS } from '../../src/findings/every-check.ts'
import type { Finding } from '../../src/findings/finding.ts'
import { NOT_MADE, PROGRAM_UNREAD, PROVED, provedFinding } from '../../src/findings/proved.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import type { ProgramSet } from '../../src/programs/program-set.ts'
import type { AnyProgram } from '../../src/programs/prove-any.ts'
import { proveAny } from '../../src/programs/prove-any.ts'
import { proveSet } from '../../src/programs/prove-set.ts'
import { cutter } from '../proving/program.ts'
import { SHOP } from './machine-piece.ts'
import { setIn, workIn } from './made.ts'
import { LAYERED } from './proved-piece.ts'

// Each kind of fault: a sound program raises nothing, one change of the program, the cutter or the piece raises it.
// Values are those of the drawing: depths, heights of layers, places.

const BARE: ShopDocument = { castwright: 1, machine: { x: 800, y: 600, z: 110 } }
const work = workIn(LAYERED, BARE)
const met = new Set<string>()

/** Index of the step that works on a cut. */
const stepOf = (id: string) => work.steps.findIndex(s => s.cut?.id === id)

/** A program round some moves: the cutter in, its height set, the spindle on, up at the end. Moves begin on line 6. */
const around = (moves: string): string =>
  `G21 G90 G94 F1000\nT1 M6\nM0\nM3 S18000\nG0 Z10\n${moves}\nG0 Z10\nM5\nM2\n`

/** The pocket, 30 × 20 and 6 deep, in rings from the middle, two passes. */
function pocket({ dx = 0, deep = 6, between = '' } = {}): string {
  const lines = [`G0 X${dx} Y0`]
  for (const z of [-3, -deep]) {
    lines.push(`G1 X${dx} Y0 Z${z} F300`, 'F1000')
    for (let r = 2; r <= 12; r += 2) {
      const b = Math.min(7, r)
      for (const [x, y] of [[-r, -b], [r, -b], [r, b], [-r, b], [-r, -b]] as const) // biome-ignore format: corners
        lines.push(`G1 X${x + dx} Y${y}`)
    }
    lines.push(`G1 X${dx} Y0`)
    if (z === -3 && between !== '') lines.push(between)
  }
  return lines.join('\n')
}

/** Straight down and up again. */
const down = (x: number, y: number, z: number) => `G0 Z10\nG0 X${x} Y${y}\nG1 Z${z} F300`

function proved(text: string, more: Partial<AnyProgram> = {}, on = work): Finding[] {
  const step = more.step ?? stepOf('pocket')
  const run = proveAny(on, {
    text,
    step,
    cutters: new Map<number, CutterShape>([[1, cutter()], [2, cutter({ diameterMm: 4 })]]), // biome-ignore format: two
    zeroOff: [0, 0, 0],
    compared: true,
    cellMm: 0.2,
    ...more
  })
  for (;;) {
    const next = run.next()
    if (!next.done) continue
    const { reports } = next.value.proof
    for (const r of reports) met.add(r.kind)
    return reports.map(r => provedFinding(r, on.steps[step]!.at, 'p.nc', n => `line ${n}`))
  }
}

const ids = (list: readonly Finding[]) => list.map(f => f.id).sort()
const one = (list: readonly Finding[]): Finding => {
  expect(ids(list)).toHaveLength(1)
  return list[0]!
}
const cutters = (more: Partial<CutterShape>) => ({ cutters: new Map([[1, cutter(more)]]) })
const free = { compared: false }

describe('what proving says of a program, one change from a sound one', () => {
  const sound = around(pocket())
  // Of a text with one line put in another's place.
  const changed = (from: string, to: string) => {
    const at = sound.lastIndexOf(from)
    return `${sound.slice(0, at)}${to}${sound.slice(at + from.length)}`
  }

  it('the sound program raises nothing', () => {
    expect(proved(sound)).toEqual([])
  })

  it('a rapid move through material: C72', () => {
    const found = one(proved(changed('G1 X2 Y2\n', 'G0 X2 Y2\n')))
    expect(found).toMatchObject({ id: 'rapid-in-work', severity: 'stop', limit: 0.05 })
    // The second pass, 3 deep.
    expect(found.value).toBeCloseTo(3, 3)
    expect(found.says).toMatch(/^p\.nc, line 44, near X[-\d.]+ Y[-\d.]+ Z-6, goes at rapid speed 3 mm deep/)
  })

  it('straight down with a cutter that does not cut in its middle', () => {
    const found = one(proved(sound, cutters({ plunges: false })))
    expect(found).toMatchObject({ id: 'straight-down', severity: 'stop', value: 3, limit: 0.2 })
    expect(found.says).toMatch(/straight down 3 mm .*2 moves do/)
  })

  it('edges shorter than a pass is deep', () => {
    expect(proved(sound, cutters({ fluteMm: 3 }))).toEqual([])
    const found = one(proved(sound, cutters({ fluteMm: 2 })))
    expect(found).toMatchObject({ id: 'beyond-edges', severity: 'caution', value: 3, limit: 2 })
    expect(found.says).toMatch(/material 3 mm high .*edges are 2 mm long/)
  })

  it('a shank thicker than the cutter meets the wall', () => {
    expect(proved(sound, cutters({ fluteMm: 7, shankMm: 10 }))).toEqual([])
    const found = one(proved(sound, cutters({ fluteMm: 4, shankMm: 10 })))
    expect(found).toMatchObject({ id: 'shank-in-work', severity: 'stop', value: 6, limit: 4 })
  })

  it('a holder meets the face', () => {
    expect(proved(sound, cutters({ fluteMm: 4, reachMm: 7 }))).toEqual([])
    const found = one(proved(sound, cutters({ fluteMm: 4, reachMm: 5 })))
    expect(found).toMatchObject({ id: 'holder-in-work', severity: 'stop', value: 6, limit: 5 })
    expect(found.says).toMatch(/holder, 5 mm above the tip, against material 6 mm high/)
  })

  it('stones: C83', () => {
    // Their bed ends 14 under the face.
    expect(proved(around(down(25, 10, -13.9)), free)).toEqual([])
    const found = one(proved(around(down(25, 10, -15)), free))
    expect(found).toMatchObject({ id: 'stones-in-path', severity: 'stop', limit: 0 })
    expect(found.value).toBeCloseTo(1, 3)
    expect(found.says).toMatch(/line 8, .*1 mm deep into the stones of low/)
  })

  it('a part that is cast in', () => {
    // The strip lies on the base, 3 high: 17 under the face; beside it there is none.
    expect(proved(around(down(25, -15, -16.9)), free)).toEqual([])
    expect(proved(around(down(5, -20, -18.5)), free)).toEqual([])
    const found = one(proved(around(down(25, -15, -18.5)), free))
    expect(found).toMatchObject({ id: 'part-in-path', severity: 'stop' })
    expect(found.value).toBeCloseTo(1.5, 3)
    expect(found.says).toMatch(/into strip/)
  })

  it('a pin, once the piece lies on it', () => {
    // 12 in the bed and 22 long: 10 up into the piece of 20.
    expect(proved(around(down(54, 0, -9.9)), free)).toEqual([])
    const found = one(proved(around(down(54, 0, -11)), free))
    expect(found).toMatchObject({ id: 'pin-in-path', severity: 'stop' })
    expect(found.value).toBeCloseTo(1, 3)
    expect(found.says).toMatch(/into pin 2/)
    // In the setting that drills them there is none yet.
    expect(proved(around(down(54, 0, -11)), { ...free, step: stepOf('channel') })).toEqual([])
  })

  it('a place to be kept clear', () => {
    expect(proved(around(down(20, 38, -1)), free)).toEqual([])
    // What stands there is met by edges and holder too.
    const found = proved(around(down(0, 38, -1)), free).find(f => f.id === 'clamp-in-path')!
    expect(found.severity).toBe('stop')
    expect(found.says).toMatch(/into place 1 to be kept clear/)
  })

  it('an opaque layer under the pocket: O3', () => {
    expect(proved(around(pocket({ deep: 6 })))).toEqual([])
    const deeper = proved(`${around(`${pocket()}\n${down(0, 0, -13)}`)}`)
    expect(ids(deeper)).toEqual(['cut-away', 'layer-opened'])
    const found = deeper.find(f => f.id === 'layer-opened')!
    // 12 of clear over it.
    expect(found.value).toBeCloseTo(1, 3)
    expect(found.says).toMatch(/opens low, which is to stay closed, 1 mm deep/)
    expect(found.severity).toBe('stop')
  })

  it('the roof of a channel cut from behind', () => {
    const opened = proved(around(`${pocket()}\n${down(-28, 0, -13.5)}`))
    expect(ids(opened)).toEqual(['cut-away', 'hollow-opened', 'layer-opened'])
    // The channel is 7 deep in 20.
    expect(opened.find(f => f.id === 'hollow-opened')!.value).toBeCloseTo(0.5, 3)
    expect(opened.find(f => f.id === 'hollow-opened')!.severity).toBe('note')
  })

  it('the far face: C91', () => {
    const out = proved(around(`${pocket()}\n${down(0, 0, -20.5)}`))
    expect(ids(out)).toEqual(['cut-away', 'layer-opened', 'out-of-far-face'])
    expect(out.find(f => f.id === 'out-of-far-face')!.value).toBeCloseTo(0.5, 3)
  })

  it('the bed: 3.5 are allowed: C72', () => {
    expect(proved(around(down(5, -20, -23.4)), free)).toEqual([])
    const found = one(proved(around(down(5, -20, -24)), free))
    expect(found).toMatchObject({ id: 'into-bed', severity: 'stop', limit: 3.5 })
    expect(found.value).toBeCloseTo(4, 3)
  })

  it('the travel of the machine, the piece in its middle', () => {
    const away = (x: number) => around(`${pocket()}\nG0 Z10\nG0 X${x}`)
    expect(proved(away(399))).toEqual([])
    const found = one(proved(away(410)))
    expect(found).toMatchObject({ id: 'outside-travel', severity: 'stop', value: 10, limit: 0 })
    // A shop without a machine has no travel.
    expect(proved(away(410), {}, workIn(LAYERED, { castwright: 1 }))).toEqual([])
  })

  it('the spindle off', () => {
    const found = one(proved(sound.replace('M3 S18000\n', '')))
    expect(found).toMatchObject({ id: 'spindle-off', severity: 'stop', value: 3 })
  })

  it('no feed given', () => {
    const found = one(proved(sound.replace('F1000', '').replaceAll(/F300|\nF1000/g, '')))
    expect(found).toMatchObject({ id: 'feed-missing', severity: 'stop' })
  })

  it('a second cutter in, its height not set: C72', () => {
    const change = (stop: string) =>
      around(pocket({ between: `G0 Z10\nT2 M6${stop}\nM3 S18000\nG0 X0 Y0 Z-2` }))
    // 4 mm across in the last pass leaves 1 mm round the wall.
    expect(ids(proved(change('\nM0')))).toEqual(['left-standing'])
    const found = proved(change('')).find(f => f.id === 'height-unchecked')!
    expect(found.says).toMatch(/cutter 2 without a stop to set its height/)
    expect(ids(proved(change('')))).toEqual(['height-unchecked', 'left-standing'])
    // A length offset does as well.
    expect(ids(proved(change('\nG43 H0')))).toEqual(['height-unchecked', 'left-standing'])
    expect(ids(proved(change('\nG43 H2')))).toEqual(['left-standing'])
  })

  it('a cutter nobody knows', () => {
    const found = one(proved(around(`${pocket()}\nG0 Z10\nT9 M6\nG0 X1`)))
    expect(found).toMatchObject({ id: 'cutter-not-listed', severity: 'stop' })
    expect(found.says).toMatch(/asks for cutter 9/)
  })

  // Round the outline with 6 mm, in three turns; 6 high left at four places, or nothing.
  const round = (tabs: boolean): string => {
    const lines = ['G0 X-43 Y-28']
    const corners = [[43, -28], [43, 28], [-43, 28], [-43, -28]] as const // biome-ignore format: corners
    for (const z of [-7, -14, -20.3]) {
      lines.push(`G1 X-43 Y-28 Z${z} F300`, 'F1000')
      let [px, py] = [-43, -28]
      for (const [x, y] of corners) {
        if (tabs && z < -15) {
          const at = (t: number) => `X${px + (x - px) * t} Y${py + (y - py) * t}`
          lines.push(`G1 ${at(0.35)}`, 'G1 Z-14', `G1 ${at(0.65)}`, `G1 Z${z}`)
        }
        lines.push(`G1 X${x} Y${y}`)
        px = x
        py = y
      }
    }
    return lines.join('\n')
  }

  it('a part cut free of its waste: C70', () => {
    const step = stepOf('free')
    const open = workIn({ ...LAYERED, holding: {} } as PieceDocument, BARE)
    expect(proved(around(round(true)), { step }, open)).toEqual([])
    const found = one(proved(around(round(false)), { step }, open))
    expect(found).toMatchObject({ id: 'part-cut-free', severity: 'stop', unit: 'mm²' })
    // The whole of it: 80 × 50.
    expect(Math.abs(found.value! - 4000)).toBeLessThan(120)
    // Held by its whole face it may come free.
    const taped = workIn({ ...LAYERED, holding: { by: 'tape' } } as PieceDocument, BARE)
    expect(proved(around(round(false)), { step }, taped)).toEqual([])
  })

  it('too shallow, too deep, beside its place, by the wrong zero: C74, C76', () => {
    const shallow = one(proved(around(pocket({ deep: 5.5 }))))
    expect(shallow).toMatchObject({ id: 'left-standing', severity: 'caution' })
    expect(shallow.value).toBeCloseTo(0.5, 2)
    const deep = one(proved(around(pocket({ deep: 6.5 }))))
    expect(deep).toMatchObject({ id: 'cut-away', severity: 'stop' })
    expect(deep.value).toBeCloseTo(0.5, 2)
    expect(deep.says).toMatch(/takes 0\.5 mm too much where the piece is to stand/)
    expect(ids(proved(around(pocket({ dx: 1 }))))).toEqual(['cut-away', 'left-standing'])
    // The same text with its zero set a millimetre to the right, and half a millimetre low.
    expect(ids(proved(sound, { zeroOff: [1, 0, 0] }))).toEqual(['cut-away', 'left-standing'])
    expect(one(proved(sound, { zeroOff: [0, 0, -0.5] })).id).toBe('cut-away')
    expect(one(proved(sound, { zeroOff: [0, 0, 0.5] })).id).toBe('left-standing')
  })
})

describe('what is said of the programs the plan makes', () => {
  const piece: PieceDocument = { ...LAYERED, hardware: [], cuts: LAYERED.cuts!.slice(0, 2) }
  const set = setIn(piece, SHOP)
  const changed = (of: ProgramSet, text: (of: string) => string): ProgramSet => ({
    ...of,
    programs: of.programs.map(p =>
      p.file.includes('pocket') ? { ...p, written: { ...p.written, text: text(p.written.text) } } : p
    )
  })
  const said = (of: ProgramSet) => {
    const proofs = proveSet(of)
    for (const r of proofs.flatMap(p => p.proof.reports)) met.add(r.kind)
    return findingsOfCuts(of, proofs)
  }

  it('nothing, as they are', () => {
    expect(said(set)).toEqual([])
  })

  it('too much at once, where the feed is three times what was reckoned: C87', () => {
    const fast = (text: string) => text.replaceAll(/F(\d[\d.]*)/g, (_, f) => `F${3 * Number(f)}`)
    const found = one(said(changed(set, fast)))
    expect(found).toMatchObject({ id: 'too-much-at-once', severity: 'caution', unit: 'mm³/min' })
    expect(found.value!).toBeGreaterThan(found.limit!)
    expect(found.says).toMatch(/pocket\.\w+, line \d+, .*mm³ a minute at its fullest; \d+ is reckoned with/)
  })

  it('words that the standard does not know, with line and column', () => {
    const found = said(changed(set, text => text.replace(/\nM5/, '\nG73 X1\nM5')))
    expect(found.map(f => f.id)).toContain(PROGRAM_UNREAD.id)
    expect(found.find(f => f.id === PROGRAM_UNREAD.id)!.says).toMatch(
      /line \d+, column 1: This G code is not in the standard/
    )
  })

  it('a pocket smaller than any cutter: none is made, and the one that would do is named', () => {
    const narrow = (mm: number): PieceDocument => ({
      ...piece,
      cuts: [
        {
          id: 'slit',
          face: 'front',
          kind: 'pocket',
          shape: { rectangle: [20, mm], corner: mm / 2 },
          depth: 4
        }
      ]
    })
    expect(said(setIn(narrow(4), SHOP)).map(f => f.id)).toEqual([])
    const found = one(said(setIn(narrow(2.2), SHOP)))
    expect(found).toMatchObject({ id: NOT_MADE.id, severity: 'stop' })
    expect(found.says).toMatch(/^slit: no program is made\. .*2(\.\d+)? mm/)
  })
})

describe('the list of what proving says', () => {
  afterAll(() => expect([...met].sort()).toEqual(Object.keys(PROVED).sort()))

  it('every id stands for one thing, here and among the checks of a piece', () => {
    const own = [...Object.values(PROVED), PROGRAM_UNREAD, NOT_MADE].map(c => c.id)
    expect(new Set(own).size).toBe(own.length)
    const other = CHECKS.map(c => c.id)
    expect(own.filter(id => other.includes(id))).toEqual([])
  })

  it('every kind of report is met by a test here', () => {
    expect(Object.keys(PROVED).filter(k => !met.has(k))).toEqual([])
  })
})
