import { decimals } from '../quantity/format.ts'
import { coreAt } from '../stack/core.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** Least timber between the point of a screw and the face before it, mm: nearer, it bulges or splits out (practice). */
const BEFORE_POINT_MM = 2
/** The piece is looked at round the hole, so far off its middle, mm. */
const ROUND_MM = 6

/** A wood screw longer in the piece than the piece is thick there. */
export const screwThrough: Check = {
  id: 'screw-through',
  about: 'a wood screw that comes out of the other face',
  cases: [],
  run: work => work.fits.flatMap(fit => one(work, fit))
}

function one(work: Work, fit: Work['fits'][number]): Found[] {
  const { at, id, value } = work.entries.hardware[fit.hardware]!
  const key = value.thread !== undefined ? 'thread' : 'length'
  const longMm = value[key]
  // A machine screw has a nut or an insert; what it passes is reckoned there.
  if (fit.record.kind !== 'screw' || fit.record.thread !== null || longMm === undefined) return []
  const cut = work.entries.cuts.find(c => c.id === value.in || c.value.for === id)
  if (cut === undefined || cut.value.through === true) return []
  const thickMm = thicknessAt(work, fit.x, fit.y)
  const spareMm = thickMm - longMm
  if (thickMm <= 0 || spareMm >= BEFORE_POINT_MM - 1e-6) return []
  const out = spareMm < 0
  const other = cut.value.face === 'back' ? 'front' : 'back'
  const most = thickMm - BEFORE_POINT_MM
  return [
    {
      severity: out ? 'stop' : 'caution',
      at: `${at}/${key}`,
      says: `${id} goes ${decimals(longMm, 1)} mm into the ${cut.value.face}, where the piece is ${decimals(thickMm, 1)} thick: ${out ? `its point comes out of the ${other}` : `its point ends ${decimals(spareMm, 1)} mm under the ${other}, which bulges or splits`}. Count what it holds on: that much of it stays outside.`,
      value: longMm,
      unit: 'mm',
      limit: out ? thickMm : most,
      basis: `thickness from the core beside the hole, finished; ${BEFORE_POINT_MM} mm before the point: common practice, no source`,
      settledBy: 'the screw held against the edge of the piece with what it holds on',
      ...(most < 4
        ? {}
        : {
            fix: setQuantity(work.document, `${at}/${key}`, 'length', most, 'down', 0.5),
            fixSays: `${id} at most ${decimals(Math.floor(most * 2) / 2, 1)} mm in the piece`
          })
    }
  ]
}

function thicknessAt(work: Work, x: number, y: number): number {
  const { geometry, events } = work.stack
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k < 8; k++) {
    const a = (k * Math.PI) / 4
    const core = coreAt(geometry, events, x + ROUND_MM * Math.cos(a), y + ROUND_MM * Math.sin(a))
    const mm = core.reduce((sum, p) => sum + p.to - p.from, 0)
    // Beside the piece there is nothing: that is another matter.
    if (mm > 0) least = Math.min(least, mm)
  }
  return Number.isFinite(least) ? least : 0
}
