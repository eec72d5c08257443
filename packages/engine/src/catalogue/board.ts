import type { CatalogueRecord } from './record.ts'
import type { Tags } from './tag.ts'

export type BoardMaterial =
  | 'particleboard'
  | 'mdf'
  | 'plywood'
  | 'polyethylene'
  | 'acrylic'
  | 'steel'
  | 'silicone'
  | 'glass'

/**
 * A board, sheet or block that a mould is made of.
 *
 * Limits: generic sheets; a wet or swollen board is softer. `modulusPa` is for minutes; under load for days
 * the sag grows to (1 + creepFactor) at most, since the factors are those of permanent load.
 */
export interface BoardRecord extends CatalogueRecord {
  readonly material: BoardMaterial
  /** Thickness taken unless the maker says; and what is usually sold, mm. */
  readonly thicknessMm: number
  readonly thicknessesMm: readonly number[]
  /** Modulus in bending, short time, along the stiffer way, Pa. */
  readonly modulusPa: number
  /** Across it, Pa; null when it is alike both ways. */
  readonly modulusAcrossPa: number | null
  /** Growth of the sag under permanent load, as a fraction of the sag at once. */
  readonly creepFactor: number
  readonly densityKgM3: number
  /** W/(m·K). */
  readonly conductivityWmK: number
  /** J/(kg·K). */
  readonly heatCapacityJkgK: number
  /** Softens, warps or lets go above, °C; null: not in the reach of a casting. */
  readonly softeningC: number | null
  /** Resin sticks to it unless a liner, tape or wax lies between. */
  readonly needsRelease: boolean
  /** Carries a load between bearers; false: must lie flat on a board. */
  readonly spans: boolean
  readonly tags?: Tags<BoardRecord>
}

const HEAT = 'conductivity after EN ISO 10456 by density (memory), heat capacity (memory)'
const K_DEF = 'creep factor k_def of EN 1995-1-1 Table 3.2, service class 1, permanent load (memory)'
const SWELLS = 'its edges swell: seal them before a water test'

const plywood = (id: string, thicknessMm: number, along: number, across: number): BoardRecord => ({
  id,
  name: `birch plywood ${thicknessMm} mm`,
  source: `mean moduli of birch plywood of this thickness, trade handbook (memory); ${HEAT}; ${K_DEF}`,
  confidence: 'memory',
  note: `along and across the grain of the face; softer plywood has half: measure yours; ${SWELLS}`,
  material: 'plywood',
  thicknessMm,
  thicknessesMm: [6, 9, 12, 15, 18, 21, 24],
  modulusPa: along,
  modulusAcrossPa: across,
  creepFactor: 0.8,
  densityKgM3: 680,
  conductivityWmK: 0.166, // between 0.13 at 500 and 0.17 at 700 kg/m³
  heatCapacityJkgK: 1600,
  softeningC: null,
  needsRelease: true,
  spans: true
})

