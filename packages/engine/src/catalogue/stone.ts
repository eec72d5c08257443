import type { CatalogueRecord, Confidence } from './record.ts'
import type { Tags } from './tag.ts'

/** Form, which sets how it packs and sinks; `organic` was alive and can hold water. */
export type StoneKind = 'rounded' | 'crushed' | 'bead' | 'sand' | 'flat' | 'flake' | 'organic'

/**
 * A generic hard inclusion.
 *
 * Limits: kinds, not samples. Natural stone varies in hardness and density by layer and origin; a mixed bag
 * takes its hardest piece. Packing is of one size poured loose to well shaken; mixed sizes pack closer.
 */
export interface StoneRecord extends CatalogueRecord {
  readonly kind: StoneKind
  /** Density of one piece, its own pores included, kg/m³: middle, and from ... to. */
  readonly densityKgM3: number
  readonly densityBandKgM3: readonly [low: number, high: number]
  /** Solid share of a random heap, 0..1: loose to shaken. The rest is resin. */
  readonly packing: readonly [low: number, high: number]
  /** Scratch hardness, Mohs 1..10; the high end counts for cutters. */
  readonly mohs: readonly [low: number, high: number]
  /** W/(m·K). */
  readonly conductivityWmK: number
  /** J/(kg·K). */
  readonly heatCapacityJkgK: number
  /** Holds air that comes out as bubbles when it warms: seal it first. */
  readonly porous: boolean
  /** Usual size, mm. */
  readonly sizeMm: readonly [low: number, high: number]
  readonly tags?: Tags<StoneRecord>
}

/** Random packing by form, solid share (memory; wide grading raises it: Brouwers 2006, PRE 74:031309, read). */
const PACKING = {
  spheres: [0.55, 0.64], // random loose 0.55-0.56 to random close 0.64
  rounded: [0.58, 0.62],
  crushed: [0.5, 0.58],
  graded: [0.65, 0.75],
  sand: [0.58, 0.65],
  flat: [0.3, 0.45],
  mica: [0.15, 0.3]
} as const

const STONE_SOURCE =
  'handbook values of rock and glass: density, packing by form, heat capacity 0.80-0.90 kJ/(kg K), quartz rock 2-4 W/(m K); Mohs scale of mineralogy'
const ORGANIC_SOURCE =
  'dry plant matter, taken as light wood; packing and size as commonly met, no published value'

/** Middle of 0.80 to 0.90 kJ/(kg K) (memory). */
const STONE_HEAT_CAPACITY = 850
/** Middle of 2 to 4 W/(m K), rock of quartz (memory). */
const QUARTZ_ROCK_CONDUCTIVITY = 3

interface Row {
  readonly id: string
  readonly name: string
  readonly kind: StoneKind
  readonly densityBandKgM3: readonly [number, number]
  readonly packing: readonly [number, number]
  readonly mohs: readonly [number, number]
  readonly conductivityWmK: number
  readonly heatCapacityJkgK?: number
  readonly porous?: boolean
  readonly sizeMm: readonly [number, number]
  readonly note?: string
  readonly tags?: Tags<StoneRecord>
}

function stone(row: Row, source: string, confidence: Confidence): StoneRecord {
  return {
    heatCapacityJkgK: STONE_HEAT_CAPACITY,
    porous: false,
    ...row,
    densityKgM3: (row.densityBandKgM3[0] + row.densityBandKgM3[1]) / 2,
    source,
    confidence,
    tags: { sizeMm: 'practice', porous: 'practice', ...row.tags }
  }
}

