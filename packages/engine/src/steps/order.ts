import type { Entries } from '../piece/entry.ts'
import type { Face, Piece } from '../piece/piece-schema.ts'
import { flattenBy, sandBy } from './allowance.ts'
import type { Draft } from './draft.ts'
import { pourWords, WORDS } from './draft.ts'
import { given } from './given.ts'
import type { Step } from './step.ts'
import { needsMould, otherFace, pourFace } from './step.ts'

/**
 * The order of the build: as the document gives it, else the usual one.
 *
 * Usual: mould, timber, seal, pours with the waits between, demould, then for the face that lay down and then
 * the other: turn it up, flatten, flood, cut, inlay, mark, fill, sand; edges; coat both faces; hardware; rest;
 * deliver. The mould comes first: its sealant dries and it is tried with water while no seal coat hardens.
 * Floods come before cuts so that nothing runs into an open pocket, and every depth is measured from the face
 * that exists when the cut is made. What stands round the outline (`waste`) holds the piece and its pins until
 * the cuts of both faces are made; then it is trimmed off, before the last face is sanded.
 *
 * Pin holes are drilled where a machine cuts: `machine` says whether there is one.
 *
 * A piece without a pour into the mould has none: its boards are worked from the face that is up.
 */
export function orderOf(piece: Piece, entries: Entries, waste = false, machine = true): Step[] {
  return numbered(piece.steps ? given(piece, entries) : usual(piece, entries, waste, machine), piece)
}

/** Which face is up and whether it lies in the mould follow from what was done before. */
function numbered(drafts: readonly Draft[], piece: Piece): Step[] {
  let up: Face | null = needsMould(piece) ? null : otherFace(piece.down)
  let inMould = false
  let lies = false
  return drafts.map((draft, i) => {
    const { kind } = draft
    // Timber is prepared and sealed beside the mould.
    const beside = kind === 'prepare timber' || (draft.pour?.value.kind === 'seal' && !lies)
    const apart = beside && (inMould || kind === 'prepare timber')
    const step: Step = { ...draft, number: i + 1, up: apart ? null : up, inMould: inMould && !apart }
    if (kind === 'set timber' || draft.pour?.value.kind === 'cast') lies = true
    if (kind === 'make mould') {
      inMould = true
      up = otherFace(piece.down)
    } else if (kind === 'demould') {
      inMould = false
    } else if (kind === 'turn over' && up !== null) {
      up = otherFace(up)
    }
    return step
  })
}

function usual(piece: Piece, entries: Entries, waste: boolean, machine: boolean): Draft[] {
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

  const moulded = needsMould(piece)
  if (moulded) push('make mould', WORDS['make mould'])
  for (const timber of entries.timbers) push('prepare timber', `Prepare ${timber.id}`, { timber })
  const seals = entries.pours.filter(p => p.value.kind === 'seal')
  for (const pour of seals) push('pour', pourWords(pour, piece), { pour })
  if (moulded) castIt()
  else if (seals.length > 0) wait('machine', '/pours')

  // Out of the mould the face that lay down still lies down: it is worked first. Boards lie as they are put.
  let up = otherFace(piece.down)
  // Pins tie both faces to the machine: what no machine cuts is marked out from the outline.
  let pinned = !machine || ![...piece.cuts, ...piece.markings].some(c => c.way === 'machine')
  const last = moulded ? otherFace(piece.down) : piece.down
  workFace(otherFace(last))
  workFace(last)

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

  function castIt(): void {
    for (const timber of entries.timbers) push('set timber', `Set ${timber.id}`, { timber })
    const casts = entries.pours.filter(p => p.value.kind === 'cast')
    casts.forEach((pour, i) => {
      const before = casts[i - 1]
      // The first lies on the seal, if there is one: that is to have turned tacky.
      if (before || seals.length > 0) wait('recoat', pour.at)
      const stones = pour.value.stones
      if (stones.some(s => s.set === 'before the pour' || (s.set === 'on the tacky layer' && before)))
        push('set stones', `Set the stones of ${pour.id}`, { pour })
      push('pour', pourWords(pour, piece), { pour })
    })
    wait('demould', '/mould')
    push('demould', WORDS.demould)
    wait('machine', '/pours')
  }

  function workFace(face: Face): void {
    const by = flattenBy(piece, face)
    const sand = sandBy(piece, face)
    const cuts = entries.cuts.filter(c => c.value.face === face)
    const markings = entries.markings.filter(m => m.value.face === face)
    const late = entries.pours.filter(
      p => (p.value.kind === 'flood' || p.value.kind === 'inlay') && pourFace(p.value, piece) === face
    )
    const trims = waste && face === last
    if (by + sand === 0 && cuts.length + markings.length + late.length === 0) {
      if (trims) push('trim', WORDS.trim, { at: '' })
      return
    }
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
    // A filling is sanded flush before its face is laid down; all else is sanded once the waste is off.
    if (trims) push('trim', WORDS.trim, { at: '' })
    if (sand > 0) push('sand', `Sand the ${face}`, { face, byMm: sand, at: `/flatten/${face}` })
    // The outline comes last: it frees the part.
    for (const cut of cuts.filter(c => c.value.kind === 'outline'))
      push('cut', `Cut ${cut.id}`, { cut, face })
  }
}
