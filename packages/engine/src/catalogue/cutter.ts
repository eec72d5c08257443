import type { CatalogueRecord } from './record.ts'

export type CutterKind =
  | 'flat'
  | 'ball'
  | 'bull'
  | 'v'
  | 'surfacing'
  | 'drill'
  | 'brad-point'
  | 'forstner'
  | 'straight'
  | 'roundover'
  | 'chamfer'
  | 'keyhole'

/** One usual size: diameter, longest depth its edges reach in one setting, both mm. */
export interface CutterSize {
  readonly diameterMm: number
  readonly cuttingLengthMm: number
  /** Of a keyhole cutter: height of its head and diameter of its neck. */
  readonly headMm?: number
  readonly neckMm?: number
}

/**
 * A kind of cutter.
 *
 * Limits: usual sizes of the trade, to choose from before the maker has said what lies in the drawer: measure
 * yours. No speeds: those belong to the cut, and the greatest speed marked on the tool (EN 847-1) is never
 * exceeded.
 */
export interface CutterRecord extends CatalogueRecord {
  readonly kind: CutterKind
  readonly sizes: readonly CutterSize[]
  /** Edges, as usually sold. */
  readonly flutes: readonly number[]
  /** Included angle of the point or of the V, degrees; null for a flat or round end. */
  readonly pointAngleDeg: number | null
  /** Cuts straight down into solid material. */
  readonly canPlunge: boolean
  /** Point or spur that goes deeper than the full diameter, as a share of the diameter; 0 for none. */
  readonly tipPerDiameter: number
  /** For a profile with a radius: that of the corner or the round, as usually sold, mm. */
  readonly radiiMm: readonly number[]
  /** Runs in a machine spindle or hand router; else in a drill. */
  readonly runsIn: readonly ('machine' | 'router' | 'drill')[]
  /** Has a bearing that follows a template or an edge. */
  readonly bearing: boolean
}

const sizes = (...pairs: readonly (readonly [number, number])[]): readonly CutterSize[] =>
  pairs.map(([diameterMm, cuttingLengthMm]) => ({ diameterMm, cuttingLengthMm }))

/** Depth of a cone beyond the full diameter: D/(2·tan(σ/2)), per D. 118°: 0.300. */
const cone = (pointAngleDeg: number): number => 1 / (2 * Math.tan((pointAngleDeg * Math.PI) / 360))

type Row = Omit<CutterRecord, 'source' | 'confidence' | 'note' | 'radiiMm' | 'bearing'> & {
  readonly note: string
  readonly radiiMm?: readonly number[]
  readonly bearing?: boolean
}

function cutter(row: Row): CutterRecord {
  return {
    radiiMm: [],
    bearing: false,
    ...row,
    source: 'common sizes of the trade, no published source',
    confidence: 'practice',
    note: `${row.note}; measure yours`
  }
}

/** V bits by included angle: for grooves, and for steep inlay walls. */
const v = (angleDeg: number, note: string): CutterRecord =>
  cutter({
    id: `v-${angleDeg}`,
    name: `V bit ${angleDeg}°`,
    kind: 'v',
    // The edge ends where the V reaches the full diameter.
    sizes: sizes(...[6, 12].map(d => [d, Math.round(10 * d * cone(angleDeg)) / 10] as const)),
    flutes: [1, 2],
    pointAngleDeg: angleDeg,
    canPlunge: true,
    tipPerDiameter: cone(angleDeg),
    runsIn: ['machine', 'router'],
    note
  })

