/**
 * What a cutter drawn along lines leaves, by the distance s from its deepest point towards the face:
 *
 * - flat:  half width w/2 at every s
 * - V:     half width s·tan(θ/2); at depth d the face is 2·d·tan(θ/2) wide
 * - round: half width √(r² − (r − s)²) up to s = r, then r; r = w/2 (a ball cutter of diameter w)
 *
 * Source: elementary geometry; checks in the tests (60°: width 1.155·depth).
 */
export interface Profile {
  readonly kind: 'flat' | 'v' | 'round'
  /** Width of flat and round, mm: at the face, for a round one once it is half as deep as wide. */
  readonly widthMm: number
  /** Included angle of a V, degrees. */
  readonly angleDeg: number
}

/** Half the width at distance s above the deepest point, mm. */
export function halfWidthAt(p: Profile, s: number): number {
  if (s <= 0) return 0
  switch (p.kind) {
    case 'flat':
      return p.widthMm / 2
    case 'v':
      return s * Math.tan((p.angleDeg * Math.PI) / 360)
    case 'round': {
      const r = p.widthMm / 2
      return s >= r ? r : Math.sqrt(r * r - (r - s) * (r - s))
    }
  }
}

/** How far the floor lies above the deepest point at distance u from the middle line; null beside the groove. */
export function riseAt(p: Profile, u: number): number | null {
  const r = p.widthMm / 2
  switch (p.kind) {
    case 'flat':
      return u <= r ? 0 : null
    case 'v':
      return u / Math.tan((p.angleDeg * Math.PI) / 360)
    case 'round':
      return u <= r ? r - Math.sqrt(r * r - u * u) : null
  }
}

/** Depth at which a V is as wide as wanted, mm: d = w / (2·tan(θ/2)). */
export function vDepthMm(widthMm: number, angleDeg: number): number {
  return widthMm / (2 * Math.tan((angleDeg * Math.PI) / 360))
}

/** Distance from a point to the nearest of some lines, mm. */
export function lineDistance(lines: readonly Float64Array[], x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY
  for (const line of lines) {
    for (let k = 0; k + 3 < line.length; k += 2) {
      const ax = line[k]!
      const ay = line[k + 1]!
      const dx = line[k + 2]! - ax
      const dy = line[k + 3]! - ay
      const long = dx * dx + dy * dy
      const t = long === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long))
      const px = x - ax - t * dx
      const py = y - ay - t * dy
      least = Math.min(least, px * px + py * py)
    }
  }
  return Math.sqrt(least)
}
