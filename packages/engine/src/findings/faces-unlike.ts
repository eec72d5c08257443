import type { Face } from '../piece/piece-schema.ts'
import { decimals } from '../quantity/format.ts'
import { otherFace, pourFace } from '../steps/step.ts'
import { gradientCupMm } from '../timber/cup.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/**
 * Faces of timber finished unlike: one closed to damp, the other open.
 *
 * A face is bare, oiled (open, but slowed) or closed by a film, a flood coat or a flooded pour. The hollow is
 * that of the widest timber with half of the year's change of moisture between its faces: a bound while the
 * open face has followed the air and the other has not (judgement). Pieces without timber do not cup by damp.
 *
 * Limits: kinds are compared, not thicknesses of films.
 */
export const facesUnlike: Check = {
  id: 'faces-unlike',
  about: 'front and back finished unlike',
  cases: ['O10'],
  run
}

type Closed = 'bare' | 'oiled' | 'closed'
const ORDER: readonly Closed[] = ['bare', 'oiled', 'closed']

function run(work: Work): Found[] {
  const state = { front: closed(work, 'front'), back: closed(work, 'back') }
  if (work.piece.timbers.length === 0 || state.front === state.back) return []
  const open: Face = ORDER.indexOf(state.front) < ORDER.indexOf(state.back) ? 'front' : 'back'
  const better = otherFace(open)
  const cup = hollow(work)
  return [
    {
      severity: 'caution',
      at: `/finish/${open}`,
      says: `the ${better} has ${words(work, better)}, the ${open} ${words(work, open)}: the more open face takes up and gives off damp faster, and the piece cups${cup === null ? '' : `, at worst by about ${decimals(cup.mm, 1)} mm over the ${decimals(cup.widthMm, 0)} of its widest timber`}. Finish both faces alike.`,
      value: cup?.mm ?? null,
      unit: cup === null ? null : 'mm',
      basis:
        'common practice of finishing; hollow: movement across the grain times half of the year’s change of moisture over the thickness (derived), a bound',
      settledBy: 'a straightedge across it after a week in other air',
      ...fixOf(work, open, better)
    }
  ]
}

function closed(work: Work, face: Face): Closed {
  if (flooded(work, face)) return 'closed'
  const { coat } = work.faces[face === 'front' ? 0 : 1]
  return coat === null ? 'bare' : coat.kind === 'penetrating' ? 'oiled' : 'closed'
}

function flooded(work: Work, face: Face): boolean {
  return work.piece.pours.some(
    p => p.kind === 'flood' && p.region === undefined && pourFace(p, work.piece) === face
  )
}

function words(work: Work, face: Face): string {
  if (flooded(work, face)) return 'a flooded layer of resin'
  return work.faces[face === 'front' ? 0 : 1].coat?.name ?? 'no finish'
}

function hollow(work: Work): { readonly mm: number; readonly widthMm: number } | null {
  const widest = work.seasons
    .filter(s => s.coefficientPerPct !== null)
    .reduce<Work['seasons'][number] | null>((a, b) => (a !== null && a.acrossMm >= b.acrossMm ? a : b), null)
  if (widest === null) return null
  const mm = gradientCupMm({
    coefficientPerPct: widest.coefficientPerPct!,
    moistureDifferencePct: (widest.dampPct - widest.dryPct) / 2,
    widthMm: Math.min(widest.acrossMm, 10_000),
    thicknessMm: Math.max(0.5, work.piece.timbers[widest.timber]!.thickness)
  })
  return { mm, widthMm: widest.acrossMm }
}

// The open face gets what the other has; under a flood, a thin seal coat closes as well.
function fixOf(work: Work, open: Face, better: Face): Pick<Found, 'fix' | 'fixSays'> {
  const { coat } = work.faces[better === 'front' ? 0 : 1]
  const { finish } = work.document
  if (coat === null || coat.kind === 'flood' || flooded(work, better))
    return {
      fix: setValue(work.document, `/finish/${open}`, { coat: 'epoxy-seal' }),
      fixSays: `Seal the ${open} with a brushed coat of epoxy`
    }
  return {
    fix: setValue(work.document, `/finish/${open}`, finish?.[better] ?? finish?.both ?? { coat: coat.id }),
    fixSays: `${coat.name} on the ${open} too`
  }
}
