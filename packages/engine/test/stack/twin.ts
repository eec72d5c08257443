import type { CrossSection, Manifold } from 'manifold-3d'
import Module from 'manifold-3d'
import type { Region } from '../../src/shape/region.ts'
import type { Removal } from '../../src/stack/event.ts'
import type { Solid } from '../../src/stack/solid.ts'
import type { Stack } from '../../src/stack/stack.ts'

/**
 * The stack once more, as solids of a general 3-D boolean library (manifold-3d): timbers, pours and cuts are
 * bodies, united and taken from each other in space. It shares the plane regions and the heights with the code
 * under test, and the stitching of slanted sides; no level cut, no integral, no groove section of ours.
 */
const wasm = await Module()
wasm.setup()

/** Far enough to be beyond any face, mm. */
const FAR = 3000
/** Facets round the end of a groove, along the quarter circle of a ball, and over half a crown. */
const HALF = 12
const QUARTER = 8
const CROWN = 24

/** Keeps what lives in the library's memory, to be let go of together. */
class Bench {
  private readonly kept: { delete(): void }[] = []
  keep<T extends { delete(): void }>(thing: T): T {
    this.kept.push(thing)
    return thing
  }
  clear(): void {
    for (const thing of this.kept.splice(0)) thing.delete()
  }
}

export interface Twin {
  /** Finished volume by material, mm³; keys "timber 0", "pour 1", "marking 0". */
  readonly finished: ReadonlyMap<string, number>
  /** Free volume of each pour into the mould, mm³, up to shares of its liquid level over its floor. */
  readonly free: readonly { readonly pour: number; readonly z: number; readonly mm3: number }[]
}

/** What the twin finds. `shares`: heights at which free volumes are taken, of the way to the liquid level. */
export function twinOf(stack: Stack, shares: readonly number[]): Twin {
  const bench = new Bench()
  try {
    const { finished, free } = build(stack, shares, bench)
    return { finished, free }
  } finally {
    bench.clear()
  }
}

/** Volume of one timber's body, mm³. */
export function bodyVolume(s: Solid): number {
  const bench = new Bench()
  try {
    return bodyOf(s, bench).volume()
  } finally {
    bench.clear()
  }
}

/** What a needle 0.002 mm square through each point meets of the finished piece. Heights mm as cast. */
export function needles(
  stack: Stack,
  points: readonly (readonly [number, number])[]
): { readonly key: string; readonly from: number; readonly to: number }[][] {
  const bench = new Bench()
  try {
    const { parts } = build(stack, [], bench)
    return points.map(([x, y]) => {
      const needle = bench.keep(bench.keep(wasm.Manifold.cube([0.002, 0.002, FAR], true)).translate(x, y, 0))
      return parts.flatMap(({ key, solid }) =>
        bench
          .keep(needle.intersect(solid))
          .decompose()
          .map((piece: Manifold) => {
            const { min, max } = bench.keep(piece).boundingBox()
            return { key, from: min[2], to: max[2] }
          })
          .filter((h: { from: number; to: number }) => h.to > h.from)
      )
    })
  } finally {
    bench.clear()
  }
}

interface Part {
  readonly key: string
  readonly solid: Manifold
}

