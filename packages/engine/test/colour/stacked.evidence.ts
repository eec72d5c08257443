import { fitCard } from '../../src/colour/card.ts'
import { labOf } from '../../src/colour/cielab.ts'
import { contrastOf, strokeReadAtMm } from '../../src/colour/contrast.ts'
import { coverDepthMm, lightThrough } from '../../src/colour/cover-depth.ts'
import { difference } from '../../src/colour/difference.ts'
import { hexOf, linearOfHex, xyzOf } from '../../src/colour/srgb.ts'
import { laidOn, layerPasses, seenOutside } from '../../src/colour/stacked.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'
import { PAIRS } from './ciede2000-pairs.ts'

const model = 'colour'

/** A white by which a look is worked out apart: S 4 /mm, K 0.08 /mm, over a card of 0.80 and of nothing inside. */
const looked = (mm: number, behind: number): number => {
  const a = 1 + 0.08 / 4
  const b = Math.sqrt(a * a - 1)
  const coth = 1 / Math.tanh(b * 4 * mm)
  const r = (1 - behind * (a - b * coth)) / (a - behind + b * coth)
  return (0.953479 * 0.4 * r) / (1 - 0.6 * r)
}
const grey = (x: number) => [x, x, x] as const

export const rows: readonly Evidence[] = [
  table({
    model,
    what: 'CIEDE2000 of the test pairs',
    source: 'Sharma, Wu, Dalal, Color Res. Appl. 30 (2005) 21-30, Table 1; ISO/CIE 11664-6',
    confidence: 'read',
    unit: '',
    tolerance: 5.1e-5,
    why: 'four decimals',
    cells: PAIRS.length,
    worst: () =>
      Math.max(
        ...PAIRS.map(([l1, a1, b1, l2, a2, b2, d]) => Math.abs(difference([l1, a1, b1], [l2, a2, b2]) - d))
      )
  }),
  table({
    model,
    what: 'sRGB steps that do not come back',
    source: 'IEC 61966-2-1: both ways',
    confidence: 'exact',
    unit: 'steps',
    tolerance: 0,
    why: 'every step comes back',
    cells: 256,
    worst: () =>
      Array.from({ length: 256 }, (_, i) => `#${i.toString(16).padStart(2, '0').repeat(3)}`).filter(
        hex => hexOf(linearOfHex(hex)) !== hex
      ).length
  }),
  {
    model,
    what: 'white of sRGB, X',
    source: 'D65, 2° observer, CIE 15',
    confidence: 'memory',
    unit: '',
    published: 0.95047,
    tolerance: 1e-6,
    why: 'five decimals; the matrix has seven',
    ours: () => xyzOf([1, 1, 1])[0]
  },
  {
    model,
    what: 'lightness of a reflectance of 18 %',
    source: 'ISO/CIE 11664-4: the photographer’s grey card, L* 49.5',
    confidence: 'memory',
    unit: '',
    published: 49.5,
    tolerance: 0.05,
    why: 'one decimal',
    ours: () => labOf([0.18, 0.18, 0.18])[0]
  },
  {
    model,
    what: 'light turned back by a free layer, K = 0, SX = 4: SX/(1 + SX)',
    source: 'Kubelka, J. Opt. Soc. Am. 38 (1948) 448',
    confidence: 'memory',
    unit: '',
    published: 0.8,
    tolerance: 1e-12,
    why: 'closed form',
    ours: () => laidOn(4, 0, 1, 0)
  },
  {
    model,
    what: 'light let through where nothing scatters, KX = 2',
    source: 'Beer-Lambert: e⁻²',
    confidence: 'exact',
    unit: '',
    published: Math.exp(-2),
    tolerance: 1e-12,
    why: 'closed form',
    ours: () => layerPasses(0, 1, 2)
  },
  {
    model,
    what: 'reflectance 0.5 inside, seen through the face of resin, n 1.55',
    source: 'Saunderson, J. Opt. Soc. Am. 32 (1942) 727, k2 0.6; worked by hand',
    confidence: 'computed',
    unit: '',
    published: 0.27242,
    tolerance: 1e-5,
    why: 'five decimals',
    ours: () => seenOutside(0.5)
  },
  {
    model,
    what: 'light through 10 mm of a dye of decadic absorbance 0.3 per cm',
    source: 'Beer-Lambert: 10^−0.3',
    confidence: 'exact',
    unit: '',
    published: 10 ** -0.3,
    tolerance: 1e-7,
    why: 'closed form; the luminances of the bands sum to 1 within 1e-7',
    ours: () => {
      const k = (0.3 * Math.LN10) / 10
      return lightThrough({ scatterPerMm: [0, 0, 0], absorbPerMm: [k, k, k] }, 10)
    }
  },
  {
    model,
    what: 'contrast of #767676 on white',
    source: 'WCAG 2.x, published example',
    confidence: 'memory',
    unit: ': 1',
    published: 4.54,
    tolerance: 0.005,
    why: 'two decimals',
    ours: () => contrastOf(linearOfHex('#767676'), linearOfHex('#ffffff'))
  },
  {
    model,
    what: 'depth that hides a white of S 5.5 /mm for the eye, against the contrast ratio 0.98 of ISO 6504-1 (2.1 mm)',
    source: 'Kubelka-Munk at contrast ratio 0.98, computed independently',
    confidence: 'computed',
    unit: 'mm',
    published: 2.13,
    tolerance: 0.1,
    why: 'two criteria: a difference of 1 (practice) and the standard’s ratio; they agree near white',
    ours: () => coverDepthMm({ scatterPerMm: grey(5.5), absorbPerMm: grey(0.0005) })!
  },
  {
    model,
    what: 'scattering found from a card of four steps, its colours worked out apart (S 4 /mm)',
    source: 'Kubelka-Munk and Saunderson closed forms, by hyperbolic cotangent',
    confidence: 'computed',
    unit: '1/mm',
    published: 4,
    tolerance: 0.02,
    why: 'colours without error; the search starts at half the strength and is held to it loosely',
    ours: () =>
      fitCard(
        {
          steps: [0.2, 0.4, 0.7, 1.1].map(mm => ({
            mm,
            overBlack: grey(looked(mm, 0)),
            overWhite: grey(looked(mm, 0.8))
          })),
          black: grey(0),
          white: grey((0.953479 * 0.4 * 0.8) / (1 - 0.6 * 0.8)),
          colourDoubt: 0.1,
          depthDoubtMm: 0.001
        },
        { scatterPerMm: grey(2), absorbPerMm: grey(0.04) }
      ).optics.scatterPerMm[1]
  },
  {
    model,
    what: 'distance at which a stroke of 1 mm is one minute of arc',
    source: 'tan 1′ = 0.00029089',
    confidence: 'exact',
    unit: 'mm',
    published: 3437.7,
    tolerance: 0.1,
    why: 'one decimal',
    ours: () => strokeReadAtMm(1)
  }
]
