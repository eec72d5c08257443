import type { Entry } from '../piece/entry.ts'
import type {
  Cut,
  Face,
  Hardware,
  Marking,
  Piece,
  Pour,
  StepDocument,
  Timber
} from '../piece/piece-schema.ts'

/** What a step does, in the trade's words. */
export type StepKind = StepDocument['do']

/** One thing done to the piece, resolved: it points at the entries themselves and knows which face is up. */
export interface Step {
  /** 1, 2, 3 ... in the order of doing. */
  readonly number: number
  readonly kind: StepKind
  /** What it is, for people: "Pour the green". */
  readonly says: string
  /** JSON Pointer to what it comes from. */
  readonly at: string
  /** The face that is up when the step begins; null before anything lies in the mould, and of what lies beside it. */
  readonly up: Face | null
  readonly inMould: boolean
  readonly timber?: Entry<Timber>
  readonly pour?: Entry<Pour>
  readonly cut?: Entry<Cut>
  readonly marking?: Entry<Marking>
  readonly hardware?: Entry<Hardware>
  /** The face a flatten, sand or coat works on. */
  readonly face?: Face | 'both'
  /** What comes off, mm, when the step says. */
  readonly byMm?: number
  /** How long a wait lasts, min; how long the step is taken to last is the calendar's. */
  readonly waitMin?: number
  /** Why a wait is there, when we put it in or the document says. */
  readonly why?: WaitReason
  /** When it begins, when the document says. */
  readonly begins?: string
}

/** What a wait is for, as the usual order puts it in or the document says; its length comes from the windows, with practice as the fallback. */
export type WaitReason = 'recoat' | 'demould' | 'machine' | 'sand' | 'load'

/**
 * Whether the piece is made in a mould: something is cast, or the document's own order makes one. Boards that
 * only get an inlay, a flood or a coat of resin need none.
 */
export function needsMould(piece: Pick<Piece, 'pours' | 'steps'>): boolean {
  return piece.pours.some(p => p.kind === 'cast') || (piece.steps?.some(s => s.do === 'make mould') ?? false)
}

/** The other face. */
export function otherFace(face: Face): Face {
  return face === 'front' ? 'back' : 'front'
}

/** The face a pour lies on once out of the mould: its own, else that of the cuts it fills, else the front. */
export function pourFace(pour: Pour, piece: Pick<Piece, 'cuts'>): Face {
  return pour.face ?? piece.cuts.find((c, i) => pour.into?.includes(c.id ?? `cut ${i + 1}`))?.face ?? 'front'
}
