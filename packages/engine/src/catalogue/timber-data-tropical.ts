import { type TimberPart, type TimberRow, timberRecords } from './timber-record.ts'

/**
 * Timbers of Africa, Asia, Central and South America.
 *
 * Source: Wood Handbook FPL-GTR-190/282, Table 4-4 (shrinkage), Table 13-5 (coefficients), Table 5-5 (gravity,
 * modulus). Shrinkage and coefficients of some rows stem from different data sets, so that the link between
 * the two does not hold (teak, mahogany, khaya, iroko, okoume, obeche, limba, afrormosia). Coefficients
 * tagged `derived` are the link's own.
 *
 * Columns: see {@link TimberRow}.
 */
const HANDBOOK: TimberPart = {
  region: 'Africa',
  basis: 'green to ovendry',
  source: 'Wood Handbook FPL-GTR-190/282 T4-4, T13-5, T5-5'
}

const ROWS: readonly TimberRow[] = [
  [
    ['teak', 'teak', 'Tectona grandis'],
    [2.5, 5.8, 7, 0.00101, 0.00186, 22, 0.55, 0.63, 706, 10700],
    ['ring/semi-ring', true],
    ['memory', 'memory', 'memory'],
    {
      region: 'Asia',
      note: 'C back-computes to S 2.2/4.0 at 22 % (older data set); C_T 0.00186 also in a read secondary table; SG12 low confidence'
    }
  ],
  [
    ['mahogany-true', 'mahogany, true', 'Swietenia macrophylla'],
    [3, 4.1, 7.8, 0.00172, 0.00238, 22, 0.45, 0.5, 560, 10300],
    ['diffuse (large pores)', true],
    ['read', 'memory', 'memory'],
    { region: 'C. America', note: 'C back-computes to S 3.7/5.1 at 22 % (older data set)' }
  ],
  [
    ['mahogany-african', 'mahogany, African (khaya)', 'Khaya spp.'],
    [2.5, 4.5, 8.8, 0.00141, 0.00201, null, 0.42, 0.49, 549, 9700],
    ['diffuse (large pores)', true],
    ['read', 'memory', 'memory']
  ],
  [
    ['iroko', 'iroko', 'Milicia excelsa'],
    [2.8, 3.8, 8.8, 0.00153, 0.00205, null, 0.54, 0.6, 672, 10100],
    ['diffuse (large pores)', true],
    ['memory', 'memory', 'memory'],
    { note: 'low confidence SG12' }
  ],
  [
    ['okoume', 'okoume', 'Aucoumea klaineana'],
    [4.1, 6.1, 11.3, 0.00194, 0.00212, null, 0.33, 0.37, 414, 7900],
    ['diffuse', true],
    ['read', 'memory', 'memory']
  ],
  [
    ['obeche', 'obeche', 'Triplochiton scleroxylon'],
    [3, 5.4, 9.2, 0.00106, 0.00183, null, 0.3, 0.33, 370, 5900],
    ['diffuse', true],
    ['read', 'memory', 'memory']
  ],
  [
    ['limba', 'limba', 'Terminalia superba'],
    [4.5, 6.2, 10.8, 0.00151, 0.00187, null, 0.38, 0.45, 504, 7000],
    ['diffuse', true],
    ['read', 'memory', 'memory']
  ],
  [
    ['afrormosia', 'afrormosia', 'Pericopsis elata'],
    [3, 6.4, 10.7, 0.00148, 0.00297, null, 0.61, 0.69, 773, 13400],
    ['diffuse', true],
    ['read', 'memory', 'memory']
  ],
  [
    ['sapele', 'sapele', 'Entandrophragma cylindricum'],
    [4.6, 7.4, 14, 0.00157, 0.00259, 30, 0.55, 0.62, 694, 12500],
    ['diffuse (large pores)', true],
    ['memory', 'derived', 'memory']
  ],
  [
    ['purpleheart', 'purpleheart', 'Peltogyne spp.'],
    [3.2, 6.1, 9.9, 0.00109, 0.00212, 30, 0.67, 0.8, 896, 15700],
    ['diffuse', true],
    ['memory', 'derived', 'memory'],
    { region: 'S. America', note: 'C_T 0.00212 agrees with a read secondary table' }
  ],
  [
    ['rosewood-indian', 'rosewood, Indian', 'Dalbergia latifolia'],
    [2.7, 5.8, 8.5, 0.00092, 0.00201, 30, 0.75, 0.83, 930, 12300],
    ['diffuse/semi-ring', true],
    ['memory', 'derived', 'memory'],
    { region: 'Asia' }
  ],
  [
    ['jatoba', 'jatoba (courbaril)', 'Hymenaea courbaril'],
    [4.5, 8.5, 12.1, 0.00155, 0.003, 30, 0.71, 0.84, 941, 14900],
    ['diffuse', true],
    ['memory', 'derived', 'memory'],
    { region: 'S. America', note: 'C_T 0.00300 agrees with a read secondary table' }
  ],
  [
    ['ipe', 'ipe', 'Handroanthus spp.'],
    [6.6, 8, 13.2, 0.0023, 0.00282, 30, 0.92, 1, 1120, 21600],
    ['diffuse', false],
    ['memory', 'derived', 'memory'],
    { region: 'S. America' }
  ],
  [
    ['spanish-cedar', 'spanish-cedar', 'Cedrela spp.'],
    [4.2, 6.3, 10.3, 0.00141, 0.00219, null, 0.41, 0.47, 526, 9900],
    ['ring/semi-ring', true],
    ['memory', 'memory', 'memory'],
    { region: 'C. America' }
  ],
  [
    ['balsa', 'balsa', 'Ochroma pyramidale'],
    [3, 7.6, 10.8, 0.00102, 0.00267, 30, 0.16, 0.17, 190, 3400],
    ['diffuse', true],
    ['memory', 'memory', 'memory'],
    { region: 'S. America' }
  ],
  [
    ['lignumvitae', 'lignumvitae', 'Guaiacum spp.'],
    [5.6, 9.3, 14, 0.00194, 0.00331, 30, 1.05, 1.2, 1344, 14100],
    ['diffuse', false],
    ['memory', 'derived', 'memory'],
    { region: 'C. America' }
  ]
]

export const TIMBERS_TROPICAL = timberRecords(HANDBOOK, ROWS)
