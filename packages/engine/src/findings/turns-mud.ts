import type { Bands } from '../catalogue/pigment-optics.ts'
import { marbled } from '../colour/marble.ts'
import { hexOf } from '../colour/srgb.ts'
import { tintOptics } from '../fits/tint.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** Two colours of a marbled pour that mix to brown or grey. */
export const turnsMud: Check = {
  id: 'turns-mud',
  about: 'colours of a marbled pour that mix to mud',
  cases: ['C57'],
  run: work => work.entries.pours.flatMap(({ index }) => one(work, index))
}

/** A marbled pour is looked at over this, inside the resin: pale paper or timber. */
const BEHIND: Bands = [0.7, 0.7, 0.7]

function one(work: Work, i: number): Found[] {
  const { id, at, value } = work.entries.pours[i]!
  if (value.marbling === undefined) return []
  const { densityGMl } = work.materials.resins[i]!
  const base = work.materials.tints[i]!
  const colours = value.marbling.map((m, j) => ({
    optics: tintOptics([...base, ...work.materials.marblingTints[i]![j]!], densityGMl),
    share: m.share
  }))
  const { mud, strands, chroma, fromMixed } = marbled(
    colours,
    Math.max(1, work.stack.pours[i]!.depth),
    BEHIND
  )
  if (mud === null) return []
  const [a, b] = mud.pair
  return [
    {
      severity: 'caution',
      at,
      says: `colours ${a + 1} (${hexOf(strands[a]!)}) and ${b + 1} (${hexOf(strands[b]!)}) of ${id} mix to mud: ${decimals(100 * mud.left, 0)} % of the weaker one’s colour is left where they run together, and all mixed through they are ${decimals(fromMixed, 0)} from what was poured. Pour the main one last, few strokes, and a white or clear between them.`,
      value: mud.left * Math.min(chroma[a]!, chroma[b]!),
      unit: 'chroma',
      limit: 0.5 * Math.min(chroma[a]!, chroma[b]!),
      basis:
        'Kubelka-Munk mixture of both, chroma of CIELAB; that less than half of it is mud: a figure of ours, no source; order and strokes: common practice',
      settledBy: 'a spoonful of both stirred together on a white card'
    }
  ]
}
