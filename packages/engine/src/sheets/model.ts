import type { Optics } from '../colour/stacked.ts'
import type { Work } from '../findings/work.ts'
import { grainDegOf } from '../piece/grain.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { METRIC } from '../quantity/shown-units.ts'
import type { CoreModel, HoleName, MaterialDrawing } from './core-model.ts'
import { bodyColour, isClear, luminanceOfHex, pourColour } from './look.ts'
import type { Hatch, Paint } from './mark.ts'

/** Depth at which a pour is drawn by itself: its own, within this range, mm. */
const DRAWN_MM = [4, 20] as const
/** Darker than this luminance a filling is drawn solid, without lines. */
const DARK = 0.03

/** The model of a planned piece that cores and sections are drawn from. */
export function coreModelOf(work: Work, shown: ShownUnits = METRIC): CoreModel {
  const { stack, entries, materials } = work
  const { looks } = work.appearance
  return {
    geometry: stack.geometry,
    events: stack.events,
    finishedLow: stack.finishedLow,
    finishedHigh: stack.finishedHigh,
    castHeight: stack.castHeight,
    down: stack.piece.down,
    timbers: entries.timbers.map(
      (t, i): MaterialDrawing => ({
        name: capital(t.id),
        words: materials.timbers[i]!.name,
        paint: bodyColour(looks.timbers[i]!.wood),
        hatch: { kind: 'along', seed: i }
      })
    ),
    grainDeg: entries.timbers.map((t, i) => grainDegOf(t.value, stack.geometry.timbers[i]!.upper)),
    pours: entries.pours.map(
      (p, i): MaterialDrawing => ({
        name: capital(p.id),
        words: pourWords(work, looks.pours[i]!, i),
        ...drawn(looks.pours[i]!, stack.pours[i]!.depth, work.hiding[i]!.meant, i)
      })
    ),
    markings: entries.markings.map(
      (m, i): MaterialDrawing => ({
        name: capital(m.id),
        words: 'filled line',
        ...drawn(looks.markings[i]!, 2, true, i)
      })
    ),
    cuts: entries.cuts.map(c => holeName(work, c.id)),
    formers: entries.formers.map(f => holeName(work, f.id)),
    looks,
    shown
  }
}

/** A name as a heading: its first letter large. */
export function capital(name: string): string {
  return name.slice(0, 1).toUpperCase() + name.slice(1)
}

function drawn(look: Optics, depthMm: number, hides: boolean, seed: number): { paint: Paint; hatch: Hatch } {
  if (isClear(look)) return { paint: 'clear', hatch: { kind: 'wide', seed } }
  const paint = pourColour(look, Math.min(DRAWN_MM[1], Math.max(DRAWN_MM[0], depthMm)))
  const kind = luminanceOfHex(paint) < DARK ? 'solid' : hides ? 'crossed' : 'paired'
  return { paint, hatch: { kind, seed } }
}

function pourWords(work: Work, look: Optics, i: number): string {
  if (work.hiding[i]!.meant) return 'opaque resin'
  return isClear(look) ? 'clear resin' : 'tinted, clear resin'
}

// What sits in a cut or former: the hardware that names it, or that it names.
function holeName(work: Work, id: string): HoleName {
  const { entries } = work
  const wanted = entries.cuts.find(c => c.id === id)?.value.for
  const inside = entries.hardware.filter(h => h.value.in === id || h.id === wanted)
  return { name: id, holds: inside.map(h => h.id).join(', ') }
}
