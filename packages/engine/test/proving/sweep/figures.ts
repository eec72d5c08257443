import type { CutterShape } from '../../../src/catalogue/cutter-shape.ts'
import { forChords } from '../../../src/proving/sweep/chords.ts'
import { cutter } from '../program.ts'

type Place = [number, number, number]

/** A way whose swept volume is known. */
export interface Figure {
  readonly name: string
  readonly cutter: CutterShape
  readonly way: readonly Place[]
  /** Exact volume, mm³, by elementary geometry. */
  readonly mm3: number
  /** ∫ length of the edge of the level cut over height, mm²: the walls seen from the side. */
  readonly walls: number
}

// Off the axes and off the middles of cells, so that no edge runs along a row of them.
const [X, Y, TURN] = [0.137, -0.241, 0.3]
const at = (s: number, z: number): Place => [X + s * Math.cos(TURN), Y + s * Math.sin(TURN), z]
const slotOf = (long: number, deep: number): Place[] => [
  at(-long / 2, 1),
  at(-long / 2, -deep),
  at(long / 2, -deep)
]

function circle(r: number, from: number, to: number, turns: number): Place[] {
  const out: Place[] = []
  for (let k = 0; k < turns; k++) {
    const [z0, z1] = [from + (k / turns) * (to - from), from + ((k + 1) / turns) * (to - from)]
    forChords(X + r, Y, z0, X + r, Y, z1, X, Y, false, (x, y, z) => out.push([x, y, z]))
  }
  return [[X + r, Y, from], ...out]
}

const [R, L] = [3, 22]
const tan = Math.tan(Math.PI / 6)
const corner = 1.2
// A square of side c less the quarter of a circle: area, and distance of its middle from the outer side.
const chip = (1 - Math.PI / 4) * corner ** 2
const chipMiddle = (corner * (10 - 3 * Math.PI)) / (3 * (4 - Math.PI))

export const FIGURES: readonly Figure[] = [
  {
    name: 'slot',
    cutter: cutter(),
    way: slotOf(L, 5),
    mm3: (2 * R * L + Math.PI * R * R) * 5,
    walls: (2 * L + 2 * Math.PI * R) * 5
  },
  {
    name: 'disc',
    cutter: cutter(),
    way: [at(0, 1), at(0, -5)],
    mm3: Math.PI * R * R * 5,
    walls: 2 * Math.PI * R * 5
  },
  {
    name: 'ring',
    cutter: cutter(),
    way: circle(9, -4, -4, 1),
    mm3: 2 * Math.PI * 9 * 2 * R * 4,
    walls: 4 * Math.PI * 9 * 4
  },
  {
    name: 'V-groove',
    cutter: cutter({ form: 'v', angleDeg: 60, diameterMm: 12 }),
    way: slotOf(L, 6),
    mm3: L * 36 * tan + (Math.PI / 3) * (6 * tan) ** 2 * 6,
    walls: 2 * L * 6 + Math.PI * 36 * tan
  },
  {
    name: 'helix',
    cutter: cutter(),
    way: [...circle(2.2, 0, -6, 5), ...circle(2.2, -6, -6, 1).slice(1)],
    mm3: Math.PI * (2.2 + R) ** 2 * 6,
    walls: 2 * Math.PI * (2.2 + R) * 6
  },
  {
    name: 'ball slot',
    cutter: cutter({ form: 'ball' }),
    way: slotOf(L, R),
    mm3: (Math.PI / 2) * R * R * L + (2 / 3) * Math.PI * R ** 3,
    walls: 2 * L * R + (Math.PI * R) ** 2 / 2
  },
  {
    name: 'bull-nose slot',
    cutter: cutter({ form: 'bull', cornerMm: corner }),
    way: slotOf(L, 4),
    mm3: 2 * R * L * 4 - 2 * chip * L + Math.PI * R * R * 4 - 2 * Math.PI * (R - chipMiddle) * chip,
    walls: (2 * L + 2 * Math.PI * R) * 4
  },
  {
    name: 'drilled hole',
    cutter: cutter({ form: 'drill', angleDeg: 118 }),
    way: [at(0, 1), at(0, -8)],
    mm3: Math.PI * R * R * (8 - ((2 / 3) * R) / Math.tan((59 * Math.PI) / 180)),
    walls: 2 * Math.PI * R * 8
  },
  {
    // The leading edge of the foot is lowest: |m|·L·(L·R + πR²), m = −6/22.
    name: 'ramp of a flat cutter',
    cutter: cutter(),
    way: [at(-L / 2, 0), at(L / 2, -6)],
    mm3: 6 * (L * R + Math.PI * R * R),
    walls: (2 * L + 2 * Math.PI * R) * 6
  },
  {
    // Head 12 × 4, neck 6, floor at −9: the head's way, the hole it came down by, the slot of the neck beside it.
    name: 'keyhole slot',
    cutter: cutter({ form: 'keyhole', diameterMm: 12, headMm: 4, neckMm: 6 }),
    way: slotOf(L, 9),
    mm3:
      (12 * L + Math.PI * 36) * 4 +
      Math.PI * 36 * 5 +
      (6 * L + (Math.PI * 9) / 2 - (3 * Math.sqrt(27) + 36 * Math.asin(0.5))) * 5,
    walls: (2 * L + 2 * Math.PI * 6) * 9
  }
]

/**
 * Each cell that an edge crosses is off by up to half its area either way, one like the next by chance: for edges of
 * length P a level is off by σ = √(P/c / 12)·c², the volume no more than as if all levels erred alike. Never can it be
 * off by more than the cells the edges cross: √2·c·∫P dz. Four σ and the rounding of 32 bits are asked.
 */
export function bound(f: Figure, cell: number): number {
  const deep = Math.max(...f.way.map(p => -p[2]))
  return 4 * cell ** 1.5 * Math.sqrt((f.walls / deep) * (1 / 12)) * deep + 1e-4 * f.mm3
}
