import type { ProgramFacts } from './facts.ts'

/**
 * What of a program was not proved, as sentences: a sweep that met nothing says nothing about these. Empty: every line
 * was read, and every move after the first whole place begins and ends at a known one.
 */
export function gapsOf(facts: ProgramFacts): string[] {
  const out: string[] = []
  if (facts.leftOut === 1)
    out.push(
      '1 line has an error and was left out: what it does, and all that follows from it, was not looked at.'
    )
  if (facts.leftOut > 1)
    out.push(
      `${facts.leftOut} lines have errors and were left out: what they do, and all that follows from them, was not looked at.`
    )
  if (facts.stopped !== null) out.push(`The reading stopped before the end of the file. ${facts.stopped}`)
  else if (facts.endLine === 0)
    out.push('The program never says that it ends: what may be missing was not looked at.')
  if (facts.compensated)
    out.push(
      'The program has the control step aside by the radius of the cutter (G41, G42). That was not followed: the path was swept as it is written.'
    )
  if (facts.unplaced > 0)
    out.push(
      `${facts.unplaced === 1 ? '1 move goes' : `${facts.unplaced} moves go`} to a place that is known at the machine only (G28, G30, G53, G38.2 or no place before): the way there and away from it was not looked at.`
    )
  if (!facts.unitsStated && facts.units.length > 0)
    out.push(
      `The program does not say its units before it moves: it was read in ${facts.units[0] === 'mm' ? 'millimetres' : 'inches'}.`
    )
  return out
}
