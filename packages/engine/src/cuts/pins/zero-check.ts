import { decimals } from '../../quantity/format.ts'

/** A place to touch, and where the machine said it was, in the coordinates of the setting, mm. */
export interface Touched {
  readonly drawn: readonly [x: number, y: number]
  readonly read: readonly [x: number, y: number]
}

export interface ZeroCheckInput {
  /** The centre (the zero), and two marks that do not lie in line with it. */
  readonly centre: Touched
  readonly marks: readonly [Touched, Touched]
  /** Height read on the face at the centre, where Z 0 is meant to be; null when it was not touched. */
  readonly heightMm: number | null
  /** Farthest corner of the work from the centre. */
  readonly reachMm: number
  readonly machineErrorMm: number
  readonly toleranceMm: number
}

/** What the readings show. */
export type ZeroFault =
  | 'mirrored'
  | 'half turn'
  | 'quarter turn'
  | 'inch'
  | 'turned'
  | 'shifted'
  | 'height'
  | 'misread'

/** Go or no-go before the cut. */
export interface ZeroCheck {
  readonly go: boolean
  readonly says: string
  readonly fault: ZeroFault | null
  readonly shiftX: number
  readonly shiftY: number
  readonly turnDeg: number
  readonly scale: number
  /** Which axis runs the wrong way. */
  readonly mirrored: 'x' | 'y' | null
  readonly heightOffMm: number | null
  /** How far the farthest corner of the work is off, mm. */
  readonly offMm: number
  /** What the three readings leave between each other, mm: how well they were touched. */
  readonly leftMm: number
}

const MM_PER_INCH = 25.4
/** Within this of a quarter or half turn it is one, degrees; within this share of 25.4 it is that. */
const NEAR_DEG = 5
const NEAR_SCALE = 0.02

/**
 * Go or no-go from three places touched at the machine before a cut: the centre and two marks.
 *
 *   read = k·R(θ)·M·drawn + s        M: nothing, or a mirror image; the nearer of both fits is what happened
 *
 * Of three places, six readings, four are the fit's and two are left to judge it by. A piece that lies true gives
 * k = 1, θ = 0, s = 0; inches for millimetres k = 25.4 or its inverse; a half turn θ = 180°; a mirrored program or an
 * axis that runs the wrong way a mirror image.
 *
 * Source: similarity fit in the plane (closed form, as registered.ts).
 * Check: each mistake played on seeded pieces is named, and pieces that lie within tolerance are let go.
 *
 * Limits: it says how the piece lies under the machine's own zero, not whether the program is the right one.
 * @throws RangeError when the three places lie in line
 */
