import type { Motions } from '../proving/motion.ts'

/** The moves of a program whose heights count from the bed, counted from the face. @param bedMm the bed, z from the face */
export function fromFace(motions: Motions, bedMm: number): Motions {
  const { count } = motions
  const z = motions.z.slice(0, count)
  const b = motions.b.slice(0, count)
  for (let i = 0; i < count; i++) {
    z[i] = z[i]! + bedMm
    // Of an arc in a plane that stands the second axis is z.
    if (motions.plane[i] !== 17) b[i] = b[i]! + bedMm
  }
  return { ...motions, z, b }
}
