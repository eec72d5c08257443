import type { Bands } from '../catalogue/pigment-optics.ts'
import { JUST_NOTICED, showsOf } from '../colour/difference.ts'
import type { Seen } from '../fits/core-colour.ts'
import { seenBetween } from '../fits/core-colour.ts'
import type { Looks } from '../fits/looks.ts'
import { decimals } from '../quantity/format.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { inside } from '../shape/measure.ts'
import type { CoreInterval } from '../stack/core.ts'
import { coreAt, floorAt } from '../stack/core.ts'
import type { Material, Removal, StackEvent } from '../stack/event.ts'
import type { Geometry } from '../stack/shapes.ts'
import type { Hatch, Paint } from './mark.ts'

/** What a material is called and how it is drawn. */
export interface MaterialDrawing {
  readonly name: string
  /** A few more words: the species, the tint. */
  readonly words: string
  readonly paint: Paint
  readonly hatch: Hatch
}

/** A hole as a core meets it. */
export interface HoleName {
  readonly name: string
  /** What sits in it; empty when nothing does. */
  readonly holds: string
}

/**
 * All that is needed to draw the core and the section at any place: the stack's own geometry and events, names,
 * looks. The page carries it as data and asks the engine's own `coreAt` of it.
 */
export interface CoreModel {
  readonly geometry: Geometry
  readonly events: readonly StackEvent[]
  /** Heights as cast of the finished faces, and of the casting before flattening. */
  readonly finishedLow: number
  readonly finishedHigh: number
  readonly castHeight: number
  readonly down: 'front' | 'back'
  readonly timbers: readonly MaterialDrawing[]
  /** Direction of each timber's grain, degrees. */
  readonly grainDeg: readonly number[]
  readonly pours: readonly MaterialDrawing[]
  readonly markings: readonly MaterialDrawing[]
  readonly cuts: readonly HoleName[]
  readonly formers: readonly HoleName[]
  readonly looks: Looks
  /** What its drawings are written in. */
  readonly shown: ShownUnits
}

/** One stretch of a finished core, from the back to the front. Heights mm as cast. */
export interface CorePart {
  readonly from: number
  readonly to: number
  /** null: a void. */
  readonly material: Material | null
  readonly name: string
  readonly words: string
  readonly paint: Paint
  readonly hatch: Hatch
  /** Whether an eye sees from the front that it is there: of a void with something before it; null of all else. */
  readonly seen: Seen | null
}

/** How a drawing says what shows: no and surely not, perhaps or hardly, plainly. */
export function seenTone({ shows, band }: Seen): 'figure' | 'caution' | 'stop' {
  return shows === 'yes' ? 'stop' : shows === 'faint' || band[1] >= JUST_NOTICED ? 'caution' : 'figure'
}

/** "shows: faint", and what it is where the pigment is as weak as it may be: "shows: no, perhaps faint". */
export function seenWords({ shows, band }: Seen): string {
  const worst = showsOf(band[1])
  return worst === shows ? `shows: ${shows}` : `shows: ${shows}, perhaps ${worst}`
}

/** "difference 1.4, from 0.2 to 5.1". */
export function seenFigures({ difference, band }: Seen): string {
  const [low, high] = [decimals(band[0], 1, 1), decimals(band[1], 1, 1)]
  return `difference ${decimals(difference, 1, 1)}${low === high ? '' : `, ${low} to ${high}`}`
}

const VOID_HATCH: Hatch = { kind: 'dots' }

/** How a material is drawn. */
export function drawingOf(model: CoreModel, material: Material): MaterialDrawing {
  switch (material.kind) {
    case 'timber':
      return model.timbers[material.index]!
    case 'pour':
      return model.pours[material.index]!
    case 'marking':
      return model.markings[material.index]!
    case 'former':
      return {
        name: model.formers[material.index]!.name,
        words: 'former',
        paint: 'paper',
        hatch: VOID_HATCH
      }
  }
}

/** Whether heights as cast grow towards the front. */
export function frontUp(model: Pick<CoreModel, 'down'>): boolean {
  return model.down === 'back'
}

/**
 * The finished core at a point, voids of cuts and formers named, from the back to the front; empty outside the
 * outline.
 */
export function corePartsAt(model: CoreModel, x: number, y: number): CorePart[] {
  if (!inside(model.geometry.outline, x, y)) return []
  const core = coreAt(model.geometry, model.events, x, y)
  const parts: CorePart[] = []
  let at = model.finishedLow
  const gap = (to: number) => {
    if (to - at > 1e-6) parts.push(voidPart(model, x, y, at, to))
    at = to
  }
  for (const interval of core) {
    gap(Math.max(at, interval.from))
    parts.push(solidPart(model, interval))
    at = interval.to
  }
  gap(model.finishedHigh)
  const seen = parts.map((part, i) => judged(model, core, parts, part, i, x, y))
  return frontUp(model) ? seen : seen.reverse()
}

/**
 * The same core with what flattening takes off its faces still there, so that thicknesses are as cast. Whether a
 * cover hides stays as it is when finished.
 */
