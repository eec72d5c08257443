/** A hole of the piece, where it lies when the piece is laid down right, mm; `slotMm` how much longer than wide. */
export interface PinHole {
  readonly x: number
  readonly y: number
  readonly diameterMm: number
  readonly slotMm: number
  /** Open to both faces. */
  readonly through: boolean
}

/** A pin that stands in the bed. */
export interface BedPin {
  readonly x: number
  readonly y: number
  readonly diameterMm: number
}

/** How a piece can be laid down wrong. */
export type WrongWay = 'turned about the other line' | 'not turned over' | 'not turned over, end for end'

/** What becomes of a piece laid down wrong. */
export interface WrongPlacing {
  readonly how: WrongWay
  /** Whether it goes on the pins that way: nothing then stops the maker. */
  readonly fits: boolean
  /** How far its datum then lies off, mm; null when it does not go on. */
  readonly offMm: number | null
  /** What it would show, in words. */
  readonly shows: string
}

/** How a piece laid down goes over its pins: shifted by (dx, dy); null: it does not. */
interface Seat {
  readonly dx: number
  readonly dy: number
}

const SHOWS: Readonly<Record<WrongWay, string>> = {
  'turned about the other line': 'upside-down left to right: the whole face comes out turned by half a turn',
  'not turned over': 'the face that is done already lies up',
  'not turned over, end for end': 'the face that is done already lies up, end for end'
}

/**
 * Whether a piece turned over goes onto the pins it was drilled for, and which wrong ways go on as well.
 *
 * Of two turnings over, one about each line, the second is the first and a half turn on the bed. So a piece can lie in
 * four ways: right, half turned, and with the first face up, straight or half turned.
 *
 * `right` are the holes as they lie in the second setting, `first` as they lay in the first, both about the datum;
 * `pins` stand in the bed. A pin goes into a hole that is no narrower than it; each needs one of its own.
 *
 * Check: two holes of one diameter always go on half turned, shifted by twice the way from the datum to their middle;
 * of two diameters never.
 */
export function seatOf(
  holes: readonly PinHole[],
  pins: readonly BedPin[],
  half: boolean,
  slackMm = 0
): Seat | null {
  const lies = half ? holes.map(h => ({ ...h, x: -h.x, y: -h.y })) : holes
  const first = pins[0]
  if (first === undefined) return null
  // The piece may be pushed about until its first pin finds any hole; the least push is tried first.
  const pushes = lies
    .map(h => ({ dx: first.x - h.x, dy: first.y - h.y }))
    .sort((a, b) => Math.hypot(a.dx, a.dy) - Math.hypot(b.dx, b.dy))
  return pushes.find(push => goesOn(lies, pins, push, slackMm)) ?? null
}

/** The wrong ways, each with what it does. Blind holes are open on the face that lay up when they were drilled. */
export function wrongPlacings(
  right: readonly PinHole[],
  first: readonly PinHole[],
  pins: readonly BedPin[],
  slackMm = 0
): WrongPlacing[] {
  const open = first.filter(h => h.through)
  const placing = (how: WrongWay, seat: Seat | null): WrongPlacing => ({
    how,
    fits: seat !== null,
    offMm: seat === null ? null : Math.hypot(seat.dx, seat.dy),
    shows: SHOWS[how]
  })
  return [
    placing('turned about the other line', seatOf(right, pins, true, slackMm)),
    placing('not turned over', seatOf(open, pins, false, slackMm)),
    placing('not turned over, end for end', seatOf(open, pins, true, slackMm))
  ]
}

function goesOn(
  holes: readonly PinHole[],
  pins: readonly BedPin[],
  { dx, dy }: Seat,
  slackMm: number
): boolean {
  const taken = new Set<number>()
  return pins.every(pin => {
    const k = holes.findIndex((h, i) => {
      if (taken.has(i) || h.diameterMm < pin.diameterMm - 1e-9) return false
      const freeMm = (h.diameterMm - pin.diameterMm) / 2 + h.slotMm / 2 + slackMm
      return Math.hypot(pin.x - h.x - dx, pin.y - h.y - dy) <= freeMm + 1e-6
    })
    if (k >= 0) taken.add(k)
    return k >= 0
  })
}
