import { cutExtentOf } from './extent.ts'
import { SAME_MM } from './free.ts'
import type { Way } from './placed.ts'
import { moved, placed } from './placed.ts'
import type { Box, CutterRun, ProgramInput, ProgramPart } from './program.ts'
import type { Slice } from './slice.ts'
import { joined, slicesOf } from './slice.ts'

/** A piece of cheap board, mm. */
export interface Scrap {
  readonly x: number
  readonly y: number
  readonly thickness: number
}

/** A test cut, or what it would need. */
export interface TestCut {
  /** null: not one pass of it goes on the scrap. */
  readonly program: ProgramInput | null
  /** Smallest board that takes all of it. */
  readonly needs: Scrap
  /** Passes that the scrap has no room for. */
  readonly leftOut: readonly string[]
}

/** Deepest that a test cut goes, mm, and the share of the depth where that is less (practice). */
const TEST_DEPTH_MM = 2
const TEST_SHARE = 0.5
/** Board left about what is cut, to hold it by, and under it, mm (practice). */
const RIM_MM = 15
const UNDER_MM = 5
/** Thickness of a usual cheap board, mm. */
const USUAL_MM = 12
/** A rapid move stays this far over the floor of the test, mm. */
const OVER_FLOOR_MM = 0.5
/** Two passes whose boxes agree within this go the same way, mm. */
const SAME_WAY_MM = 0.05

/**
 * The program shallow, for cheap board: half as deep, 2 mm at the most. A part up to twice that depth has all its
 * heights halved, so that a V-groove keeps its form; a deeper one is cut off at 2 mm, and passes that would go the same
 * way again are left out. The zero of heights is the top of the board.
 *
 * Without a scrap the board is as large as it must be. The middle of what is cut goes to the middle of the board; where
 * a stated scrap is too small the window of its size that holds the most passes is cut, whole passes only.
 * Nothing is ever made smaller in x and y.
 */
export function testCut(program: ProgramInput, scrap?: Scrap): TestCut {
  const lift = program.clearMm - program.stock.maxZ
  const units = unitsOf(program, lift)
  const rim = 2 * (RIM_MM + Math.max(...program.runs.map(r => r.shape.diameterMm)) / 2)
  const all = boxOf(units)
  const least = TEST_DEPTH_MM + UNDER_MM
  const needs = { x: Math.ceil(width(all) + rim), y: Math.ceil(height(all) + rim), thickness: least }
  if (scrap === undefined)
    return { program: tested(program, units, lift, { ...needs, thickness: USUAL_MM }), needs, leftOut: [] }
  if (!(scrap.x > 0 && scrap.y > 0 && scrap.thickness >= least))
    return { program: null, needs, leftOut: units.map(u => u.name) }
  const kept = windowOf(units, scrap.x - rim, scrap.y - rim)
  const leftOut = units.filter(u => !kept.includes(u)).map(u => u.name)
  if (kept.length === 0) return { program: null, needs, leftOut }
  return { program: tested(program, kept, lift, scrap, leftOut), needs, leftOut }
}

/** One pass, shallow. */
interface Unit {
  readonly run: number
  readonly part: number
  readonly name: string
  readonly slice: Slice
  readonly box: Box
}

function unitsOf(program: ProgramInput, lift: number): Unit[] {
  return program.runs.flatMap((run, r) =>
    run.parts.flatMap((part, p) =>
      shallow(part, program.clearMm, lift).map(slice => ({
        run: r,
        part: p,
        name: slice.name === null ? part.name : `${part.name}, ${slice.name}`,
        slice,
        box: cutExtentOf([joined([slice])])
      }))
    )
  )
}

