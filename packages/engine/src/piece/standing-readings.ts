import type { Reading } from './reading-schema.ts'

/**
 * The readings that count: those that no standing withdrawal names, without the withdrawals. Readings are only ever
 * added, so a mistake is undone by one more; a withdrawal that was a mistake is withdrawn in its turn. The order of
 * the records is kept, and which of them stand does not depend on it: two devices that exchanged theirs agree.
 *
 * A withdrawal of what is not there waits for it. Withdrawals that name each other in a ring cannot come about at a
 * bench (each would have to be older than the other); of such the one with the smallest id is asked first.
 */
export function standingReadings(readings: readonly Reading[]): readonly Reading[] {
  const against = new Map<string, string[]>()
  for (const r of readings) {
    if (r.kind !== 'withdrawn') continue
    const had = against.get(r.reading)
    if (had === undefined) against.set(r.reading, [r.id])
    else had.push(r.id)
  }
  if (against.size === 0) return readings
  for (const ids of against.values()) ids.sort()
  const known = new Map<string, boolean>()
  return readings.filter(r => r.kind !== 'withdrawn' && stands(r.id, against, known))
}

// Without recursion: a log may hold a chain of withdrawals as long as itself.
function stands(
  id: string,
  against: ReadonlyMap<string, readonly string[]>,
  known: Map<string, boolean>
): boolean {
  const way = [id]
  const onWay = new Set(way)
  while (way.length > 0) {
    const at = way[way.length - 1]!
    if (known.get(at) !== undefined) {
      way.pop()
      continue
    }
    const by = against.get(at) ?? []
    const open = by.find(w => known.get(w) === undefined && !onWay.has(w))
    if (open !== undefined && !by.some(w => known.get(w) === true)) {
      way.push(open)
      onWay.add(open)
    } else {
      known.set(at, !by.some(w => known.get(w) === true))
      way.pop()
    }
  }
  return known.get(id)!
}

/** Mass of a pour that the readings say was poured, of all its batches, g. */
export function pouredG(readings: readonly Reading[], pour: string): number {
  return readings.reduce((sum, r) => (r.kind === 'poured' && r.pour === pour ? sum + r.mass : sum), 0)
}
