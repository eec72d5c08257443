/**
 * The edges of rings in a tree of boxes, for finding crossings and nearest edges.
 *
 * Edges stay in the order of their rings: neighbours along a ring lie near each other, so eight edges in a row
 * make a tight leaf and no sorting is needed. The tree is a complete binary heap: node 1 is the root, node k has
 * children 2k and 2k + 1, leaves start at `leaves`. boxes[4k..4k+3] is minX, minY, maxX, maxY of node k; empty
 * leaves have min +Infinity and max −Infinity, so they meet nothing.
 */
export interface EdgeTree {
  /** Edge e runs from (ends[4e], ends[4e+1]) to (ends[4e+2], ends[4e+3]). */
  readonly ends: Float64Array
  /** ringOf[e]: the ring of edge e. */
  readonly ringOf: Int32Array
  readonly count: number
  readonly leaves: number
  readonly boxes: Float64Array
}

const LEAF = 8

/** Builds the tree over all edges of closed rings. O(n). */
export function edgeTree(rings: readonly Float64Array[]): EdgeTree {
  const count = rings.reduce((sum, r) => sum + r.length / 2, 0)
  const ends = new Float64Array(4 * count)
  const ringOf = new Int32Array(count)
  let e = 0
  rings.forEach((ring, r) => {
    const n = ring.length
    for (let k = 0; k < n; k += 2, e++) {
      const next = k + 2 === n ? 0 : k + 2
      ends[4 * e] = ring[k]!
      ends[4 * e + 1] = ring[k + 1]!
      ends[4 * e + 2] = ring[next]!
      ends[4 * e + 3] = ring[next + 1]!
      ringOf[e] = r
    }
  })
  let leaves = 1
  while (leaves * LEAF < count) leaves *= 2
  const boxes = new Float64Array(8 * leaves)
  for (let leaf = 0; leaf < leaves; leaf++) {
    let minX = Number.POSITIVE_INFINITY
    let minY = Number.POSITIVE_INFINITY
    let maxX = Number.NEGATIVE_INFINITY
    let maxY = Number.NEGATIVE_INFINITY
    for (let k = 4 * leaf * LEAF; k < Math.min(4 * count, 4 * (leaf + 1) * LEAF); k += 2) {
      minX = Math.min(minX, ends[k]!)
      maxX = Math.max(maxX, ends[k]!)
      minY = Math.min(minY, ends[k + 1]!)
      maxY = Math.max(maxY, ends[k + 1]!)
    }
    setBox(boxes, leaves + leaf, minX, minY, maxX, maxY)
  }
  for (let node = leaves - 1; node >= 1; node--) {
    const a = 8 * node
    const b = a + 4
    setBox(
      boxes,
      node,
      Math.min(boxes[a]!, boxes[b]!),
      Math.min(boxes[a + 1]!, boxes[b + 1]!),
      Math.max(boxes[a + 2]!, boxes[b + 2]!),
      Math.max(boxes[a + 3]!, boxes[b + 3]!)
    )
  }
  return { ends, ringOf, count, leaves, boxes }
}

function setBox(boxes: Float64Array, node: number, x0: number, y0: number, x1: number, y1: number): void {
  boxes[4 * node] = x0
  boxes[4 * node + 1] = y0
  boxes[4 * node + 2] = x1
  boxes[4 * node + 3] = y1
}

/**
 * Calls `visit(i, j)` with i < j for every pair of edges whose boxes meet, until it returns true ("stop").
 * Returns whether it was stopped. Every edge meets its neighbours, so those pairs come too.
 *
 * Limits: about n·log n on outlines; long edges side by side at a slant (a hatching) all meet, then n².
 */
