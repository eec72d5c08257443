import type { Carrier } from './carrier.ts'
import { type Bands, clearShape, linearOf, luminanceOf, ratioOfSeen, type Srgb } from './pigment-optics.ts'
import type { CatalogueRecord } from './record.ts'
import type { ResinFamily } from './resin.ts'
import type { Tags } from './tag.ts'

export type PigmentKind =
  | 'opaque-paste'
  | 'powder'
  | 'pearl'
  | 'metallic'
  | 'tint-paste'
  | 'dye'
  | 'alcohol-ink'
  | 'glow'
  | 'paint'

/**
 * A generic colourant, as it is weighed in.
 *
 *   S = S*·c,  K = K*·c      S, K in 1/mm; c kg of PIGMENT in 1 m³ of mix; S*, K* in m² per g of pigment
 *   c = share of the mix × pigmentFraction × density of the mix
 *
 * Limits: no product. Without a test card the strength is known within `bandFactor` either way, and crowded
 * pigment scatters less than in proportion. Looks (`srgb`) are of the generic name, by eye.
 */
export interface PigmentRecord extends CatalogueRecord {
  readonly kind: PigmentKind
  /** Pigment or dye in what is weighed in, by mass, 0..1: 1 for powders and pure dye. */
  readonly pigmentFraction: number
  /** Scattering S*, m²/g of pigment; 0 for what dissolves. */
  readonly scatterM2PerG: number
  /** Absorption K*, m²/g of pigment, for the eye as a whole (luminance). */
  readonly absorbM2PerG: number
  /** Absorption K* in the three bands, m²/g. */
  readonly absorbBandsM2PerG: Bands
  /** Scattering S* in the three bands, m²/g, where a card of the maker's tells them apart; left out: alike. */
  readonly scatterBandsM2PerG?: Bands
  /** Known by a card of the maker's: what it was learned from. */
  readonly card?: 'colours' | 'wedge'
  /** S* and K* together may be this factor greater or smaller. */
  readonly bandFactor: number
  /** Usual share of the mix, % by mass of what is weighed in. */
  readonly loadingPct: readonly [low: number, high: number]
  /** More than this spoils the cure or the casting, % by mass of the mix. */
  readonly capPct: number
  /** How it looks: a deep layer of what scatters; a thin layer over white of what does not. Gloss left out. */
  readonly srgb: Srgb
  readonly srgbOf: 'deep layer' | 'thin layer over white'
  /** Resin families it is for, as generally sold; the label of the colour decides. */
  readonly families: readonly ResinFamily[]
  /** Colour moves: into end grain beside it, or up into a finish. */
  readonly bleeds: boolean
  /** Carriers of finishes that can take it up. */
  readonly dissolvesIn: readonly Carrier[]
  /** Density of what is weighed in, without air, g/ml. */
  readonly densityGMl: number
  readonly tags?: Tags<PigmentRecord>
}

/** Density of the resin that pastes are made in, g/ml (memory: epoxy resin part 1.10 to 1.16). */
const PASTE_CARRIER_G_ML = 1.14

/** Densities of pigments, g/ml: mica read 2.77 to 2.88 (memory); the rest handbook values from memory. */
const DENSITY = {
  titania: 4.2,
  carbon: 1.8,
  oxide: 4.5,
  organic: 1.5,
  mica: 2.85,
  aluminium: 2.7,
  bronze: 8.5
}

/** Density of a paste: volumes of its two parts add (derived). */
function pasteGMl(fraction: number, pigmentGMl: number): number {
  return 1 / (fraction / pigmentGMl + (1 - fraction) / PASTE_CARRIER_G_ML)
}

const PRACTICE = 'generic colourant, common practice: look, pigment content and families; no product'
const SOLIDS =
  'loading and cap: common guidance, pastes to 5-6 % (inert carrier), all solids to 10 % of the mix (memory)'

