import { bushOffsetMm } from '../../../src/cuts/hand/bush.ts'
import { routerPasses } from '../../../src/cuts/hand/pass-depth.ts'
import { carriageSagMm } from '../../../src/cuts/hand/sled.ts'
import type { Evidence } from '../../evidence.ts'

const INCH = 25.4
// Beams of 18 × 60 over 900 mm; weight of router and hands in one place, own weight along (handbook formulas).
const EI = (10_000 * 2 * 18 * 60 ** 3) / 12
const P = 4 * 9.80665 + 20
const Q = 2 * 18 * 60 * 680e-9 * 9.80665

export const rows: readonly Evidence[] = [
  {
    model: 'cuts/hand/bush',
    what: 'offset of a template, bush 14 and bit 8',
    source: 'plane geometry: half of bush less bit',
    confidence: 'exact',
    published: 3,
    ours: () => bushOffsetMm(14, 8),
    unit: 'mm',
    tolerance: 1e-12,
    why: 'exact by definition'
  },
  {
    model: 'cuts/hand/pass-depth',
    what: 'passes for a rebate of 3/8 in',
    source: 'makers’ case C87: three passes of 1/8 in stayed clean',
    confidence: 'practice',
    published: 3,
    ours: () => routerPasses((3 / 8) * INCH, 12, false).count,
    unit: '',
    tolerance: 0,
    why: 'a count'
  },
  {
    model: 'cuts/hand/pass-depth',
    what: 'passes of 3/32 in for a rebate of 3/8 in, timber that tears',
    source: 'makers’ case C87: down to 3/32 in',
    confidence: 'practice',
    published: 4,
    ours: () => routerPasses((3 / 8) * INCH, 12, true).count,
    unit: '',
    tolerance: 0,
    why: 'a count'
  },
  {
    model: 'cuts/hand/sled',
    what: 'sag of two beams 18 × 60 over 900 mm, router of 4 kg',
    source: 'P·L³/(48·E·I) + 5·q·L⁴/(384·E·I) (textbook)',
    confidence: 'exact',
    published: (P * 900 ** 3) / (48 * EI) + (5 * Q * 900 ** 4) / (384 * EI),
    ours: () => carriageSagMm(900, { baseMm: 0.9, routerG: 4000, beamThicknessMm: 18, beamHeightMm: 60 }),
    unit: 'mm',
    tolerance: 1e-5,
    why: 'a foot a thousandth of the span wide stands for one place'
  }
]
