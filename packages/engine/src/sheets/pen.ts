import type { Ink, Paint, Spot } from './mark.ts'

/** Colours of lines and letters, and of the sheet. */
export const GRAPHITE = '#292724'
export const SHEET = '#fbf8f1'

/** How a line is drawn on paper. */
export interface Pen {
  readonly widthMm: number
  /** Lengths drawn and left out in turn, mm; none: continuous. */
  readonly dashesMm?: readonly number[]
  readonly colour: string
  /** 0 unseen to 1 full. */
  readonly strength: number
  readonly roundEnds?: boolean
}

/** Half the width of an arrowhead by its length: 15° on each side, a filled arrow of ISO 129-1 (memory). */
const ARROW_SLOPE = 0.26

/** Widths of lines, mm (ISO 128-2: wide twice narrow; memory). */
const WIDE_MM = 0.35
const NARROW_MM = 0.18
const PLAIN: Pen = { widthMm: NARROW_MM, colour: GRAPHITE, strength: 1 }
/** Narrow line widths times dash 12, long dash 24, gap 3, dot 0.5 (ISO 128-2; memory). */
const DASHED = [2.16, 0.54]
const LONG_AND_DOT = [4.3, 0.54, 0.1, 0.54]

const OWN: Partial<Record<Ink, Partial<Pen>>> = {
  outline: { widthMm: WIDE_MM },
  halo: { widthMm: 2 * WIDE_MM, colour: SHEET, strength: 0.4 },
  hidden: { dashesMm: DASHED },
  axis: { dashesMm: LONG_AND_DOT },
  hardware: { dashesMm: [...LONG_AND_DOT, 0.1, 0.54] },
  hatch: { strength: 0.55 },
  grain: { widthMm: 0.13, strength: 0.55 },
  dot: { widthMm: WIDE_MM, strength: 0.5, roundEnds: true },
  'stone-light': { colour: SHEET },
  'cutting-plane': { dashesMm: LONG_AND_DOT },
  'cutting-plane-end': { widthMm: 2 * WIDE_MM },
  // Lines that lie behind others or warn.
  rule: { colour: '#d8d4cb' },
  ghost: { dashesMm: [0.8, 0.7], colour: '#9a948a' },
  limit: { colour: '#c07f12' },
  stop: { colour: '#a3341f' },
  caution: { colour: '#8a5a00' }
}

/** What a line of an ink is drawn with on paper; what it is for is said at {@link Ink}. */
export function penOf(ink: Ink): Pen {
  return { ...PLAIN, ...OWN[ink] }
}

/** Inks whose pen is not that of a narrow continuous line. */
export const OWN_INKS = Object.keys(OWN) as readonly Ink[]

/** Colour of a wash, and how strong: 0 unseen to 1 full. */
export interface Wash {
  readonly colour: string
  readonly strength: number
}

/** Washes that have a colour on paper. What is doubtful is lighter than what is sure. */
export const WASHES: ReadonlyMap<Paint, Wash> = new Map<Paint, Wash>([
  ['clear', { colour: '#e4dfd2', strength: 1 }],
  ['paper', { colour: SHEET, strength: 1 }],
  ['recess', { colour: GRAPHITE, strength: 0.08 }],
  ['dark', { colour: '#2e2b28', strength: 1 }],
  ['doubt', { colour: '#dddbd8', strength: 1 }],
  ['window', { colour: '#94a36a', strength: 1 }],
  ['window-doubt', { colour: '#dde2cd', strength: 1 }],
  ['night', { colour: '#e6e4e0', strength: 1 }],
  ['cover-1', { colour: '#083f3a', strength: 1 }],
  ['cover-2', { colour: '#2c7069', strength: 1 }],
  ['cover-3', { colour: '#6ea29c', strength: 1 }],
  ['cover-4', { colour: '#aacac6', strength: 1 }],
  ['cover-5', { colour: '#dbe8e5', strength: 1 }],
  ['left', { colour: '#b98a2c', strength: 1 }],
  ['cut-away', { colour: '#b3261e', strength: 1 }]
])

/** Corners x0,y0,x1,y1,x2,y2 of a filled arrowhead whose tip is at `at`, mm, y up. */
export function arrowhead(at: Spot, directionDeg: number, lengthMm: number): Float64Array {
  const a = (directionDeg * Math.PI) / 180
  const [cx, cy] = [Math.cos(a), Math.sin(a)]
  const bx = at[0] - lengthMm * cx
  const by = at[1] - lengthMm * cy
  const half = lengthMm * ARROW_SLOPE
  return Float64Array.of(at[0], at[1], bx - half * cy, by + half * cx, bx + half * cy, by - half * cx)
}
