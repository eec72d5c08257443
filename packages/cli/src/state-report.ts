import type { BuildState } from '@castwright/engine'

/** Most lines of one part of the report. */
const MOST_LINES = 12

/** Where a build stands, in words. */
export function stateReport(name: string, state: BuildState): string {
  const part = (title: string, lines: readonly string[]) =>
    lines.length === 0
      ? ''
      : `\n${title}\n${lines
          .slice(0, MOST_LINES)
          .map(l => `  ${l}\n`)
          .join('')}${lines.length > MOST_LINES ? `  and ${lines.length - MOST_LINES} more\n` : ''}`
  return [
    `${name}: ${state.says}\n`,
    part('What stands', state.stands),
    part(
      'Otherwise than planned',
      state.changed.map(c => c.says)
    ),
    part(
      'Readings that do not go together (all are kept)',
      state.contradictions.map(c => c.says)
    ),
    part('What is left', state.left)
  ].join('')
}
