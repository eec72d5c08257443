import type { HardwareRecord } from '../catalogue/hardware-record.ts'
import type { Hardware } from '../piece/piece-schema.ts'
import { circle, rectangle } from '../shape/build.ts'
import type { EdgeTree } from '../shape/edge-tree.ts'
import { edgeDistance, edgeTree } from '../shape/edge-tree.ts'
import { centroid, inside, nearest } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import { rotate } from '../shape/transform.ts'
import type { Stack } from '../stack/stack.ts'
import { partCoatShare, partShare } from './cause.ts'
import type { FitFacts, SizeChain } from './chain.ts'
import type { Pilot } from './pilot.ts'
import { pilotOf } from './pilot.ts'
import type { ShaftFit } from './shaft.ts'
import { shaftOf } from './shaft.ts'
import type { Band, Share } from './share.ts'
import { together } from './share.ts'

/** Size of the part at hand: the document's where it says, else the catalogue's. mm. */
export interface Part {
  readonly shape: 'rectangle' | 'round'
  readonly widthMm: number
  readonly lengthMm: number
  readonly depthMm: number
  /** Radius of its corners; 0 for sharp ones. */
  readonly cornerMm: number
}

/** How a bought-in part sits in the piece. */
export interface HardwareFit {
  readonly hardware: number
  readonly record: HardwareRecord
  readonly part: Part | null
  readonly x: number
  readonly y: number
  /** Least gap between the part and the wall of its hole, mm; negative: it does not go in. null without a hole. */
  readonly gapMm: number | null
  readonly wantedGapMm: number
  /** The hole it sits in, through the whole build; null without one, or where it is not made. */
  readonly chain: SizeChain | null
  /** What moves the gap after it was drawn: of the hole and of the part. */
  readonly shares: readonly Share[]
  /** Gap on each side in the piece in use, mm; null without a hole. */
  readonly clearanceMm: Band | null
  /** Size across to cut on the day so that the wanted gap is left in the end, mm; null without a hole. */
  readonly cutMm: number | null
  /** For a screw or an insert: the hole it wants where it sits; null for other parts, and without a hole. */
  readonly pilot: Pilot | null
  /** Finished depth of its hole, mm; null right through or without one. */
  readonly holeDepthMm: number | null
  /** For a shaft: material it must pass, thread it needs and thread it has, mm. */
  readonly shaft: ShaftFit | null
  /** The pour it is cast into, if any. */
  readonly castIn: number | null
}

/** What a part that is pushed in tight is cut for, on each side: half of nominal less 0.05 across (practice). */
const PRESS_GAP_MM = -0.025

/** One entry a piece of hardware. */
export function hardwareFits(stack: Stack, facts: FitFacts, chains: readonly SizeChain[]): HardwareFit[] {
  const { materials } = facts
  return stack.entries.hardware.map((entry, i): HardwareFit => {
    const h = entry.value
    const record = materials.hardware[i]!
    const part = partOf(h, record)
    const cut = stack.entries.cuts.find(c => c.id === h.in || c.value.for === entry.id)
    const former = cut === undefined ? stack.entries.formers.find(f => f.id === h.in) : undefined
    const hole: Region | null = cut
      ? (stack.geometry.cutRegions[cut.index] ?? null)
      : former
        ? stack.geometry.formers[former.index]!.region
        : null
    const groove = cut === undefined ? null : grooveOf(stack, cut.index)
    const middle = h.at ?? (hole === null ? groove?.middle : [centroid(hole).x, centroid(hole).y])
    const [x, y] = middle ?? [0, 0]
    const wanted = h.clearance ?? record.pocket?.clearanceMm ?? slipMm(record, part) ?? 0.5
    const chain =
      chains.find(c =>
        cut ? c.of === 'cut' && c.index === cut.index : c.of === 'former' && c.index === former?.index
      ) ?? null
    const gapMm =
      part === null
        ? null
        : hole !== null
          ? gapOf(part, h.turn, x, y, hole)
          : groove === null
            ? null
            : (groove.widthMm - Math.min(part.widthMm, part.lengthMm)) / 2
    const shares = part === null || chain === null ? [] : [...chain.shares, ...partShares(h, record, part)]
    const side = together(shares)
    const clearanceMm: Band | null =
      gapMm === null || chain === null ? null : [gapMm + side[0], gapMm + side[1], gapMm + side[2]]
    return {
      hardware: i,
      record,
      part,
      x,
      y,
      gapMm,
      wantedGapMm: wanted,
      chain,
      shares,
      clearanceMm,
      cutMm:
        clearanceMm === null || chain === null
          ? null
          : chain.drawnMm + 2 * ((h.fitting === 'press' ? PRESS_GAP_MM : wanted) - clearanceMm[1]),
      pilot: chain === null ? null : pilotOf(stack, materials, h, record, chain.walls, [x, y]),
      holeDepthMm: cut ? stack.cuts[cut.index]!.finished : null,
      shaft: shaftOf(stack, facts, chain, h, record, x, y, cut?.index ?? null),
      castIn:
        h.castIn === undefined ? null : (stack.entries.pours.find(p => p.id === h.castIn)?.index ?? null)
    }
  })
}

