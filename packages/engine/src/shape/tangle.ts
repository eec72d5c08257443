import { DrawingError } from './drawing-error.ts'
import { edgeTree, meetingEdges } from './edge-tree.ts'

/**
 * Most places in which edges may meet before rings are resolved. Clipping takes time and memory in proportion
 * to them (about 5 µs each, measured); a scribble of a few thousand lines has millions.
 */
const MOST_CROSSINGS = 200_000
/** Most pairs of edges looked at before giving up: bounds the time for parallel hatching. */
const MOST_PAIRS = 20_000_000

/** @throws DrawingError for rings that cross themselves or each other more than {@link MOST_CROSSINGS} times */
export function refuseTangle(rings: readonly Float64Array[]): void {
  const tree = edgeTree(rings)
  const { ends } = tree
  let crossings = 0
  let pairs = 0
  const tangled = meetingEdges(tree, (i, j) => {
    pairs++
    // Neighbours along a ring always meet; they are left out of the count but for the seam of each ring.
    if (j > i + 1 && segmentsMeet(ends, 4 * i, 4 * j)) crossings++
    return crossings > MOST_CROSSINGS || pairs > MOST_PAIRS
  })
  if (tangled) {
    throw new DrawingError(
      crossings > MOST_CROSSINGS
        ? `lines cross in more than ${MOST_CROSSINGS} places; at most ${MOST_CROSSINGS} can be resolved`
        : `${tree.count} lines lie over each other too densely; at most ${MOST_PAIRS} pairs are compared`
    )
  }
}

// Rounded arithmetic will do: this only counts.
function segmentsMeet(e: Float64Array, a: number, b: number): boolean {
  const side = (p: number, q: number): number =>
    (e[p + 2]! - e[p]!) * (e[q + 1]! - e[p + 1]!) - (e[p + 3]! - e[p + 1]!) * (e[q]! - e[p]!)
  return side(a, b) * side(a, b + 2) <= 0 && side(b, a) * side(b, a + 2) <= 0
}
