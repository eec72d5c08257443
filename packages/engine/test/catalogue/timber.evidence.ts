import {
  basicGravityOf,
  bendingModulusOf,
  linkedCoefficientPerPct,
  TIMBERS
} from '../../src/catalogue/timber.ts'
import type { TimberRecord } from '../../src/catalogue/timber-record.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'
import { LINK_EXCEPTIONS } from './fixture.ts'

const model = 'catalogue/timber'

const linked = TIMBERS.filter(
  t =>
    t.basis === 'green to ovendry' &&
    t.shrinkageStartPct !== null &&
    t.coefficientKnown !== 'derived' &&
    LINK_EXCEPTIONS[t.id] === undefined
)
const read = linked.filter(t => t.shrinkageKnown === 'read' && t.coefficientKnown === 'read')
const recalled = linked.filter(t => !read.includes(t))

const worstLink = (rows: readonly TimberRecord[]): number =>
  Math.max(
    ...rows.flatMap(t => [
      Math.abs(linkedCoefficientPerPct(t.shrinkRadialPct!, t.shrinkageStartPct!) - t.radialPerPct!),
      Math.abs(linkedCoefficientPerPct(t.shrinkTangentialPct!, t.shrinkageStartPct!) - t.tangentialPerPct!)
    ])
  )

const weighed = TIMBERS.filter(
  t => t.gravityGreen !== null && t.density12KgM3 !== null && t.gravity12 === null
)
const tested = TIMBERS.filter(t => t.modulus12MPa !== null && t.gravity12 !== null)

/** Modulus from gravity over the tabulated one, sorted. */
const modulusRatios = (): number[] =>
  tested
    .map(t => bendingModulusOf({ ...t, modulus12MPa: null })!.value / t.modulus12MPa!)
    .sort((a, b) => a - b)

export const rows: readonly Evidence[] = [
  table({
    model,
    what: `coefficients worked out from total shrinkage, ${read.length} species with both columns read`,
    source: 'Wood Handbook FPL-GTR-190/282, Tables 4-3 and 13-5',
    confidence: 'read',
    unit: 'per %',
    tolerance: 2e-5,
    why: 'coefficients are printed to 0.00001, shrinkage to 0.1 %',
    cells: 2 * read.length,
    worst: () => worstLink(read)
  }),
  table({
    model,
    what: `the same, ${recalled.length} species of which a column is recalled; left out: ten with a group’s or older coefficients`,
    source: 'Wood Handbook FPL-GTR-190/282, Tables 4-3, 4-4 and 13-5',
    confidence: 'memory',
    unit: 'per %',
    tolerance: 2e-5,
    why: 'as above',
    cells: 2 * recalled.length,
    worst: () => worstLink(recalled)
  }),
  table({
    model,
    what: 'basic specific gravity worked out from density at 12 %, Australian timbers that give both',
    source:
      'WA Forest Products Commission sheets; Australian Forestry 67 (2004) 152; Timber Queensland TDS 16b; data sheets of camphor laurel',
    confidence: 'read',
    unit: '',
    tolerance: 0.065,
    why: 'the two figures come from different samples; beefwood is 0.062 off, the rest within 0.03',
    cells: weighed.length,
    worst: () =>
      Math.max(
        ...weighed.map(t => Math.abs(basicGravityOf({ ...t, gravityGreen: null })!.value - t.gravityGreen!))
      )
  }),
  {
    model,
    what: `bending modulus worked out from gravity over that tabulated, middle of ${tested.length} species`,
    source: 'Wood Handbook FPL-GTR-190/282, chapter 5, property against gravity; Tables 5-3a and 5-5',
    confidence: 'memory',
    unit: '',
    published: 1,
    tolerance: 0.05,
    why: 'a regression over other species than these; single ones are off by up to 1.8',
    ours: () => modulusRatios()[Math.floor(tested.length / 2)]!
  }
]
