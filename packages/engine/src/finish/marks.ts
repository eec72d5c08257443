import { gradeOf } from '../coat/grain.ts'
import { ridgeUm, scallopUm, scratchUm } from '../coat/scratch.ts'
import type { Face } from '../piece/piece-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { Stack } from '../stack/stack.ts'
import { pourFace } from '../steps/step.ts'

/**
 * Marks that the last tool leaves on a face before it is sanded, µm deep.
 *
 *   machined   ridges between passes of 0.6 of the bit at 2 mm/m out of square, and torn fibre
 *   sled       the same at 4 mm/m: rails and router give
 *   planed     cusps of knives, 2 mm apart on a circle of 30 mm, and torn fibre
 *   sawn       300 µm
 *   sanded to 80   the deepest scratches of P80 in timber
 *   cast       20 µm: joints of the liner;   poured   10 µm: dust that fell in
 *
 * Source: ridges and cusps closed forms (coat/scratch); how far out of square, torn fibre of 30 µm, sawn, cast and
 * poured: common practice, no published source. Surfacing bit of the shop, else 25.4 mm.
 * Check: bit of 25.4 mm: machined 60.5 µm, sled 91; planed 46.7.
 *
 * Limits: a sharp cutter and no steps between set-ups. A finger feels 50 µm: what feels rough begins coarser.
 */
export type Left = 'machined' | 'sled' | 'planed' | 'sawn' | 'sanded to 80' | 'cast' | 'poured'

const TORN_UM = 30
const PASS_SHARE = 0.6
const TILT_MM_PER_M = { machined: 2, sled: 4 } as const
const PLANER = { radiusMm: 30, pitchMm: 2 } as const
const USUAL_BIT_MM = 25.4
const FLAT_UM = { sawn: 300, cast: 20, poured: 10 } as const

/** Depth of what a tool leaves, µm. */
export function marksUm(left: Left, shop: Pick<Shop, 'cutters'>): number {
  switch (left) {
    case 'machined':
    case 'sled':
      return ridgeUm(PASS_SHARE * bitMm(shop), TILT_MM_PER_M[left]) + TORN_UM
    case 'planed':
      return scallopUm(PLANER.radiusMm, PLANER.pitchMm) + TORN_UM
    case 'sanded to 80':
      return scratchUm(gradeOf(80).grainUm, 'timber')[2]
    default:
      return FLAT_UM[left]
  }
}

function bitMm(shop: Pick<Shop, 'cutters'>): number {
  const own = shop.cutters.filter(c => c.kind === 'surfacing').map(c => c.diameter)
  return own.length > 0 ? Math.max(...own) : USUAL_BIT_MM
}

/** A face as it comes to be sanded: by what, how deep its marks, and at which step sanding is done. */
export interface Surface {
  readonly left: Left
  readonly marksUm: number
  /** What the tool alone left of them, µm. */
  readonly toolUm: number
  /** Index of the step in which the face is sanded: its last flattening or sanding; null: just before the coat. */
  readonly step: number | null
}

/**
 * A face just before step `until` (all steps when left out): what flattened it last, and what a later sanding step
 * still takes off; a flood over all of it since then leaves it as poured.
 */
export function surfaceOf(stack: Stack, shop: Shop, face: Face, until: number = stack.steps.length): Surface {
  const { piece, steps } = stack
  let out: Surface | null = null
  steps.slice(0, until).forEach((s, i) => {
    if (s.kind === 'flatten' && s.face === face) {
      const left = shop.machine === undefined ? 'sled' : 'machined'
      out = { left, marksUm: marksUm(left, shop), toolUm: marksUm(left, shop), step: i }
    } else if (s.kind === 'sand' && s.face === face) {
      const left: Left = out === null ? bare(stack) : (out as Surface).left
      // What stands proud of a filling comes off with the first grade.
      const toolUm = marksUm(left, shop)
      out = { left, marksUm: Math.max(toolUm, 1000 * (s.byMm ?? 0)), toolUm, step: i }
    } else if (s.kind === 'pour' && s.pour!.value.kind === 'flood') {
      const { value } = s.pour!
      if (value.region === undefined && pourFace(value, piece) === face) {
        const toolUm = marksUm('poured', shop)
        out = { left: 'poured', marksUm: toolUm, toolUm, step: null }
      }
    }
  })
  if (out !== null) return out
  const left = bare(stack)
  return { left, marksUm: marksUm(left, shop), toolUm: marksUm(left, shop), step: null }
}

// Nothing worked the face: timber comes planed, a casting as it leaves the mould.
function bare(stack: Stack): Left {
  return stack.piece.timbers.length > 0 ? 'planed' : 'cast'
}
