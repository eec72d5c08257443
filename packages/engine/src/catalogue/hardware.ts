import type { Body, HardwareRecord, Hole, Pocket } from './hardware-record.ts'
import { SCREWS_AND_PINS } from './hardware-screw.ts'

type Row = Partial<Omit<HardwareRecord, 'source' | 'confidence' | 'note' | 'pocket'>> &
  Pick<HardwareRecord, 'id' | 'name' | 'kind'> & {
    readonly note: string
    readonly source?: string
    /** Clearance on each side and below, mm, when it goes into a pocket. */
    readonly room?: readonly [each: number, below: number]
  }

const rectangle = (widthMm: number, lengthMm: number, depthMm: number): Body => ({
  shape: 'rectangle',
  widthMm,
  lengthMm,
  depthMm
})
const round = (diameterMm: number, depthMm: number): Body => ({ shape: 'round', diameterMm, depthMm })
const hole = (what: string, low: number, high: number, through = true): Hole => ({
  what,
  diameterMm: [low, high],
  through
})

/** The least pocket round a body. */
export function leastPocket(body: Body, clearanceMm: number, overDepthMm: number): Pocket {
  const depthMm = body.depthMm + overDepthMm
  return body.shape === 'round'
    ? { shape: 'round', diameterMm: body.diameterMm + 2 * clearanceMm, depthMm, clearanceMm, overDepthMm }
    : {
        shape: 'rectangle',
        widthMm: body.widthMm + 2 * clearanceMm,
        lengthMm: body.lengthMm + 2 * clearanceMm,
        depthMm,
        clearanceMm,
        overDepthMm
      }
}

function part({ room, source, note, ...row }: Row): HardwareRecord {
  const body = row.body ?? null
  return {
    holes: [],
    thread: null,
    shaft: null,
    heatLimitC: null,
    mains: false,
    needsAccess: false,
    magnetic: false,
    ...row,
    body,
    pocket: body === null || room === undefined ? null : leastPocket(body, ...room),
    source: source ?? 'common sizes of the trade, no standard',
    confidence: 'practice',
    note: `${note}; measure yours`
  }
}

const MAINS = 'mains parts are planned, wired and tested by a licensed electrician after local codes'

const MOVEMENTS: readonly HardwareRecord[] = [
  part({
    id: 'quartz-movement',
    name: 'quartz clock movement',
    kind: 'movement',
    body: rectangle(56, 56, 16),
    room: [1, 1],
    holes: [hole('shaft', 8, 8.5)],
    thread: { name: 'M8', majorMm: 8, pitchMm: 0.75 },
    shaft: {
      lengths: [
        { threadMm: [5, 5], greatestDialMm: 1 },
        { threadMm: [8.5, 10], greatestDialMm: 4.5 },
        { threadMm: [12, 14], greatestDialMm: 8 },
        { threadMm: [16, 18], greatestDialMm: 12 },
        { threadMm: [20, 22], greatestDialMm: 16 },
        { threadMm: [25, 25], greatestDialMm: 20 },
        { threadMm: [30, 31], greatestDialMm: 26 }
      ],
      beyondDialMm: [3.2, 5],
      handReachMm: [100, 150],
      glassGapMm: [0.5, 1],
      handBoresMm: { hour: [5, 5.1], minute: [3.3, 3.6], second: [1, 1] }
    },
    heatLimitC: 50,
    needsAccess: true,
    note: 'body 55-58 square and 15-16 deep; some threads are 5/16 in, pitch 0.75 to 1.0, hole to 10; hanger slot 6-8 wide; needs its cell changed'
  }),
  part({
    id: 'quartz-movement-high-torque',
    name: 'quartz clock movement, high torque',
    kind: 'movement',
    body: rectangle(56, 56, 20),
    room: [1, 1],
    holes: [hole('shaft', 8, 8.5)],
    thread: { name: 'M8', majorMm: 8, pitchMm: 0.75 },
    shaft: {
      lengths: [
        { threadMm: [16, 18], greatestDialMm: 12 },
        { threadMm: [20, 22], greatestDialMm: 16 },
        { threadMm: [30, 31], greatestDialMm: 26 }
      ],
      beyondDialMm: [3.2, 5],
      handReachMm: [250, 400],
      glassGapMm: [0.5, 1],
      handBoresMm: { hour: [5, 5.1], minute: [3.3, 3.6], second: [1, 1] }
    },
    heatLimitC: 50,
    needsAccess: true,
    note: 'bodies differ widely in depth; needs its cell changed'
  }),
  part({
    id: 'clock-insert',
    name: 'round clock insert with bezel',
    kind: 'round insert',
    body: round(60, 20),
    room: [0.25, 1],
    heatLimitC: 50,
    needsAccess: true,
    note: 'sold for bores from 36 to 90: the bore follows the body behind the bezel, not the bezel; 79.4 (3 1/8 in) is common'
  }),
  part({
    id: 'compass-insert',
    name: 'magnetic compass insert, round',
    kind: 'compass',
    body: round(45, 12),
    room: [0.2, 0.5],
    heatLimitC: 50,
    needsAccess: true,
    magnetic: true,
    note: 'liquid-filled: heat makes a bubble; magnets, steel and current nearby pull it off north; turn it before gluing'
  }),
  part({
    id: 'round-insert',
    name: 'round insert (thermometer, hygrometer)',
    kind: 'round insert',
    body: round(50, 15),
    room: [0.25, 1],
    heatLimitC: 50,
    needsAccess: true,
    note: 'a hygrometer needs air at its back'
  })
]

