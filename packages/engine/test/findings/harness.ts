import { findingsOf } from '../../src/findings/checks.ts'
import type { Finding } from '../../src/findings/finding.ts'
import type { Operation, Patch } from '../../src/piece/patch.ts'
import { applyPatch } from '../../src/piece/patch.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import { readingSchema } from '../../src/piece/reading-schema.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import { castRun } from '../../src/whole.ts'
import { workOf } from '../../src/work.ts'

/** Documents a finding is asked of. */
export interface Given {
  readonly piece: PieceDocument
  readonly shop?: ShopDocument
  readonly readings?: readonly unknown[]
  readonly files?: Readonly<Record<string, string>>
  /** Casts the whole mould on the coarse grid first, in so many rounds at most. */
  readonly whole?: { readonly rounds: number }
}

/** Findings of a piece in a shop, through the same stages the plan runs. */
export function findings(given: Given): Finding[] {
  const input = {
    piece: checkPiece(given.piece, 'piece'),
    shop: checkShop(given.shop ?? { castwright: 1 }, 'shop').value,
    readings: (given.readings ?? []).map(r => readingSchema.parse(r)),
    files: given.files ?? {},
    effort: 'preview' as const
  }
  const run = given.whole === undefined ? null : castRun(input, { effort: 'preview', ...given.whole })
  while (run !== null && !run.advance(1000));
  return findingsOf(workOf({ ...input, whole: run?.best() ?? null }))
}

/** Ids that stand, each once. */
export function ids(given: Given): string[] {
  return [...new Set(findings(given).map(f => f.id))]
}

/**
 * A minimal pair: two sets of documents one edit apart. The finding comes with the edit and not without.
 * The edit is one RFC 6902 operation on the piece, the shop or the list of readings.
 */
export interface Pair {
  /** The finding. */
  readonly id: string
  /** What the edit does, in a maker's words; becomes the name of the test. */
  readonly about: string
  readonly sound: Given
  readonly on?: 'piece' | 'shop' | 'readings'
  readonly edit: Operation
  readonly severity: Finding['severity']
  /** Where a finding without a fix gets its reason: why no change of the piece clears it. */
  readonly noFix?: string
}

/** The spoiled side of a pair. */
export function spoiled(pair: Pair): Given {
  const { sound, edit } = pair
  switch (pair.on ?? 'piece') {
    case 'piece':
      return { ...sound, piece: applyPatch(sound.piece, [edit]) }
    case 'shop':
      return { ...sound, shop: applyPatch(sound.shop ?? { castwright: 1 }, [edit]) }
    case 'readings':
      return { ...sound, readings: applyPatch(sound.readings ?? [], [edit]) }
  }
}

/** The documents with a finding's fix applied (fixes are patches on the piece). */
export function mended(given: Given, fix: Patch): Given {
  return { ...given, piece: applyPatch(given.piece, fix) }
}

/**
 * A plain sound piece to start pairs from: a framed panel of ash and one clear pour between two boards.
 * Nothing stands against it, not even a note; copy it with spread and change what the pair is about.
 */
export const PLAIN: PieceDocument = {
  castwright: 1,
  name: 'a plain panel',
  outline: { rectangle: [300, 200] },
  mould: { margin: 6, bearers: 250 },
  flatten: { back: 1, front: 1 },
  timbers: [
    {
      id: 'left',
      species: 'ash-white',
      outline: { rectangle: [100, 200], at: [-100, 0] },
      thickness: 20,
      moisture: 8.5
    },
    {
      id: 'right',
      species: 'ash-white',
      outline: { rectangle: [100, 200], at: [100, 0] },
      thickness: 20,
      moisture: 8.5
    }
  ],
  pours: [{ id: 'clear', resin: 'deep', depth: 20 }],
  finish: { both: { coat: 'hardwax-oil' } }
}