function build(
  stack: Stack,
  shares: readonly number[],
  bench: Bench
): Twin & { readonly parts: readonly Part[] } {
  const { geometry: g, events } = stack
  const mould = sectionOf(g.mould, bench)
  const outline = sectionOf(g.outline, bench)
  // Faces as they stand when the first flood comes, or at the end.
  const flood = events.findIndex(e => e.kind === 'flood')
  const settled = flood < 0 ? events : events.slice(0, flood)
  let low = -FAR
  let high = FAR
  for (const e of settled) {
    if (e.kind === 'trim' && e.side === 'low') low = Math.max(low, e.z)
    if (e.kind === 'trim' && e.side === 'high') high = Math.min(high, e.z)
  }
  const within = prism(outline, low, high, bench)
  // What of a body lies in the outline and between the faces.
  const kept = (solid: Manifold): Manifold => {
    const { min, max } = solid.boundingBox()
    const corners: [number, number][] = [
      [min[0], min[1]],
      [max[0], min[1]],
      [max[0], max[1]],
      [min[0], max[1]]
    ]
    const box = bench.keep(new wasm.CrossSection([corners], 'NonZero'))
    if (!bench.keep(box.subtract(outline)).isEmpty()) return bench.keep(solid.intersect(within))
    const above = min[2] < low ? bench.keep(solid.trimByPlane([0, 0, 1], low)) : solid
    return max[2] > high ? bench.keep(above.trimByPlane([0, 0, -1], -high)) : above
  }

  const free: { pour: number; z: number; mm3: number }[] = []
  const set: Part[] = []
  const cast: Part[] = []
  const dammed: Manifold[] = []
  let bodies: Manifold | null | undefined
  let full = 0
  let parts: Part[] = []
  let away: Manifold[] = []
  const settle = () => {
    const cuts = away
    away = []
    const known = new Map<string, Manifold>()
    parts = parts.map(p => {
      const near = cuts.map((cut, i) => (meet(cut, p.solid) ? i : -1)).filter(i => i >= 0)
      if (near.length === 0) return p
      const key = near.join(' ')
      let all = known.get(key)
      if (all === undefined) {
        all = united(
          near.map(i => cuts[i]!),
          bench
        )
        known.set(key, all)
      }
      return { key: p.key, solid: bench.keep(p.solid.subtract(all)) }
    })
  }
  const add = (key: string, solid: Manifold) => {
    settle()
    // One by one: taken off as one union, thin slivers between bodies that touch went astray.
    const near = parts.filter(p => meet(p.solid, solid))
    parts.push({ key, solid: near.reduce((rest, p) => bench.keep(rest.subtract(p.solid)), solid) })
  }
  events.forEach(e => {
    switch (e.kind) {
      case 'timber':
        set.push({ key: `timber ${e.index}`, solid: bodyOf(g.timbers[e.index]!, bench) })
        break
      case 'former': {
        const plan = sectionOf(g.formers[e.index]!.region, bench)
        set.push({ key: 'former', solid: prism(plan, e.from, Math.min(FAR, e.to), bench) })
        break
      }
      case 'pour': {
        // Timbers and formers lie apart from each other. Below the last pour over the whole mould all is full;
        // what earlier pours behind dams hold is taken off.
        const pour = stack.pours[e.index]!
        if (pour.liquidLevel <= full) {
          for (const _ of shares) free.push({ pour: e.index, z: pour.floor, mm3: 0 })
          break
        }
        const region = e.region === null ? mould : sectionOf(e.region, bench)
        bodies ??= set.length === 0 ? null : bench.keep(wasm.Manifold.compose(set.map(p => p.solid)))
        const between = (plan: CrossSection, from: number, to: number): Manifold => {
          const slab = prism(plan, from, to, bench)
          const open = bodies === null ? slab : bench.keep(slab.subtract(bodies!))
          return dammed.reduce((rest, p) => bench.keep(rest.subtract(p)), open)
        }
        if (shares.length > 0) {
          const liquid = between(region, full, pour.liquidLevel)
          for (const share of shares) {
            const z = pour.floor + share * (pour.liquidLevel - pour.floor)
            const below = share === 1 ? liquid : bench.keep(liquid.trimByPlane([0, 0, -1], -z))
            free.push({ pour: e.index, z, mm3: below.volume() })
          }
        }
        // After cure it stands lower. Only what lies in the outline and between the faces is kept.
        const plan = bench.keep(region.intersect(outline))
        const [from, to] = [Math.max(full, low), Math.min(e.to, high)]
        if (to > from && !plan.isEmpty())
          cast.push({ key: `pour ${e.index}`, solid: between(plan, from, to) })
        if (e.region === null) full = Math.max(full, e.to)
        else dammed.push(prism(region, 0, e.to, bench))
        break
      }
      case 'demould':
        // Out of the mould: the formers are taken out, and only what lies in the outline is looked at.
        parts = [
          ...set.filter(p => p.key !== 'former').map(({ key, solid }) => ({ key, solid: kept(solid) })),
          ...cast
        ]
        break
      case 'trim': {
        if (flood < 0) break
        const half = bench.keep(wasm.Manifold.cube([4 * FAR, 4 * FAR, FAR], true))
        away.push(bench.keep(half.translate(0, 0, e.side === 'low' ? e.z - FAR / 2 : e.z + FAR / 2)))
        break
      }
      case 'cut':
      case 'mark':
        away.push(...removalSolid(e.removal, outline, bench))
        break
      case 'fill': {
        const holes = united(
          e.removals.flatMap(r => removalSolid(r, outline, bench)),
          bench
        )
        const below = bench.keep(
          e.side === 'low' ? holes.trimByPlane([0, 0, 1], e.z) : holes.trimByPlane([0, 0, -1], -e.z)
        )
        add(`${e.what} ${e.index}`, bench.keep(below.intersect(prism(outline, -FAR, FAR, bench))))
        break
      }
      case 'flood': {
        const region = e.region === null ? outline : sectionOf(e.region, bench)
        add(
          `pour ${e.index}`,
          bench.keep(prism(region, e.from, e.to, bench).intersect(prism(outline, -FAR, FAR, bench)))
        )
        break
      }
    }
  })
  settle()
  if (parts.length === 0) throw new Error('the twin was never taken out of the mould')
  // A fill reaches to the face of its day; what was sanded off later went with it.
  const last = bench.keep(
    wasm.Manifold.cube([4 * FAR, 4 * FAR, stack.finishedHigh - stack.finishedLow], true)
  )
  const slab = bench.keep(last.translate(0, 0, (stack.finishedHigh + stack.finishedLow) / 2))
  const finished = new Map<string, number>()
  parts = parts.map(({ key, solid }) => {
    const box = solid.boundingBox()
    const inside = box.min[2] >= stack.finishedLow - 1e-9 && box.max[2] <= stack.finishedHigh + 1e-9
    return { key, solid: inside ? solid : bench.keep(solid.intersect(slab)) }
  })
  for (const { key, solid } of parts) {
    const mm3 = solid.volume()
    if (mm3 > 0) finished.set(key, (finished.get(key) ?? 0) + mm3)
  }
  return { finished, free, parts }
}

