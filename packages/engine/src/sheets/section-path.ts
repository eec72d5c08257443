import type { Work } from '../findings/work.ts'
import { bounds, centroid } from '../shape/measure.ts'
import type { Bounds } from '../shape/region.ts'
import { coreAt } from '../stack/core.ts'
import type { SectionLeg, SectionPath } from './section-cut.ts'

/** Something a section would like to pass through, and how much. */
interface Wish {
  readonly x: number
  readonly y: number
  /** Extent along x that must lie on one leg. */
  readonly from: number
  readonly to: number
  readonly weight: number
}

/** What a step of the line costs against the wishes, and the most wishes looked at. */
const STEP_COST = 1.5
const MOST_WISHES = 60
/** Legs nearer than this in y are one, mm. */
const SAME_MM = 0.5
/** Room kept between what a leg shows and its step, mm. */
const BESIDE_MM = 1

/**
 * The line A-A of a piece: level legs through the middles of hardware, holes and cuts, joined by steps between
 * them (an offset section of ISO 128-3; memory). Of all lines it takes the one whose wishes weigh most after
 * the cost of its steps; places of findings weigh most, then hardware, formers, cuts. Without a wish it runs
 * through the middle. A dynamic programme over the wishes from left to right.
 *
 * Where such a line meets no timber though there is some, or one material only though there are more (along a
 * river, say), the piece is cut across instead: at the place along it where most materials, then most wishes, are
 * met.
 */
export function sectionPathOf(work: Work): SectionPath {
  const outline = bounds(work.stack.geometry.outline)
  const inside = (w: Wish) =>
    w.x > outline.minX && w.x < outline.maxX && w.y > outline.minY && w.y < outline.maxY
  const wishes = wishesOf(work)
    .filter(inside)
    .sort((a, b) => b.weight - a.weight)
    .slice(0, MOST_WISHES)
    .sort((a, b) => a.x - b.x || a.y - b.y)
  const n = wishes.length
  const best = new Float64Array(n)
  const before = new Int32Array(n).fill(-1)
  let end = -1
  for (let j = 0; j < n; j++) {
    const b = wishes[j]!
    best[j] = b.weight
    for (let i = 0; i < j; i++) {
      const a = wishes[i]!
      const level = Math.abs(a.y - b.y) < SAME_MM
      if (!level && a.to + BESIDE_MM > b.from - BESIDE_MM) continue
      const value = best[i]! + b.weight - (level ? 0 : STEP_COST)
      if (value > best[j]!) {
        best[j] = value
        before[j] = i
      }
    }
    if (end < 0 || best[j]! > best[end]!) end = j
  }
  const chosen: Wish[] = []
  for (let j = end; j >= 0; j = before[j]!) chosen.unshift(wishes[j]!)
  const path: SectionPath = { along: 'x', legs: legsOf(work, chosen, outline) }
  return shows(work, path) ? path : (acrossOf(work, wishes, outline) ?? path)
}

/** Places along a line where its materials are looked at, and lines across that are tried. */
const LOOKS = 60
const TRIES = 40
/** Where along the piece a section across is wanted, as a share of its length. */
const ACROSS_AT = 0.42

function materialsOn(work: Work, { along, legs }: SectionPath): Set<string> {
  const { geometry, events } = work.stack
  const out = new Set<string>()
  for (const leg of legs)
    for (let k = 0; k < LOOKS; k++) {
      const s = leg.from + ((leg.to - leg.from) * (k + 0.5)) / LOOKS
      const [x, y] = along === 'x' ? [s, leg.at] : [leg.at, s]
      for (const p of coreAt(geometry, events, x, y)) out.add(`${p.material.kind} ${p.material.index}`)
    }
  return out
}

const hasTimber = (materials: ReadonlySet<string>) => [...materials].some(m => m.startsWith('timber'))

// Whether a line tells of the piece: timber, where there is some, and more than one material, where there are more.
function shows(work: Work, path: SectionPath): boolean {
  const met = materialsOn(work, path)
  if (work.piece.timbers.length === 0) return true
  return hasTimber(met) && (met.size > 1 || work.piece.pours.length === 0)
}

