import type { HardwareKind } from './hardware-record.ts'
import type { Srgb } from './pigment-optics.ts'
import type { TimberRecord } from './timber-record.ts'

/**
 * How bodies look that no light goes through: sRGB, matt part only, of the generic kind.
 *
 * Source: by eye (estimate); there is no standard for the colour of a species, and boards of one log differ by more
 * than 5 in ΔE00. Limits: fresh and oiled, in daylight; timber darkens or pales with the years.
 */
const TIMBER_LOOKS: readonly (readonly [words: RegExp, look: Srgb])[] = [
  [/ebony|wenge/, [62, 48, 40]],
  [/walnut/, [122, 88, 62]],
  [/rosewood/, [104, 62, 46]],
  [/purpleheart/, [112, 58, 84]],
  [/teak|iroko|afrormosia/, [164, 118, 70]],
  [/ipe|lignum|ironbark/, [106, 78, 54]],
  [/jatoba|jarrah|red gum|karri/, [146, 78, 56]],
  [/mahogany|sapele|cedar|redwood|toona/, [162, 98, 66]],
  [/cherry|larch|douglas|eucalyptus/, [190, 134, 90]],
  [/elm|olive|robinia|locust|butternut/, [182, 142, 94]],
  [/oak|chestnut|blackwood/, [198, 162, 114]],
  [/beech|alder|sycamore|hickory|pecan/, [214, 176, 134]],
  [/maple|birch|lime|basswood|aspen|holly|balsa/, [232, 210, 172]],
  [/ash|hackberry/, [219, 196, 155]],
  [/pine|spruce|fir|hemlock|cypress|poplar|obeche|limba/, [226, 196, 146]]
]

/** A timber by its name, else light, middling or dark by its density at 12 %. */
export function timberLook(record: TimberRecord): Srgb {
  const name = `${record.name} ${record.botanical}`.toLowerCase()
  const known = TIMBER_LOOKS.find(([words]) => words.test(name))
  if (known !== undefined) return known[1]
  const d = record.density12KgM3 ?? (record.gravity12 ?? 0.6) * 1120
  return d > 850 ? [138, 88, 62] : d > 600 ? [196, 152, 106] : [222, 188, 140]
}

/** Char that is brushed and sealed. */
export const CHAR_LOOK: Srgb = [30, 28, 27]

/** What lies behind an open piece (a pale wall, or paper), and the inside of a cut that it closes. */
export const WALL_LOOK: Srgb = [190, 190, 188]
export const HOLLOW_LOOK: Srgb = [52, 52, 52]

const HARDWARE_LOOKS: Readonly<Record<HardwareKind, Srgb>> = {
  movement: [32, 32, 34],
  compass: [38, 38, 40],
  'round insert': [150, 140, 118],
  'threaded insert': [178, 150, 92],
  magnet: [160, 162, 165],
  hanger: [158, 160, 163],
  foot: [70, 66, 62],
  light: [226, 224, 216],
  power: [220, 220, 216],
  cell: [150, 150, 152],
  cable: [38, 38, 40],
  switch: [214, 214, 210],
  handle: [150, 148, 142],
  tube: [178, 156, 104],
  pin: [158, 160, 163],
  screw: [158, 160, 163],
  hinge: [158, 160, 163]
}

export function hardwareLook(kind: HardwareKind): Srgb {
  return HARDWARE_LOOKS[kind]
}