function meet(a: Manifold, b: Manifold): boolean {
  const [p, q] = [a.boundingBox(), b.boundingBox()]
  return [0, 1, 2].every(k => p.min[k]! < q.max[k]! && q.min[k]! < p.max[k]!)
}

function sectionOf(region: Region, bench: Bench): CrossSection {
  return bench.keep(new wasm.CrossSection(polygonsOf(region.rings), 'Positive'))
}

function polygonsOf(rings: readonly Float64Array[]): [number, number][][] {
  return rings.map(ring =>
    Array.from({ length: ring.length / 2 }, (_, k): [number, number] => [ring[2 * k]!, ring[2 * k + 1]!])
  )
}

// Bodies whose boxes meet are united; the groups then stand apart and need no boolean.
function united(solids: readonly Manifold[], bench: Bench): Manifold {
  let groups: Manifold[][] = []
  for (const solid of solids) {
    const met = groups.filter(group => group.some(other => meet(other, solid)))
    groups = [...groups.filter(group => !met.includes(group)), [...met.flat(), solid]]
  }
  const apart = groups.map(group => (group.length === 1 ? group[0]! : bench.keep(wasm.Manifold.union(group))))
  return apart.length === 1 ? apart[0]! : bench.keep(wasm.Manifold.compose(apart))
}

function prism(section: CrossSection, from: number, to: number, bench: Bench): Manifold {
  return bench.keep(bench.keep(section.extrude(to - from)).translate(0, 0, from))
}

// A timber: its side as a prism or as the stitched strip with lids, and under its top.
function bodyOf(s: Solid, bench: Bench): Manifold {
  const head = s.top.kind === 'flat' ? s.edge : s.high + 1
  const side =
    s.lofts === null ? prism(sectionOf(s.upper, bench), s.base, head, bench) : slanted(s, head, bench)
  if (s.top.kind === 'flat') return side
  return bench.keep(side.intersect(s.top.kind === 'crown' ? underCrown(s, bench) : underGrid(s, bench)))
}

