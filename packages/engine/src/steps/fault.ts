import type { Entries } from '../piece/entry.ts'
import type { Piece } from '../piece/piece-schema.ts'
import type { Step } from './step.ts'
import { needsMould, pourFace } from './step.ts'

/** A step that cannot be done where it stands. */
export interface OrderFault {
  readonly step: Step
  readonly says: string
}

/**
 * Steps that cannot be done in the given order: working on a face that lies down or in the mould, pouring
 * before the mould stands, setting timber where resin is, cutting what is not cast, filling or fitting what is
 * not cut, trimming what is coated, doing a thing twice, never, or after delivery. Boards that are not cast are
 * out of the mould from the start.
 *
 * Limits: whether a timber set higher up comes to lie in hard resin depends on levels, which the order does not
 * know; the stack leaves it only the open part of its place.
 */
export function orderFaults(piece: Piece, entries: Entries, steps: readonly Step[]): OrderFault[] {
  const out: OrderFault[] = []
  const done = new Set<string>()
  const once = (step: Step, key: string, words: string) => {
    if (done.has(key)) out.push({ step, says: `${words} a second time` })
    done.add(key)
  }
  const left = entries.pours.filter(p => p.value.kind === 'cast').length
  let poured = 0
  const moulded = needsMould(piece)
  let demoulded = !moulded
  let coated = false
  let flooded = false
  let delivered = false
  for (const step of steps) {
    const { kind } = step
    if (delivered) out.push({ step, says: 'it is delivered by then' })
    if (kind === 'deliver') delivered = true
    const late =
      step.pour !== undefined && kind === 'pour' && ['flood', 'inlay'].includes(step.pour.value.kind)
    const face = late ? pourFace(step.pour.value, piece) : step.face === 'both' ? undefined : step.face
    if (kind === 'make mould') once(step, 'mould', 'makes the mould')
    if (kind === 'demould') {
      if (!step.inMould) out.push({ step, says: 'there is no mould to take it out of' })
      if (poured < left) out.push({ step, says: `${left - poured} of the pours into the mould come later` })
      once(step, 'demould', 'takes it out of the mould')
      demoulded = true
    }
    if (kind === 'set timber') {
      if (!step.inMould)
        out.push({ step, says: moulded ? noMould(demoulded) : 'there is no mould to set it in' })
      for (const t of step.timber ? [step.timber] : entries.timbers) {
        once(step, `set ${t.id}`, `sets ${t.id}`)
        if (flooded && t.value.base === 0)
          out.push({ step, says: `resin covers the place of ${t.id} by then` })
      }
    }
    if (kind === 'pour') {
      const pour = step.pour!
      once(step, `pour ${pour.id}`, `pours ${pour.id}`)
      if (pour.value.kind === 'cast') {
        poured++
        if (pour.value.region === undefined) flooded = true
        if (!step.inMould) out.push({ step, says: noMould(demoulded) })
      } else if (pour.value.kind === 'inlay') {
        const missing = (pour.value.into ?? []).filter(c => !done.has(`cut ${c}`))
        if (missing.length > 0) out.push({ step, says: `${missing.join(', ')} is not cut yet` })
      }
    }
    if (late || ['flatten', 'sand', 'cut', 'mark', 'fill'].includes(kind)) {
      if (!demoulded) out.push({ step, says: 'it is still in the mould, or not cast yet' })
      else if (face !== undefined && step.up !== null && step.up !== face)
        out.push({ step, says: `the ${face} lies down: turn it over first` })
    }
    if (kind === 'cut') once(step, `cut ${step.cut!.id}`, `cuts ${step.cut!.id}`)
    if (kind === 'mark') once(step, `mark ${step.marking!.id}`, `cuts ${step.marking!.id}`)
    if (kind === 'fill') {
      if (!done.has(`mark ${step.marking!.id}`))
        out.push({ step, says: `${step.marking!.id} is not cut yet` })
      once(step, `fill ${step.marking!.id}`, `fills ${step.marking!.id}`)
    }
    if (kind === 'fit') {
      const { id, value } = step.hardware!
      once(step, `fit ${id}`, `fits ${id}`)
      if (entries.cuts.some(c => c.id === value.in) && !done.has(`cut ${value.in}`))
        out.push({ step, says: `${value.in} is not cut yet` })
    }
    if (kind === 'trim') {
      if (coated) out.push({ step, says: 'it is coated by then' })
      once(step, 'trim', 'trims it to the outline')
    }
    if (kind === 'coat') coated = true
    if (['trim', 'work edges', 'coat', 'turn over', 'drill pins', 'fit'].includes(kind) && !demoulded) {
      out.push({ step, says: 'it is still in the mould, or not cast yet' })
    }
  }
  const never = (ok: boolean, says: string) => {
    if (!ok) out.push({ step: steps[steps.length - 1]!, says })
  }
  for (const p of entries.pours) never(done.has(`pour ${p.id}`), `${p.id} is never poured`)
  for (const c of entries.cuts) never(done.has(`cut ${c.id}`), `${c.id} is never cut`)
  for (const m of entries.markings) {
    never(done.has(`mark ${m.id}`), `${m.id} is never cut`)
    if (m.value.filled !== undefined) never(done.has(`fill ${m.id}`), `${m.id} is never filled`)
  }
  for (const h of entries.hardware)
    never(done.has(`fit ${h.id}`) || h.value.castIn !== undefined, `${h.id} is never fitted`)
  for (const t of moulded ? entries.timbers : []) never(done.has(`set ${t.id}`), `${t.id} is never set`)
  never(!moulded || done.has('mould'), 'the mould is never made')
  never(demoulded || piece.pours.every(p => p.kind !== 'cast'), 'it is never taken out of the mould')
  return out
}

function noMould(demoulded: boolean): string {
  return demoulded ? 'the mould is gone by then' : 'the mould is not made yet'
}
