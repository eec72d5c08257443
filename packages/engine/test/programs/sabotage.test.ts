import { expect, test } from 'vitest'
import type { CutterShape } from '../../src/catalogue/cutter-shape.ts'
import { machiningOf } from '../../src/cuts/operation/machining.ts'
import { PROVED } from '../../src/findings/proved.ts'
import type { Work } from '../../src/findings/work.ts'
import type { ProgramFile } from '../../src/programs/program-set.ts'
import { programSet } from '../../src/programs/program-set.ts'
import type { AnyProof } from '../../src/programs/prove-any.ts'
import { proveAny } from '../../src/programs/prove-any.ts'
import { machinePiece } from './machine-piece.ts'
import { workIn } from './made.ts'
import type { Sabotage } from './sabotage.ts'
import { sabotaged } from './sabotage.ts'

function proved(work: Work, program: ProgramFile, text: string, cutter: CutterShape): AnyProof {
  const run = proveAny(work, {
    text,
    step: program.made[0]!.operation.step,
    cutters: new Map([[0, cutter]]),
    zeroOff: [0, 0, 0],
    compared: true,
    cellMm: 0.2
  })
  for (;;) {
    const next = run.next()
    if (next.done) return next.value
  }
}

/** What would stop the program: complaints of the reader, and reports that are more than notes. */
function against({ reading, proof }: AnyProof): string[] {
  const told = proof.reports.filter(r => PROVED[r.kind].severity !== 'note')
  return [
    ...reading.complaints.filter(c => c.severity === 'error').map(c => c.says),
    ...told.map(r => r.kind)
  ]
}

const KINDS: readonly Sabotage[] = [
  'zero along x',
  'zero up',
  'zero down',
  'mirrored',
  'half turned',
  'wrong cutter',
  'deeper',
  'missing retract',
  'swapped arc',
  'wrong plane',
  'inch for mm'
]

/** Cuts beside the middle of the piece, one program each: turned or mirrored they land elsewhere. */
function candidates(programs: readonly ProgramFile[]): ProgramFile[] {
  const steps = programs.map(p => p.made[0]!.operation.step)
  return programs.filter(p => {
    const { kind, name, step } = p.made[0]!.operation
    if (steps.filter(s => s === step).length > 1) return false
    return kind === 'outline' || /^(front|back) [02]/.test(name)
  })
}

const works = new Map<number, { work: Work; programs: ProgramFile[] }>()
function pieceOf(seed: number) {
  const known = works.get(seed)
  if (known !== undefined) return known
  const work = workIn(machinePiece(seed))
  const made = { work, programs: candidates(programSet(machiningOf(work)!).programs) }
  works.set(seed, made)
  return made
}

/** Forty: each kind over pieces until it was done as often as its share. */
const CASES = KINDS.flatMap((how, k) => Array.from({ length: k < 7 ? 4 : 3 }, (_, n) => ({ how, n })))

test('there are forty', () => {
  expect(CASES).toHaveLength(40)
})

test.for(CASES)('$how, $n, is caught', ({ how, n }) => {
  // Seeds are tried in order; each piece gives the first program that has what it takes.
  let found = 0
  for (let seed = 1; seed <= 12; seed++) {
    const { work, programs } = pieceOf(seed)
    for (const p of programs.filter(q => suits(how, q.made[0]!.operation.kind))) {
      const own = p.made[0]!.operation.cutter.shape
      // Whether there is what it is done to does not depend on by how much.
      if (sabotaged(p.written.text, how, { upMm: 1, acrossMm: 1 }) === null) continue
      if (found++ < n) continue
      const before = proved(work, p, p.written.text, own)
      expect(against(before), `${p.file} as written`).toEqual([])
      const { detectsUpMm, detectsAcrossMm } = before.proof.comparison!
      // 0.07 mm on a floor; on the flanks of a V, where a path may stray 0.03 mm aside, so much more as they are steep.
      const slope = own.form === 'v' ? 1 / Math.tan((own.angleDeg * Math.PI) / 360) : 0
      expect(detectsUpMm).toBeLessThanOrEqual(0.0701 + 0.0301 * slope)
      expect(detectsAcrossMm).toBeLessThanOrEqual(0.401)
      const text = sabotaged(p.written.text, how, { upMm: detectsUpMm, acrossMm: detectsAcrossMm })!
      const cutter = how === 'wrong cutter' ? otherCutter(own) : own
      const after = proved(work, p, text, cutter)
      expect(against(after), `${p.file} with ${how}`).not.toEqual([])
      return
    }
  }
  throw new Error(`no program to try ${how} ${n} on`)
})

// Where a fault can be done and matters: an arc about a corner of the part; lines with material between them, over which
// a cutter that is not lifted goes through it (from one pass of a pocket to the next it goes over cleared ground).
function suits(how: Sabotage, kind: string): boolean {
  if (how === 'swapped arc') return kind === 'outline'
  if (how === 'missing retract') return kind === 'marking'
  return kind !== 'outline'
}

// The next size of the drawer: half again as wide, or a flatter point.
function otherCutter(own: CutterShape): CutterShape {
  if (own.form === 'v') return { ...own, angleDeg: own.angleDeg + 30, diameterMm: 2 * own.diameterMm }
  return { ...own, diameterMm: own.diameterMm + 1.5, shankMm: Math.max(own.shankMm, own.diameterMm + 1.5) }
}