export const CUTTERS: readonly CutterRecord[] = [
  cutter({
    id: 'flat-end-mill',
    name: 'flat end mill',
    kind: 'flat',
    sizes: sizes(
      [1, 3],
      [1.5, 5],
      [2, 8],
      [3, 12],
      [3.175, 15],
      [4, 17],
      [6, 22],
      [6.35, 25],
      [8, 25],
      [12, 40]
    ),
    flutes: [1, 2, 3],
    pointAngleDeg: null,
    canPlunge: true,
    tipPerDiameter: 0,
    runsIn: ['machine'],
    note: 'plunges only when its edges meet at the centre: look; one polished flute for resin'
  }),
  cutter({
    id: 'ball-nose',
    name: 'ball-nose end mill',
    kind: 'ball',
    sizes: sizes([1, 3], [2, 8], [3, 12], [3.175, 15], [4, 17], [6, 22], [8, 25], [12, 30]),
    flutes: [2],
    pointAngleDeg: null,
    canPlunge: true,
    tipPerDiameter: 0,
    runsIn: ['machine'],
    note: 'its radius is half its diameter; at the very tip it does not cut but rubs'
  }),
  cutter({
    id: 'bull-nose',
    name: 'bull-nose end mill',
    kind: 'bull',
    sizes: sizes([3, 12], [6, 22], [8, 25], [12, 30]),
    flutes: [2],
    pointAngleDeg: null,
    canPlunge: true,
    tipPerDiameter: 0,
    radiiMm: [0.5, 1, 2],
    runsIn: ['machine'],
    note: 'flat with a rounded corner; plunges only when its edges meet at the centre'
  }),
  v(30, 'for steep inlay walls; a blunt tip cuts wider than reckoned'),
  v(60, 'a blunt tip cuts wider than reckoned: measure a test line'),
  v(90, 'a blunt tip cuts wider than reckoned: measure a test line'),
  cutter({
    id: 'surfacing',
    name: 'surfacing bit',
    kind: 'surfacing',
    sizes: sizes([22, 6], [25.4, 8], [38, 8], [50, 10]),
    flutes: [2, 3],
    pointAngleDeg: null,
    canPlunge: false,
    tipPerDiameter: 0,
    runsIn: ['machine', 'router'],
    note: 'no edge in the middle: enter from outside the stock or on a ramp'
  }),
  cutter({
    id: 'keyhole-cutter',
    name: 'keyhole cutter',
    kind: 'keyhole',
    sizes: [
      { diameterMm: 9.5, cuttingLengthMm: 11, headMm: 4.8, neckMm: 4.8 },
      { diameterMm: 12.7, cuttingLengthMm: 13, headMm: 5.5, neckMm: 6.35 }
    ],
    flutes: [2],
    pointAngleDeg: null,
    canPlunge: true,
    tipPerDiameter: 0,
    runsIn: ['machine', 'router'],
    note: 'one pass at full depth: plunge, go along, and come back the same way to where it went in; never lift on the way'
  }),
  cutter({
    id: 'drill',
    name: 'twist drill 118°',
    kind: 'drill',
    sizes: sizes([2, 24], [2.5, 30], [3, 33], [4, 43], [5, 52], [6, 57], [8, 75], [10, 87], [12, 101]),
    flutes: [2],
    pointAngleDeg: 118,
    canPlunge: true,
    tipPerDiameter: cone(118),
    runsIn: ['machine', 'drill'],
    note: 'lengths as of the short jobber series (DIN 338, memory); grabs in resin: slow feed, clear often, backer beneath'
  }),
  cutter({
    id: 'brad-point',
    name: 'brad-point drill',
    kind: 'brad-point',
    sizes: sizes([3, 33], [4, 43], [5, 52], [6, 57], [8, 75], [10, 87], [12, 96]),
    flutes: [2],
    pointAngleDeg: null,
    canPlunge: true,
    tipPerDiameter: 0.3,
    runsIn: ['machine', 'drill'],
    note: 'clean rim in timber; the brad goes ahead by about a third of the diameter'
  }),
  cutter({
    id: 'forstner',
    name: 'Forstner bit',
    kind: 'forstner',
    sizes: sizes([10, 50], [15, 50], [20, 50], [25, 50], [30, 50], [35, 50], [40, 50], [50, 50], [60, 50]),
    flutes: [2],
    pointAngleDeg: null,
    canPlunge: true,
    tipPerDiameter: 0.12,
    runsIn: ['drill'],
    note: 'flat floor with a pit of the spur; drill press and slow speed; heats resin quickly: lift often'
  }),
  cutter({
    id: 'router-straight',
    name: 'straight router bit',
    kind: 'straight',
    sizes: sizes([6, 20], [8, 20], [10, 25], [12, 30], [16, 30], [20, 30]),
    flutes: [1, 2],
    pointAngleDeg: null,
    canPlunge: true,
    tipPerDiameter: 0,
    runsIn: ['router', 'machine'],
    note: 'plunges only with an edge across its end: look'
  }),
  cutter({
    id: 'router-template',
    name: 'straight router bit with bearing',
    kind: 'straight',
    sizes: sizes([12, 25], [16, 25], [19, 25]),
    flutes: [2],
    pointAngleDeg: null,
    canPlunge: false,
    tipPerDiameter: 0,
    runsIn: ['router'],
    bearing: true,
    note: 'follows the template without offset; start in a drilled hole'
  }),
  cutter({
    id: 'roundover',
    name: 'round-over bit with bearing',
    kind: 'roundover',
    sizes: sizes([18.7, 10], [22.2, 13], [25.4, 13], [31.8, 16]),
    flutes: [2],
    pointAngleDeg: null,
    canPlunge: false,
    tipPerDiameter: 0,
    radiiMm: [3, 5, 6.35, 9.5],
    runsIn: ['router'],
    bearing: true,
    note: 'the diameter is the bearing and twice the radius'
  }),
  cutter({
    id: 'chamfer',
    name: 'chamfer bit 45° with bearing',
    kind: 'chamfer',
    sizes: sizes([25, 10], [32, 12]),
    flutes: [2],
    pointAngleDeg: 90,
    canPlunge: false,
    tipPerDiameter: 0,
    runsIn: ['router'],
    bearing: true,
    note: 'takes 45° off an edge'
  })
]