const HANGING: readonly HardwareRecord[] = [
  part({
    id: 'keyhole-plate',
    name: 'keyhole hanger plate',
    kind: 'hanger',
    body: rectangle(16, 45, 2),
    room: [0.2, 0],
    holes: [hole('entry for the screw head', 9, 10, false), hole('slot for the shank', 4.5, 5, false)],
    note: 'plate 16-20 × 40-50; behind the slot a groove 9-10 wide and 3-4 deep for the screw head (head 8-8.5), 10-15 long; two plates: state the distance of their centres to ±0.5; the wall fixing is another matter'
  }),
  part({
    id: 'd-ring',
    name: 'D-ring hanger',
    kind: 'hanger',
    body: rectangle(15, 40, 3),
    holes: [hole('screw pilot', 1.8, 2.5, false)],
    note: 'two holes 10 apart; lies on the back, no pocket; screws shorter than the timber behind them'
  }),
  part({
    id: 'felt-foot',
    name: 'felt foot, self-adhesive',
    kind: 'foot',
    body: round(15, 3),
    heatLimitC: 60,
    note: '10-20 across; stuck on, no pocket; its glue marks an oil finish younger than some weeks'
  }),
  part({
    id: 'rubber-foot',
    name: 'rubber foot, screwed',
    kind: 'foot',
    body: round(15, 8),
    holes: [hole('screw pilot', 2, 2.5, false)],
    note: 'plasticiser in soft feet marks finishes'
  }),
  part({
    id: 'handle',
    name: 'handle or pull, two screws',
    kind: 'handle',
    body: rectangle(20, 150, 30),
    holes: [hole('M4 screw', 4.5, 5)],
    thread: { name: 'M4', majorMm: 4, pitchMm: 0.7 },
    note: 'hole distances 96, 128, 160 are common; screws must match the thickness; wide timber moves between two fixed screws: slot one'
  }),
  part({
    id: 'hinge',
    name: 'butt hinge, small',
    kind: 'hinge',
    body: rectangle(12, 40, 1.5),
    room: [0.1, 0],
    holes: [hole('screw pilot', 1.8, 2.2, false)],
    note: 'width of one leaf; the pocket is as deep as the leaf is thick; in resin tap or use inserts, wood screws burst it'
  })
]

const MAGNETS: readonly HardwareRecord[] = [
  part({
    id: 'magnet-disc',
    name: 'disc magnet, neodymium',
    kind: 'magnet',
    body: round(10, 3),
    room: [0.075, 0.2],
    toleranceMm: 0.1,
    heatLimitC: 80,
    magnetic: true,
    source:
      'grades of IEC 60404-8-1 (memory): standard type to about 80 °C; remanence N35 1.17-1.22, N42 1.28-1.32, N52 1.43-1.48 T; discs 3-20 × 1-5 by common practice',
    note: 'hole 0.1-0.2 over the disc, whose own tolerance is ±0.05-0.1; heat of cure can weaken it for good; mark the poles before it goes in; swallowed magnets kill: enclose them fully'
  })
]

