import { decimals } from '../quantity/format.ts'
import type { CoreInterval } from '../stack/core.ts'
import type { CutWay } from '../stack/cut-way.ts'
import { deepen } from './cut-fix.ts'
import type { Check, Found } from './finding.ts'
import { LEAST_FLOOR_MM } from './thin-floor.ts'
import type { Work } from './work.ts'

/** A cut from behind that goes through what hides it, into resin that is looked into from the front. */
export const cutThroughLayer: Check = {
  id: 'cut-through-layer',
  about: 'a cut from the back that goes through its layer into clear resin, and shows',
  cases: ['O3'],
  run: work => work.covers.flatMap(cover => one(work, cover.cut, cover.ways))
}

function one(work: Work, cut: number, ways: readonly CutWay[]): Found[] {
  const { id, at, value } = work.entries.cuts[cut]!
  // The front is looked at; what is filled again is seen as an inlay.
  if (value.face !== 'back' || work.piece.pours.some(p => p.into?.includes(id))) return []
  const open = ways.filter(w => !w.ahead.some(m => hides(work, m)))
  if (open.length === 0) return []
  const needed = (w: CutWay) => w.mm + coverOf(work, w)
  const straight = open.filter(w => !w.passed.some(p => hides(work, p.material)))
  const pierced = open.filter(
    w => !straight.includes(w) && !(onlyTimber(work, w) && straight.some(s => same(s.into, w.into)))
  )
  if (pierced.length === 0) {
    const { into } = open[0]!
    return [
      {
        severity: 'note',
        at,
        says: `${id} is cut into ${nameOf(work, into)} from behind, and nothing hides it: it is seen from the front, tool marks and all.`,
        basis: 'cores at the cut; a pour hides when its tint does within its depth'
      }
    ]
  }
  const worst = pierced.reduce((a, b) => (needed(b) > needed(a) ? b : a))
  const layer = worst.passed.findLast(p => hides(work, p.material))!
  return [
    {
      severity: 'stop',
      at,
      says: `${id} goes through ${nameOf(work, layer.material)} and ${worst.mm < 0.05 ? 'lays bare' : `${decimals(worst.mm, 1)} mm into`} ${nameOf(work, worst.into)}, near ${decimals(worst.x, 0)}, ${decimals(worst.y, 0)}: nothing hides it there, it shows from the front.`,
      value: worst.mm,
      unit: 'mm',
      basis: 'cores at the cut, faces as flattened; a pour hides when its tint does within its depth',
      settledBy: 'the height of the layer, measured before the next pour',
      ...deepen(work, cut, -needed(worst), 'down')
    }
  ]
}

// A cut that lies in clear resin anyway shows there: that it takes the wedge of an undercut edge with it is no news.
function onlyTimber(work: Work, way: CutWay): boolean {
  return way.passed.every(p => p.material.kind === 'timber' || !hides(work, p.material))
}

function same(a: CoreInterval['material'], b: CoreInterval['material']): boolean {
  return a.kind === b.kind && a.index === b.index
}

function hides(work: Work, m: CoreInterval['material']): boolean {
  return m.kind === 'timber' || (m.kind === 'pour' && work.hiding[m.index]!.meant)
}

// What has to stay of the last layer that hides: its hiding depth, of timber a floor; no more than there is of it.
function coverOf(work: Work, way: CutWay): number {
  const at = way.passed.findLastIndex(p => hides(work, p.material))
  if (at < 0) return 0
  const { from, to, material } = way.passed[at]!
  const depth = material.kind === 'pour' ? work.hiding[material.index]!.depth : null
  const between = way.passed.slice(at + 1).reduce((sum, p) => sum + p.to - p.from, 0)
  return between + Math.min(to - from, depth?.highMm ?? LEAST_FLOOR_MM)
}

function nameOf(work: Work, m: CoreInterval['material']): string {
  if (m.kind === 'pour') return work.entries.pours[m.index]!.id
  if (m.kind === 'timber') return work.entries.timbers[m.index]!.id
  return work.entries.markings[m.index]?.id ?? 'what stands there'
}
