import type { Machining } from './cuts/operation/machining.ts'
import { machiningOf } from './cuts/operation/machining.ts'
import { slug } from './cuts/write/slug.ts'
import type { CutFound } from './cuts-found.ts'
import { foundInCuts } from './cuts-found.ts'
import type { Finding } from './findings/finding.ts'
import type { Work } from './findings/work.ts'
import { checkPiece } from './piece/read.ts'
import { plugPiece } from './programs/plug-piece.ts'
import type { ProgramSet } from './programs/program-set.ts'
import { programSteps } from './programs/program-set.ts'
import type { StepProof } from './programs/prove-set.ts'
import { proveSteps } from './programs/prove-set.ts'
import { workOf } from './work.ts'

/** The programs of a piece, proved, and what is to be said of them. */
export interface CutsPlan {
  readonly set: ProgramSet
  readonly proofs: readonly StepProof[]
  readonly findings: readonly Finding[]
  /** Those of its own programs (the first of `findings`), each with its place. */
  readonly found: readonly CutFound[]
  /** Plugs of inlays, each cut from a board of its own. */
  readonly plugs: readonly PlugCuts[]
}

/** The plug of an inlay: programs of its own board, with its own zero and settings. */
export interface PlugCuts {
  /** JSON Pointer to the plug; the id of its cut. */
  readonly at: string
  readonly id: string
  /** The board as a piece. */
  readonly work: Work
  readonly cuts: CutsPlan
}

/** Share of the work that making programs is; the rest is proving. */
const MAKING = 0.1

/**
 * Makes the programs of a piece and proves each over the piece as it stands at its step. null where nothing is cut by
 * machine. A generator: yields the share done, so that it can be shown, and given up.
 */
export function* cutsSteps(work: Work): Generator<number, CutsPlan | null> {
  const machining: Machining | null = machiningOf(work)
  if (machining === null) return null
  const own = yield* cutsOf(machining)
  const plugs = plugsOf(work)
  return plugs.length === 0
    ? own
    : { ...own, plugs, findings: [...own.findings, ...plugs.flatMap(p => p.cuts.findings)] }
}

function* cutsOf(machining: Machining): Generator<number, CutsPlan> {
  const making = programSteps(machining)
  let set: ProgramSet
  for (;;) {
    const next = making.next()
    if (next.done) {
      set = next.value
      break
    }
    yield MAKING * next.value
  }
  const proving = proveSteps(set)
  for (;;) {
    const next = proving.next()
    if (next.done) {
      const found = foundInCuts(set, next.value)
      return { set, proofs: next.value, findings: found.map(f => f.finding), found, plugs: [] }
    }
    yield MAKING + (1 - MAKING) * next.value
  }
}

/** The same at once; `onProgress` hears the share done. */
export function cutsPlan(work: Work, onProgress: (share: number) => void = () => {}): CutsPlan | null {
  const run = cutsSteps(work)
  for (;;) {
    const next = run.next()
    if (next.done) return next.value
    onProgress(next.value)
  }
}

function plugsOf(work: Work): PlugCuts[] {
  return work.entries.cuts.flatMap((cut): PlugCuts[] => {
    const document = plugPiece(work.stack, cut)
    if (document === null) return []
    const { id } = cut
    const at = `${cut.at}/plug`
    const board = workOf({
      piece: checkPiece(document, `plug of ${id}`),
      shop: work.shop,
      effort: 'preview'
    })
    const machining = machiningOf(board, `plug-${slug(id)}-`)
    if (machining === null) return []
    const run = cutsOf(machining)
    for (;;) {
      const next = run.next()
      if (!next.done) continue
      const cuts = next.value
      return [{ at, id, work: board, cuts: { ...cuts, findings: cuts.findings.map(f => ({ ...f, at })) } }]
    }
  })
}

/** What stands against the programs. */
export function findingsOfCuts(set: ProgramSet, proofs: readonly StepProof[]): Finding[] {
  return foundInCuts(set, proofs).map(f => f.finding)
}
