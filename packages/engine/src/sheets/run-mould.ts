import type { Work } from '../findings/work.ts'
import type { BoardPiece } from '../mould/cutlist.ts'
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
  const m = plan.mould
  const { piece } = work
  const does: string[] = []
  does.push(...m.cutList.says)
  if (m.cutList.boards.some(isWall))
    does.push(
      `Fix the walls ${fixedAtEnds(m) ? 'at their ends and along the base' : `every ${decimals(m.wallFixings, 0)} mm at most`}.`
    )
  does.push(
    m.bearers > 0
      ? `Lay the base on ${m.cutList.bearers?.count ?? 0} bearers, ${decimals(m.bearers, 0)} mm apart at most; level it along, across and corner to corner.`
      : 'Lay the base flat on the bench over its whole face, and level it along, across and corner to corner.'
  )
  const { liner } = work.materials
  if (liner.id !== 'none') {
    does.push(
      `Line the inside with ${liner.name}, ${decimals(m.cutList.tapeAreaM2, 2)} m² without overlaps${readyWords(liner.readyAfterH)}.`
    )
    for (const c of liner.cautions) does.push(`${capital(c)}.`)
  }
  const joints = JOINTS[piece.mould.joints]
  if (joints !== '')
    does.push(
      `Seal the joints ${joints}: ${decimals(m.cutList.sealantLengthM, 1)} m of sealant; let it dry ${formatMinutes(piece.mould.sealant)} before any resin.`
    )
  piece.mould.formers.forEach((f, k) => {
    const b = bounds(work.stack.geometry.formers[k]!.region)
    does.push(
      `Fix the former of ${work.entries.formers[k]!.id}: ${decimals(b.maxX - b.minX, 1)} × ${decimals(b.maxY - b.minY, 1)} mm, its middle at ${place((b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2)}${f.released ? ', waxed or wrapped so that it comes out' : ''}.`
    )
  })
  if (piece.mould.dams.length > 0)
    does.push(
      `Set ${piece.mould.dams.length} dam${piece.mould.dams.length === 1 ? '' : 's'}, sealed to the base.`
    )
  if (piece.mould.waterTest)
    does.push(
      `Water test before the timber goes in: fill to ${decimals(m.liquidLevel, 1, 1)} mm with ${formatMass(m.waterG)} of water, cover it, wait an hour, look under every joint. Then dry it through.`
    )
  return detail({
    does,
    facts: mouldFacts(plan, work),
    table: cutTable(plan),
    blanks: [
      blank('Off level, front left', 'mm'),
      blank('front right', 'mm'),
      blank('back right', 'mm'),
      blank('back left', 'mm'),
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
export function sizesOf(piece: BoardPiece): readonly [length: string, width: string, thickness: string] {
  return [
    decimals(piece.lengthMm, piece.name === 'ring or bent strip' ? 1 : 0),
    decimals(piece.widthMm, 0),
    piece.thicknessMm === null ? '–' : decimals(piece.thicknessMm, 0)
  ]
}

/** A number with the sign of a minus, not of a hyphen. */
export function signed(x: number, places: number): string {
  return decimals(x, places).replace('-', '\u2212')
}

/** A place on the plan: "x 92, y −4 mm". */
export function place(x: number, y: number): string {
  return `x ${signed(x, 1)}, y ${signed(y, 1)} mm`
}

function readyWords([low, high]: readonly [number, number]): string {
  if (high <= 0) return ''
  return low === high ? `; ready after ${low} h` : `; ready after ${low} to ${high} h`
}

function mouldFacts(plan: Plan, work: Work): RunFact[] {
  const m = plan.mould
  const out = [
    fact('Inside', `${decimals(m.innerLength, 0)} × ${decimals(m.innerWidth, 0)}`, 'mm'),
    fact('Walls', decimals(m.wall, 0), 'mm over the base'),
    fact('Resin stands', decimals(m.liquidLevel, 1, 1), 'mm when poured'),
    fact('Freeboard', decimals(m.freeboard, 1, 1), 'mm'),
    fact('Board', work.materials.base.name)
  ]
  if (m.sag !== null) out.push(fact('Base sags', decimals(m.sag, 2), 'mm between bearers'))
  return out
}

function cutTable(plan: Plan): RunTable {
  const { boards, bearers } = plan.mould.cutList
  return {
    title: 'Cut list, net sizes in mm',
    head: ['Part', 'Number', 'Length', 'Width', 'Thickness'],
    rows: [
      ...boards.map(b => [capital(b.name), String(b.count), ...sizesOf(b)]),
      ...(bearers === null
        ? []
        : [['Bearer', String(bearers.count), decimals(bearers.lengthMm, 0), '–', '–']])
    ]
  }
}