function slanted(s: Solid, head: number, bench: Bench): Manifold {
  const vertices: number[] = []
  const triangles: number[] = []
  const put = (ring: Float64Array, z: number): number => {
    const first = vertices.length / 3
    for (let k = 0; k < ring.length; k += 2) vertices.push(ring[k]!, ring[k + 1]!, z)
    return first
  }
  const lids = (rings: readonly Float64Array[], firsts: readonly number[], up: boolean) => {
    // The library numbers the points of all polygons in a row.
    const numbers = rings.flatMap((ring, r) =>
      Array.from({ length: ring.length / 2 }, (_, k) => firsts[r]! + k)
    )
    for (const [a, b, c] of wasm.triangulate(polygonsOf(rings)))
      triangles.push(numbers[a]!, numbers[up ? b : c]!, numbers[up ? c : b]!)
  }
  const lofts = s.lofts!
  const lower = lofts.map(l => put(l.lower, s.base))
  const upper = lofts.map(l => put(l.upper, s.edge))
  lofts.forEach((l, r) => {
    for (let k = 0; k < l.i.length; k++) {
      const next = k + 1 === l.i.length ? 0 : k + 1
      const a = lower[r]! + l.i[k]!
      const b = upper[r]! + l.j[k]!
      if (l.i[next] !== l.i[k]) triangles.push(a, lower[r]! + l.i[next]!, b)
      else triangles.push(a, upper[r]! + l.j[next]!, b)
    }
  })
  lids(
    lofts.map(l => l.lower),
    lower,
    false
  )
  let top = upper
  if (head > s.edge) {
    top = lofts.map(l => put(l.upper, head))
    lofts.forEach((l, r) => {
      const n = l.upper.length / 2
      for (let k = 0; k < n; k++) {
        const m = (k + 1) % n
        const [a, b, c, d] = [upper[r]! + k, upper[r]! + m, top[r]! + m, top[r]! + k]
        triangles.push(a, b, c, a, c, d)
      }
    })
  }
  lids(
    lofts.map(l => l.upper),
    top,
    true
  )
  return meshed(vertices, triangles, bench)
}

function meshed(vertices: readonly number[], triangles: readonly number[], bench: Bench): Manifold {
  const mesh = new wasm.Mesh({
    numProp: 3,
    vertProperties: Float32Array.from(vertices),
    triVerts: Uint32Array.from(triangles)
  })
  return bench.keep(new wasm.Manifold(mesh))
}

// A long prism whose section is the parabola over its chord, level beside it.
function underCrown(s: Solid, bench: Bench): Manifold {
  const top = s.top as Extract<Solid['top'], { kind: 'crown' }>
  const points: [number, number][] = [
    [-FAR, s.base - 1],
    [FAR, s.base - 1],
    [FAR, top.edge]
  ]
  for (let k = 0; k <= 2 * CROWN; k++) {
    const u = 1 - k / CROWN
    points.push([u * top.half, top.edge + top.rise * (1 - u * u)])
  }
  points.push([-FAR, top.edge])
  const section = bench.keep(new wasm.CrossSection([points], 'NonZero'))
  const along = bench.keep(bench.keep(section.extrude(2 * FAR)).translate(0, 0, -FAR))
  // Across the ridge, up, along it: columns of the map.
  const { nx, ny, cx, cy } = top
  return bench.keep(along.transform([nx, ny, 0, 0, 0, 0, 1, 0, ny, -nx, 0, 0, cx, cy, 0, 1]))
}

