import type { NoPath } from '../cuts/cut-job.ts'
import type { Machining } from '../cuts/operation/machining.ts'
import type { Operation } from '../cuts/operation/operation.ts'
import { motionTime } from '../cuts/run/motion-time.ts'
import type { Toolpath } from '../cuts/toolpath.ts'
import type { Envelope } from '../proving/judge/guards.ts'
import { decimals } from '../quantity/format.ts'
import { travel } from './in-the-way.ts'
import type { MadePath } from './program-input.ts'

/** A path may leave the travel by this, mm: what rounds. */
const ROUNDING_MM = 1e-6

/**
 * Makes the path of an operation, with its time. None where it would go beyond the travel of the machine, the piece
 * lying in the middle of it: a control stops there, or runs into its end and loses its place.
 */
export function madePath(machining: Machining, operation: Operation): MadePath | NoPath {
  const path = operation.path()
  if ('says' in path) return path
  const { machine } = machining.bench
  const past = pastTravel(path, travel(machining.settings[operation.setting]!, machine))
  if (past !== null)
    return {
      says: `Its path goes ${decimals(past.mm, 1)} mm farther ${past.way} than the machine travels (${decimals(machine.x, 0)} × ${decimals(machine.y, 0)} × ${decimals(machine.z, 0)} mm) with the piece in its middle: ${operation.kind === 'flatten' ? 'plane the face by hand or send it out' : 'cut it by hand or send it out'}`,
      largestMm: null
    }
  return { operation, path, time: motionTime(path, machine) }
}

// How far the tip goes beyond the travel at the worst, and which way.
function pastTravel({ moves }: Toolpath, e: Envelope): { mm: number; way: string } | null {
  let [mm, way] = [ROUNDING_MM, '']
  const see = (past: number, axis: string) => {
    if (past > mm) [mm, way] = [past, axis]
  }
  for (const m of moves) {
    if (m.kind === 'dwell') continue
    see(Math.max(e.minX - m.x, m.x - e.maxX), 'along x')
    see(Math.max(e.minY - m.y, m.y - e.maxY), 'along y')
    see(m.z - e.maxZ, 'up')
    see(e.minZ - m.z, 'down')
  }
  return way === '' ? null : { mm, way }
}
