import type { Work } from '../findings/work.ts'
import type { BoardPiece } from '../mould/cutlist.ts'
import type { Lengths } from '../piece/lengths.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { Plan } from '../plan.ts'
import { decimals, formatMass, formatMinutes } from '../quantity/format.ts'
import { bounds } from '../shape/measure.ts'
import { capital } from './model.ts'
import type { RunDetail, RunFact, RunTable } from './run-part.ts'
import { blank, detail, fact } from './run-part.ts'

const JOINTS = {
  'inside and outside': 'inside and outside',
  inside: 'inside',
  outside: 'outside',
  'tape only': ''
} as const

/** The mould as a made thing: cut list, bearers, joints, release, level and water test. */
export function mouldDetail(plan: Plan, work: Work): RunDetail {
  const L = lengthsOf(work.shop)
  const m = plan.mould
  const { piece } = work
  const does: string[] = []
  does.push(...m.cutList.says)
  if (m.cutList.boards.some(isWall))
    does.push(
      `Fix the walls ${fixedAtEnds(m) ? 'at their ends and along the base' : `every ${L.of(m.wallFixings, 0)} ${L.unit} at most`}.`
    )
  does.push(
    m.bearers > 0
      ? `Lay the base on ${m.cutList.bearers?.count ?? 0} bearers, ${L.of(m.bearers, 0)} ${L.unit} apart at most; level it along, across and corner to corner.`
      : 'Lay the base flat on the bench over its whole face, and level it along, across and corner to corner.'
  )
  const { liner } = work.materials
  if (liner.id !== 'none') {
    does.push(
      `Line the inside with ${liner.name}, ${L.area(m.cutList.tapeAreaM2, 2)} without overlaps${readyWords(liner.readyAfterH)}.`
    )
    for (const c of liner.cautions) does.push(`${capital(c)}.`)
  }
  const joints = JOINTS[piece.mould.joints]
  if (joints !== '')
    does.push(
      `Seal the joints ${joints}: ${L.run(m.cutList.sealantLengthM)} of sealant; let it dry ${formatMinutes(piece.mould.sealant)} before any resin.`
    )
  piece.mould.formers.forEach((f, k) => {
    const b = bounds(work.stack.geometry.formers[k]!.region)
    does.push(
      `Fix the former of ${work.entries.formers[k]!.id}: ${L.of(b.maxX - b.minX, 1)} × ${L.of(b.maxY - b.minY, 1)} ${L.unit}, its middle at ${place((b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2, L)}${f.released ? ', waxed or wrapped so that it comes out' : ''}.`
    )
  })
  if (piece.mould.dams.length > 0)
    does.push(
      `Set ${piece.mould.dams.length} dam${piece.mould.dams.length === 1 ? '' : 's'}, sealed to the base.`
    )
  if (piece.mould.waterTest)
    does.push(
      `Water test before the timber goes in: fill to ${L.of(m.liquidLevel, 1, 1)} ${L.unit} with ${formatMass(m.waterG)} of water, cover it, wait an hour, look under every joint. Then dry it through.`
    )
  return detail({
    does,
    facts: mouldFacts(plan, work),
    table: cutTable(plan, L),
    blanks: [
      blank('Off level, front left', L.unit),
      blank('front right', L.unit),
      blank('back right', L.unit),
      blank('back left', L.unit),
      ...(piece.mould.waterTest ? [blank('Water lost in an hour', 'g', '0')] : [])
    ]
  })
}

/** Whether a piece of the cut list is a wall of board. */
export function isWall(piece: BoardPiece): boolean {
  return piece.name !== 'base' && piece.name !== 'ring or bent strip'
}

/** Whether walls hold by their ends alone: between the fixings there none is longer than it may be. */
export function fixedAtEnds(mould: Plan['mould']): boolean {
  return mould.cutList.boards.every(
    b => !isWall(b) || b.lengthMm - 2 * (b.thicknessMm ?? 0) <= mould.wallFixings + 1e-6
  )
}

/** The sizes of a piece, mm: "–" for a thickness that is left to the maker. */
export function sizesOf(
  piece: BoardPiece,
  L: Lengths
): readonly [length: string, width: string, thickness: string] {
  return [
    L.of(piece.lengthMm, piece.name === 'ring or bent strip' ? 1 : 0),
    L.of(piece.widthMm, 0),
    piece.thicknessMm === null ? '–' : L.of(piece.thicknessMm, 0)
  ]
}

/** A number with the sign of a minus, not of a hyphen. */
export function signed(x: number, places: number): string {
  return decimals(x, places).replace('-', '\u2212')
}

/** A place on the plan: "x 92, y −4 mm". */
export function place(x: number, y: number, L: Lengths): string {
  return `x ${L.signed(x, 1)}, y ${L.signed(y, 1)} ${L.unit}`
}

function readyWords([low, high]: readonly [number, number]): string {
  if (high <= 0) return ''
  return low === high ? `; ready after ${low} h` : `; ready after ${low} to ${high} h`
}

function mouldFacts(plan: Plan, work: Work): RunFact[] {
  const L = lengthsOf(work.shop)
  const m = plan.mould
  const out = [
    fact('Inside', `${L.of(m.innerLength, 0)} × ${L.of(m.innerWidth, 0)}`, L.unit),
    fact('Walls', L.of(m.wall, 0), `${L.unit} over the base`),
    fact('Resin stands', L.of(m.liquidLevel, 1, 1), `${L.unit} when poured`),
    fact('Freeboard', L.of(m.freeboard, 1, 1), L.unit),
    fact('Board', work.materials.base.name)
  ]
  if (m.sag !== null) out.push(fact('Base sags', L.of(m.sag, 2), `${L.unit} between bearers`))
  return out
}

function cutTable(plan: Plan, L: Lengths): RunTable {
  const { boards, bearers } = plan.mould.cutList
  return {
    title: `Cut list, net sizes in ${L.unit === 'in' ? 'inches' : 'mm'}`,
    head: ['Part', 'Number', 'Length', 'Width', 'Thickness'],
    rows: [
      ...boards.map(b => [capital(b.name), String(b.count), ...sizesOf(b, L)]),
      ...(bearers === null ? [] : [['Bearer', String(bearers.count), L.of(bearers.lengthMm, 0), '–', '–']])
    ]
  }
}
