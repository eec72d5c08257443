import type { Face } from '../piece/piece-schema.ts'
import type { Step } from './step.ts'

/** The piece as it lies on the machine or bench between two turnings over: one face up. */
export interface Setting {
  readonly index: number
  readonly up: Face
  /** Indexes into the steps: the first and the last that work on the piece as it lies. */
  readonly from: number
  readonly to: number
}

/** The settings of a build, out of the mould, in order. A step beside the piece belongs to none. */
export function settingsOf(steps: readonly Step[]): Setting[] {
  const out: Setting[] = []
  let open: { up: Face; from: number; to: number } | null = null
  const close = () => {
    if (open !== null) out.push({ index: out.length, ...open })
    open = null
  }
  for (const [i, step] of steps.entries()) {
    if (step.kind === 'turn over' || step.kind === 'demould' || step.kind === 'make mould') close()
    else if (step.up !== null && !step.inMould && step.kind !== 'wait') {
      if (open !== null && open.up !== step.up) close()
      open = open === null ? { up: step.up, from: i, to: i } : { up: open.up, from: open.from, to: i }
    }
  }
  close()
  return out
}