/** The passes of a part with their heights as in the test: 0 at the top of the board, `lift` at the clearance height. */
function shallow(part: ProgramPart, clearMm: number, lift: number): Slice[] {
  const depth = Math.max(0, part.topMm - cutExtentOf([part.path]).minZ)
  const halved = depth * TEST_SHARE <= TEST_DEPTH_MM
  const deep = (h: number) => (halved ? h * TEST_SHARE : Math.min(h, TEST_DEPTH_MM))
  const heightOf = (m: { readonly z: number }, rapid: boolean) => {
    const h = part.topMm - m.z
    if (h > 0) return -(rapid ? Math.min(deep(h), Math.max(0, deep(depth) - OVER_FLOOR_MM)) : deep(h))
    return m.z >= clearMm - SAME_MM ? lift + Math.max(0, m.z - clearMm) : Math.min(lift, -h)
  }
  const out: { slice: Slice; box: Box }[] = []
  for (const slice of slicesOf(part.path)) {
    const own = cutExtentOf([joined([slice])])
    const flat = moved({ moves: slice.moves, passes: [] }, (m: Way) => ({
      ...m,
      z: heightOf(m, m.kind === 'rapid')
    }))
    const from = slice.from === null ? null : { ...slice.from, z: heightOf(slice.from, true) }
    const next = { slice: { ...slice, from, moves: flat.moves }, box: own }
    // All of it below the floor of the test, the same way as one that has reached it: it would cut air.
    const below = !halved && own.maxZ <= part.topMm - TEST_DEPTH_MM
    const again = below && out.some(o => o.box.minZ <= part.topMm - TEST_DEPTH_MM && alike(o.box, own))
    if (!again) out.push(next)
  }
  return out.map(o => o.slice)
}

function alike(a: Box, b: Box): boolean {
  return (['minX', 'maxX', 'minY', 'maxY'] as const).every(k => Math.abs(a[k] - b[k]) <= SAME_WAY_MM)
}

// Windows begin at the left of one pass and the near end of another: the best one is among them.
function windowOf(units: readonly Unit[], x: number, y: number): Unit[] {
  let best: Unit[] = []
  const lefts = [...new Set(units.map(u => u.box.minX))].slice(0, MOST_WINDOWS)
  const nears = [...new Set(units.map(u => u.box.minY))].slice(0, MOST_WINDOWS)
  for (const left of lefts)
    for (const near of nears) {
      const inside = units.filter(
        ({ box: b }) =>
          b.minX >= left - SAME_MM &&
          b.maxX <= left + x + SAME_MM &&
          b.minY >= near - SAME_MM &&
          b.maxY <= near + y + SAME_MM
      )
      if (inside.length > best.length) best = inside
    }
  return best
}

/** Windows tried along each axis: enough for a scale of ticks, and bounded. */
const MOST_WINDOWS = 120

/** The passes on a board, the middle of what is cut at its middle. */
function tested(
  program: ProgramInput,
  units: readonly Unit[],
  lift: number,
  board: Scrap,
  leftOut: readonly string[] = []
): ProgramInput {
  const box = boxOf(units)
  const shift = { turnDeg: 0, shiftX: -(box.minX + box.maxX) / 2, shiftY: -(box.minY + box.maxY) / 2 }
  const runs = program.runs.flatMap((run, r): CutterRun[] => {
    const parts = run.parts.flatMap((part, p): ProgramPart[] => {
      const own = units.filter(u => u.run === r && u.part === p)
      if (own.length === 0) return []
      return [{ ...part, topMm: 0, path: placed(joined(own.map(u => u.slice)), shift) }]
    })
    return parts.length === 0 ? [] : [{ ...run, parts, minutes: null }]
  })
  const [x, y] = [board.x / 2, board.y / 2]
  return {
    ...program,
    kind: 'test cut',
    name: `${program.name} test cut`,
    setting: ['a cheap board flat on the bed'],
    zero: ['X0 Y0 is the middle of the board'],
    holding: ['at the rim of the board, clear of what is cut'],
    notes: [
      ...program.notes,
      `Cheap board, ${board.x} x ${board.y} mm, at least ${board.thickness} thick.`,
      ...(leftOut.length === 0
        ? []
        : [`The scrap has no room for ${leftOut.length} passes; the first left out is ${leftOut[0]}.`])
    ],
    bedMm: -board.thickness,
    intoBedMm: 0,
    stock: { minX: -x, maxX: x, minY: -y, maxY: y, minZ: -board.thickness, maxZ: 0 },
    clearMm: lift,
    checkAt: { x: 0, y: 0, topMm: 0 },
    runs
  }
}

function boxOf(units: readonly Unit[]): Box {
  const of = (key: keyof Box, pick: (...v: number[]) => number) => pick(...units.map(u => u.box[key]))
  return {
    minX: of('minX', Math.min),
    maxX: of('maxX', Math.max),
    minY: of('minY', Math.min),
    maxY: of('maxY', Math.max),
    minZ: of('minZ', Math.min),
    maxZ: of('maxZ', Math.max)
  }
}

const width = (b: Box) => b.maxX - b.minX
const height = (b: Box) => b.maxY - b.minY