const MINERALS: readonly Row[] = [
  {
    id: 'river-gravel',
    name: 'river gravel, rounded',
    kind: 'rounded',
    densityBandKgM3: [2600, 2700],
    packing: PACKING.rounded,
    mohs: [3, 7],
    conductivityWmK: QUARTZ_ROCK_CONDUCTIVITY,
    sizeMm: [4, 16],
    note: 'a mixed bag holds quartz: take hardness 7; wash, then dry until it weighs the same twice'
  },
  {
    id: 'river-pebbles',
    name: 'river pebbles, large',
    kind: 'rounded',
    densityBandKgM3: [2600, 2700],
    packing: PACKING.rounded,
    mohs: [3, 7],
    conductivityWmK: QUARTZ_ROCK_CONDUCTIVITY,
    sizeMm: [16, 60],
    note: 'large stones trap air beneath: turn them in the resin'
  },
  {
    id: 'quartz-pebbles',
    name: 'quartz pebbles',
    kind: 'rounded',
    densityBandKgM3: [2650, 2650],
    packing: PACKING.rounded,
    mohs: [7, 7],
    conductivityWmK: QUARTZ_ROCK_CONDUCTIVITY,
    sizeMm: [4, 30],
    tags: { densityKgM3: 'read', densityBandKgM3: 'read' }
  },
  {
    id: 'crushed-stone',
    name: 'crushed stone, one size',
    kind: 'crushed',
    densityBandKgM3: [2600, 2900],
    packing: PACKING.crushed,
    mohs: [3, 7],
    conductivityWmK: QUARTZ_ROCK_CONDUCTIVITY,
    sizeMm: [2, 16],
    note: 'limestone about 3, granite and basalt 6-7: ask which it is'
  },
  {
    id: 'crushed-stone-graded',
    name: 'crushed stone, mixed sizes',
    kind: 'crushed',
    densityBandKgM3: [2600, 2900],
    packing: PACKING.graded,
    mohs: [3, 7],
    conductivityWmK: QUARTZ_ROCK_CONDUCTIVITY,
    sizeMm: [0.1, 16],
    note: 'fines dust the resin grey: wash them out'
  },
  {
    id: 'limestone-chips',
    name: 'limestone or marble chips',
    kind: 'crushed',
    densityBandKgM3: [2700, 2700],
    packing: PACKING.crushed,
    mohs: [3, 3],
    conductivityWmK: 2.5,
    sizeMm: [2, 16],
    tags: { conductivityWmK: 'practice' }
  },
  {
    id: 'granite-chips',
    name: 'granite chips',
    kind: 'crushed',
    densityBandKgM3: [2650, 2650],
    packing: PACKING.crushed,
    mohs: [6, 7],
    conductivityWmK: QUARTZ_ROCK_CONDUCTIVITY,
    sizeMm: [2, 16]
  },
  {
    id: 'basalt-chips',
    name: 'basalt chips',
    kind: 'crushed',
    densityBandKgM3: [2900, 2900],
    packing: PACKING.crushed,
    mohs: [5, 6.5],
    conductivityWmK: 2,
    sizeMm: [2, 16],
    tags: { conductivityWmK: 'practice' }
  },
  {
    id: 'slate-chips',
    name: 'slate chips, flat',
    kind: 'flat',
    densityBandKgM3: [2700, 2800],
    packing: PACKING.flat,
    mohs: [2.5, 5.5],
    conductivityWmK: 2,
    sizeMm: [5, 40],
    note: 'packing taken as of flat shell pieces; splits along its layers under the cutter',
    tags: { packing: 'practice', conductivityWmK: 'practice' }
  },
  {
    id: 'sand',
    name: 'sand, quartz',
    kind: 'sand',
    densityBandKgM3: [2650, 2650],
    packing: PACKING.sand,
    mohs: [7, 7],
    conductivityWmK: QUARTZ_ROCK_CONDUCTIVITY,
    sizeMm: [0.06, 2],
    note: 'dry it in the oven; damp sand foams polyurethane and clouds epoxy',
    tags: { densityKgM3: 'read', densityBandKgM3: 'read' }
  },
  {
    id: 'glass-beads',
    name: 'glass beads',
    kind: 'bead',
    densityBandKgM3: [2500, 2500],
    packing: PACKING.spheres,
    mohs: [5.5, 6],
    conductivityWmK: 1,
    sizeMm: [1, 16],
    note: 'soda-lime glass',
    tags: { densityKgM3: 'read', densityBandKgM3: 'read', conductivityWmK: 'read' }
  },
  {
    id: 'crushed-glass',
    name: 'crushed glass',
    kind: 'crushed',
    densityBandKgM3: [2500, 2500],
    packing: PACKING.crushed,
    mohs: [5.5, 6],
    conductivityWmK: 1,
    sizeMm: [1, 10],
    note: 'sharp: gloves and eye protection; edges proud of a face must be ground under water with diamond',
    tags: { densityKgM3: 'read', densityBandKgM3: 'read', conductivityWmK: 'read' }
  },
  {
    id: 'shell-pieces',
    name: 'shell pieces, flat',
    kind: 'flat',
    densityBandKgM3: [2600, 2800],
    packing: PACKING.flat,
    mohs: [3, 4],
    conductivityWmK: 2.5,
    sizeMm: [2, 25],
    note: 'mussel, oyster, pearl shell; the dust is harmful to breathe: grind wet',
    tags: { densityKgM3: 'read', densityBandKgM3: 'read', conductivityWmK: 'practice' }
  },
  {
    id: 'shells-whole',
    name: 'shells, whole',
    kind: 'flat',
    densityBandKgM3: [2600, 2800],
    packing: [0.1, 0.3],
    mohs: [3, 4],
    conductivityWmK: 2.5,
    porous: true,
    sizeMm: [10, 80],
    note: 'hollow: fill each with resin before it goes in, or its air rises through the pour',
    tags: { densityKgM3: 'read', densityBandKgM3: 'read', packing: 'practice', conductivityWmK: 'practice' }
  },
  {
    id: 'mica-flake',
    name: 'mica flake',
    kind: 'flake',
    densityBandKgM3: [2770, 2880],
    packing: PACKING.mica,
    mohs: [2.5, 3],
    conductivityWmK: 0.6,
    sizeMm: [1, 20],
    note: 'splits in its own plane: keep it below what will be flattened',
    tags: { conductivityWmK: 'practice' }
  },
  {
    id: 'turquoise-chips',
    name: 'turquoise chips',
    kind: 'crushed',
    densityBandKgM3: [2600, 2900],
    packing: PACKING.crushed,
    mohs: [5, 6],
    conductivityWmK: 2,
    porous: true,
    sizeMm: [0.5, 6],
    note: 'natural turquoise; dyed howlite sold under the name is softer, 3.5',
    tags: { conductivityWmK: 'practice' }
  },
  {
    id: 'lapis-chips',
    name: 'lapis lazuli chips',
    kind: 'crushed',
    densityBandKgM3: [2700, 2900],
    packing: PACKING.crushed,
    mohs: [5, 5.5],
    conductivityWmK: 2,
    sizeMm: [0.5, 6],
    tags: { conductivityWmK: 'practice' }
  },
  {
    id: 'malachite-chips',
    name: 'malachite chips',
    kind: 'crushed',
    densityBandKgM3: [3600, 4050],
    packing: PACKING.crushed,
    mohs: [3.5, 4],
    conductivityWmK: 2,
    sizeMm: [0.5, 6],
    note: 'copper mineral: the dust is poisonous, grind wet and follow its safety data sheet',
    tags: { conductivityWmK: 'practice' }
  }
]

