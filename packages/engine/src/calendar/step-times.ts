/** A reading as the calendar reads it: any kind, and what it says of a step. */
export interface StepReading {
  readonly id: string
  readonly kind: string
  readonly at: string
  readonly step?: string | undefined
  readonly minutes?: number | undefined
  readonly pour?: string | undefined
  readonly reading?: string | undefined
}

/** What was recorded of a step: moments in ms since 1970. */
export interface StepRecord {
  readonly beganMs: number | null
  readonly doneMs: number | null
  /** Hands-on minutes, as said. */
  readonly tookMin: number | null
}

/**
 * What readings say of each step, by key. `began` and `done` of a step; `mixed` and `poured` begin a pour, `demoulded`
 * ends the demoulding; `minutes` say what a step took. What was withdrawn counts no more. Of two of a kind the later
 * taken counts.
 */
export function stepRecords(
  readings: readonly StepReading[],
  keys: readonly string[]
): Map<string, StepRecord> {
  const withdrawn = new Set(readings.flatMap(r => (r.kind === 'withdrawn' && r.reading ? [r.reading] : [])))
  const out = new Map<string, StepRecord>()
  const note = (key: string | undefined, more: Partial<StepRecord>) => {
    if (key === undefined || !keys.includes(key)) return
    out.set(key, { beganMs: null, doneMs: null, tookMin: null, ...out.get(key), ...more })
  }
  for (const r of readings.filter(r => !withdrawn.has(r.id))) {
    const ms = Date.parse(r.at)
    const key = r.step
    const pourKey = keys.find(k => k === `pour ${r.pour}`)
    if (r.kind === 'began') note(key, { beganMs: ms })
    if (r.kind === 'done') note(key, { doneMs: ms, ...(r.minutes !== undefined && { tookMin: r.minutes }) })
    if (r.kind === 'minutes' && r.minutes !== undefined) note(key, { tookMin: r.minutes })
    if (r.kind === 'mixed' && pourKey !== undefined)
      note(pourKey, { beganMs: Math.min(ms, out.get(pourKey)?.beganMs ?? ms) })
    if (r.kind === 'poured' && pourKey !== undefined)
      note(pourKey, { beganMs: Math.min(ms, out.get(pourKey)?.beganMs ?? ms), doneMs: ms })
    if (r.kind === 'demoulded')
      note(
        keys.find(k => k.startsWith('demould')),
        { doneMs: ms }
      )
  }
  return out
}
