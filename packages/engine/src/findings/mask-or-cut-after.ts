import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import { partWords } from './part-shape.ts'
import { after, leftWords, ROUNDING_MM, seatsOf } from './seat.ts'
import type { Work } from './work.ts'

/** A hole that its coats spoil: mask it, or cut it after them. */
export const maskOrCutAfter: Check = {
  id: 'mask-or-cut-after',
  about: 'a hole whose part no longer fits once it is coated, or that a self-levelling coat runs into',
  cases: ['O2', 'C94'],
  run: work => [...narrowed(work), ...flooded(work)]
}

function narrowed(work: Work): Found[] {
  return seatsOf(work).flatMap((seat): Found[] => {
    const { chain, shares } = seat.fit
    if (seat.gapMm < seat.wantedMm - ROUNDING_MM || chain?.of !== 'cut' || chain.flooded) return []
    const coat = shares.find(s => s.cause === 'coat')
    const bare = after(
      seat,
      shares.filter(s => s.cause !== 'coat')
    )
    const all = after(seat, shares)
    if (coat === undefined || all.severity === null || bare.severity !== null) return []
    const asked = all.severity === 'note'
    const value = all.severity === 'caution' ? all.sureMm : all.centralMm
    const limit = asked ? seat.wantedMm : seat.leastMm
    const { entry, fit } = seat
    const cut = work.entries.cuts[chain.index]!
    const film = -coat.sideMm[all.severity === 'caution' ? 0 : 1]
    return [
      {
        severity: all.severity,
        at: entry.at,
        says: `${cut.id} is coated after it is cut: ${decimals(film, 2)} mm of film on each wall, and of the ${decimals(seat.gapMm, 2)} mm drawn on each side of ${entry.id}, ${partWords(seat.part)}, ${leftWords(value)}${asked ? ` where ${decimals(limit, 2)} is wanted` : all.severity === 'stop' ? ': it does not go in' : ' at the worst'}. Plug or tape it before the coats, cut it after them, or cut it wider.`,
        value,
        unit: 'mm',
        limit,
        band: fit.clearanceMm === null ? null : [fit.clearanceMm[0], fit.clearanceMm[2]],
        basis:
          'a hole loses two films across (geometry); films of the catalogue, common practice, where the piece does not give them',
        settledBy: 'the film of a coated offcut, measured',
        fix: setValue(work.document, `${cut.at}/mask`, true),
        fixSays: `${cut.id} masked while it is coated`
      }
    ]
  })
}

function flooded(work: Work): Found[] {
  return work.chains.flatMap((chain): Found[] => {
    if (!chain.flooded || chain.of !== 'cut') return []
    const { at, id, value } = work.entries.cuts[chain.index]!
    const part = work.fits.find(f => f.chain === chain)
    const name = part === undefined ? null : work.entries.hardware[part.hardware]!.id
    return [
      {
        severity: name === null ? 'caution' : 'stop',
        at,
        says: `${id} is open when the self-levelling coat goes on the ${value.through ? 'face' : value.face}: it runs in and sets there${name === null ? '' : `, and ${name} no longer goes in`}. Plug or dam it, or cut it after the coat.`,
        basis: 'order of the steps; a liquid runs into what is open',
        fix: setValue(work.document, `${at}/mask`, true),
        fixSays: `${id} plugged while it is coated`
      }
    ]
  })
}
