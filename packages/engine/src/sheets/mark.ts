/**
 * A sheet is a list of marks on paper: mm from its lower left corner, x to the right, y up. Writers turn marks
 * into files; themes colour them by their ink. Nothing here knows of a file format.
 */

/** A place on the sheet, mm. */
export type Spot = readonly [x: number, y: number]

/**
 * What a line is for: its width, pattern and colour follow. Line types of ISO 128-2 (memory): visible edges
 * continuous wide, dimensions and hatching continuous narrow, hidden edges dashed, axes long dash and dot,
 * adjacent parts (hardware) long dash and two dots, cutting planes long dash and dot with wide ends.
 */
export type Ink =
  | 'outline'
  | 'edge'
  | 'hidden'
  | 'halo'
  | 'axis'
  | 'hardware'
  | 'dimension'
  | 'hatch'
  | 'dot'
  | 'grain'
  | 'stone-light'
  | 'stone-dark'
  | 'ghost'
  | 'cutting-plane'
  | 'cutting-plane-end'
  | 'pointer'
  | 'curve'
  | 'band'
  | 'rule'
  | 'limit'
  | 'stop'
  | 'caution'

/** What a text is for. */
export type Lettering = 'figure' | 'caption' | 'name' | 'plane' | 'numeral' | 'stop' | 'caution'

/** How an area is hatched: see hatch.ts. */
export type HatchKind = 'along' | 'across' | 'crossed' | 'wide' | 'paired' | 'solid' | 'dots'

export interface Hatch {
  readonly kind: HatchKind
  /** Makes grain of one part differ from that of the next; whole number. */
  readonly seed?: number
  /** Direction of grain, degrees counter-clockwise from x; 0 when left out. */
  readonly angleDeg?: number
}

/** Colour of an area: a material's own as "#rrggbb", or a wash the theme knows. */
export type Paint =
  | `#${string}`
  | 'clear'
  | 'paper'
  | 'recess'
  | 'window'
  | 'window-doubt'
  | 'doubt'
  | 'night'
  | 'dark'
  | `cover-${1 | 2 | 3 | 4 | 5}`
  | 'left'
  | 'cut-away'

export interface LineMark {
  readonly kind: 'line'
  readonly ink: Ink
  readonly from: Spot
  readonly to: Spot
}

/** Lines x0,y0,x1,y1,... drawn alike; closed ones return to their first point. */
export interface PathMark {
  readonly kind: 'path'
  readonly ink: Ink
  readonly lines: readonly Float64Array[]
  readonly closed?: boolean
  /** Width, mm, when it is not the ink's; colour, when it is a material's. */
  readonly widthMm?: number
  readonly paint?: Paint
}

/** A plane area, holes by the even-odd rule. */
export interface RegionMark {
  readonly kind: 'region'
  readonly rings: readonly Float64Array[]
  readonly paint: Paint | null
  readonly hatch: Hatch | null
  /** Edge drawn; null: none. */
  readonly edge: Ink | null
  /** Painted a hair over its edge, so that no gap shows between areas that adjoin. */
  readonly bleeds?: boolean
}

export interface TextMark {
  readonly kind: 'text'
  readonly lettering: Lettering
  /** Foot of the line of writing. */
  readonly at: Spot
  readonly text: string
  readonly heightMm: number
  readonly anchor: 'start' | 'middle' | 'end'
  readonly strong?: boolean
  /** Turned counter-clockwise, degrees. */
  readonly turnDeg?: number
  readonly paint?: Paint
}

export interface CircleMark {
  readonly kind: 'circle'
  readonly ink: Ink
  readonly at: Spot
  readonly radiusMm: number
  readonly filled?: boolean
}

/** A picture laid on the sheet: its address (`data:` or `blob:`), its lower left corner, its size. */
export interface ImageMark {
  readonly kind: 'image'
  readonly href: string
  readonly at: Spot
  readonly widthMm: number
  readonly heightMm: number
}

/** A filled arrowhead whose tip is at `at`; it points where `directionDeg` says. */
export interface ArrowMark {
  readonly kind: 'arrow'
  readonly ink: Ink
  readonly at: Spot
  readonly directionDeg: number
  readonly lengthMm: number
}

/** Marks that belong together; the name becomes a class. */
export interface GroupMark {
  readonly kind: 'group'
  readonly name: string
  readonly marks: readonly Mark[]
}

export type Mark =
  | LineMark
  | PathMark
  | RegionMark
  | TextMark
  | CircleMark
  | ArrowMark
  | ImageMark
  | GroupMark

/** A drawing: its paper and what is on it. */
export interface Sheet {
  readonly widthMm: number
  readonly heightMm: number
  readonly marks: readonly Mark[]
}

/** Heights of lettering on sheets, mm (ISO 3098-1 series 2.5, 3.5, 5; memory). */
export const FIGURE_MM = 3.5
export const CAPTION_MM = 3.25
export const PLANE_MM = 5

/** Width a text takes, mm, within a tenth or so: the mean figure of the sheet's type is half as wide as high. */
export function textWidthMm(text: string, heightMm: number, strong = false): number {
  let halves = 0
  for (const c of text) halves += NARROW.has(c) ? 0.55 : /[A-ZØ×%@mwMW]/.test(c) ? 1.24 : 1
  return halves * heightMm * (strong ? 0.5 : 0.475)
}

const NARROW = new Set([' ', '.', ',', ':', ';', 'i', 'l', 'j', 't', 'f', 'r', "'", '|', '(', ')', '-', '1'])

/** A line of text. */
export function text(
  at: Spot,
  words: string,
  more: Partial<Omit<TextMark, 'kind' | 'at' | 'text'>> = {}
): TextMark {
  return {
    kind: 'text',
    lettering: 'figure',
    at,
    text: words,
    heightMm: FIGURE_MM,
    anchor: 'start',
    ...more
  }
}

/** A straight line. */
export function line(ink: Ink, from: Spot, to: Spot): LineMark {
  return { kind: 'line', ink, from, to }
}

/** A rectangle as a ring, counter-clockwise. */
export function box(x0: number, y0: number, x1: number, y1: number): Float64Array {
  return Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1)
}
