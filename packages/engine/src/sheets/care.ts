import { find } from '../catalogue/find.ts'
import type { Work } from '../findings/work.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { Planned } from '../plan.ts'
import { decimals, formatC } from '../quantity/format.ts'
import { kilos } from '../quantity/rough.ts'
import { LEAST_TG_C } from '../resin/limits.ts'
import { capital } from './model.ts'

/** A thing to know of the finished piece, and what it rests on. */
export interface CareLine {
  readonly says: string
  readonly basis: string
}

/** What goes with a piece when it is handed over: for whoever lives with it. */
export interface Care {
  readonly name: string
  readonly about: string | null
  readonly asOf: string
  readonly madeOf: readonly string[]
  readonly sections: readonly { readonly title: string; readonly lines: readonly CareLine[] }[]
  readonly closing: string
}

const PRACTICE = 'common practice, no source'

/**
 * Care of the finished piece by what it is made of: heat from the glass transition its resin comes to, air and movement
 * from timber and the room it will live in, finish from its coats, hazards from the table of safety lines. It claims
 * neither strength nor fitness for food.
 */
export function careOf({ plan, work }: Planned): Care {
  const { beside } = lengthsOf(work.shop)
  return {
    name: plan.name,
    about: work.piece.about ?? null,
    asOf: plan.asOf,
    madeOf: madeOf(work, plan.totals.massG),
    sections: [
      { title: 'Heat and light', lines: heat(work) },
      { title: 'Air', lines: air(work) },
      { title: 'The first days', lines: firstDays(work) },
      { title: 'Cleaning and renewing', lines: cleaning(work) },
      { title: 'Take care', lines: hazards(work) }
    ]
      .filter(s => s.lines.length > 0)
      .map(s => ({ ...s, lines: s.lines.map(l => ({ ...l, says: beside(l.says) })) })),
    closing:
      'What the makers of resin, finish and parts write goes before anything here. Nothing here says what weight the piece bears.'
  }
}

function madeOf(work: Work, massG: number): string[] {
  // Names hold commas of their own.
  const names = (list: readonly string[]) => [...new Set(list)].join('; ')
  const timbers = names(work.materials.timbers.map(t => t.name))
  const resins = names([
    ...work.materials.resins.map(r => r.name),
    ...work.materials.markingResins.map(r => r.name)
  ])
  const coats = names(work.faces.flatMap(f => (f.coat === null ? [] : [`${f.coat.name} (${f.face})`])))
  const parts = names(work.materials.hardware.map(h => h.name))
  return [
    timbers === '' ? '' : `Timber: ${timbers}.`,
    resins === '' ? '' : `Resin: ${resins}.`,
    coats === '' ? '' : `Finish: ${coats}.`,
    parts === '' ? '' : `Parts: ${parts}.`,
    `It weighs about ${kilos(massG)}.`
  ].filter(s => s !== '')
}

function heat(work: Work): CareLine[] {
  const known = work.casts.flatMap(c => {
    const low = c?.windows.tgC.band[0] ?? c?.windows.tgC.central
    return low === null || low === undefined ? [] : [low]
  })
  const out: CareLine[] = []
  if (known.length > 0) {
    const softens = Math.min(...known)
    out.push({
      says: `The resin softens from about ${formatC(Math.floor(softens))}: no hot pans, pots or cups on it, no radiator or stove beside it${softens < LEAST_TG_C ? ', and no closed car in summer' : ''}. A print or a bend made warm stays when it cools.`,
      basis:
        'glass transition after a week in the workshop, unfavourable end: cure model of the resin’s class'
    })
  } else if (work.piece.pours.length > 0)
    out.push({ says: 'Keep hot things off the resin: it softens with warmth.', basis: PRACTICE })
  if (work.piece.pours.length > 0) {
    const blocked = work.faces.some(f => f.coat?.blocksUv === true)
    out.push({
      says: `Out of direct sun: clear resin yellows over the years, dyes fade${blocked ? '. The finish holds part of the light back' : ''}.`,
      basis: PRACTICE
    })
  }
  return out
}

function air(work: Work): CareLine[] {
  if (work.seasons.length === 0) return []
  const { dry, damp, name } = work.air
  const most = Math.max(
    0,
    ...work.seasons.map(s => (s.toDryMm === null || s.toDampMm === null ? 0 : s.toDampMm[1] - s.toDryMm[1]))
  )
  const out: CareLine[] = [
    {
      says: `Made for ${name}: ${decimals(dry.humidityPct, 0)} to ${decimals(damp.humidityPct, 0)} % relative humidity. Not beside a heater, not in a damp cellar, not outdoors.`,
      basis: 'the air the piece was planned for'
    }
  ]
  if (most >= 0.1)
    out.push({
      says: `Timber moves with the air: up to ${decimals(most, 1)} mm across the grain between the driest and the dampest season. Leave it that room.`,
      basis: 'Wood Handbook (FPL-GTR-282), equation 13-2, over the air named'
    })
  return out
}

function firstDays(work: Work): CareLine[] {
  const days = Math.max(0, ...work.faces.map(f => f.coat?.loadAfterDays[1] ?? 0))
  const out: CareLine[] = []
  if (days > 0)
    out.push({
      says: `Nothing heavy or hot on it, and nothing wrapped about it, until ${decimals(days, 0)} days after its last coat.`,
      basis: `${work.faces.find(f => f.coat?.loadAfterDays[1] === days)!.coat!.name}: ${PRACTICE}`
    })
  if (work.piece.pours.length > 0)
    out.push({ says: 'Resin goes on hardening for some weeks after it was made.', basis: 'cure model' })
  return out
}

function cleaning(work: Work): CareLine[] {
  const out: CareLine[] = [
    {
      says: 'A soft cloth, damp with water and a drop of mild soap; dry it at once. No solvents: alcohol, acetone and thinner dull or soften it. No scouring.',
      basis: PRACTICE
    }
  ]
  const coats = [...new Set(work.faces.flatMap(f => (f.coat === null ? [] : [f.coat])))]
  for (const c of coats) {
    const says =
      c.kind === 'penetrating'
        ? `${capital(c.name)}: rub in a thin coat when the surface looks dry, about once a year; wipe off all that stands.`
        : `${capital(c.name)}: scratches are sanded by hand with ${c.betweenGrit === null ? 'fine paper' : `P${c.betweenGrit[1]}`} and coated anew.`
    out.push({ says, basis: PRACTICE })
    if (c.kind === 'penetrating')
      out.push({
        says: 'Cloths with oil can take fire by themselves: lay them flat outdoors to dry, or keep them under water in a closed tin.',
        basis: 'safety line on oily cloths'
      })
  }
  return out
}

function hazards(work: Work): CareLine[] {
  const ids: string[] = []
  if (work.piece.food !== 'none') ids.push('food-side')
  if (work.fits.some(f => f.record.mains)) ids.push('mains-wiring')
  if (work.fits.some(f => f.record.magnetic)) ids.push('magnets-swallow')
  if (work.piece.pours.length > 0) ids.push('sanding-cured-resin')
  return ids.flatMap(id => {
    const row = find('hazard', id)
    if (row === null) throw new Error(`no safety line "${id}"`)
    return [{ says: row.lines.join(' '), basis: `gives way to ${row.defersTo.join('; ')}` }]
  })
}
