import { setValue } from '../../findings/fix.ts'
import type { Work } from '../../findings/work.ts'
import type { Operation, Patch } from '../../piece/patch.ts'
import type { PieceDocument } from '../../piece/piece-schema.ts'

export type PourDocument = PieceDocument['pours'][number]

/** What filling a flood or an inlay once more takes, of what it took (practice). */
const MORE_SHARE = 0.25

/** A wait put before a pour that an order written out has no place for, h; the plan's own window says when it may be (practice). */
const WAIT_H = 24
/** Waits are set in steps of this, min. */
const WAIT_STEP_MIN = 30

const AMOUNTS = ['depth', 'height', 'mass', 'fill'] as const

/** The patch that gives a pour a level as cast, in the place of what it was to be. */
export function levelIs(work: Work, index: number, mm: number): Operation[] {
  const typed = work.document.pours[index]!
  const at = `/pours/${index}`
  return [
    ...AMOUNTS.filter(a => a !== 'height' && typed[a] !== undefined).map(
      (a): Operation => ({ op: 'remove', path: `${at}/${a}` })
    ),
    { op: typed.height === undefined ? 'add' : 'replace', path: `${at}/height`, value: tenth(mm) }
  ]
}

/**
 * The patch that puts a pour after another into the list, and into the order of the document where it has one. Pours
 * after it that go by their number get it as their name, so that what points at them still does.
 */
export function pourAfter(work: Work, index: number, pour: PourDocument): Operation[] {
  const { document } = work
  const names = document.pours.flatMap((p, i): Operation[] =>
    i > index && p.id === undefined ? [{ op: 'add', path: `/pours/${i}/id`, value: `pour ${i + 1}` }] : []
  )
  const step = work.steps.findIndex(s => s.kind === 'pour' && s.pour!.index === index)
  const steps: Operation[] =
    document.steps === undefined || step < 0
      ? []
      : [
          { op: 'add', path: `/steps/${step + 1}`, value: { do: 'wait', for: `${WAIT_H} h` } },
          { op: 'add', path: `/steps/${step + 2}`, value: { do: 'pour', what: pour.id } }
        ]
  return [...names, { op: 'add', path: `/pours/${index + 1}`, value: pour }, ...steps]
}

/**
 * The patch that lays more of a pour on what stands of it: a layer of its own on a casting, which then ends at
 * `standsMm`; on a flood or an inlay, which is filled again where it is, so much more of the mix.
 */
export function layerOn(work: Work, index: number, standsMm: number, layer: PourDocument): Operation[] {
  if (work.piece.pours[index]!.kind === 'cast')
    return [...levelIs(work, index, standsMm), ...pourAfter(work, index, layer)]
  return mixedMore(work, index, MORE_SHARE * work.stack.pours[index]!.massG)
}

/** The patch that lets so much more of a pour be mixed, g: it is bought and weighed with it. */
export function mixedMore(work: Work, index: number, moreG: number): Operation[] {
  const typed = work.document.pours[index]!.mixed
  const value = Math.ceil((work.batches[index]?.mixedG ?? work.stack.pours[index]!.massG) + moreG)
  return [{ op: typed === undefined ? 'add' : 'replace', path: `/pours/${index}/mixed`, value }]
}

/** A name that no entry of the piece has: the one asked for, or with a number after it. */
export function freeName(work: Work, wanted: string): string {
  const used = new Set(
    Object.values(work.entries).flatMap(list => (list as readonly { id: string }[]).map(e => e.id))
  )
  const short = wanted.slice(0, 54)
  for (let n = 1; ; n++) {
    const name = n === 1 ? short : `${short} ${n}`
    if (!used.has(name)) return name
  }
}

/** What a pour is made of, without how much: for another of the same. */
export function sameMix(work: Work, index: number): PourDocument {
  const { resin, tint, opaque, shrinkage } = work.document.pours[index]!
  return {
    resin,
    ...(tint === undefined || tint.length === 0 ? {} : { tint }),
    ...(opaque === undefined ? {} : { opaque }),
    ...(shrinkage === undefined ? {} : { shrinkage })
  } as PourDocument
}

/** The patch that makes a pour begin so long after the one before it. */
export function beginsAfter(work: Work, index: number, minutes: number): Patch {
  const typed = work.document.pours[index]!
  return [
    ...(typed.start === undefined ? [] : [{ op: 'remove', path: `/pours/${index}/start` } as Operation]),
    ...setValue(work.document, `/pours/${index}/after`, Math.ceil(minutes / WAIT_STEP_MIN) * WAIT_STEP_MIN)
  ]
}

/** A length that a maker can set, mm. */
export function tenth(mm: number): number {
  return Math.round(mm * 10) / 10
}