export function zeroCheck(input: ZeroCheckInput): ZeroCheck {
  const { centre, marks, heightMm, reachMm, toleranceMm, machineErrorMm } = input
  const places = [centre, ...marks]
  refuseInLine(places)
  const plain = similarity(places, false)
  const image = similarity(places, true)
  const mirrored = image.leftMm < plain.leftMm
  const fit = mirrored ? image : plain
  const { scale, turnDeg } = fit
  const inch = near(scale, MM_PER_INCH) || near(scale, 1 / MM_PER_INCH)
  const offMm = mirrored
    ? Math.hypot(fit.sx, fit.sy) + 2 * reachMm
    : Math.hypot(fit.sx, fit.sy) +
      reachMm * Math.hypot(scale * Math.cos(rad(turnDeg)) - 1, scale * Math.sin(rad(turnDeg)))
  const base = {
    shiftX: fit.sx,
    shiftY: fit.sy,
    turnDeg,
    scale,
    // A mirror image turned by half a turn is the other one.
    mirrored: mirrored ? (Math.abs(turnDeg) > 90 ? ('x' as const) : ('y' as const)) : null,
    heightOffMm: heightMm,
    offMm,
    leftMm: fit.leftMm
  }
  const stop = (fault: ZeroFault, says: string): ZeroCheck => ({
    ...base,
    go: false,
    fault,
    says: `Stop: ${says}`
  })
  const mm = (v: number) => decimals(v, 2)
  if (inch)
    return stop(
      'inch',
      `distances read ${decimals(scale, scale < 1 ? 4 : 1)} times what is drawn: one side reckons in inches, the other in millimetres. Set both alike.`
    )
  if (base.mirrored !== null)
    return stop(
      'mirrored',
      `the marks lie mirrored: ${base.mirrored === 'x' ? 'left and right' : 'near and far'} are exchanged. The other face lies up, the program is of the other face, or an axis runs the wrong way.`
    )
  if (Math.abs(Math.abs(turnDeg) - 180) <= NEAR_DEG)
    return stop(
      'half turn',
      'the piece lies turned by half a turn: upside-down left to right. Lay it the other way round.'
    )
  if (Math.abs(Math.abs(turnDeg) - 90) <= NEAR_DEG)
    return stop('quarter turn', 'the piece lies turned by a quarter turn, or x and y are exchanged.')
  if (
    fit.leftMm > toleranceMm + 2 * machineErrorMm ||
    Math.abs(scale - 1) * reachMm > toleranceMm + 2 * machineErrorMm
  )
    return stop(
      'misread',
      `the three readings do not agree with each other by ${mm(Math.max(fit.leftMm, Math.abs(scale - 1) * reachMm))} mm. Touch them again.`
    )
  const shift = Math.hypot(fit.sx, fit.sy)
  if (offMm > toleranceMm)
    return shift >= offMm / 2
      ? stop(
          'shifted',
          `the zero lies ${mm(shift)} mm off (x ${mm(fit.sx)}, y ${mm(fit.sy)}); ${mm(toleranceMm)} is borne. Set the zero anew, or have shift and turn written into the program.`
        )
      : stop(
          'turned',
          `the piece lies turned by ${decimals(turnDeg, 3)}°: ${mm(offMm)} mm at its farthest corner; ${mm(toleranceMm)} is borne. Lay it true, or have shift and turn written into the program.`
        )
  if (heightMm !== null && Math.abs(heightMm) > toleranceMm)
    return stop(
      'height',
      `the face lies at z ${mm(heightMm)} where 0 is meant: everything comes out that much too ${heightMm > 0 ? 'deep' : 'shallow'}. Set the height anew.`
    )
  return {
    ...base,
    go: true,
    fault: null,
    says: `Go: the farthest corner is within ${mm(offMm)} mm of the drawing; ${mm(toleranceMm)} is borne.${
      heightMm === null ? ' The height was not touched: do so before the cut.' : ''
    }`
  }
}

function near(value: number, wanted: number): boolean {
  return Math.abs(value / wanted - 1) <= NEAR_SCALE
}

function rad(degrees: number): number {
  return (degrees * Math.PI) / 180
}

// Turn, scale and shift that bring the drawing, or its image with y turned round, onto the readings.
function similarity(places: readonly Touched[], image: boolean) {
  const n = places.length
  const drawn = places.map(({ drawn: [x, y] }) => [x, image ? -y : y] as const)
  const mean = (list: readonly (readonly [number, number])[], k: 0 | 1) =>
    list.reduce((s, p) => s + p[k], 0) / n
  const [px, py] = [mean(drawn, 0), mean(drawn, 1)]
  const read = places.map(p => p.read)
  const [qx, qy] = [mean(read, 0), mean(read, 1)]
  let [dot, cross, spread] = [0, 0, 0]
  drawn.forEach(([x, y], i) => {
    const [ax, ay, bx, by] = [x - px, y - py, read[i]![0] - qx, read[i]![1] - qy]
    dot += ax * bx + ay * by
    cross += ax * by - ay * bx
    spread += ax * ax + ay * ay
  })
  const [c, s] = [dot / spread, cross / spread]
  const sx = qx - c * px + s * py
  const sy = qy - s * px - c * py
  const leftMm = Math.max(
    ...drawn.map(([x, y], i) =>
      Math.hypot(read[i]![0] - (c * x - s * y + sx), read[i]![1] - (s * x + c * y + sy))
    )
  )
  return { turnDeg: (Math.atan2(s, c) * 180) / Math.PI, scale: Math.hypot(c, s), sx, sy, leftMm }
}

/** Least height of the triangle of the three places over its longest side, as a share of that side. */
const LEAST_FLAT = 0.05

function refuseInLine(places: readonly Touched[]): void {
  const [a, b, c] = places.map(p => p.drawn) as [
    readonly [number, number],
    readonly [number, number],
    readonly [number, number]
  ]
  const twice = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]))
  const long = Math.max(
    Math.hypot(b[0] - a[0], b[1] - a[1]),
    Math.hypot(c[0] - a[0], c[1] - a[1]),
    Math.hypot(c[0] - b[0], c[1] - b[1])
  )
  if (twice <= LEAST_FLAT * long * long)
    throw new RangeError(
      'the centre and the two marks lie in line; allowed: three places that make a triangle, else a mirror image is not seen'
    )
}
