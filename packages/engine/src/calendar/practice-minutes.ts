import { BRUSH_MIN } from '../cast/batches.ts'

/** Minutes of one kind of work: so many each time, and so many a square metre. */
export interface PracticeMinutes {
  readonly each: number
  readonly perM2: number
}

const each = (minutes: number, perM2 = 0): PracticeMinutes => ({ each: minutes, perM2 })

/**
 * Minutes where nothing of the piece tells them. All: common practice of small workshops, no source; time yours, and
 * the shop learns. `each` min, `perM2` min/m² of what the row says.
 */
export const PRACTICE_MIN = {
  /** A timber sawn and planed to its thickness, by its area. */
  mill: each(30, 60),
  /** Moisture and size read once a timber has settled. */
  timberCheck: each(5),
  /** A face charred and brushed out, by the area of the timber. */
  char: each(15, 60),
  /** Bark, dust and loose wood off the edge before sealing, by the area of the timber. */
  clean: each(10, 20),
  /** A board of the mould cut and joined. */
  mouldBoard: each(8),
  /** A bearer cut and set. */
  bearer: each(5),
  /** Lining or release agent, by the area that resin must let go of. */
  liner: each(10, 30),
  /** Sealant along the joints, by the metre. */
  sealantPerM: each(3),
  /** Mould set level, all corners read. */
  level: each(15),
  /** Mould filled with water, and emptied after the hour it stands. */
  waterFill: each(10),
  waterEmpty: each(10),
  /** A timber placed and held down. */
  hold: each(10),
  /** A batch weighed; a pigment weighed into it. */
  weigh: each(5),
  pigment: each(2),
  /** A seal coat brushed on, by the area it covers. */
  brush: BRUSH_MIN,
  /** Tools and vessels cleaned after the last batch. */
  cleanUp: each(10),
  /** Heat gun over the face, by its area. */
  bubblePass: each(2, 5),
  /** Colours drawn into each other, by the area of the mould. */
  marble: each(5, 20),
  /** Stones laid out, by the stone set singly and by the area of a zone. */
  stonesZone: each(5, 60),
  stone: each(1),
  /** Mould taken off, by its area. */
  demould: each(20, 30),
  /** Piece turned over and set down. */
  turn: each(5),
  /** Piece clamped on the machine and its zero found. */
  zero: each(10),
  /** Pin holes drilled by hand with a guide. */
  pins: each(15),
  /** A program tried on scrap where its own test is not made yet. */
  testCut: each(5),
  /** A cut or marking on a bench that no tool of ours reckons. */
  handCut: each(30),
  /** A filling mixed and put in, by the area of the face. */
  fill: each(15, 10),
  /** A filling scraped level, by the area of the face. */
  levelFilling: each(10, 10),
  /** A face flattened by hand where no sled is reckoned, by its area. */
  flatten: each(20, 120),
  /** A face sanded where no grades are reckoned, by its area. */
  sand: each(10, 60),
  /** Waste sawn or routed off round the outline, and edges worked, by the metre. */
  trimPerM: each(10),
  edgePerM: each(8),
  /** Paper between coats, by the area. */
  betweenCoats: each(5, 15),
  /** A coat laid where no film is reckoned, by the area. */
  coat: each(10, 12),
  /** A part fitted. */
  fit: each(10),
  /** Piece looked over, wiped and packed. */
  pack: each(30)
} as const satisfies Record<string, PracticeMinutes>

export type PracticeKey = keyof typeof PRACTICE_MIN

/** Minutes of `count` times the work over an area, m². */
export function practiceMin(key: PracticeKey, count = 1, areaM2 = 0): number {
  const row: PracticeMinutes = PRACTICE_MIN[key]
  return count * row.each + areaM2 * row.perM2
}

/** "20 min each and 30 min/m²: common practice, no source". */
export function practiceSays(...keys: readonly PracticeKey[]): string {
  const parts = keys.map(key => {
    const row: PracticeMinutes = PRACTICE_MIN[key]
    return row.perM2 === 0 ? `${row.each} min each` : `${row.each} min and ${row.perM2} min/m²`
  })
  return `${parts.join(', ')}: common practice, no source`
}

/** Spans that pass by themselves or are watched, min: common practice, no source. */
export const PRACTICE_WAIT = {
  /** Water stands in the mould. */
  waterStands: 60,
  /** The mould dries through after its water test. */
  mouldDries: 12 * 60,
  /** Somebody stays by a pour: one to two hours. */
  watched: 90,
  /** A pass of the heat gun may be so much early or late. */
  passSlack: 5,
  /** A batch goes in after the one before, so that they run into each other. */
  betweenBatches: 15,
  /** A piece rests after the last part is fitted. */
  rests: 1440,
  /** A shop outside: five working days. */
  sentOut: 7 * 1440
} as const