export function castPartsAt(model: CoreModel, x: number, y: number): CorePart[] {
  const finished = corePartsAt(model, x, y)
  if (finished.length === 0) return []
  const parts = frontUp(model) ? finished : [...finished].reverse()
  const whole = coreAt(
    model.geometry,
    model.events.filter(e => e.kind !== 'trim'),
    x,
    y
  )
  const below: CorePart[] = []
  const above: CorePart[] = []
  for (const interval of whole) {
    const { from, to } = interval
    if (from < model.finishedLow - 1e-6)
      below.push(solidPart(model, { ...interval, to: Math.min(to, model.finishedLow) }))
    if (to > model.finishedHigh + 1e-6)
      above.push(solidPart(model, { ...interval, from: Math.max(from, model.finishedHigh) }))
  }
  const [under, first] = [below[below.length - 1], parts[0]!]
  if (under !== undefined && goesOn(under, first, model.finishedLow)) {
    below.pop()
    parts[0] = { ...first, from: under.from }
  }
  const [over, last] = [above[0], parts[parts.length - 1]!]
  if (over !== undefined && goesOn(over, last, model.finishedHigh)) {
    above.shift()
    parts[parts.length - 1] = { ...last, to: over.to }
  }
  const out = [...below, ...parts, ...above]
  return frontUp(model) ? out : out.reverse()
}

function goesOn(a: CorePart, b: CorePart, z: number): boolean {
  const touch = [a.from, a.to].some(h => Math.abs(h - z) < 1e-6)
  return (
    touch &&
    a.material !== null &&
    a.material.kind === b.material?.kind &&
    a.material.index === b.material.index
  )
}

function solidPart(model: CoreModel, { from, to, material }: CoreInterval): CorePart {
  const { name, words, paint, hatch } = drawingOf(model, material)
  return { from, to, material, name, words, paint, hatch, seen: null }
}

function voidPart(model: CoreModel, x: number, y: number, from: number, to: number): CorePart {
  const holes = holesAt(model, x, y, (from + to) / 2)
  const named = holes[0]
  return {
    from,
    to,
    material: null,
    name: 'Void',
    words: named === undefined ? '' : named.holds === '' ? named.name : `${named.name}, ${named.holds}`,
    paint: 'paper',
    hatch: VOID_HATCH,
    seen: null
  }
}

/** Cuts, the latest first, and formers that leave nothing at a point of space. */
function holesAt(model: CoreModel, x: number, y: number, z: number): HoleName[] {
  const out: HoleName[] = []
  for (const e of model.events) {
    if (e.kind === 'cut') {
      if (takes(e.removal, x, y, z)) out.unshift(model.cuts[e.index]!)
    } else if (e.kind === 'former' && z >= e.from && z <= e.to) {
      if (inside(model.geometry.formers[e.index]!.region, x, y)) out.push(model.formers[e.index]!)
    }
  }
  return out
}

// Whether a cut takes a place away: from its floor to the face, or under lips that stay.
function takes(r: Removal, x: number, y: number, z: number): boolean {
  const floor = floorAt(r, x, y)
  if (floor !== null && (r.side === 'low' ? z < floor : z > floor)) return true
  if (r.under === undefined || !inside(r.under.region, x, y)) return false
  return z > Math.min(r.floor, r.under.roof) && z < Math.max(r.floor, r.under.roof)
}

// A void with something before it: the colour as it is, and with what stood there before any hole was made.
function judged(
  model: CoreModel,
  core: readonly CoreInterval[],
  parts: readonly CorePart[],
  part: CorePart,
  i: number,
  x: number,
  y: number
): CorePart {
  if (part.material !== null || part.to - part.from < 1e-6) return part
  if (i === (frontUp(model) ? parts.length - 1 : 0)) return part
  const whole = coreAt(
    model.geometry,
    model.events.filter(e => e.kind !== 'cut' && e.kind !== 'former'),
    x,
    y
  )
  const stood = whole.flatMap((p): CoreInterval[] => {
    const [from, to] = [Math.max(p.from, part.from), Math.min(p.to, part.to)]
    return to - from < 1e-6 ? [] : [{ ...p, from, to }]
  })
  if (stood.length === 0) return part
  const without = [...core, ...stood].sort((a, b) => a.from - b.from)
  return { ...part, seen: seenBetween(model.looks, core, without, 'front', sitsAt(model, x, y, part)) }
}

function sitsAt(model: CoreModel, x: number, y: number, part: CorePart): Bands | null {
  const z = (part.from + part.to) / 2
  for (const e of model.events) {
    if (e.kind !== 'cut' || model.looks.inCuts[e.index] === null) continue
    if (takes(e.removal, x, y, z)) return model.looks.inCuts[e.index]!
  }
  return null
}

/** A height as cast as a finished one, from the finished back, mm. */
export function finishedOf(model: CoreModel, z: number): number {
  return frontUp(model) ? z - model.finishedLow : model.finishedHigh - z
}