const DRY_NOTE =
  'dry until it weighs the same twice, heat once to above the predicted peak so that it moves before and not in the resin, then seal; fresh plant matter rots and steams'

const ORGANICS: readonly Row[] = [
  {
    id: 'pine-cones',
    name: 'pine cones',
    kind: 'organic',
    densityBandKgM3: [400, 700],
    packing: [0.1, 0.25],
    mohs: [1, 2],
    conductivityWmK: 0.13,
    porous: true,
    sizeMm: [20, 100],
    note: `${DRY_NOTE}; scales open with heat; thin sharp edges start cracks in fast resin`
  },
  {
    id: 'seed-pods',
    name: 'seed pods, woody',
    kind: 'organic',
    densityBandKgM3: [400, 900],
    packing: [0.2, 0.5],
    mohs: [1, 2],
    conductivityWmK: 0.15,
    porous: true,
    sizeMm: [10, 80],
    note: DRY_NOTE
  },
  {
    id: 'coffee-beans',
    name: 'coffee beans, roasted',
    kind: 'organic',
    densityBandKgM3: [550, 750],
    packing: [0.52, 0.62],
    mohs: [1, 2],
    conductivityWmK: 0.15,
    porous: true,
    sizeMm: [6, 12],
    note: `they float, and their oil keeps resin from wetting them: seal coat, or glue a layer down first; ${DRY_NOTE}`
  },
  {
    id: 'acorns-and-nuts',
    name: 'acorns, nuts and their shells',
    kind: 'organic',
    densityBandKgM3: [600, 1100],
    packing: [0.4, 0.58],
    mohs: [1, 2.5],
    conductivityWmK: 0.15,
    porous: true,
    sizeMm: [8, 40],
    note: DRY_NOTE
  },
  {
    id: 'wood-chips',
    name: 'wood chips and twigs',
    kind: 'organic',
    densityBandKgM3: [450, 750],
    packing: [0.3, 0.5],
    mohs: [1, 2],
    conductivityWmK: 0.15,
    porous: true,
    sizeMm: [2, 40],
    note: DRY_NOTE,
    tags: { densityKgM3: 'memory', densityBandKgM3: 'memory' }
  },
  {
    id: 'dried-flowers',
    name: 'dried flowers and leaves',
    kind: 'organic',
    densityBandKgM3: [200, 500],
    packing: [0.03, 0.15],
    mohs: [1, 1.5],
    conductivityWmK: 0.1,
    porous: true,
    sizeMm: [3, 60],
    note: `${DRY_NOTE}; colours brown above about 60 °C and fade in light`
  }
]

export const STONES: readonly StoneRecord[] = [
  ...MINERALS.map(row => stone(row, STONE_SOURCE, 'memory')),
  ...ORGANICS.map(row =>
    stone({ heatCapacityJkgK: 1500, ...row }, `${ORGANIC_SOURCE}; heat capacity as of dry wood`, 'practice')
  )
]
