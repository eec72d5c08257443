import { inside } from '../../shape/measure.ts'
import type { Region } from '../../shape/region.ts'
import { coresAfter } from '../../stack/core.ts'
import type { StackEvent } from '../../stack/event.ts'
import type { Stack } from '../../stack/stack.ts'
import { type StonesBed, stonesBeds } from '../../stack/stones-met.ts'
import type { BlockAsk } from './block-ask.ts'
import { type Columns, type Span, spansOf, type Watched } from './column.ts'
import { type Frame, zInProgram } from './frame.ts'
import type { Watch } from './guard.ts'

/** Met by less than this, nothing is said: rounding of figures and of the heights kept, mm. */
export const TOUCH_MM = 0.05
/** An underside that lies higher than this over the bed is no rough face but cut, mm. */
export const HOLLOW_MM = 0.5

/** Asks the stack what stands at a place, what is wanted there and what must be watched for. */
export class Asker {
  /** The guards first, then stones, closed layers, hollows, the far face, the bed. */
  readonly watches: readonly Watch[]
  readonly voidWatch: number
  readonly farWatch: number
  readonly bedWatch: number
  /** What happened before the program; with what is wanted of it. */
  readonly before: readonly StackEvent[]
  readonly all: readonly StackEvent[]
  /** Regions whose edges part cells beside those of the events. */
  readonly dividers: readonly Region[]
  private readonly ask: BlockAsk
  private readonly bedMm: number
  private readonly beds: readonly { readonly watch: number; readonly bed: StonesBed }[]

  constructor(ask: BlockAsk, bedMm: number) {
    const { stack, guards, mask } = ask
    const { entries } = stack
    this.ask = ask
    this.bedMm = bedMm
    this.before = stack.events.slice(0, ask.events)
    this.all = stack.events.slice(0, Math.max(ask.events, ask.wantedEvents ?? 0))
    const watches: Watch[] = guards.map(g => ({ kind: g.kind, name: g.name }))
    this.beds = stonesBeds(stack).map(bed => ({
      bed,
      watch: watches.push({ kind: 'stones', name: `the stones of ${entries.pours[bed.pour]!.id}` }) - 1
    }))
    for (const key of ask.closed) watches.push({ kind: 'closed layer', name: nameOf(stack, key) })
    this.voidWatch = watches.push({ kind: 'void', name: '' }) - 1
    this.farWatch = watches.push({ kind: 'far face', name: '' }) - 1
    this.bedWatch = watches.push({ kind: 'bed', name: '' }) - 1
    this.watches = watches
    this.dividers = [
      ...guards.map(g => g.region),
      ...this.beds.flatMap(b => b.bed.zone ?? []),
      ...(mask === null ? [] : [mask])
    ]
  }

  /** Whether a watch is over something that is to stay, not over a thing in the way. */
  keeps(watch: number): boolean {
    return watch >= this.ask.guards.length + this.beds.length && watch < this.bedWatch
  }

  /** The pin or clamp whose stuff a column ends in at a height, as its watch; -1 for none. */
  stands(columns: Columns, k: number, z: number): number {
    for (const w of columns.watchedAt(k))
      if (w.watch < this.ask.guards.length && this.ask.guards[w.watch]!.kind !== 'hardware')
        if (z <= w.to + TOUCH_MM && z > Math.max(w.from, columns.pieceTop(k)) + TOUCH_MM) return w.watch
    return -1
  }

  /** Adds the column at a place of the plan. */
  addTo(columns: Columns, x: number, y: number): void {
    const { stack, frame, wantedEvents, events, guards, mask } = this.ask
    const counts = wantedEvents === null ? [events] : [events, wantedEvents]
    const list = wantedEvents === null ? this.before : this.all
    const [core, after] = coresAfter(stack.geometry, list, x, y, counts)
    const spans = spansOf(frame, core!)
    const asked = after !== undefined && (mask === null || inside(mask, x, y))
    const wanted = asked ? topOf(frame, after, this.bedMm) : Number.NaN
    const watched: Watched[] = []
    let fixed = Number.NEGATIVE_INFINITY
    for (let n = 0; n < guards.length; n++) {
      const g = guards[n]!
      if (!inside(g.region, x, y)) continue
      watched.push({ watch: n, from: g.fromMm, to: g.toMm })
      if (g.kind !== 'hardware') fixed = Math.max(fixed, g.toMm)
    }
    for (const { watch, bed } of this.beds) {
      if (bed.zone !== null && !inside(bed.zone, x, y)) continue
      const a = zInProgram(frame, bed.from)
      const b = zInProgram(frame, bed.to)
      for (const s of spans) {
        if (s.key !== `pour ${bed.pour}`) continue
        const from = Math.max(s.from, Math.min(a, b))
        const to = Math.min(s.to, Math.max(a, b))
        if (to > from) watched.push({ watch, from, to })
      }
    }
    // Outside of what is looked at no layer is to stay closed.
    const top = asked ? wanted : wantedEvents === null ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY
    // Where nothing is to stay, the cutter may come out below.
    this.keep(spans, top, asked && after.length > 0, watched)
    // Under a clamp that stands over the face nothing is held against what is wanted.
    columns.add(spans, fixed > (spans[0]?.to ?? this.bedMm) ? Number.NaN : wanted, watched, fixed)
  }

  // What is to be there afterwards must not be cut: a layer to be kept closed; where it is said what is wanted, the roof
  // of a hollow and the far face.
  private keep(spans: readonly Span[], wanted: number, stays: boolean, watched: Watched[]): void {
    const { closed, guards } = this.ask
    spans.forEach((s, k) => {
      const n = closed.indexOf(s.key)
      // A layer that lies open is not opened, nor one that the cut is to go into.
      if (n >= 0 && k > 0 && s.to <= wanted + TOUCH_MM)
        watched.push({ watch: guards.length + this.beds.length + n, from: s.from, to: s.to })
    })
    const last = spans[spans.length - 1]
    if (last === undefined || !stays) return
    spans.forEach((s, k) => {
      const below = spans[k + 1]
      if (below !== undefined && s.from - below.to > TOUCH_MM && wanted > s.from - TOUCH_MM)
        watched.push({ watch: this.voidWatch, from: below.to, to: s.from })
    })
    if (wanted > last.from - TOUCH_MM)
      watched.push({
        // Well above what it lies on, the underside is the roof of something cut from behind.
        watch: last.from > this.bedMm + HOLLOW_MM ? this.voidWatch : this.farWatch,
        from: Number.NEGATIVE_INFINITY,
        to: last.from
      })
  }
}

// "pour 2" by what the document calls it.
function nameOf({ entries }: Stack, key: string): string {
  const [kind, index] = key.split(' ')
  const list = kind === 'timber' ? entries.timbers : kind === 'pour' ? entries.pours : entries.markings
  return list[Number(index)]?.id ?? key
}

function topOf(frame: Frame, core: Parameters<typeof spansOf>[1], bedMm: number): number {
  let top = bedMm
  for (const p of core) top = Math.max(top, zInProgram(frame, p.from), zInProgram(frame, p.to))
  return top
}
