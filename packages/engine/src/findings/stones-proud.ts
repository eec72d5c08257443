import type { Patch } from '../piece/patch.ts'
import { decimals } from '../quantity/format.ts'
import { faceOf } from '../stack/stack.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import { HARD_MOHS, SOFT_MOHS } from './stone-hardness.ts'
import { tooLarge } from './stones-large.ts'
import type { Work } from './work.ts'

/** How far below a face that is flattened hard stones are kept, mm (proposed by makers; common practice). */
const KEEP_UNDER_MM = 2

/** Stones that stand out of the piece, or where a face is flattened. */
export const stonesProud: Check = {
  id: 'stones-proud',
  about: 'stones higher than the finished face, or where flattening meets them',
  cases: ['C83'],
  run: work =>
    work.entries.pours.flatMap(p =>
      p.value.stones.flatMap((_, entry) =>
        (['low', 'high'] as const).flatMap(side => one(work, p.index, entry, side))
      )
    )
}

function one(work: Work, pour: number, entry: number, side: 'low' | 'high'): Found[] {
  const { stack } = work
  const { id, at, value } = work.entries.pours[pour]!
  // What does not go under its pour at all is said once, by its own check.
  if (value.kind !== 'cast' || tooLarge(work, pour, entry)) return []
  const stones = value.stones[entry]!
  const record = work.materials.stones[pour]![entry]!
  const trims = stack.events.flatMap(e => (e.kind === 'trim' && e.side === side ? [e.z] : []))
  const high = side === 'high'
  // Where the cutter came deepest; a face that nothing comes off is only looked at.
  const face =
    trims.length > 0 ? Math[high ? 'min' : 'max'](...trims) : high ? stack.finishedHigh : stack.finishedLow
  const hard = record.mohs[1] > HARD_MOHS
  const keep = trims.length > 0 && hard ? KEEP_UNDER_MM : 0
  const under = (z: number) => (high ? face - z : z - face)
  const { floor, level } = stack.pours[pour]!
  const heights = stones.placed?.map(s => (s.height ?? floor) + (high ? s.size[2] : 0)) ?? [
    high ? Math.max(stones.to ?? level, floor) : Math.max(stones.from ?? floor, 0)
  ]
  const least = Math.min(...heights.map(under))
  if (least >= keep - 1e-6 || (record.mohs[1] <= SOFT_MOHS && least >= -0.05)) return []
  const stop = least < -1e-6 && hard
  const faceName = faceOf(work.piece, side)
  const where =
    least < -1e-6
      ? `stand ${decimals(-least, 1)} mm above the ${trims.length > 0 ? '' : 'finished '}${faceName}${trims.length > 0 ? ' as it is flattened' : ''}`
      : `lie ${decimals(Math.max(0, least), 1)} mm under the ${faceName} when it is flattened`
  const does =
    trims.length === 0
      ? 'they stick out of it'
      : hard
        ? `hardness up to ${decimals(record.mohs[1], 1)} ruins cutter and paper and is torn out; keep them ${KEEP_UNDER_MM} mm under it, or grind it with diamond under water`
        : 'flattening meets them: light passes, and what is loose comes out'
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at: `${at}/stones/${entry}${stones.placed ? `/placed/${heights.findIndex(z => under(z) === least)}` : high ? '/to' : '/from'}`,
      says: `${record.name} in ${id} ${where}: ${does}.`,
      value: least,
      unit: 'mm',
      limit: stop ? 0 : keep,
      basis:
        'heights as cast of stones and faces; hardness: Mohs scale; 5 at most for a router, hard ones 2 mm under: common practice, no source',
      settledBy: 'a depth gauge on the highest stone before it is covered',
      ...fixOf(work, pour, entry, side, face + (high ? -keep : keep))
    }
  ]
}

// Stones kept on the inner side of a height. None where their place has no room for that.
function fixOf(
  work: Work,
  pour: number,
  entry: number,
  side: 'low' | 'high',
  z: number
): Pick<Found, 'fix' | 'fixSays'> {
  const { at, value } = work.entries.pours[pour]!
  const stones = value.stones[entry]!
  const { floor, level } = work.stack.pours[pour]!
  const high = side === 'high'
  const { name } = work.materials.stones[pour]![entry]!
  const says = `${name} ${high ? 'no higher than' : 'from'} ${decimals(rounded(z, high ? 'down' : 'up', 0.1), 1)} as cast`
  const rounding = high ? 'down' : 'up'
  const set = (key: string, mm: number): Patch =>
    setQuantity(work.document, `${at}/stones/${entry}/${key}`, 'length', mm, rounding)
  if (stones.placed === undefined) {
    const from = high ? (stones.from ?? floor) : rounded(z, 'up', 0.1)
    const to = high ? rounded(z, 'down', 0.1) : (stones.to ?? level)
    return to - from < 0.5 ? {} : { fix: set(high ? 'to' : 'from', z), fixSays: says }
  }
  const fix: Patch[number][] = []
  for (const [k, s] of stones.placed.entries()) {
    const foot = s.height ?? floor
    if (high ? foot + s.size[2] <= z + 1e-6 : foot >= z - 1e-6) continue
    const next = high ? z - s.size[2] : z
    if (next < floor - 1e-6 || next + s.size[2] > Math.max(level, work.stack.castHeight)) return {}
    fix.push(...set(`placed/${k}/height`, next))
  }
  return fix.length === 0 ? {} : { fix, fixSays: says }
}
