import type { Entries, Entry } from '../piece/entry.ts'
import type { Face, Piece, Pour } from '../piece/piece-schema.ts'
import type { Step } from './step.ts'
import { otherFace, pourFace } from './step.ts'

type Draft = Omit<Step, 'number' | 'up' | 'inMould'>

/** What sanding takes off after lines or an inlay are filled, mm: 0.3 (common practice). */
export const SANDED_AFTER_FILL_MM = 0.3

/**
 * The order of the build: as the document gives it, else the usual one.
 *
 * Usual: timber, mould, pours with the waits between, demould, then for the face that lay down and then the
 * other: turn it up, flatten, flood, cut, inlay, mark, fill, sand; edges; coat both faces; hardware; rest;
 * deliver. Floods come before cuts so that nothing runs into an open pocket, and every depth is measured
 * from the face that exists when the cut is made.
 */
export function orderOf(piece: Piece, entries: Entries): Step[] {
  return numbered(piece.steps ? given(piece, entries) : usual(piece, entries), piece.down)
}

/** Which face is up and whether it lies in the mould follow from what was done before. */
function numbered(drafts: readonly Draft[], down: Face): Step[] {
  let up: Face | null = null
  let inMould = false
  return drafts.map((draft, i) => {
    const step: Step = { ...draft, number: i + 1, up, inMould }
    if (draft.kind === 'make mould') {
      inMould = true
      up = otherFace(down)
    } else if (draft.kind === 'demould') {
      inMould = false
    } else if (draft.kind === 'turn over' && up !== null) {
      up = otherFace(up)
    }
    return step
  })
}

