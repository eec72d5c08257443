import { inRange } from '../../quantity/range.ts'

/**
 * How deep a hand-held router goes at a time.
 *
 *   n = ⌈d/p⌉,   each d/n deep        p = min(p_timber, b/2)
 *
 *   d  depth of the cut     b  diameter of the bit     p_timber  3.2 mm (1/8 in), 2.4 mm (3/32 in) where it tears
 *
 * Source: case C87 of makers: 9.5 mm in one pass tore, three of 3.2 stayed clean, down to 2.4 in timber that tears;
 * half the diameter keeps thin bits whole (practice). Check: 9.5 mm is 3 passes, 4 where it tears (case).
 *
 * Limits: sharp bits, timber and cured resin; a blunt bit tears at any depth.
 */
const PASS_MM = 3.2
const TEARING_PASS_MM = 2.4

/** Number of passes and the depth of each. */
export interface Passes {
  readonly count: number
  readonly eachMm: number
}

/** @param bitMm diameter of the bit; @param tears whether timber that tears easily is cut */
export function routerPasses(depthMm: number, bitMm: number, tears: boolean): Passes {
  return passesOf(
    depthMm,
    Math.min(tears ? TEARING_PASS_MM : PASS_MM, inRange('bit', bitMm, 0.01, 500, 'mm') / 2)
  )
}

/** Equal passes of at most `mostMm`. */
export function passesOf(depthMm: number, mostMm: number): Passes {
  inRange('depth', depthMm, 0, 1000, 'mm')
  inRange('depth of a pass', mostMm, 0.001, 1000, 'mm')
  // A depth that is a whole number of passes stays one, whatever the last digit says.
  const count = Math.max(1, Math.ceil(depthMm / mostMm - 1e-9))
  return { count, eachMm: depthMm / count }
}

/**
 * Timbers known to tear under the cutter: interlocked, wavy or rowed grain, and coarse ring-porous ones across the
 * grain (memory). Figured boards of any kind tear too: the maker sees that, the catalogue does not.
 */
const TEARING = new Set([
  'afrormosia',
  'ash-black',
  'ash-european',
  'ash-white',
  'elm-american',
  'elm-european',
  'elm-rock',
  'elm-slippery',
  'iroko',
  'iroko-din',
  'jarrah',
  'jatoba',
  'karri',
  'lignumvitae',
  'mahogany-african',
  'marri',
  'obeche',
  'okoume',
  'olive',
  'queensland-maple',
  'river-red-gum',
  'rosewood-indian',
  'sapele',
  'sapele-din',
  'spotted-gum',
  'sweetgum',
  'sycamore-american',
  'tupelo-black'
])

/** Whether a species of the catalogue tears easily. */
export function tearsEasily(speciesId: string): boolean {
  return TEARING.has(speciesId)
}
