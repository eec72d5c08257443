import { JUST_NOTICED } from '../colour/difference.ts'
import type { CutSeen } from '../fits/appearance.ts'
import type { PartSeen } from '../fits/part-seen.ts'
import type { TimberUnder } from '../fits/timber-under.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import { splitForCover } from './split-fix.ts'
import type { Work } from './work.ts'

/** A cut from behind that leaves too little of an opaque pour: it shows from the front. */
export const opaqueCover: Check = {
  id: 'opaque-cover',
  about: 'an opaque layer too thin over a cut, a timber or a part, so that it shows',
  cases: ['O3'],
  run: work => [
    ...work.appearance.cuts.flatMap(seen => one(work, seen)),
    ...work.appearance.under.flatMap(under => timber(work, under)),
    ...work.partsSeen.flatMap(seen => part(work, seen))
  ]
}

function one(work: Work, { cut: index, pour: pourIndex, leftMm, seen, needMm }: CutSeen): Found[] {
  const cut = work.entries.cuts[index]!
  const hiding = work.hiding[pourIndex]!
  const pour = work.entries.pours[pourIndex]!
  const [least, most] = seen.band
  // Through what is not meant to hide it is seen anyway: another finding says so.
  const hides = hiding.depth
  if (!hiding.meant || hides === null || most < JUST_NOTICED) return []
  // What hides black from white is cover enough, even where a thicker layer beside it is a shade paler.
  if (leftMm >= hides.highMm) return []
  const stop = seen.shows === 'yes' && leftMm < hides.centralMm
  const high = Math.min(hides.highMm, needMm?.high ?? hides.highMm)
  const limit = stop ? hides.centralMm : high
  const key = cut.value.depth !== undefined ? 'depth' : 'finishedDepth'
  const depth = rounded((cut.value[key] ?? 0) - (high - leftMm), 'down', 0.1)
  const shallower =
    depth >= 0.3
      ? {
          fix: setQuantity(work.document, `${cut.at}/${key}`, 'length', depth, 'down'),
          fixSays: `${cut.id} ${decimals(depth, 1)} deep${proudWords(work, index, depth)}`
        }
      : null
  const split = () => splitForCover(work, pourIndex, high - leftMm)
  const held = cut.value.for !== undefined || work.piece.hardware.some(h => h.in === cut.id)
  // A pocket that has to take its part keeps its depth: the layer grows.
  const fix = (held ? (split() ?? shallower) : (shallower ?? split())) ?? {}
  const figures =
    seen.shows === 'no'
      ? `a difference of up to ${decimals(most, 1)} where 1 is just noticed, with pigment as weak as it may be`
      : `a difference of ${decimals(seen.difference, 1)} (${decimals(least, 1)} to ${decimals(most, 1)}) where 1 is just noticed`
  const shows = `it would ${seen.shows === 'yes' ? '' : 'perhaps '}show from the front, ${figures}`
  const words = stop
    ? `; it hides from ${decimals(hides.centralMm, 1)} mm, somewhere between ${decimals(hides.lowMm, 1)} and ${decimals(hides.highMm, 1)}: ${shows}.`
    : `: ${shows}; from ${decimals(high, 1)} mm it surely would not.`
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at: cut.at,
      says: `${cut.id} leaves ${decimals(leftMm, 1)} mm of ${pour.id}${words}`,
      value: leftMm,
      unit: 'mm',
      band: stop ? [hides.lowMm, hides.highMm] : null,
      limit,
      basis: `cover from the core at the cut, faces as flattened; colours with and without it: Kubelka-Munk in three bands, CIEDE2000, 1 just noticeable, 2 plain (practice); strength of the pigment ${hiding.tested ? 'by your card' : 'within its factor'}`,
      settledBy: hiding.tested
        ? 'the cut made to half its depth first, and looked at'
        : 'a hiding card of this tint: steps cast over black and white',
      ...fix
    }
  ]
}

