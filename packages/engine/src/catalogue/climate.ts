import type { CatalogueRecord } from './record.ts'

/** Air: temperature and relative humidity. */
export interface Air {
  readonly tempC: number
  readonly humidityPct: number
}

/**
 * A kind of room by its driest and dampest weeks: what timber, which follows slowly, comes to feel.
 *
 * Limits: temperate climates, by common experience; a week's mean, not the extreme of an hour. A cheap
 * hygrometer left in the room for a year settles it: measure yours.
 */
export interface RoomRecord extends CatalogueRecord {
  readonly dry: Air
  readonly damp: Air
  /** Coldest and warmest the air gets, °C. */
  readonly tempC: readonly [low: number, high: number]
  /** Lowest and highest weekly humidity, %. */
  readonly humidityPct: readonly [low: number, high: number]
  /** The piece stands in direct sun. */
  readonly sun: boolean
}

type Pair = readonly [number, number]
/** Driest and dampest air as [°C, %], and the coldest and warmest the room gets, °C. */
type Row = readonly [id: string, name: string, dry: Pair, damp: Pair, tempC: Pair]

const ROWS: readonly Row[] = [
  ['heated-room', 'heated room, the year round', [21, 30], [24, 65], [17, 28]],
  ['heated-room-winter', 'heated room in winter', [21, 25], [21, 45], [16, 24]],
  ['heated-room-summer', 'heated room in summer', [26, 45], [23, 65], [20, 30]],
  ['air-conditioned-room', 'air-conditioned room', [22, 35], [23, 60], [20, 26]],
  ['workshop-heated', 'workshop, heated while in use', [18, 30], [20, 70], [8, 28]],
  ['workshop-unheated', 'workshop or garage without heating', [20, 45], [5, 85], [0, 32]],
  ['basement', 'basement', [19, 45], [17, 80], [12, 22]],
  ['bathroom', 'bathroom', [23, 35], [24, 80], [18, 30]],
  ['conservatory', 'conservatory or sunny window', [35, 20], [12, 75], [5, 45]],
  ['outdoors-covered', 'outdoors under cover', [25, 45], [5, 90], [-10, 35]]
]

export const ROOMS: readonly RoomRecord[] = ROWS.map(([id, name, dry, damp, tempC]) => ({
  id,
  name,
  source: 'common experience in temperate climates, no published source',
  confidence: 'practice',
  note: 'measure yours: a hygrometer left in the room through a winter and a summer',
  dry: { tempC: dry[0], humidityPct: dry[1] },
  damp: { tempC: damp[0], humidityPct: damp[1] },
  tempC,
  humidityPct: [dry[1], damp[1]],
  sun: id === 'conservatory'
}))
