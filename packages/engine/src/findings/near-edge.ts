import { formatC } from '../quantity/format.ts'
import { edgeWords } from './edge-words.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** So near to its edge a pour is worth a word: a share of its depth, and K of the room. */
const NEAR_SHARE = 0.1
const NEAR_K = 2

/** A pour that is within its limit, but not by much: what a millimetre and a degree more would do. */
export const nearEdge: Check = {
  id: 'near-edge',
  about: 'a pour that a little more depth or a warmer room would take past its limit',
  cases: [],
  run: (work: Work): Found[] =>
    work.casts.flatMap((cast, i): Found[] => {
      const edge = work.whole?.edges[i]
      if (!cast || edge == null || cast.peakBandC[1] > edge.limitC) return []
      const { liquidDepth } = work.stack.pours[i]!
      const spareMm = edge.depthMm === null ? Number.POSITIVE_INFINITY : edge.depthMm - liquidDepth
      const spareK = edge.roomK ?? Number.POSITIVE_INFINITY
      if (spareMm > NEAR_SHARE * liquidDepth && spareK > NEAR_K) return []
      const { at, id } = work.entries.pours[i]!
      return [
        {
          severity: 'note',
          at,
          says: `${id} stays within ${formatC(edge.limitC)}, but not by much: ${edgeWords(edge, liquidDepth)}.`,
          value: Number.isFinite(spareMm) ? spareMm : spareK,
          unit: Number.isFinite(spareMm) ? 'mm' : '°C',
          band: null,
          limit: NEAR_SHARE * liquidDepth,
          basis:
            'cast of the whole mould on the coarse grid, one thing changed at a time, the top of the band held against the limit for clear work (60 °C: engineering judgement, memory)',
          settledBy: 'a thermometer beside the mould; a cup test of this resin'
        }
      ]
    })
}
