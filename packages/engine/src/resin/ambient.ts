import { inRange } from '../quantity/range.ts'

/**
 * The room over the day as a sine: mean ± swing, warmest at a given hour.
 * Returns °C as a function of seconds since `startHour` (0-24, clock time at the start of the run).
 *
 * Limits: one even swing; a measured course of temperatures is better where there is one.
 */
export function dailyTemperature(room: {
  readonly meanC: number
  readonly swingC: number
  readonly startHour: number
  /** 15 if not given. */
  readonly warmestHour?: number
}): (timeS: number) => number {
  const { meanC, swingC, startHour } = room
  const warmestHour = room.warmestHour ?? 15
  inRange('mean room temperature in °C', meanC, -30, 60)
  inRange('swing of the room in K', swingC, 0, 40)
  inRange('hour of the start', startHour, 0, 24)
  inRange('warmest hour', warmestHour, 0, 24)
  return timeS => meanC + swingC * Math.cos((2 * Math.PI * (startHour + timeS / 3600 - warmestHour)) / 24)
}