/** Loadings as commonly advised, % by mass of the mix (memory). */
const LOADING = {
  dye: [0.0005, 0.01],
  tint: [0.05, 0.3],
  translucent: [0.5, 2],
  strong: [2, 5],
  opaque: [2, 5],
  titania: [1, 3]
} as const
const CAP_PCT = 6
const SOLIDS_CAP_PCT = 10

const ALL: readonly ResinFamily[] = ['epoxy', 'polyester', 'polyurethane', 'other']
const DRY = 'dry it first for a polyurethane, which foams with moisture'

interface Opaque {
  readonly id: string
  readonly name: string
  readonly srgb: Srgb
  readonly scatter: number
  readonly fraction: number
  readonly pigmentGMl: number
  readonly factor: number
  readonly note: string
  readonly source: string
  readonly kind: PigmentKind
  readonly loading: readonly [number, number]
  readonly cap: number
  readonly families: readonly ResinFamily[]
  readonly tags: Tags<PigmentRecord>
}

/** What scatters: absorption from the look of a deep layer. */
function opaque(o: Opaque): PigmentRecord {
  const [red, green, blue] = linearOf(o.srgb)
  return {
    id: o.id,
    name: o.name,
    source: `${PRACTICE}. ${o.source}. ${SOLIDS}`,
    confidence: 'practice',
    note: o.note,
    kind: o.kind,
    pigmentFraction: o.fraction,
    scatterM2PerG: o.scatter,
    absorbM2PerG: o.scatter * ratioOfSeen(luminanceOf([red, green, blue])),
    absorbBandsM2PerG: [
      o.scatter * ratioOfSeen(red),
      o.scatter * ratioOfSeen(green),
      o.scatter * ratioOfSeen(blue)
    ],
    bandFactor: o.factor,
    loadingPct: o.loading,
    capPct: o.cap,
    srgb: o.srgb,
    srgbOf: 'deep layer',
    families: o.families,
    bleeds: false,
    dissolvesIn: [],
    densityGMl: o.fraction === 1 ? o.pigmentGMl : pasteGMl(o.fraction, o.pigmentGMl),
    tags: {
      loadingPct: 'memory',
      capPct: 'memory',
      // The density of a paste hangs on a pigment content that is only practice.
      ...(o.fraction === 1 ? { densityGMl: 'memory' as const } : {}),
      ...o.tags
    }
  }
}

const PASTE = { kind: 'opaque-paste', loading: LOADING.opaque, cap: CAP_PCT, families: ['epoxy'] } as const

const TITANIA = {
  scatter: 0.5,
  pigmentGMl: DENSITY.titania,
  factor: 2,
  srgb: [246, 246, 242],
  source:
    'S* of rutile titanium dioxide 0.5 m²/g within a factor of two: 0.25-0.3 in white paint, 0.4-0.8 when dilute, Mie bound about 1.3 (memory and estimate); K* derived from the look',
  tags: { scatterM2PerG: 'memory', bandFactor: 'memory' }
} as const

const CARBON_K = 7.5
const CARBON_SRGB: Srgb = [10, 10, 11]
const CARBON = {
  // derived: the scattering that gives a deep layer its look at K* 7.5
  scatter: CARBON_K / ratioOfSeen(luminanceOf(linearOf(CARBON_SRGB))),
  pigmentGMl: DENSITY.carbon,
  factor: 2,
  srgb: CARBON_SRGB,
  source: 'K* of carbon black 7.5 m²/g, from 5 to 10 (memory); S* derived from the look',
  tags: { absorbM2PerG: 'memory' }
} as const

const PASTE_NOTE =
  'stir the paste up before weighing; pigment content and strength differ by product: make a test card'

