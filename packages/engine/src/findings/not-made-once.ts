import type { Finding } from './finding.ts'

/** What the plan says at every edit of a cut that no cutter makes, by the id of the check. */
const SAID_BEFORE: ReadonlySet<string> = new Set(['cutter-missing', 'pocket-closed', 'line-over-cutter'])
const NOT_MADE = 'cut-not-made'

/**
 * Findings of a plan with those of its programs, one for one cut: that no program is made of it stands in the place of
 * what the plan said of its cutter, and takes over the reason, the basis and the fix.
 */
export function notMadeOnce(planned: readonly Finding[], programs: readonly Finding[]): Finding[] {
  const before = (f: Finding) =>
    f.id === NOT_MADE
      ? planned.find(p => SAID_BEFORE.has(p.id) && (p.at === f.at || p.at === `${f.at}/cutter`))
      : undefined
  const taken = new Set(programs.map(before))
  const once = programs.map((f): Finding => {
    const said = before(f)
    if (said === undefined) return f
    const { basis, fix, fixSays, cases } = said
    return { ...f, says: `No program is made: ${said.says}`, basis, fix, fixSays, cases }
  })
  // Its corners are a program of their own: one sentence does for both.
  const first = once.filter(
    (f, i) =>
      f.id !== NOT_MADE ||
      !once.slice(0, i).some(o => o.id === NOT_MADE && o.at === f.at && before(f) !== undefined)
  )
  return [...planned.filter(p => !taken.has(p)), ...first]
}
