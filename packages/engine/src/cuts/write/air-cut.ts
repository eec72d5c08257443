import { cutExtentOf, pathsOf } from './extent.ts'
import { moved } from './placed.ts'
import type { ProgramInput, Visit } from './program.ts'

/** How far over where the material began the lifted way crosses, mm. */
const OVER_MM = 2

/**
 * The same program above the work: the same way in x and y, lifted by the whole depth and the lift, so that the deepest
 * move of the cut goes a lift above the work. The spindle stays off; before the way begins it stops over the zero, over
 * the middle and over the outermost corners. Every move is fed at the fastest feed of its part: nothing is cut.
 *
 * Limits: it needs as much more height over the work as the cut is deep; the header tells how high it goes.
 */
export function airCut(program: ProgramInput): ProgramInput {
  const lift = program.clearMm - program.stock.maxZ
  const box = cutExtentOf(pathsOf(program.runs))
  const deepest = Number.isFinite(box.minZ) ? box.minZ : program.clearMm
  const up = Math.max(0, program.stock.maxZ + lift - deepest)
  // All of it goes above the work: it need not climb to the crossing height of the cut as well.
  const highest = Math.max(
    program.clearMm,
    OVER_MM + up + Math.max(...program.runs.flatMap(r => r.parts.map(p => p.topMm)))
  )
  const lifted = (z: number) => Math.min(z + up, highest)
  return {
    ...program,
    kind: 'air cut',
    name: `${program.name} air cut`,
    notes: [
      ...program.notes,
      `Every height is ${up.toFixed(1)} mm above that of the cut. Watch for clamps, pins and the ends of travel.`
    ],
    spindle: false,
    visits: visitsOf(program),
    runs: program.runs.map(run => ({
      ...run,
      minutes: null,
      why: [],
      parts: run.parts.map(part => {
        const feeds = part.path.moves.flatMap(m => ('feedMmMin' in m ? [m.feedMmMin] : []))
        const feedMmMin = feeds.reduce((a, b) => Math.max(a, b), 0)
        return {
          ...part,
          topMm: part.topMm + up,
          path: moved(part.path, m =>
            m.kind === 'rapid' ? { ...m, z: lifted(m.z) } : { ...m, z: lifted(m.z), feedMmMin }
          )
        }
      })
    }))
  }
}

/** Zero, middle and the four outermost corners of what is cut; two that fall together are one. */
function visitsOf(program: ProgramInput): Visit[] {
  const box = cutExtentOf(pathsOf(program.runs))
  const out: Visit[] = []
  const add = (x: number, y: number, words: string) => {
    if (Number.isFinite(x) && Number.isFinite(y) && !out.some(v => v.x === x && v.y === y))
      out.push({ x, y, words })
  }
  add(0, 0, 'Air cut: over the zero. The tip must point at it')
  add((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2, 'Air cut: over the middle of what is cut')
  add(box.minX, box.minY, 'Air cut: outermost on the left, near')
  add(box.maxX, box.minY, 'Air cut: outermost on the right, near')
  add(box.maxX, box.maxY, 'Air cut: outermost on the right, far')
  add(box.minX, box.maxY, 'Air cut: outermost on the left, far')
  return out
}