/** White and black pastes are sold for each family, in a carrier of that family. */
function whiteAndBlack(family: 'epoxy' | 'polyester' | 'polyurethane'): readonly PigmentRecord[] {
  const tail = family === 'epoxy' ? '' : `-${family}`
  const words = family === 'epoxy' ? '' : ` for ${family}`
  const families = [family]
  return [
    opaque({
      ...PASTE,
      ...TITANIA,
      id: `white-paste${tail}`,
      name: `white paste (titanium dioxide)${words}`,
      families,
      fraction: 0.5,
      note: PASTE_NOTE
    }),
    opaque({
      ...PASTE,
      ...CARBON,
      id: `black-paste${tail}`,
      name: `black paste (carbon black)${words}`,
      families,
      fraction: 0.15,
      note: `${PASTE_NOTE}; a little goes far: it greys a white at a hundredth of it`
    })
  ]
}

/** Coloured opaque pastes: look, and whether the pigment is an oxide (heavy) or organic (light). */
const COLOURS: readonly (readonly [name: string, srgb: Srgb, base: 'oxide' | 'organic' | 'titania'])[] = [
  ['red', [170, 28, 36], 'organic'],
  ['orange', [222, 102, 26], 'organic'],
  ['yellow', [238, 188, 24], 'organic'],
  ['ochre', [188, 134, 56], 'oxide'],
  ['brown', [92, 58, 38], 'oxide'],
  ['green', [34, 104, 70], 'organic'],
  ['turquoise', [44, 140, 150], 'organic'],
  ['blue', [26, 62, 150], 'organic'],
  ['violet', [86, 44, 128], 'organic'],
  ['grey', [128, 130, 132], 'titania']
]

const colouredPastes = COLOURS.map(([colour, srgb, base]) =>
  opaque({
    ...PASTE,
    id: `${colour}-paste`,
    name: `${colour} paste, opaque`,
    srgb,
    scatter: 0.25,
    fraction: 0.3,
    pigmentGMl: DENSITY[base],
    factor: 3,
    source:
      'S* taken as half that of titanium dioxide, since coloured pigments scatter less and opaque pastes hold some white: a guess within a factor of three; K* derived from the look',
    note: `${PASTE_NOTE}; the shade is only a likely one`,
    tags: {}
  })
)

/** Mica: flakes of 1/(ρ·t) m²/g, half of them facing, a fifth of the light returned. */
const PEARL = {
  kind: 'pearl',
  scatter: 0.05,
  fraction: 1,
  pigmentGMl: DENSITY.mica,
  factor: 2,
  cap: SOLIDS_CAP_PCT,
  families: ALL,
  source:
    'S* of pearl 0.05 m²/g, from 0.03 to 0.07: flake area 1/(density × thickness) at 0.6 µm, half facing, reflecting 0.2 (estimate, computed); K* derived from the look',
  tags: { scatterM2PerG: 'derived', bandFactor: 'derived' }
} as const
const PEARL_NOTE = `weigh it, a heaped spoon is mostly air; it sinks and drifts until the resin thickens; flakes that lie flat hide more than those on edge; ${DRY}`

const PEARLS: readonly (readonly [name: string, srgb: Srgb])[] = [
  ['gold', [196, 160, 84]],
  ['copper', [164, 96, 62]],
  ['red', [140, 52, 56]],
  ['green', [72, 132, 98]],
  ['blue', [58, 94, 150]],
  ['violet', [112, 84, 142]],
  ['graphite', [72, 74, 78]]
]

const pearls: readonly PigmentRecord[] = [
  opaque({
    ...PEARL,
    id: 'mica-pearl',
    name: 'mica pearl, translucent',
    srgb: [224, 224, 220],
    loading: LOADING.translucent,
    note: PEARL_NOTE
  }),
  opaque({
    ...PEARL,
    id: 'strong-pearl',
    name: 'pearl, strong',
    srgb: [214, 214, 210],
    loading: LOADING.strong,
    note: PEARL_NOTE
  }),
  ...PEARLS.map(([colour, srgb]) =>
    opaque({
      ...PEARL,
      id: `${colour}-pearl`,
      name: `${colour} pearl`,
      srgb,
      loading: [LOADING.translucent[0], LOADING.strong[1]],
      note: `0.5-2 % translucent, 2-5 % strong; ${PEARL_NOTE}`
    })
  )
]

