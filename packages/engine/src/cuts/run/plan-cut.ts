import type { MachineCut } from './machine-cut.ts'

/** A cut of the machine as the plan tells it: plain figures. Feeds are null where no cutter does. */
export interface PlanMachineCut {
  /** Number of its step; of a flattening the first. */
  readonly step: number
  readonly at: string
  readonly id: string
  /** Id and name of the cutter, and whether it lies in the shop. */
  readonly cutter: string | null
  readonly name: string | null
  readonly own: boolean
  readonly rpm: number | null
  readonly feedMmMin: number | null
  readonly plungeMmMin: number | null
  readonly passMm: number | null
  readonly chipMm: number | null
  readonly forceN: number | null
  readonly powerW: number | null
  /** Why this cutter, what limits it and its feeds; or what would do where none does. */
  readonly why: readonly string[]
}

/** @param step number of the step the cut is made in */
export function planMachineCut({ at, id, choice, run }: MachineCut, step: number): PlanMachineCut {
  const cutter = 'cutter' in choice ? choice.cutter : null
  const why =
    'cutter' in choice
      ? [choice.why, ...choice.limits, ...(run?.why ?? [])]
      : ['none' in choice ? choice.none.says : `no cutter ${choice.unknown} in the shop`]
  return {
    step,
    at,
    id,
    cutter: cutter?.id ?? null,
    name: cutter?.name ?? null,
    own: cutter?.own ?? false,
    rpm: run?.rpm ?? null,
    feedMmMin: run?.feedMmMin ?? null,
    plungeMmMin: run?.plungeMmMin ?? null,
    passMm: run?.depthMm ?? null,
    chipMm: run?.chipMm ?? null,
    forceN: run?.forceN ?? null,
    powerW: run?.powerW ?? null,
    why
  }
}