export function meetingEdges(tree: EdgeTree, visit: (i: number, j: number) => boolean): boolean {
  const { ends, count, leaves, boxes } = tree
  const stack = [1, 1]
  while (stack.length > 0) {
    const b = stack.pop()!
    const a = stack.pop()!
    if (a !== b && !boxesMeet(boxes, 4 * a, boxes, 4 * b)) continue
    if (a < leaves) {
      // Both nodes always stand on the same level.
      stack.push(2 * a + 1, 2 * b + 1, 2 * a, 2 * b + 1)
      if (a !== b) stack.push(2 * a + 1, 2 * b)
      stack.push(2 * a, 2 * b)
      continue
    }
    const endI = Math.min(count, (a - leaves + 1) * LEAF)
    const endJ = Math.min(count, (b - leaves + 1) * LEAF)
    for (let i = (a - leaves) * LEAF; i < endI; i++) {
      for (let j = a === b ? i + 1 : (b - leaves) * LEAF; j < endJ; j++) {
        if (edgesMeet(ends, 4 * i, 4 * j) && visit(i, j)) return true
      }
    }
  }
  return false
}

function boxesMeet(p: Float64Array, a: number, q: Float64Array, b: number): boolean {
  return p[a]! <= q[b + 2]! && q[b]! <= p[a + 2]! && p[a + 1]! <= q[b + 3]! && q[b + 1]! <= p[a + 3]!
}

function edgesMeet(e: Float64Array, a: number, b: number): boolean {
  return (
    Math.min(e[a]!, e[a + 2]!) <= Math.max(e[b]!, e[b + 2]!) &&
    Math.min(e[b]!, e[b + 2]!) <= Math.max(e[a]!, e[a + 2]!) &&
    Math.min(e[a + 1]!, e[a + 3]!) <= Math.max(e[b + 1]!, e[b + 3]!) &&
    Math.min(e[b + 1]!, e[b + 3]!) <= Math.max(e[a + 1]!, e[a + 3]!)
  )
}

/** The edge nearest to a point; −1 when there is none. */
export function nearestEdge(tree: EdgeTree, x: number, y: number): number {
  const { ends, count, leaves, boxes } = tree
  let least = Number.POSITIVE_INFINITY
  let found = -1
  const stack = [1]
  while (stack.length > 0) {
    const node = stack.pop()!
    if (boxDistance2(boxes, 4 * node, x, y) >= least) continue
    if (node < leaves) {
      const a = 2 * node
      // The nearer child is looked at first.
      const nearerA = boxDistance2(boxes, 4 * a, x, y) <= boxDistance2(boxes, 4 * a + 4, x, y)
      stack.push(nearerA ? a + 1 : a, nearerA ? a : a + 1)
      continue
    }
    const end = Math.min(count, (node - leaves + 1) * LEAF)
    for (let e = (node - leaves) * LEAF; e < end; e++) {
      const d = segmentDistance2(ends[4 * e]!, ends[4 * e + 1]!, ends[4 * e + 2]!, ends[4 * e + 3]!, x, y)
      if (d < least) {
        least = d
        found = e
      }
    }
  }
  return found
}

/** Distance from a point to the nearest edge, mm; Infinity when there is none. */
export function edgeDistance(tree: EdgeTree, x: number, y: number): number {
  const e = 4 * nearestEdge(tree, x, y)
  if (e < 0) return Number.POSITIVE_INFINITY
  const { ends } = tree
  return Math.sqrt(segmentDistance2(ends[e]!, ends[e + 1]!, ends[e + 2]!, ends[e + 3]!, x, y))
}

function boxDistance2(boxes: Float64Array, k: number, x: number, y: number): number {
  const dx = Math.max(boxes[k]! - x, x - boxes[k + 2]!, 0)
  const dy = Math.max(boxes[k + 1]! - y, y - boxes[k + 3]!, 0)
  return dx * dx + dy * dy
}

/** Squared distance from (x, y) to the segment a–b, mm². */
export function segmentDistance2(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  x: number,
  y: number
): number {
  const t = segmentShare(ax, ay, bx, by, x, y)
  const dx = ax + t * (bx - ax) - x
  const dy = ay + t * (by - ay) - y
  return dx * dx + dy * dy
}

/** Where along a–b, 0 to 1, the point nearest to (x, y) lies. */
export function segmentShare(ax: number, ay: number, bx: number, by: number, x: number, y: number): number {
  const dx = bx - ax
  const dy = by - ay
  const long = dx * dx + dy * dy
  return long === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long))
}