/** Metal flake by the estimate used for pearl: 1/(ρ·t) × half facing × 0.7 reflected, t 0.5 µm; g/ml is Mg/m³. */
const flakeM2PerG = (densityGMl: number): number => ((1 / (densityGMl * 0.5)) * 0.7) / 2

const METALS: readonly (readonly [id: string, name: string, srgb: Srgb, densityGMl: number])[] = [
  ['silver-metallic', 'metallic powder, silver (aluminium)', [176, 178, 180], DENSITY.aluminium],
  ['gold-metallic', 'metallic powder, gold (bronze)', [168, 130, 70], DENSITY.bronze],
  ['copper-metallic', 'metallic powder, copper', [150, 88, 58], DENSITY.bronze]
]

const metallics = METALS.map(([id, name, srgb, pigmentGMl]) =>
  opaque({
    id,
    name,
    srgb,
    kind: 'metallic',
    scatter: flakeM2PerG(pigmentGMl),
    fraction: 1,
    pigmentGMl,
    factor: 3,
    loading: [1, 5],
    cap: SOLIDS_CAP_PCT,
    families: ALL,
    source:
      'S* by the estimate for flakes: 1/(density × thickness) at 0.5 µm, half facing, reflecting 0.7 (estimate, derived); K* derived from the look',
    note: `fine metal powder can burn and be breathed in: its safety data sheet governs; heavy, it sinks; some copper alloys turn green with amine hardeners, so test; ${DRY}`,
    tags: { scatterM2PerG: 'derived', loadingPct: 'practice' }
  })
)

/**
 * Dye by Beer-Lambert: 50 to 125 L/(g·cm) decadic (molar 2 to 5·10⁴, 400 g/mol; memory). 1 L/(g·cm) is 0.1
 * m²/g, and ln 10 turns decadic into natural: 11.5 to 29, middle of the molar range 20.1.
 */
const DYE_M2_PER_G = Math.LN10 * 0.1 * (3.5e4 / 400)

/** A tint paste does with 0.05-0.3 % what pure dye does with 0.0005-0.01 %: 1 to 3 % dye (derived). */
const TINT_FRACTION = 0.02

const CLEAR: readonly (readonly [name: string, srgb: Srgb])[] = [
  ['blue', [40, 110, 200]],
  ['turquoise', [40, 160, 176]],
  ['green', [44, 150, 84]],
  ['amber', [235, 160, 40]],
  ['red', [200, 40, 50]],
  ['violet', [118, 62, 170]]
]

interface Clear {
  readonly id: string
  readonly name: string
  readonly srgb: Srgb
  readonly kind: 'dye' | 'tint-paste' | 'alcohol-ink'
  readonly fraction: number
  readonly loading: readonly [number, number]
  readonly cap: number
  readonly densityGMl: number
  readonly note: string
  readonly tags: Tags<PigmentRecord>
}

/** What dissolves: it only absorbs, strongest in one band. */
function clear(c: Clear): PigmentRecord {
  const [red, green, blue] = clearShape(c.srgb)
  const bands: Bands = [DYE_M2_PER_G * red, DYE_M2_PER_G * green, DYE_M2_PER_G * blue]
  return {
    id: c.id,
    name: c.name,
    source: `${PRACTICE}. Dye 50-125 L/(g·cm) decadic in its strongest band, natural 11.5-29 m²/g (memory), split over the bands by the look. ${SOLIDS}`,
    confidence: 'practice',
    note: `${c.note}; fades in sunlight; a colour made for another resin family may foam or change hue`,
    kind: c.kind,
    pigmentFraction: c.fraction,
    scatterM2PerG: 0,
    absorbM2PerG: luminanceOf(bands),
    absorbBandsM2PerG: bands,
    bandFactor: 2,
    loadingPct: c.loading,
    capPct: c.cap,
    srgb: c.srgb,
    srgbOf: 'thin layer over white',
    families: ['epoxy'],
    bleeds: true,
    dissolvesIn: ['alcohol', 'lacquer thinner'],
    densityGMl: c.densityGMl,
    tags: c.tags
  }
}

