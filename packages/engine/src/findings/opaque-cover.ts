import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** A cut from behind that leaves too little of an opaque pour: it shows from the front. */
export const opaqueCover: Check = {
  id: 'opaque-cover',
  about: 'an opaque layer left too thin in front of a cut, so that the cut shows',
  cases: ['O3'],
  run: work => work.covers.flatMap(cover => cover.layers.flatMap(layer => one(work, cover.cut, layer)))
}

function one(work: Work, cutIndex: number, layer: Work['covers'][number]['layers'][number]): Found[] {
  const cut = work.entries.cuts[cutIndex]!
  const hiding = work.hiding[layer.pour]!
  const pour = work.entries.pours[layer.pour]!
  // The front is looked at: only cuts from the back hide behind a layer. A pierced layer is another finding.
  if (
    cut.value.face !== 'back' ||
    cut.value.through ||
    !hiding.meant ||
    hiding.depth === null ||
    layer.mm <= 0
  )
    return []
  const { lowMm, centralMm, highMm } = hiding.depth
  if (layer.mm >= highMm) return []
  const stop = layer.mm < centralMm
  const limit = stop ? centralMm : highMm
  const key = cut.value.depth !== undefined ? 'depth' : 'finishedDepth'
  const depth = rounded((cut.value[key] ?? 0) - (highMm - layer.mm), 'down', 0.1)
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at: cut.at,
      says: `${cut.id} leaves ${decimals(layer.mm, 1)} mm of ${pour.id}; it hides from ${decimals(centralMm, 1)} mm, somewhere between ${decimals(lowMm, 1)} and ${decimals(highMm, 1)}: it would ${stop ? '' : 'perhaps '}show from the front.`,
      value: layer.mm,
      unit: 'mm',
      band: [lowMm, highMm],
      limit,
      basis:
        'cover from the core at the cut, faces as flattened; hiding depth: Kubelka-Munk, contrast ratio 0.98 (ISO 6504-1), strength of the pigment within its factor',
      settledBy: 'a hiding card of this tint: a wedge cast over a black and white card',
      ...(depth >= 0.3
        ? {
            fix: setQuantity(work.document, `${cut.at}/${key}`, 'length', depth, 'down'),
            fixSays: `${cut.id} ${decimals(depth, 1)} deep`
          }
        : {})
    }
  ]
}
