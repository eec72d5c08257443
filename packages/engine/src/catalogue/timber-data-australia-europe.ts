import { type TimberPart, type TimberRow, timberRecords } from './timber-record.ts'

/**
 * Timbers of Australia (shrinkage from green to 12 %, unit shrinkage as coefficient) and of Europe, with the
 * DIN rows of three tropical ones (differential swelling).
 *
 * Source: each Australian row names its own. European rows: DIN 68100 Table A.1, from memory.
 *
 * Columns: see {@link TimberRow}. Neither source gives pores or moduli.
 */
const AUSTRALIA: TimberPart = {
  region: 'Australia',
  basis: 'green to 12 %',
  source: '',
  note: 'unit shrinkage (Australian practice, % per 1 % MC below about 12-25 %) used as C.'
}

const AUSTRALIAN_ROWS: readonly TimberRow[] = [
  [
    ['jarrah', 'jarrah', 'Eucalyptus marginata'],
    [4.8, 7.4, null, 0.0024, 0.003, null, 0.67, null, 835, null],
    null,
    ['read', 'read', 'read'],
    {
      source:
        'Queensland Government, Properties of timbers: Jarrah; WA Forest Products Commission species sheet',
      note: 'WA sheet: 5.0/7.5 before and 4.6/6.7 after reconditioning, air-dry 820, basic 670'
    }
  ],
  [
    ['marri', 'marri', 'Corymbia calophylla'],
    [3.5, 6.5, null, null, null, null, 0.65, null, 850, null],
    null,
    ['read', 'read', 'read'],
    { source: 'WA Forest Products Commission', note: '3.4/5.6 after reconditioning' }
  ],
  [
    ['spotted-gum', 'spotted gum', 'Corymbia maculata/citriodora'],
    [4.3, 6.1, null, 0.0032, 0.0038, null, null, null, 1010, null],
    null,
    ['memory', 'memory', 'memory'],
    {
      source:
        'Forest & Wood Products Australia knowledge base (shrinkage read); unit shrinkage and density memory (Kingston & Risdon 1961; Bootle)',
      words: 'read (shrinkage) / memory (rest)'
    }
  ],
  [
    ['blackbutt', 'blackbutt', 'Eucalyptus pilularis'],
    [4.3, 7.3, null, 0.0026, 0.0037, null, 0.71, null, 900, null],
    null,
    ['memory', 'memory', 'memory'],
    {
      source: 'Timber Queensland TDS 16b (T 7.3, unit T 0.37, 900 kg/m3 read); radial memory',
      words: 'read (T) / memory (R)'
    }
  ],
  [
    ['alpine-ash', 'alpine ash', 'Eucalyptus delegatensis'],
    [null, 8.5, null, 0.0022, 0.0035, null, 0.511, null, 650, null],
    null,
    ['read', 'read', 'read'],
    {
      source: 'Timber Queensland TDS 16b; Aust. Forestry 2004 67:152 (unit 0.35/0.22, basic 511)',
      note: 'before reconditioning; collapse-prone'
    }
  ],
  [
    ['mountain-ash', 'mountain ash', 'Eucalyptus regnans'],
    [null, 13.3, null, 0.0023, 0.0036, null, null, null, 650, null],
    null,
    ['memory', 'memory', 'memory'],
    {
      source: 'Timber Queensland TDS 16b (T, unit T, density); radial unit memory',
      note: 'before reconditioning; collapse-prone',
      words: 'read (T) / memory (R)'
    }
  ],
  [
    ['silvertop-ash', 'silvertop ash', 'Eucalyptus sieberi'],
    [null, 10.6, null, null, 0.0036, null, null, null, 850, null],
    null,
    ['read', 'read', 'read'],
    { source: 'Timber Queensland TDS 16b' }
  ],
  [
    ['sugar-gum', 'sugar gum', 'Eucalyptus cladocalyx'],
    [null, null, null, 0.0026, 0.0039, null, 0.752, null, 1000, null],
    null,
    ['derived', 'derived', 'derived'],
    {
      source: 'Aust. Forestry 2004 67:152 abstract: four species 0.22-0.29 R, 0.37-0.41 T',
      words: 'read (range) / midpoint chosen here'
    }
  ],
  [
    ['myrtle-beech', 'myrtle beech', 'Nothofagus cunninghamii'],
    [null, 4.7, null, null, 0.0032, null, null, null, 700, null],
    null,
    ['read', 'read', 'read'],
    { source: 'Timber Queensland TDS 16b', note: 'OCR table; check' }
  ],
  [
    ['beefwood', 'beefwood', 'Grevillea striata'],
    [2, 3.3, null, null, null, null, 0.82, null, 965, null],
    null,
    ['read', 'read', 'read'],
    { source: 'WA Forest Products Commission' }
  ],
  [
    ['goldfields-blackbutt', 'Goldfields blackbutt', 'Eucalyptus lesouefii'],
    [4.2, 5.5, null, null, null, null, 0.88, null, 1130, null],
    null,
    ['read', 'read', 'read'],
    { source: 'WA Forest Products Commission' }
  ],
  [
    ['blackwood', 'blackwood', 'Acacia melanoxylon'],
    [1.5, 4, null, 0.0016, 0.0027, null, null, null, 640, null],
    null,
    ['memory', 'memory', 'memory'],
    {
      source:
        'density + total shrinkage 3.9 R / 7.9 T (to ovendry) read from a university note; green-to-12 values and unit shrinkage memory (Bootle; Kingston & Risdon)',
      words: 'read (3.9/7.9, 640) / memory'
    }
  ],
  [
    ['camphor-laurel', 'camphor laurel', 'Cinnamomum camphora'],
    [null, null, null, 0.0011, 0.0019, null, 0.43, null, 520, null],
    null,
    ['read', 'derived', 'read'],
    {
      source:
        'secondary wood data sheets: total shrinkage 3.1 R / 5.4 T / 8.7 V, SG 0.43 basic, 0.52 at 12 %; another sheet: 550 kg/m3',
      note: 'unit values derived here: eq 13-3 gives 0.00105 R / 0.00187 T per %',
      words: 'read (secondary)'
    }
  ],
  [
    ['karri', 'karri', 'Eucalyptus diversicolor'],
    [4.3, 9.9, null, 0.0027, 0.004, null, null, null, 900, null],
    null,
    ['memory', 'memory', 'memory'],
    { source: 'Bootle / WA FPC' }
  ],
  [
    ['tasmanian-oak-group', 'Tasmanian oak group', 'E. delegatensis/regnans/obliqua'],
    [null, null, null, 0.0023, 0.0036, null, null, null, 700, null],
    null,
    ['memory', 'memory', 'memory'],
    { source: 'Kingston & Risdon 1961' }
  ],
  [
    ['red-ironbark', 'red ironbark', 'Eucalyptus sideroxylon/fibrosa'],
    [3.3, 6.5, null, 0.0031, 0.0037, null, null, null, 1100, null],
    null,
    ['memory', 'memory', 'memory'],
    { source: 'Bootle; Kingston & Risdon' }
  ],
  [
    ['river-red-gum', 'river red gum', 'Eucalyptus camaldulensis'],
    [4.4, 8.9, null, 0.0022, 0.0031, null, null, null, 900, null],
    null,
    ['memory', 'memory', 'memory'],
    { source: 'Bootle; Kingston & Risdon' }
  ],
  [
    ['sydney-blue-gum', 'Sydney blue gum', 'Eucalyptus saligna'],
    [5, 9.5, null, 0.0026, 0.0035, null, null, null, 850, null],
    null,
    ['memory', 'memory', 'memory'],
    { source: 'Bootle; Kingston & Risdon' }
  ],
  [
    ['hoop-pine', 'hoop pine', 'Araucaria cunninghamii'],
    [2.6, 3.8, null, 0.0018, 0.0023, null, null, null, 530, null],
    null,
    ['memory', 'memory', 'memory'],
    { source: 'Bootle; Kingston & Risdon' }
  ],
  [
    ['radiata-pine', 'radiata pine', 'Pinus radiata'],
    [3.4, 5.1, null, 0.002, 0.0027, null, null, null, 500, null],
    null,
    ['memory', 'memory', 'memory'],
    { source: 'Bootle; Kingston & Risdon' }
  ],
  [
    ['australian-red-cedar', 'Australian red cedar', 'Toona ciliata'],
    [2.1, 4.2, null, 0.0017, 0.0026, null, null, null, 420, null],
    null,
    ['memory', 'memory', 'memory'],
    { source: 'Bootle', note: 'low confidence' }
  ],
  [
    ['silky-oak', 'silky oak (southern)', 'Grevillea robusta'],
    [2.7, 7.7, null, 0.0016, 0.0028, null, null, null, 620, null],
    null,
    ['memory', 'memory', 'memory'],
    { source: 'Bootle', note: 'low confidence' }
  ],
  [
    ['queensland-maple', 'Queensland maple', 'Flindersia brayleyana'],
    [3, 7.3, null, 0.002, 0.0027, null, null, null, 560, null],
    null,
    ['memory', 'memory', 'memory'],
    { source: 'Bootle', note: 'low confidence' }
  ],
  [
    ['white-cypress', 'white cypress', 'Callitris glaucophylla'],
    [2.5, 2.8, null, 0.0023, 0.0026, null, null, null, 680, null],
    null,
    ['memory', 'memory', 'memory'],
    { source: 'Bootle' }
  ]
]

