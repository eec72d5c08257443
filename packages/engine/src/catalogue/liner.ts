import type { CatalogueRecord } from './record.ts'

export type LinerKind = 'tape' | 'film' | 'wax' | 'spray' | 'sealant' | 'none'

/**
 * What lies between resin and mould, or in its joints.
 *
 * Limits: for epoxy at room temperature, by common practice. Try it with the resin at hand on an offcut.
 */
export interface LinerRecord extends CatalogueRecord {
  readonly kind: LinerKind
  /** Cured resin lets go of it. */
  readonly releases: boolean
  /** Makes a joint tight by itself. */
  readonly seals: boolean
  /** Until it may meet resin, h. */
  readonly readyAfterH: readonly [low: number, high: number]
  /** Thickness, mm: it takes this off the inside of the mould on each face; null for wax and spray. */
  readonly thicknessMm: number | null
  /** Softens, wrinkles or creeps above, °C. */
  readonly softeningC: number | null
  /** Leaves something on the casting that keeps a coat from wetting it: wash and sand before coating. */
  readonly leavesFilm: boolean
  /** What to mind. */
  readonly cautions: readonly string[]
}

const SOURCE = 'common workshop practice, no published source'

type Row = Omit<LinerRecord, 'source' | 'confidence'>

const ROWS: readonly Row[] = [
  {
    id: 'release-tape',
    name: 'sheathing or release tape (polyethylene, polypropylene)',
    kind: 'tape',
    releases: true,
    seals: false,
    readyAfterH: [0, 0],
    thicknessMm: 0.1,
    softeningC: 80,
    leavesFilm: true,
    cautions: [
      'press out every bubble and overlap the strips by 10 mm: seams print into the casting',
      'a tape that bridges a joint does not make it tight: run sealant along it'
    ]
  },
  {
    id: 'packing-tape',
    name: 'packing tape (polypropylene)',
    kind: 'tape',
    releases: true,
    seals: false,
    readyAfterH: [0, 0],
    thicknessMm: 0.05,
    softeningC: 70,
    leavesFilm: true,
    cautions: [
      'thin: it wrinkles under a warm pour, and a nick lets resin through',
      'its glue stays on the mould and may come off on the casting'
    ]
  },
  {
    id: 'pe-film',
    name: 'polyethylene film',
    kind: 'film',
    releases: true,
    seals: true,
    readyAfterH: [0, 0],
    thicknessMm: 0.2,
    softeningC: 80,
    leavesFilm: false,
    cautions: [
      'one piece without a seam holds liquid; folds and creases print into the casting',
      'fix it so that it cannot float up under the resin'
    ]
  },
  {
    id: 'mould-wax',
    name: 'mould-release wax',
    kind: 'wax',
    releases: true,
    seals: false,
    readyAfterH: [0.5, 2],
    thicknessMm: null,
    softeningC: 60,
    leavesFilm: true,
    cautions: [
      'several thin coats, each buffed, on a closed surface; raw board soaks it up and holds the resin',
      'wax softens under a warm pour; keep it off the timber, nothing bonds over it'
    ]
  },
  {
    id: 'release-spray',
    name: 'mould-release spray',
    kind: 'spray',
    releases: true,
    seals: false,
    readyAfterH: [0.25, 1],
    thicknessMm: null,
    softeningC: null,
    leavesFilm: true,
    cautions: [
      'silicone in it makes craters in later coats: use one without where the face will be finished',
      'never spray near open resin or bare timber; breathe as its safety data sheet says'
    ]
  },
  {
    id: 'silicone-sealant',
    name: 'silicone sealant in the joints',
    kind: 'sealant',
    releases: true,
    seals: true,
    readyAfterH: [12, 24],
    thicknessMm: null,
    softeningC: null,
    leavesFilm: true,
    cautions: [
      'overnight before any resin: acid or moisture from fresh sealant spoils the cure beside it',
      'inside and outside the joints; a fillet takes 3 to 5 mm off each inner corner',
      'residue makes craters in coats: cut it away and wash'
    ]
  },
  {
    id: 'masking-tape',
    name: 'masking tape, duct tape',
    kind: 'tape',
    releases: false,
    seals: false,
    readyAfterH: [0, 0],
    thicknessMm: 0.14,
    softeningC: 60,
    leavesFilm: true,
    cautions: ['resin creeps through and bonds to it; as a bottom or a dam it leaks']
  },
  {
    id: 'none',
    name: 'no liner',
    kind: 'none',
    releases: false,
    seals: false,
    readyAfterH: [0, 0],
    thicknessMm: 0,
    softeningC: null,
    leavesFilm: false,
    cautions: ['right only for polyethylene and silicone; everything else becomes part of the piece']
  }
]

export const LINERS: readonly LinerRecord[] = ROWS.map(row => ({
  ...row,
  source: SOURCE,
  confidence: 'practice',
  note: 'try it with your resin on an offcut'
}))
