import { bounds } from '../../shape/measure.ts'
import type { Stack } from '../../stack/stack.ts'
import type { Setting } from '../../steps/setting.ts'
import type { Frame } from '../pins/frame.ts'
import { regionToProgram, zToProgram } from '../pins/frame.ts'
import type { Box } from '../write/program.ts'

/**
 * The box that the work keeps within while it lies in a setting, mm in the coordinates of the setting: the mould's
 * plan, and in height the faces before each of its steps. A flood poured in the setting raises the face that is up:
 * what crosses the work later has to clear it.
 */
export function workBox(
  { states, geometry, castHeight }: Pick<Stack, 'states' | 'geometry' | 'castHeight'>,
  setting: Setting,
  frame: Frame
): Box {
  const faces: { readonly lowZ: number; readonly highZ: number }[] = []
  for (let i = setting.from; i <= setting.to; i++) faces.push(states[i - 1] ?? { lowZ: 0, highZ: castHeight })
  const z = faces.flatMap(f => [zToProgram(frame, f.lowZ), zToProgram(frame, f.highZ)])
  return {
    ...bounds(regionToProgram(frame, geometry.mould)),
    // The face that is down lies where it lay when the setting began.
    minZ: Math.min(...z.slice(0, 2)),
    maxZ: Math.max(...z)
  }
}