const LIGHTS: readonly HardwareRecord[] = [
  part({
    id: 'led-strip',
    name: 'LED strip, 12/24 V',
    kind: 'light',
    body: rectangle(10, 500, 2.5),
    room: [0.25, 0.5],
    holes: [hole('conductor pair', 2, 3)],
    heatLimitC: 60,
    source:
      'common sizes of the trade; extra-low voltage after IEC 61347 and IEC 60598 (memory): board 5, 8, 10 or 12 wide, 1-2.5 thick, sleeved 3.5-5',
    note: 'cut only at the marks, 25-50 apart; 4.8-14.4 W/m, above 10 W/m on a metal heat sink; diffuser as far off as the LEDs are apart; it wears out too: a channel with a lid beats casting it in'
  }),
  part({
    id: 'led-profile',
    name: 'aluminium profile for LED strip',
    kind: 'light',
    body: rectangle(17, 500, 8),
    room: [0.25, 0.2],
    heatLimitC: 60,
    needsAccess: true,
    note: 'outer 12-18 wide, 6-12 deep; lid must come off'
  }),
  part({
    id: 'led-driver',
    name: 'LED driver',
    kind: 'power',
    body: rectangle(45, 150, 25),
    room: [10, 10],
    heatLimitC: 60,
    mains: true,
    needsAccess: true,
    note: `needs air round it, its own sheet says how much; ${MAINS}`
  }),
  part({
    id: 'cell-holder',
    name: 'cell holder, one R6 (AA)',
    kind: 'cell',
    body: rectangle(17, 58, 16),
    room: [1, 1],
    heatLimitC: 50,
    needsAccess: true,
    source: 'R6 of IEC 60086: 14.5 × 50.5; holder by common practice',
    note: 'cells leak, age and swell: a bay with a lid, holder and 2 mm in all, never inside resin'
  }),
  part({
    id: 'coin-cell-holder',
    name: 'coin cell holder',
    kind: 'cell',
    body: round(24, 6),
    room: [1, 1],
    heatLimitC: 50,
    needsAccess: true,
    note: 'a swallowed coin cell burns through the gullet within hours: lid with a screw; never inside resin'
  }),
  part({
    id: 'cable-low-voltage',
    name: 'cable, extra-low voltage',
    kind: 'cable',
    body: null,
    holes: [hole('cable', 4, 5)],
    heatLimitC: 70,
    note: 'relief from pull where it leaves the piece'
  }),
  part({
    id: 'cable-mains',
    name: 'mains cable',
    kind: 'cable',
    body: null,
    holes: [hole('cable', 8, 8)],
    heatLimitC: 70,
    mains: true,
    needsAccess: true,
    note: `outer 6-7; grommet and relief from pull; insulation of PVC to 70 °C (memory); ${MAINS}`
  }),
  part({
    id: 'switch-plate',
    name: 'switch plate',
    kind: 'switch',
    body: rectangle(80, 80, 10),
    heatLimitC: 60,
    mains: true,
    needsAccess: true,
    note: `the plate covers a box or a bore behind it, by its own sheet; ${MAINS}`
  }),
  part({
    id: 'switch-low-voltage',
    name: 'switch or dimmer, extra-low voltage',
    kind: 'switch',
    body: round(17, 20),
    room: [0.25, 5],
    heatLimitC: 60,
    needsAccess: true,
    note: 'room behind for its wires'
  }),
  part({
    id: 'lamp-tube',
    name: 'lamp tube M10 × 1',
    kind: 'tube',
    body: null,
    holes: [hole('tube', 10.5, 10.5)],
    thread: { name: 'M10x1', majorMm: 10, pitchMm: 1 },
    mains: true,
    note: `the usual nipple of lamp holders; a metal tube must be earthed where the codes say so; ${MAINS}`
  }),
  part({
    id: 'lamp-holder',
    name: 'lamp holder',
    kind: 'light',
    body: round(40, 60),
    thread: { name: 'M10x1', majorMm: 10, pitchMm: 1 },
    mains: true,
    needsAccess: true,
    heatLimitC: 90,
    note: `keep the lamp's heat off timber and resin: least distance and greatest watts by its own sheet; ${MAINS}`
  })
]

export const HARDWARE: readonly HardwareRecord[] = [
  ...MOVEMENTS,
  ...HANGING,
  ...MAGNETS,
  ...LIGHTS,
  ...SCREWS_AND_PINS
]
