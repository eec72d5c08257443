import type { Entries, Entry } from '../piece/entry.ts'
import type { Face, Piece } from '../piece/piece-schema.ts'
import { flattenBy, sandBy } from './allowance.ts'
import type { Draft } from './draft.ts'
import { pourWords, WORDS } from './draft.ts'

/**
 * The order the document gives. What it leaves out follows as in the usual order: the allowance of a face is
 * split between flattening and the first sanding after it.
 */
export function given(piece: Piece, entries: Entries): Draft[] {
  const list = piece.steps!
  const firstSand = (face: Face) =>
    list.findIndex(s => s.do === 'sand' && s.face === face && s.by === undefined)
  const sandsLater = (i: number, face: Face) => firstSand(face) > i
  return list.map((s, i): Draft => {
    const what = 'what' in s ? s.what : undefined
    const entry = <T>(list: readonly Entry<T>[]) => list.find(e => e.id === what)
    const common = { kind: s.do, at: `/steps/${i}`, ...(s.at === undefined ? {} : { begins: s.at }) }
    switch (s.do) {
      case 'prepare timber':
      case 'set timber': {
        const timber = entry(entries.timbers)
        const doing = s.do === 'set timber' ? 'Set' : 'Prepare'
        return {
          ...common,
          says: timber ? `${doing} ${timber.id}` : `${doing} the timber`,
          ...(timber ? { timber } : {})
        }
      }
      case 'pour':
      case 'set stones': {
        const pour = entry(entries.pours)!
        return {
          ...common,
          says: s.do === 'pour' ? pourWords(pour, piece) : `Set the stones of ${pour.id}`,
          pour
        }
      }
      case 'cut': {
        const cut = entry(entries.cuts)!
        return { ...common, says: `Cut ${cut.id}`, cut, face: cut.value.face }
      }
      case 'mark':
      case 'fill': {
        const marking = entry(entries.markings)!
        return {
          ...common,
          says: `${s.do === 'mark' ? 'Cut' : 'Fill'} ${marking.id}`,
          marking,
          face: marking.value.face
        }
      }
      case 'fit': {
        const hardware = entry(entries.hardware)!
        return { ...common, says: `Fit ${hardware.id}`, hardware }
      }
      case 'wait':
        return {
          ...common,
          says: 'Wait',
          ...(s.for === undefined ? {} : { waitMin: s.for }),
          ...(s.until === undefined ? {} : { why: s.until })
        }
      case 'flatten':
        return {
          ...common,
          says: `Flatten the ${s.face}`,
          face: s.face,
          byMm: s.by ?? (sandsLater(i, s.face) ? flattenBy(piece, s.face) : piece.flatten[s.face])
        }
      case 'sand':
        return {
          ...common,
          says: `Sand the ${s.face}`,
          face: s.face,
          byMm: s.by ?? (i === firstSand(s.face) ? sandBy(piece, s.face) : 0)
        }
      case 'coat':
        return { ...common, says: s.face === 'both' ? 'Coat both faces' : `Coat the ${s.face}`, face: s.face }
      default:
        return { ...common, says: WORDS[s.do] }
    }
  })
}