// What the document leaves out follows as in the usual order: the allowance of a face is split between
// flattening and the first sanding after it.
function given(piece: Piece, entries: Entries): Draft[] {
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
        return { ...common, says: 'Wait', waitMin: s.for }
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

const WORDS = {
  'make mould': 'Make the mould',
  demould: 'Take it out of the mould',
  'turn over': 'Turn over',
  'drill pins': 'Drill the pin holes',
  'work edges': 'Work the edges',
  deliver: 'Deliver'
} as const

function pourWords(pour: Entry<Pour>, piece: Piece): string {
  switch (pour.value.kind) {
    case 'seal':
      return `Seal with ${pour.id}`
    case 'flood':
      return `Flood ${pour.id} over the ${pourFace(pour.value, piece)}`
    case 'inlay':
      return `Fill with ${pour.id}`
    default:
      return `Pour ${pour.id}`
  }
}

function usual(piece: Piece, entries: Entries): Draft[] {
  const out: Draft[] = []
  const push = (kind: Draft['kind'], says: string, more: Partial<Draft> = {}) =>
    out.push({
      kind,
      says,
      at:
        more.pour?.at ?? more.cut?.at ?? more.marking?.at ?? more.hardware?.at ?? more.timber?.at ?? '/mould',
      ...more
    })
  const wait = (why: NonNullable<Draft['why']>, at: string) => push('wait', 'Wait', { why, at })

  for (const timber of entries.timbers) push('prepare timber', `Prepare ${timber.id}`, { timber })
  const seals = entries.pours.filter(p => p.value.kind === 'seal')
  for (const pour of seals) push('pour', pourWords(pour, piece), { pour })
  push('make mould', WORDS['make mould'])
  for (const timber of entries.timbers) push('set timber', `Set ${timber.id}`, { timber })
  const casts = entries.pours.filter(p => p.value.kind === 'cast')
  casts.forEach((pour, i) => {
    const before = casts[i - 1]
    if (before) wait('recoat', pour.at)
    const stones = pour.value.stones
    if (stones.some(s => s.set === 'before the pour' || (s.set === 'on the tacky layer' && before)))
      push('set stones', `Set the stones of ${pour.id}`, { pour })
    push('pour', pourWords(pour, piece), { pour })
  })
  wait('demould', '/mould')
  push('demould', WORDS.demould)
  wait('machine', '/pours')

  // Out of the mould the face that lay down still lies down.
  let up = otherFace(piece.down)
  let pinned = piece.cuts.length + piece.markings.length === 0
  workFace(piece.down)
  workFace(otherFace(piece.down))

  if (piece.edges.length > 0) push('work edges', WORDS['work edges'], { at: '/edges' })
  const front = piece.finish.front ?? piece.finish.both
  const back = piece.finish.back ?? piece.finish.both
  const coated = (coat: typeof front) => coat !== undefined && coat.coat !== 'none'
  if (coated(front) && coated(back)) push('coat', 'Coat both faces', { face: 'both', at: '/finish' })
  else if (coated(front)) push('coat', 'Coat the front', { face: 'front', at: '/finish' })
  else if (coated(back)) push('coat', 'Coat the back', { face: 'back', at: '/finish' })
  if (coated(front) || coated(back)) wait('load', '/finish')
  for (const hardware of entries.hardware.filter(h => h.value.castIn === undefined))
    push('fit', `Fit ${hardware.id}`, { hardware })
  push('deliver', WORDS.deliver, { at: '' })
  return out

  function workFace(face: Face): void {
    const by = flattenBy(piece, face)
    const sand = sandBy(piece, face)
    const cuts = entries.cuts.filter(c => c.value.face === face)
    const markings = entries.markings.filter(m => m.value.face === face)
    const late = entries.pours.filter(
      p => (p.value.kind === 'flood' || p.value.kind === 'inlay') && pourFace(p.value, piece) === face
    )
    if (by + sand === 0 && cuts.length + markings.length + late.length === 0) return
    if (up !== face) push('turn over', `Turn over, ${face} up`, { at: '/flatten' })
    up = face
    if (!pinned) push('drill pins', WORDS['drill pins'], { at: '/mould' })
    pinned = true
    if (by > 0) push('flatten', `Flatten the ${face}`, { face, byMm: by, at: `/flatten/${face}` })
    const floods = late.filter(p => p.value.kind === 'flood')
    for (const pour of floods) {
      push('pour', pourWords(pour, piece), { pour })
      wait('machine', pour.at)
    }
    const inlays = late.filter(p => p.value.kind === 'inlay')
    const filled = new Set(inlays.flatMap(p => p.value.into ?? []))
    for (const cut of cuts.filter(c => filled.has(c.id))) push('cut', `Cut ${cut.id}`, { cut, face })
    for (const pour of inlays) {
      push('pour', pourWords(pour, piece), { pour })
      wait('sand', pour.at)
    }
    for (const cut of cuts.filter(c => !filled.has(c.id) && c.value.kind !== 'outline'))
      push('cut', `Cut ${cut.id}`, { cut, face })
    for (const marking of markings) push('mark', `Cut ${marking.id}`, { marking, face })
    for (const marking of markings.filter(m => m.value.filled !== undefined)) {
      push('fill', `Fill ${marking.id}`, { marking, face })
      wait('sand', marking.at)
    }
    if (sand > 0) push('sand', `Sand the ${face}`, { face, byMm: sand, at: `/flatten/${face}` })
    // The outline comes last: it frees the part.
    for (const cut of cuts.filter(c => c.value.kind === 'outline'))
      push('cut', `Cut ${cut.id}`, { cut, face })
  }
}

/** What the cutter takes off a face: the allowance less what sanding takes later, mm. */
export function flattenBy(piece: Piece, face: Face): number {
  return piece.flatten[face] - sandBy(piece, face)
}

// What sanding takes of the allowance of a face, after lines and inlays in it are filled.
function sandBy(piece: Piece, face: Face): number {
  const lines = piece.markings
    .filter(m => m.face === face && (m.filled !== undefined || m.sandedAfter !== undefined))
    .map(m => m.sandedAfter ?? SANDED_AFTER_FILL_MM)
  const inlays = piece.pours
    .filter(p => p.kind === 'inlay' && pourFace(p, piece) === face)
    .map(() => SANDED_AFTER_FILL_MM)
  return Math.min(piece.flatten[face], Math.max(0, ...lines, ...inlays))
}