// A line across at one place along the piece; null where none shows more.
function acrossOf(work: Work, wishes: readonly Wish[], outline: Bounds): SectionPath | null {
  const { minX, maxX, minY, maxY } = outline
  // A little beside the middle, where the pointer stands first.
  const wanted = minX + ACROSS_AT * (maxX - minX)
  const places = [
    wanted,
    ...wishes.map(w => w.x),
    ...Array.from({ length: TRIES }, (_, k) => minX + ((maxX - minX) * (k + 0.5)) / TRIES)
  ].sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted))
  let best: SectionPath | null = null
  let most = 0
  for (const at of places) {
    const path: SectionPath = { along: 'y', legs: [{ from: minY, to: maxY, at }] }
    const met = materialsOn(work, path)
    if (!hasTimber(met) || met.size < 2) continue
    const wished = wishes.reduce((sum, w) => sum + (Math.abs(w.x - at) < SAME_MM ? w.weight : 0), 0)
    // Fewer than a material, whatever is wished for: the materials come first.
    const value = met.size + wished / (1 + wished)
    if (value > most + 1e-9) {
      most = value
      best = path
    }
  }
  return best
}

function legsOf(work: Work, chosen: readonly Wish[], { minX, maxX, minY, maxY }: Bounds): SectionLeg[] {
  const legs: { from: number; to: number; at: number }[] = []
  let last: Wish | null = null
  for (const w of chosen) {
    const leg = legs[legs.length - 1]
    if (leg === undefined || last === null) legs.push({ from: minX, to: maxX, at: w.y })
    else if (Math.abs(leg.at - w.y) >= SAME_MM) {
      const step = quietPlace(work, last.to, w.from, leg.at, w.y)
      leg.to = step
      legs.push({ from: step, to: maxX, at: w.y })
    }
    last = w
  }
  return legs.length === 0 ? [{ from: minX, to: maxX, at: (minY + maxY) / 2 }] : legs
}

/** Places looked at for a step between two wishes. */
const STEP_PLACES = 24

// A step is least seen where both legs meet the same materials; of such places the one nearest to the middle.
function quietPlace(work: Work, from: number, to: number, y0: number, y1: number): number {
  const { geometry, events } = work.stack
  const middle = (from + to) / 2
  const key = (x: number, y: number) =>
    coreAt(geometry, events, x, y)
      .map(p => `${p.material.kind}${p.material.index} ${p.from.toFixed(3)} ${p.to.toFixed(3)}`)
      .join()
  let best = middle
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k <= STEP_PLACES; k++) {
    const x = from + ((to - from) * k) / STEP_PLACES
    const off = Math.abs(x - middle)
    if (off < least && key(x, y0) === key(x, y1)) {
      best = x
      least = off
    }
  }
  return best
}

function wishesOf(work: Work): Wish[] {
  const { stack, entries, covers, hiding, fits } = work
  const { geometry } = stack
  const out: Wish[] = []
  const add = (x: number, y: number, half: number, weight: number) => {
    out.push({ x, y, from: x - half, to: x + half, weight })
  }
  // Where a cut comes nearest to showing through an opaque pour.
  for (const cover of covers) {
    for (const l of cover.layers) {
      const depth = hiding[l.pour]!.depth
      if (hiding[l.pour]!.meant && depth !== null && l.mm < depth.highMm) add(l.x, l.y, 8, 3)
    }
  }
  fits.forEach((fit, i) => {
    const h = entries.hardware[i]!.value
    if (h.at === undefined && fit.part === null && h.in === undefined) return
    add(fit.x, fit.y, (fit.part?.lengthMm ?? 10) / 2 + 1, h.face === 'front' ? 2 : 0.6)
  })
  // What holds hardware is met with it.
  const holding = new Set(entries.hardware.flatMap(h => (h.value.in === undefined ? [] : [h.value.in])))
  geometry.formers.forEach((f, i) => {
    if (holding.has(entries.formers[i]!.id)) return
    const c = centroid(f.region)
    const b = bounds(f.region)
    add(c.x, c.y, (b.maxX - b.minX) / 2 + 1, 1.6)
  })
  entries.cuts.forEach((cut, i) => {
    if (cut.value.kind === 'outline' || holding.has(cut.id)) return
    const region = geometry.cutRegions[i] ?? null
    if (region !== null) {
      const b = bounds(region)
      const c = centroid(region)
      // A ring round the edge has its middle where nothing is cut.
      if (region.rings.length === 1) add(c.x, c.y, (b.maxX - b.minX) / 2 + 1, 0.9)
      return
    }
    for (const line of geometry.cutLines[i]!) {
      const k = 2 * Math.floor(line.length / 4)
      add(line[k]!, line[k + 1]!, (cut.value.width ?? 4) / 2 + 1, 0.9)
    }
  })
  return out
}