const EUROPE: TimberPart = {
  region: 'Europe',
  basis: 'differential swelling',
  source: 'DIN 68100 Table A.1 (differential swelling, % per 1 % MC)'
}

const EUROPEAN_ROWS: readonly TimberRow[] = [
  [
    ['oak-european', 'oak, European', 'Quercus robur/petraea'],
    [null, null, null, 0.0016, 0.0036, null, null, null, 690, null],
    null,
    ['memory', 'memory', 'memory']
  ],
  [
    ['beech-european', 'beech, European', 'Fagus sylvatica'],
    [null, null, null, 0.002, 0.0041, null, null, null, 710, null],
    null,
    ['memory', 'memory', 'memory']
  ],
  [
    ['ash-european', 'ash, European', 'Fraxinus excelsior'],
    [null, null, null, 0.0021, 0.0038, null, null, null, 690, null],
    null,
    ['memory', 'memory', 'memory']
  ],
  [
    ['sycamore-maple', 'sycamore maple', 'Acer pseudoplatanus'],
    [null, null, null, 0.0015, 0.0026, null, null, null, 630, null],
    null,
    ['memory', 'memory', 'memory']
  ],
  [
    ['walnut-european', 'walnut, European', 'Juglans regia'],
    [null, null, null, 0.0018, 0.0029, null, null, null, 670, null],
    null,
    ['memory', 'memory', 'memory']
  ],
  [
    ['cherry-european', 'cherry, European', 'Prunus avium'],
    [null, null, null, 0.0017, 0.003, null, null, null, 600, null],
    null,
    ['memory', 'memory', 'memory']
  ],
  [
    ['elm-european', 'elm, European', 'Ulmus spp.'],
    [null, null, null, 0.002, 0.0023, null, null, null, 640, null],
    null,
    ['memory', 'memory', 'memory']
  ],
  [
    ['spruce-european', 'spruce, European', 'Picea abies'],
    [null, null, null, 0.0019, 0.0039, null, null, null, 460, null],
    null,
    ['memory', 'memory', 'memory']
  ],
  [
    ['pine-scots', 'pine, Scots', 'Pinus sylvestris'],
    [null, null, null, 0.0019, 0.0036, null, null, null, 520, null],
    null,
    ['memory', 'memory', 'memory']
  ],
  [
    ['larch-european', 'larch, European', 'Larix decidua'],
    [null, null, null, 0.0014, 0.003, null, null, null, 600, null],
    null,
    ['memory', 'memory', 'memory']
  ],
  [
    ['teak-din', 'teak', 'Tectona grandis'],
    [null, null, null, 0.0016, 0.0026, null, null, null, 680, null],
    null,
    ['memory', 'memory', 'memory'],
    { region: 'tropical (DIN value)' }
  ],
  [
    ['iroko-din', 'iroko', 'Milicia excelsa'],
    [null, null, null, 0.0019, 0.0028, null, null, null, 650, null],
    null,
    ['memory', 'memory', 'memory'],
    { region: 'tropical (DIN value)' }
  ],
  [
    ['sapele-din', 'sapele', 'Entandrophragma cylindricum'],
    [null, null, null, 0.0024, 0.0032, null, null, null, 650, null],
    null,
    ['memory', 'memory', 'memory'],
    { region: 'tropical (DIN value)' }
  ],
  [
    ['lime', 'lime', 'Tilia spp.'],
    [null, null, null, 0.002, 0.003, null, null, null, 530, null],
    null,
    ['memory', 'memory', 'memory']
  ],
  [
    ['robinia', 'robinia', 'Robinia pseudoacacia'],
    [null, null, null, 0.0024, 0.0038, null, null, null, 740, null],
    null,
    ['memory', 'memory', 'memory']
  ],
  [
    ['olive', 'olive', 'Olea europaea'],
    [null, null, null, 0.0019, 0.0032, null, null, null, 990, null],
    null,
    ['memory', 'memory', 'memory'],
    {
      source: 'no handbook value found; estimated from total shrinkage about 5.4 R / 8.8 T',
      words: ['memory (low)', 'memory (low)', 'memory']
    }
  ]
]

export const TIMBERS_AUSTRALIA = timberRecords(AUSTRALIA, AUSTRALIAN_ROWS)
export const TIMBERS_EUROPE = timberRecords(EUROPE, EUROPEAN_ROWS)
