import type { HardwareRecord } from './hardware-record.ts'

/**
 * Screws, threaded inserts and pins.
 *
 * Source: clearance holes ISO 273, coarse pitches ISO 261 with their tap drills, countersunk heads ISO 7046,
 * pins ISO 2338 and ISO 8734 (all memory); screw-in inserts, wood screw pilots and dowels by common practice
 * (inserts near DIN 7965; pilots near EN 1995-1-1 10.4.5, 0.7 of the diameter; memory).
 *
 * Limits: no strength. Timber moves under a row of screws: slot the holes across the grain.
 */
interface Metric {
  readonly name: string
  readonly majorMm: number
  readonly pitchMm: number
  readonly tapDrillMm: number
  /** ISO 273: fine, medium, coarse. */
  readonly clearanceMm: readonly [fine: number, medium: number, coarse: number]
  /** Countersunk head, ISO 7046; null where it was not at hand. */
  readonly headMm: number | null
}

export const METRIC_SCREWS: readonly Metric[] = [
  { name: 'M3', majorMm: 3, pitchMm: 0.5, tapDrillMm: 2.5, clearanceMm: [3.2, 3.4, 3.6], headMm: 5.5 },
  { name: 'M4', majorMm: 4, pitchMm: 0.7, tapDrillMm: 3.3, clearanceMm: [4.3, 4.5, 4.8], headMm: 8.4 },
  { name: 'M5', majorMm: 5, pitchMm: 0.8, tapDrillMm: 4.2, clearanceMm: [5.3, 5.5, 5.8], headMm: 9.3 },
  { name: 'M6', majorMm: 6, pitchMm: 1, tapDrillMm: 5, clearanceMm: [6.4, 6.6, 7], headMm: 11.3 },
  { name: 'M8', majorMm: 8, pitchMm: 1.25, tapDrillMm: 6.8, clearanceMm: [8.4, 9, 10], headMm: null }
]

const NONE = {
  body: null,
  pocket: null,
  thread: null,
  shaft: null,
  heatLimitC: null,
  mains: false,
  needsAccess: false,
  magnetic: false
} as const

const machineScrews = METRIC_SCREWS.map(
  (s): HardwareRecord => ({
    ...NONE,
    id: `machine-screw-${s.name.toLowerCase()}`,
    name: `machine screw ${s.name}`,
    source: 'ISO 273 (clearance), ISO 261 (pitch, tap drill), ISO 7046 (countersunk head)',
    confidence: 'memory',
    note: `medium clearance ${s.clearanceMm[1]}; ${s.headMm === null ? '' : `countersunk head ${s.headMm}, 90°; `}tapping resin: drill 0.1 larger; measure yours`,
    kind: 'screw',
    holes: [
      { what: 'clearance, fine to coarse', diameterMm: [s.clearanceMm[0], s.clearanceMm[2]], through: true },
      { what: 'tap drill, to that for resin', diameterMm: [s.tapDrillMm, s.tapDrillMm + 0.1], through: false }
    ],
    thread: { name: s.name, majorMm: s.majorMm, pitchMm: s.pitchMm },
    ...(s.headMm === null ? {} : { headMm: s.headMm })
  })
)

/** Thread, outer diameters, pilot in softwood to hardwood, mm. */
const INSERTS: readonly (readonly [
  string,
  outer: readonly [number, number],
  pilot: readonly [number, number]
])[] = [
  ['M4', [8, 8], [5.5, 6]],
  ['M5', [9, 10], [7, 7.5]],
  ['M6', [10, 12], [8, 9]],
  ['M8', [12, 16], [10.5, 13]]
]

const inserts = INSERTS.map(([name, outer, pilot]): HardwareRecord => {
  const screw = METRIC_SCREWS.find(s => s.name === name)
  return {
    ...NONE,
    id: `threaded-insert-${name.toLowerCase()}`,
    name: `threaded insert ${name}, screwed in`,
    source: 'common practice; slotted type of DIN 7965 (memory, low)',
    confidence: 'practice',
    note: `outer ${outer[0] === outer[1] ? outer[0] : outer.join('-')}, lengths 8-20, bore 2 deeper; dense timber 0.3-0.5 more; in resin bore the outer diameter and 0.1-0.2, and glue; wall round it at least its outer diameter; measure yours`,
    kind: 'threaded insert',
    body: { shape: 'round', diameterMm: outer[1], depthMm: 12 },
    holes: [
      { what: 'pilot, softwood to hardwood', diameterMm: pilot, through: false },
      { what: 'glued into resin', diameterMm: [outer[0] + 0.1, outer[1] + 0.2], through: false }
    ],
    thread: { name, majorMm: screw?.majorMm ?? 0, pitchMm: screw?.pitchMm ?? null },
    tags: { thread: 'memory' }
  }
})

/** Diameter, pilot from ... to, mm. */
const WOOD_SCREWS: readonly (readonly [number, readonly [number, number]])[] = [
  [3, [1.8, 2.2]],
  [3.5, [2, 2.5]],
  [4, [2.5, 3]],
  [4.5, [2.8, 3.3]],
  [5, [3, 3.8]],
  [6, [4, 4.8]]
]

const woodScrews = WOOD_SCREWS.map(
  ([d, pilot]): HardwareRecord => ({
    ...NONE,
    id: `wood-screw-${String(d).replace('.', '-')}`,
    name: `wood screw ${d}`,
    source: 'common practice; near EN 1995-1-1 10.4.5 and Wood Handbook ch. 8 (memory)',
    confidence: 'practice',
    note: 'pilot softwood to hardwood, 10 % more near end grain; not into resin, it bursts: insert or tapped thread; measure yours',
    kind: 'screw',
    holes: [
      { what: 'pilot', diameterMm: pilot, through: false },
      { what: 'shank', diameterMm: [d, d], through: true }
    ]
  })
)

const pins: readonly HardwareRecord[] = [
  ...[3, 4, 5, 6, 8, 10].map(
    (d): HardwareRecord => ({
      ...NONE,
      id: `dowel-pin-${d}`,
      name: `dowel pin, steel, ${d}`,
      source: 'ISO 2338 (m6 or h8) and ISO 8734 (m6)',
      confidence: 'memory',
      note: 'reamed H7 in metal; in timber nominal less 0.05 to press, plus 0.05 to slip (practice); measure yours',
      kind: 'pin',
      body: { shape: 'round', diameterMm: d, depthMm: 20 },
      toleranceClass: 'm6',
      holes: [{ what: 'press to slip, in timber', diameterMm: [d - 0.05, d + 0.05], through: false }],
      tags: { body: 'practice', holes: 'practice' }
    })
  ),
  ...[6, 8, 10].map(
    (d): HardwareRecord => ({
      ...NONE,
      id: `wood-dowel-${d}`,
      name: `wood dowel ${d}`,
      source: 'common practice, no standard at hand',
      confidence: 'practice',
      note: 'swells with the first glue: fluted ones let it out; leave 2 at the bottom; measure yours',
      kind: 'pin',
      body: { shape: 'round', diameterMm: d, depthMm: 30 },
      holes: [{ what: 'dowel', diameterMm: [d, d + 0.1], through: false }]
    })
  )
]

export const SCREWS_AND_PINS: readonly HardwareRecord[] = [
  ...machineScrews,
  ...inserts,
  ...woodScrews,
  ...pins
]