// A part cast into a pour that is said to hide.
function part(work: Work, { hardware, pour: index, coverMm, seen, noticed }: PartSeen): Found[] {
  const { id: pour, value } = work.entries.pours[index]!
  const { depth, tested } = work.hiding[index]!
  if (value.opaque !== true || depth === null || !noticed || coverMm >= depth.highMm) return []
  const { id, at } = work.entries.hardware[hardware]!
  const [least, most] = seen.band
  const stop = seen.shows === 'yes' && coverMm < depth.centralMm
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at,
      says: `${pour} covers ${id} by ${decimals(coverMm, 1)} mm and hides from ${decimals(depth.centralMm, 1)}, somewhere between ${decimals(depth.lowMm, 1)} and ${decimals(depth.highMm, 1)}: it would ${seen.shows === 'yes' ? '' : 'perhaps '}show from the front, a difference of ${decimals(seen.difference, 1)} (${decimals(least, 1)} to ${decimals(most, 1)}) where 1 is just noticed. Lay it deeper, or pour ${decimals(depth.highMm - coverMm, 1)} mm more over it.`,
      value: coverMm,
      unit: 'mm',
      band: [depth.lowMm, depth.highMm],
      limit: stop ? depth.centralMm : depth.highMm,
      basis: `part on the floor of its pour, as deep as its body; colours with and without it: Kubelka-Munk in three bands, CIEDE2000 (practice: 1 just noticeable); strength of the pigment ${tested ? 'by your card' : 'within its factor'}`,
      settledBy: tested
        ? 'a trial cast with the part in a cup'
        : 'a hiding card of this tint: steps cast over black and white'
    }
  ]
}

// What a shallower cut costs: its part stands out.
function proudWords(work: Work, cut: number, depthMm: number): string {
  const { id, value } = work.entries.cuts[cut]!
  const part = work.entries.hardware.find(h => h.value.in === id || value.for === h.id)
  const proud = (part === undefined ? 0 : (work.fits[part.index]!.part?.depthMm ?? 0)) - depthMm
  return proud > 0.02 ? `; ${part!.id} then stands ${decimals(proud, 1)} out` : ''
}

// What the document says a pour hides, and does not.
function timber(work: Work, { pour, timber: index, coverMm, seen, needMm }: TimberUnder): Found[] {
  const [least, most] = seen.band
  if (most < JUST_NOTICED) return []
  const { id, at, value } = work.entries.pours[pour]!
  const under = work.entries.timbers[index]!.id
  const { tested } = work.hiding[pour]!
  // Flooded over a face, it grows outward: nothing else moves.
  const deeper =
    needMm !== null && value.kind === 'flood' && value.depth !== undefined
      ? value.depth + needMm - coverMm
      : null
  return [
    {
      severity: seen.shows === 'yes' ? 'stop' : 'caution',
      at,
      says: `${id} lies ${decimals(coverMm, 1)} mm over ${under}, which ${seen.shows === 'yes' ? 'shows' : 'perhaps shows'} through it: a difference of ${decimals(seen.difference, 1)} (${decimals(least, 1)} to ${decimals(most, 1)}) where 1 is just noticed${needMm === null ? '' : `; from ${decimals(needMm, 1)} mm it surely would not`}.`,
      value: coverMm,
      unit: 'mm',
      limit: needMm,
      basis: `cover from the cores over the timber, faces as flattened; colours with and without it: Kubelka-Munk in three bands, CIEDE2000, 1 just noticeable, 2 plain (practice); timber by eye; strength of the pigment ${tested ? 'by your card' : 'within its factor'}`,
      settledBy: 'a hiding card of this tint: steps cast over black and white',
      ...(deeper === null
        ? {}
        : {
            fix: setQuantity(work.document, `${at}/depth`, 'length', deeper, 'up'),
            fixSays: `${id} ${decimals(rounded(deeper, 'up', 0.1), 1)} mm deep`
          })
    }
  ]
}
