/**
 * The codes of the standard and their modal groups: NIST RS274/NGC version 3 (NISTIR 6556), table 4. Of one group a
 * line may hold one code. G70 and G71 are ISO 6983's words for inch and metric (memory); they are read, with a warning.
 */

/** Numbers of the G groups, as the standard counts them; 0: in force on their own line only. */
export const GROUP = {
  once: 0,
  motion: 1,
  plane: 2,
  distance: 3,
  feed: 5,
  units: 6,
  radius: 7,
  length: 8,
  back: 10,
  system: 12,
  path: 13
} as const

/** How many G groups there is room for. */
export const G_GROUPS = 14

const G_CODES: readonly (readonly [group: number, ...codes: number[]])[] = [
  [GROUP.once, 4, 10, 28, 30, 53, 92, 92.1, 92.2, 92.3],
  [GROUP.motion, 0, 1, 2, 3, 38.2, 80, 81, 82, 83, 84, 85, 86, 87, 88, 89],
  [GROUP.plane, 17, 18, 19],
  [GROUP.distance, 90, 91],
  [GROUP.feed, 93, 94],
  [GROUP.units, 20, 21, 70, 71],
  [GROUP.radius, 40, 41, 42],
  [GROUP.length, 43, 49],
  [GROUP.back, 98, 99],
  [GROUP.system, 54, 55, 56, 57, 58, 59, 59.1, 59.2, 59.3],
  [GROUP.path, 61, 61.1, 64]
]

/** Group of each G code, by ten times the code; -1: not a code of the standard. */
export const G_GROUP: Int8Array = new Int8Array(1000).fill(-1)
for (const [group, ...codes] of G_CODES) for (const code of codes) G_GROUP[Math.round(10 * code)] = group

/** Numbers of the M groups, from 0: stop 4, change 6, spindle 7, coolant 8, overrides 9. */
export const M_GROUP: Int8Array = new Int8Array(100).fill(-1)
for (const code of [0, 1, 2, 30, 60]) M_GROUP[code] = 4
M_GROUP[6] = 6
for (const code of [3, 4, 5]) M_GROUP[code] = 7
for (const code of [7, 8, 9]) M_GROUP[code] = 8
for (const code of [48, 49]) M_GROUP[code] = 9

/** How many M groups there is room for. */
export const M_GROUPS = 10

export const G_ALLOWED =
  'G0 to G4, G10, G17 to G21, G28, G30, G38.2, G40 to G43, G49, G53 to G59.3, G61, G61.1, G64, G80 to G94, G92.1 to G92.3, G98, G99'
export const M_ALLOWED = 'M0 to M9, M30, M48, M49, M60'

/** What is known of codes that other dialects use, by ten times the code. */
export const G_ELSEWHERE: ReadonlyMap<number, string> = new Map([
  [50, 'G5 is a curve of other dialects.'],
  [411, 'G41.1 is a compensation of other dialects.'],
  [421, 'G42.1 is a compensation of other dialects.'],
  [431, 'G43.1 is a length offset of other dialects.'],
  [730, 'G73 is a drilling cycle of other dialects.'],
  [740, 'G74 is a tapping cycle of other dialects.'],
  [760, 'G76 is a cycle of other dialects.'],
  [
    901,
    'G90.1 makes arc middles absolute in other dialects; in the standard they are always counted from the start of the arc.'
  ],
  [
    911,
    'G91.1 is a word of other dialects for what the standard always does: arc middles are counted from the start of the arc.'
  ],
  [950, 'G95 is a feed per turn in ISO 6983.'],
  [960, 'G96 is a constant cutting speed in ISO 6983.'],
  [970, 'G97 is a speed in turns a minute in ISO 6983.']
])

/** A code times ten, as it is written. */
export const gName = (tenfold: number): string => `G${tenfold / 10}`
