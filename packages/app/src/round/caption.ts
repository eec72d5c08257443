import { decimals } from '../../../engine/src/quantity/format.ts'
import type { RoundModel } from '../../../engine/src/round/round-model.ts'
import { roundWords as w } from '../text/round.ts'
import type { Cut } from './aim.ts'

const mm = (n: number) => decimals(n, 1)

/** What is seen, in words, from the face looked at down: for those who do not see it. */
export function captionOf(
  model: RoundModel,
  { face, fromMm, toMm, cut }: { face: 'front' | 'back'; fromMm: number; toMm: number; cut: Cut | null }
): string {
  const left = model.bodies
    .filter(b => b.toMm > fromMm + 1e-6 && b.fromMm < toMm - 1e-6)
    .sort((a, b) => (face === 'front' ? b.toMm - a.toMm : a.fromMm - b.fromMm))
    .map(b => w.part(b.name, b.words, mm(Math.max(fromMm, b.fromMm)), mm(Math.min(toMm, b.toMm))))
  const cutWords = cut === null ? '' : w.cutSays(cut.along === 'x' ? w.alongWay : w.acrossWay, mm(cut.at))
  return w.sees(model.name, face === 'front' ? 'front' : 'back', left.join('; ')) + cutWords
}