const clears: readonly PigmentRecord[] = CLEAR.flatMap(([colour, srgb]) => [
  clear({
    id: `${colour}-dye`,
    name: `${colour} dye, pure`,
    srgb,
    kind: 'dye',
    fraction: 1,
    loading: LOADING.dye,
    cap: 1,
    densityGMl: 1.3,
    note: 'a few parts in a million colour a centimetre: weigh it into a stock of resin first',
    tags: { loadingPct: 'memory' }
  }),
  clear({
    id: `${colour}-tint`,
    name: `${colour} tint paste`,
    srgb,
    kind: 'tint-paste',
    fraction: TINT_FRACTION,
    loading: LOADING.tint,
    cap: CAP_PCT,
    densityGMl: PASTE_CARRIER_G_ML,
    note: 'dye content differs by product: make a test card',
    tags: {
      pigmentFraction: 'derived',
      loadingPct: 'memory',
      capPct: 'memory',
      densityGMl: 'memory'
    }
  })
])

const inks = CLEAR.map(([colour, srgb]) =>
  clear({
    id: `${colour}-ink`,
    name: `${colour} alcohol ink`,
    srgb,
    kind: 'alcohol-ink',
    fraction: 0.03,
    loading: [0.05, 0.5],
    cap: 1,
    densityGMl: 0.85,
    note: 'the alcohol burns easily and softens the cure: drops only; it may lift out of the resin before gel',
    tags: {}
  })
)

export const PIGMENTS: readonly PigmentRecord[] = [
  ...whiteAndBlack('epoxy'),
  opaque({
    ...TITANIA,
    id: 'white-powder',
    name: 'white powder (titanium dioxide)',
    kind: 'powder',
    fraction: 1,
    loading: LOADING.titania,
    cap: SOLIDS_CAP_PCT,
    families: ALL,
    note: `grind it into a little resin first or it leaves specks; the dust is harmful to breathe: its safety data sheet governs; ${DRY}`
  }),
  ...colouredPastes,
  ...pearls,
  ...metallics,
  ...clears,
  ...inks,
  opaque({
    id: 'glow-powder',
    name: 'glow powder (strontium aluminate)',
    kind: 'glow',
    srgb: [226, 230, 206],
    // Grains of 40 µm: shadow 1.5/(ρ·d) = 0.0104 m²/g, a tenth of it turned back.
    scatter: 0.1 * (1.5 / (3.6 * 40)),
    fraction: 1,
    pigmentGMl: 3.6,
    factor: 3,
    loading: [3, 10],
    cap: SOLIDS_CAP_PCT,
    families: ALL,
    source:
      'S* from the shadow of 40 µm grains, a tenth turned back (estimate, derived); K* derived from the look',
    note: `coarse and heavy: it sinks within minutes, so stir it in late or keep the layer thin; it scratches and dulls cutters; water spoils it; ${DRY}`,
    tags: { scatterM2PerG: 'derived', loadingPct: 'practice' }
  }),
  opaque({
    id: 'water-paint',
    name: 'water-based paint (acrylic, poster)',
    kind: 'paint',
    srgb: [128, 130, 132],
    scatter: 0.25,
    fraction: 0.2,
    pigmentGMl: 4,
    factor: 3,
    loading: [0, 0],
    cap: 0,
    families: [],
    source: 'made for paper, not for resin; optics as of an opaque paste, of no colour in particular',
    note: 'brings water: clouds and softens epoxy, foams polyurethane; not for resin of any family',
    tags: { loadingPct: 'practice', capPct: 'practice' }
  }),
  ...whiteAndBlack('polyester'),
  ...whiteAndBlack('polyurethane')
]
