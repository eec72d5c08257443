/** Who is at the bench goes straight on with what begins within so many minutes, and is called so long before the rest (practice). */
const AT_BENCH_MIN = 5

/** A task that needs the maker, and whether it has a latest start. */
export interface Called {
  readonly startMin: number
  readonly endMin: number
  readonly attended: boolean
  readonly late: boolean
}

/**
 * How long before each task its alarm rings, min; null: not at all. What must not begin late is called the shop's
 * minutes before, where the maker is away by then. While still at the bench, a call half an hour ahead would ring in the
 * middle of the work before it: what begins after a pause is called a few minutes before, what follows at once not.
 */
export function alarmsOf(tasks: readonly Called[], shopMin: number): (number | null)[] {
  const attended = tasks.filter(t => t.attended)
  const called = new Set<number>()
  return tasks.map(({ startMin, attended: mine, late }) => {
    if (!mine || !late || called.has(startMin)) return null
    const ends = attended.filter(t => t.startMin < startMin).map(t => t.endMin)
    const goesOn = ends.some(end => end <= startMin && end > startMin - AT_BENCH_MIN)
    if (goesOn) return null
    called.add(startMin)
    const away = startMin - Math.max(Number.NEGATIVE_INFINITY, ...ends)
    return away > shopMin ? shopMin : Math.min(shopMin, AT_BENCH_MIN)
  })
}
