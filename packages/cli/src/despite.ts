import type { Despite } from '@castwright/engine'
import { FINDING_IDS, nearestWord } from '@castwright/engine'
import { Failure } from './failure.ts'

/** Refuses what names no finding. @throws Failure */
export function knownOnly(command: string, despite: readonly Despite[]): void {
  for (const { id } of despite) {
    if (FINDING_IDS.includes(id)) continue
    const near = nearestWord(id, FINDING_IDS)
    throw new Failure(
      `castwright ${command}: found --despite ${id}; allowed: the id of a finding, as the check prints it${near === null ? '' : `; the nearest is ${near}`}`
    )
  }
}
