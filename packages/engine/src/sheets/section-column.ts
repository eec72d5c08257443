import type { Material } from '../stack/event.ts'

/** What one column of the section is made of, between two places. */
export interface SectionColumn {
  readonly from: number
  readonly to: number
  readonly leg: number
  /** Material of most of its height; null for a hole right through. */
  readonly main: Material | null
}

/** How finely a break between materials is found, mm. */
export const BREAK_MM = 1e-3

/** A stretch of a core, heights mm as cast; null: a void. */
export interface Interval {
  readonly from: number
  readonly to: number
  readonly material: Material | null
}

/** A core of the section at a place along it. */
export interface Station {
  readonly at: number
  readonly parts: readonly Interval[]
  readonly key: string
}

/**
 * Adds the column between two stations of the same materials. Where another takes over most of the height, that is the
 * place where both are as high, heights running straight.
 */
export function addColumn(columns: SectionColumn[], a: Station, b: Station, leg: number): void {
  if (a.parts.length === 0) return
  const [first, last] = [mainOf(a.parts), mainOf(b.parts)]
  const materials = [a.parts[first]!.material, a.parts[last]?.material ?? null] as const
  if (first === last || sameColumn(...materials)) {
    pushColumn(columns, a.at, b.at, leg, materials[0])
    return
  }
  const more = (parts: readonly Interval[]) =>
    parts[first]!.to - parts[first]!.from - (parts[last]!.to - parts[last]!.from)
  const [d0, d1] = [more(a.parts), more(b.parts)]
  const at = a.at + (b.at - a.at) * (d0 > d1 ? Math.min(1, Math.max(0, d0 / (d0 - d1))) : 0)
  pushColumn(columns, a.at, at, leg, materials[0])
  pushColumn(columns, at, b.at, leg, materials[1])
}

// The highest of the parts, one of a material before a void.
function mainOf(parts: readonly Interval[]): number {
  let best = 0
  parts.forEach((p, i) => {
    const b = parts[best]!
    if (p.material !== null && (b.material === null || p.to - p.from > b.to - b.from)) best = i
  })
  return best
}

// Pours count as one: the column is resin.
function sameColumn(a: Material | null, b: Material | null): boolean {
  return a?.kind === b?.kind && (a?.kind === 'pour' || a?.index === b?.index)
}

function pushColumn(
  columns: SectionColumn[],
  from: number,
  to: number,
  leg: number,
  main: Material | null
): void {
  const last = columns[columns.length - 1]
  const goesOn =
    last !== undefined &&
    last.leg === leg &&
    Math.abs(last.to - from) < 2 * BREAK_MM &&
    sameColumn(last.main, main)
  if (goesOn) columns[columns.length - 1] = { ...last, to }
  else columns.push({ from, to, leg, main })
}
