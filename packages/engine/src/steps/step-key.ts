import type { Step } from './step.ts'

/**
 * A name for each step that stays the same when other steps come, go or move: what it does and the entry it does it
 * to ("pour green", "flatten back", "wait recoat clear"). Readings, tasks and calendars name steps by it. Steps that
 * would share a name are counted in the order of doing: "turn over", "turn over 2".
 */
export function stepKeys(steps: readonly Step[]): string[] {
  const seen = new Map<string, number>()
  return steps.map(step => {
    const key = plainKey(step)
    const n = (seen.get(key) ?? 0) + 1
    seen.set(key, n)
    return n === 1 ? key : `${key} ${n}`
  })
}

function plainKey(step: Step): string {
  const entry = step.timber ?? step.pour ?? step.cut ?? step.marking ?? step.hardware
  const about = entry?.id ?? (step.kind === 'wait' ? waitedFor(step) : step.face)
  return [step.kind, step.why, about].filter(x => x !== undefined).join(' ')
}

// A wait points at the entry it stands before: "/pours/1". In a written order its place says nothing that lasts.
function waitedFor(step: Step): string | undefined {
  if (step.why !== undefined && step.at.startsWith('/steps/')) return undefined
  const words = step.at.split('/').filter(w => w !== '')
  return words.length === 0 ? undefined : words.join(' ')
}
