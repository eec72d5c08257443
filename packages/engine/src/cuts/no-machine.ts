import { bounds } from '../shape/measure.ts'
import type { Stack } from '../stack/stack.ts'
import type { ForMachine } from './for-machine.ts'

/** What stands for it where the shop has no machine and the piece names no pins: nothing runs, nothing is tied. */
export function noMachineWork({ geometry }: Pick<Stack, 'geometry'>): ForMachine {
  const b = bounds(geometry.outline)
  return {
    machineCuts: { box: { cutters: [], says: null, unknown: [] }, cuts: [] },
    pins: {
      needed: false,
      given: false,
      datum: { x0: (b.minX + b.maxX) / 2, y0: (b.minY + b.maxY) / 2, about: 'x' },
      pins: [],
      playMm: 0,
      toleranceMm: 0,
      goesOn: false,
      wrong: [],
      misfit: null,
      ears: null,
      index: null,
      noIndex: null,
      plate: [],
      settings: []
    }
  }
}