// A flat groove that a strip or a profile lies in: its width, and the middle of its line.
function grooveOf(
  stack: Stack,
  cut: number
): { readonly widthMm: number; readonly middle: readonly [number, number] } | null {
  const lines = stack.geometry.cutLines[cut] ?? null
  const { width, profile } = stack.piece.cuts[cut]!
  if (lines === null || width === undefined || profile !== 'flat') return null
  const line = lines[0]!
  const k = 2 * Math.max(0, Math.floor((line.length / 2 - 1) / 2))
  const next = Math.min(k + 2, line.length - 2)
  return { widthMm: width, middle: [(line[k]! + line[next]!) / 2, (line[k + 1]! + line[next + 1]!) / 2] }
}

/** Size of a part: by the document where it says, else by the catalogue. */
export function partOf(h: Hardware, record: HardwareRecord): Part | null {
  const body = record.body
  const depthMm = h.depth ?? body?.depthMm
  const diameter =
    h.diameter ?? (body?.shape === 'round' && h.width === undefined ? body.diameterMm : undefined)
  if (diameter !== undefined)
    return { shape: 'round', widthMm: diameter, lengthMm: diameter, depthMm: depthMm ?? 0, cornerMm: 0 }
  const width = h.width ?? (body?.shape === 'rectangle' ? body.widthMm : undefined)
  const length = h.length ?? (body?.shape === 'rectangle' ? body.lengthMm : width)
  if (width === undefined || length === undefined) return null
  const cornerMm = Math.min(h.corner ?? 0, width / 2, length / 2)
  return { shape: 'rectangle', widthMm: width, lengthMm: length, depthMm: depthMm ?? 0, cornerMm }
}

// A pin slips into the largest hole its row gives.
function slipMm(record: HardwareRecord, part: Part | null): number | undefined {
  const hole = record.kind === 'pin' && part?.shape === 'round' ? record.holes[0] : undefined
  const body = record.body?.shape === 'round' ? record.body.diameterMm : undefined
  return hole === undefined || body === undefined ? undefined : (hole.diameterMm[1] - body) / 2
}

// Off by what the document says; by the catalogue where the size is the catalogue's too.
function partShares(h: Hardware, record: HardwareRecord, part: Part): Share[] {
  const given = h.tolerance !== undefined || h.toleranceClass !== undefined
  const measured = h.diameter !== undefined || h.width !== undefined
  const size = Math.min(part.widthMm, part.lengthMm)
  const off = given || measured ? h : { tolerance: record.toleranceMm, toleranceClass: record.toleranceClass }
  return [partShare(off, size), partCoatShare(h.film)].filter(s => s !== null)
}

/** The least distance from the edge of a part at x, y to the wall of a hole, mm; negative where it sticks out. */
export function gapOf(part: Part, turn: number, x: number, y: number, hole: Region): number {
  const outline =
    part.shape === 'round'
      ? circle(part.widthMm, 0.01, x, y)
      : rotate(rectangle(part.lengthMm, part.widthMm, part.cornerMm, 0.01, x, y), turn, x, y)
  const away = distanceTo(hole)
  let least = Number.POSITIVE_INFINITY
  for (const ring of outline.rings) {
    for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2) {
      const n = Math.max(1, Math.ceil(Math.hypot(ring[k]! - ring[p]!, ring[k + 1]! - ring[p + 1]!) / 2))
      for (let s = 0; s < n; s++) {
        const px = ring[p]! + ((ring[k]! - ring[p]!) * s) / n
        const py = ring[p + 1]! + ((ring[k + 1]! - ring[p + 1]!) * s) / n
        least = Math.min(least, -away(px, py))
      }
    }
  }
  return least
}

/** Holes of more edges are asked by way of a tree of them. */
const MANY_EDGES = 64
const trees = new WeakMap<Region, EdgeTree>()

// Distance to the wall of a hole, mm, negative within it: as nearest, whatever the number of its edges.
function distanceTo(hole: Region): (x: number, y: number) => number {
  if (hole.rings.reduce((sum, r) => sum + r.length / 2, 0) <= MANY_EDGES)
    return (x, y) => nearest(hole, x, y).distanceMm
  let tree = trees.get(hole)
  if (tree === undefined) {
    tree = edgeTree(hole.rings)
    trees.set(hole, tree)
  }
  const edges = tree
  return (x, y) => (inside(hole, x, y) ? -1 : 1) * edgeDistance(edges, x, y)
}
