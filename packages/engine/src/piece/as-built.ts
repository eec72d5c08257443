import type { Piece } from './piece-schema.ts'
import type { Reading } from './reading-schema.ts'

/** A piece as far as readings tell that it was built, and the levels that were measured. */
export interface AsBuilt {
  /** The piece, each pour with the moment at which it was mixed or poured in the place of the planned one. */
  readonly piece: Piece
  /** By pour: its level as cast as it was read last, mm; null: not read. */
  readonly levelsMm: readonly (number | null)[]
}

/**
 * What was read of the pours stands in the place of what was planned of them, so that every later figure (volumes
 * left, covers, windows, waits) follows from what is there: when it was mixed, and how high it stands.
 *
 * A pour begins with its first batch: the earliest `mixed`, else `poured`, else `began` or `done` of its step. Of
 * several heights the last one by its moment counts.
 *
 * Limits: a height is taken as that of the cured layer; read while it is liquid it stands higher by what it falls
 * as it cures. Heights count for castings into the mould; a flood or an inlay is read by thickness.
 */
export function asBuilt(piece: Piece, readings: readonly Reading[]): AsBuilt {
  const none = piece.pours.map(() => null)
  if (readings.length === 0) return { piece, levelsMm: none }
  const begun = new Map<string, string>()
  const level = new Map<string, Extract<Reading, { kind: 'height' }>>()
  for (const r of readings) if (r.kind === 'height') level.set(r.pour, later(level.get(r.pour), r))
  for (const kinds of [['began', 'done'], ['poured'], ['mixed']] as const)
    for (const [pour, at] of earliest(readings, kinds)) begun.set(pour, at)
  return {
    piece:
      begun.size === 0
        ? piece
        : {
            ...piece,
            pours: piece.pours.map((p, i) => {
              const at = begun.get(nameOf(p, i))
              return at === undefined ? p : { ...p, start: at }
            })
          },
    levelsMm: piece.pours.map((p, i) =>
      p.kind === 'cast' ? (level.get(nameOf(p, i))?.height ?? null) : null
    )
  }
}

function nameOf(pour: { readonly id?: string | undefined }, index: number): string {
  return pour.id ?? `pour ${index + 1}`
}

function later<R extends Reading>(a: R | undefined, b: R): R {
  return a === undefined || Date.parse(b.at) >= Date.parse(a.at) ? b : a
}

function earliest(readings: readonly Reading[], kinds: readonly Reading['kind'][]): Map<string, string> {
  const out = new Map<string, string>()
  for (const r of readings) {
    if (!kinds.includes(r.kind)) continue
    const pour =
      'pour' in r ? r.pour : 'step' in r && r.step?.startsWith('pour ') ? r.step.slice(5) : undefined
    if (pour === undefined) continue
    const had = out.get(pour)
    if (had === undefined || Date.parse(r.at) < Date.parse(had)) out.set(pour, r.at)
  }
  return out
}