// The measured points with a rim that repeats them far out, as a height field over a flat floor.
function underGrid(s: Solid, bench: Bench): Manifold {
  const top = s.top as Extract<Solid['top'], { kind: 'grid' }>
  const xs = [-FAR, ...Array.from({ length: top.columns }, (_, i) => top.x0 + i * top.dx), FAR]
  const ys = [-FAR, ...Array.from({ length: top.rows }, (_, j) => top.y0 + j * top.dy), FAR]
  const held = (k: number, count: number) => Math.min(count - 1, Math.max(0, k - 1))
  const vertices: number[] = []
  for (const floor of [false, true]) {
    ys.forEach((y, j) => {
      xs.forEach((x, i) => {
        const rise = top.rises[held(j, top.rows) * top.columns + held(i, top.columns)]!
        vertices.push(x, y, floor ? s.base - 1 : top.edge + rise)
      })
    })
  }
  const [w, h] = [xs.length, ys.length]
  const at = (i: number, j: number, floor: boolean) => (floor ? w * h : 0) + j * w + i
  const triangles: number[] = []
  for (let j = 0; j + 1 < h; j++) {
    for (let i = 0; i + 1 < w; i++) {
      for (const floor of [false, true]) {
        const [a, b, c, d] = [
          at(i, j, floor),
          at(i + 1, j, floor),
          at(i + 1, j + 1, floor),
          at(i, j + 1, floor)
        ]
        triangles.push(...(floor ? [a, c, b, a, d, c] : [a, b, c, a, c, d]))
      }
    }
  }
  const wall = (i: number, j: number, m: number, n: number) => {
    const [a, b, c, d] = [at(i, j, true), at(m, n, true), at(m, n, false), at(i, j, false)]
    triangles.push(a, b, c, a, c, d)
  }
  for (let i = 0; i + 1 < w; i++) {
    wall(i, 0, i + 1, 0)
    wall(i + 1, h - 1, i, h - 1)
  }
  for (let j = 0; j + 1 < h; j++) {
    wall(w - 1, j, w - 1, j + 1)
    wall(0, j + 1, 0, j)
  }
  return meshed(vertices, triangles, bench)
}

// What a cut takes, from its floor to beyond the face: its plan inside the outline, and along lines each stretch.
function removalSolid(r: Removal, outline: CrossSection | null, bench: Bench): Manifold[] {
  const up = r.side === 'high'
  const floor = Math.min(FAR, Math.max(-FAR, r.floor))
  if (r.region !== null) {
    const whole = sectionOf(r.region, bench)
    const plan = outline === null ? whole : bench.keep(whole.intersect(outline))
    if (plan.isEmpty()) return []
    return [up ? prism(plan, floor, FAR + 1, bench) : prism(plan, -FAR - 1, floor, bench)]
  }
  const profile = r.profile!
  // Rings of the cutter from its deepest point: distance above it, radius. It reaches 400 mm.
  const reach = 400
  const rings: [number, number][] = []
  const half = profile.widthMm / 2
  if (profile.kind === 'flat') rings.push([0, half], [reach, half])
  else if (profile.kind === 'v')
    rings.push([0, 0], [reach, reach * Math.tan((profile.angleDeg * Math.PI) / 360)])
  else {
    for (const [x, y] of arc(Math.PI / 2, QUARTER)) rings.push([half - half * x, half * y])
    rings.push([reach, half])
  }
  const swept: Manifold[] = []
  for (const line of r.lines!) {
    for (let k = 0; k + 3 < line.length; k += 2) {
      const [ax, ay, bx, by] = [line[k]!, line[k + 1]!, line[k + 2]!, line[k + 3]!]
      const long = Math.hypot(bx - ax, by - ay)
      const [tx, ty] = [(bx - ax) / long, (by - ay) / long]
      // A convex cutter moved along a straight line sweeps the hull of its first and last place; of each the
      // half that looks away from the other is enough.
      const points = rings.flatMap(([s, radius]) => {
        const z = up ? floor + s : floor - s
        return arc(Math.PI, HALF).flatMap(([x, y]): [number, number, number][] => {
          const [u, v] = [radius * y, radius * x]
          return [
            [ax - u * tx - v * ty, ay - u * ty + v * tx, z],
            [bx + u * tx - v * ty, by + u * ty + v * tx, z]
          ]
        })
      })
      swept.push(bench.keep(wasm.Manifold.hull(points)))
    }
  }
  return swept
}

/**
 * Points along an arc of the unit circle from (1, 0), whose chords keep the sector's area: the ends lie on the
 * circle, so that widths are true, and the others outside it by what the chords would lose.
 * Area of the fan: sin(β/n)·(2ρ + (n − 2)ρ²)/2 = β/2.
 */
function arc(angle: number, chords: number): [number, number][] {
  const wanted = angle / Math.sin(angle / chords)
  const rho = (-1 + Math.sqrt(1 + (chords - 2) * wanted)) / (chords - 2)
  return Array.from({ length: chords + 1 }, (_, k): [number, number] => {
    const r = k === 0 || k === chords ? 1 : rho
    return [r * Math.cos((angle * k) / chords), r * Math.sin((angle * k) / chords)]
  })
}