const ROWS: readonly BoardRecord[] = [
  {
    id: 'melamine-particleboard-18',
    name: 'melamine-faced particleboard 18 mm',
    source: `modulus 2.5 GPa as commonly taken for the faced board, bare board of EN 312 type P2 at least 1.6 GPa (memory); ${HEAT}; ${K_DEF}`,
    confidence: 'memory',
    note: `resin keys into scratches and raw edges of the face: tape or wax it; ${SWELLS}`,
    material: 'particleboard',
    thicknessMm: 18,
    thicknessesMm: [16, 18, 19, 22, 25],
    modulusPa: 2.5e9,
    modulusAcrossPa: null,
    creepFactor: 2.25,
    densityKgM3: 680,
    conductivityWmK: 0.151, // between 0.14 at 600 and 0.18 at 900 kg/m³
    heatCapacityJkgK: 1700,
    softeningC: null,
    needsRelease: true,
    spans: true,
    tags: { modulusPa: 'practice', densityKgM3: 'practice' }
  },
  {
    id: 'mdf-18',
    name: 'medium-density fibreboard 18 mm',
    source: `modulus 2.2 GPa, the least of EN 622-5 for 12-19 mm (memory); ${HEAT}; ${K_DEF}`,
    confidence: 'memory',
    note: `drinks resin unless taped; ${SWELLS}`,
    material: 'mdf',
    thicknessMm: 18,
    thicknessesMm: [12, 16, 18, 19, 22, 25],
    modulusPa: 2.2e9,
    modulusAcrossPa: null,
    creepFactor: 2.25,
    densityKgM3: 750,
    conductivityWmK: 0.17, // between 0.14 at 600 and 0.18 at 800 kg/m³
    heatCapacityJkgK: 1700,
    softeningC: null,
    needsRelease: true,
    spans: true
  },
  plywood('birch-plywood-18', 18, 10.0e9, 7.5e9),
  plywood('birch-plywood-12', 12, 10.7e9, 6.8e9),
  {
    id: 'hdpe-sheet',
    name: 'polyethylene sheet, high density',
    source:
      'modulus 0.9 GPa, 0.3 GPa after weeks (memory, handbooks of plastics); conductivity 0.50 of EN ISO 10077-2, others down to 0.42 (read); 2200 J/(kg K) (read); softens about 80 °C (memory)',
    confidence: 'memory',
    note: 'resin lets go of it unaided until it is scratched or hot; it grows about 1.5 mm per metre and 10 °C and bows when one face is warm: screw it to a board through slots',
    material: 'polyethylene',
    thicknessMm: 10,
    thicknessesMm: [5, 6, 8, 10, 12, 15, 20],
    modulusPa: 0.9e9,
    modulusAcrossPa: null,
    creepFactor: 2,
    densityKgM3: 950,
    conductivityWmK: 0.5,
    heatCapacityJkgK: 2200,
    softeningC: 80,
    needsRelease: false,
    spans: true,
    tags: { conductivityWmK: 'read', heatCapacityJkgK: 'read' }
  },
  {
    id: 'acrylic-sheet',
    name: 'acrylic sheet',
    source:
      'modulus 3.2 GPa, about 2 GPa after weeks (memory, handbooks of plastics); 0.18 W/(m K) and 1500 J/(kg K) (read); softens from about 90 °C (memory)',
    confidence: 'memory',
    note: 'epoxy and polyester bond to it, and polyester attacks it: release it well; scratches print into the casting',
    material: 'acrylic',
    thicknessMm: 5,
    thicknessesMm: [3, 4, 5, 6, 8, 10],
    modulusPa: 3.2e9,
    modulusAcrossPa: null,
    creepFactor: 0.6,
    densityKgM3: 1180,
    conductivityWmK: 0.18,
    heatCapacityJkgK: 1500,
    softeningC: 90,
    needsRelease: true,
    spans: true,
    tags: { conductivityWmK: 'read', heatCapacityJkgK: 'read' }
  },
  {
    id: 'steel-sheet',
    name: 'steel sheet',
    source: 'modulus 210 GPa (EN 1993-1-1, memory); 50 W/(m K) (read); 7800 kg/m³, 480 J/(kg K) (memory)',
    confidence: 'memory',
    note: 'takes heat from the first millimetres of a pour and slows their cure; sharp edges',
    material: 'steel',
    thicknessMm: 2,
    thicknessesMm: [1, 1.5, 2, 3],
    modulusPa: 210e9,
    modulusAcrossPa: null,
    creepFactor: 0,
    densityKgM3: 7800,
    conductivityWmK: 50,
    heatCapacityJkgK: 480,
    softeningC: null,
    needsRelease: true,
    spans: true,
    tags: { conductivityWmK: 'read' }
  },
  {
    id: 'silicone-mould',
    name: 'silicone mould',
    source:
      '0.35 W/(m K) (read); 1150 kg/m³, 1200 J/(kg K) (memory); modulus about 1 MPa for a rubber of Shore A 20-30 (practice)',
    confidence: 'memory',
    note: 'lies flat on a board or it sags; resin lets go of it, but hot resin wears it out: dull patches begin to stick; some amines slow the cure at its face',
    material: 'silicone',
    thicknessMm: 10,
    thicknessesMm: [5, 10, 15, 20],
    modulusPa: 1e6,
    modulusAcrossPa: null,
    creepFactor: 0,
    densityKgM3: 1150,
    conductivityWmK: 0.35,
    heatCapacityJkgK: 1200,
    softeningC: null,
    needsRelease: false,
    spans: false,
    tags: { modulusPa: 'practice', creepFactor: 'practice', conductivityWmK: 'read' }
  },
  {
    id: 'glass-plate',
    name: 'glass plate',
    source: 'modulus 70 GPa, 2500 kg/m³, 750 J/(kg K) (EN 572-1, EN ISO 10456, memory); 1.0 W/(m K) (read)',
    confidence: 'memory',
    note: 'gives a polished face; resin bonds to it and chips come off at demoulding; breaks from uneven heat or a weight on its edge: lay it full on a board',
    material: 'glass',
    thicknessMm: 6,
    thicknessesMm: [4, 5, 6, 8, 10],
    modulusPa: 70e9,
    modulusAcrossPa: null,
    creepFactor: 0,
    densityKgM3: 2500,
    conductivityWmK: 1,
    heatCapacityJkgK: 750,
    softeningC: null,
    needsRelease: true,
    spans: false,
    tags: { densityKgM3: 'read', conductivityWmK: 'read' }
  }
]

export const BOARDS: readonly BoardRecord[] = ROWS.map(row => ({
  ...row,
  tags: {
    thicknessMm: 'practice',
    thicknessesMm: 'practice',
    needsRelease: 'practice',
    spans: 'practice',
    ...row.tags
  }
}))
