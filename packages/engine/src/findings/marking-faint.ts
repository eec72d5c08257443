import { find } from '../catalogue/find.ts'
import type { Bands } from '../catalogue/pigment-optics.ts'
import { contrastOf, FIGURES_RATIO, GRAPHICS_RATIO, strokeReadAtMm } from '../colour/contrast.ts'
import { laidOn, type Optics, outsideBands } from '../colour/stacked.ts'
import { insideOfCore } from '../fits/core-colour.ts'
import { tintOptics } from '../fits/tint.ts'
import { decimals } from '../quantity/format.ts'
import { inside } from '../shape/measure.ts'
import { coreAt } from '../stack/core.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Lines or figures that hardly stand out from what they lie on, or are too fine to be told apart. */
export const markingFaint: Check = {
  id: 'marking-faint',
  about: 'a filling that hardly stands out from its ground, or lines too fine to read',
  cases: [],
  run: work => work.entries.markings.flatMap(({ index }) => [...faint(work, index), ...fine(work, index)])
}

/** Figures at least so high count as large, mm: 18 point letters, of which capitals are seven tenths (WCAG 2.x; memory). */
const LARGE_MM = 4.4
/** A scale is read from here at least, mm (practice: an arm's length and a half). */
const READ_AT_MM = 1000
/** Places along the lines that are looked at. */
const PLACES = 60
/** Share of a filling that is offered, % (common loading of an opaque paste). */
const OFFERED = 3

interface Ground {
  readonly inside: Bands
  readonly seen: Bands
}

function faint(work: Work, i: number): Found[] {
  const { id, at, value } = work.entries.markings[i]!
  const look = work.appearance.looks.markings[i]!
  if (value.filled === undefined || value.filled.length === 0) return []
  const deepMm = Math.max(0.1, value.width / (2 * Math.tan((value.angle * Math.PI) / 360)))
  const small = value.numerals.some(n => n.height < LARGE_MM)
  const limit = small ? FIGURES_RATIO : GRAPHICS_RATIO
  const grounds = groundsOf(work, i)
  const least = (optics: Optics) =>
    Math.min(...grounds.map(g => contrastOf(outsideBands(over(optics, deepMm, g.inside)), g.seen)))
  if (grounds.length === 0) return []
  const ratio = least(look)
  if (ratio >= limit) return []
  const better = offered(work, i, least)
  return [
    {
      severity: 'caution',
      at,
      says: `${id} hardly stands out: its filling has a contrast of ${decimals(ratio, 1)} to 1 with what it lies on, where ${small ? 'small figures' : 'lines'} want ${decimals(limit, 1)} to 1.${better === null ? '' : ` ${better.name} would have ${decimals(better.ratio, 1)}.`}`,
      value: ratio,
      unit: ': 1',
      limit,
      basis:
        'contrast by WCAG 2.x (3 to 1 for graphics, 4.5 for figures that are not large), an open standard for screens; colours computed, of timber by eye',
      settledBy: 'a line cut and filled on an offcut',
      ...(better !== null && better.ratio >= limit
        ? {
            fix: setValue(work.document, `${at}/filled`, [{ pigment: better.id, percent: OFFERED }]),
            fixSays: `Filled with ${better.name}`
          }
        : {})
    }
  ]
}

function fine(work: Work, i: number): Found[] {
  const { id, at, value } = work.entries.markings[i]!
  const reach = strokeReadAtMm(value.width)
  if (reach >= READ_AT_MM) return []
  const width = READ_AT_MM / strokeReadAtMm(1)
  return [
    {
      severity: 'note',
      at,
      says: `lines of ${id} are ${decimals(value.width, 2)} mm wide: a good eye tells them apart up to ${decimals(reach / 1000, 1)} m. From ${decimals(width, 1)} mm on it does at 1 m.`,
      value: value.width,
      unit: 'mm',
      limit: width,
      basis: 'one minute of arc, visual acuity 1.0 (ISO 8596; memory); 1 m: practice',
      fix: setQuantity(work.document, `${at}/width`, 'length', width, 'up'),
      fixSays: `Lines ${decimals(Math.ceil(width * 10) / 10, 1)} mm wide`
    }
  ]
}

// What the lines lie on: the face without any marking, each colour once.
function groundsOf(work: Work, i: number): Ground[] {
  const { stack, appearance } = work
  const { face } = work.piece.markings[i]!
  const events = stack.events.filter(e => e.kind !== 'mark' && !(e.kind === 'fill' && e.what === 'marking'))
  const lines = stack.geometry.markingLines[i]!
  const out = new Map<string, Ground>()
  const step = Math.max(1, Math.ceil(lines.length / PLACES))
  for (let k = 0; k < lines.length; k += step) {
    const line = lines[k]!
    const [x, y] = [(line[0]! + line[line.length - 2]!) / 2, (line[1]! + line[line.length - 1]!) / 2]
    if (!inside(stack.geometry.outline, x, y)) continue
    const core = coreAt(stack.geometry, events, x, y)
    const ground = insideOfCore(appearance.looks, core, face)
    if (ground !== null)
      out.set(ground.map(b => b.toFixed(3)).join(), { inside: ground, seen: outsideBands(ground) })
  }
  return [...out.values()]
}

function over({ scatterPerMm: s, absorbPerMm: k }: Optics, mm: number, behind: Bands): Bands {
  return [
    laidOn(s[0], k[0], mm, behind[0]),
    laidOn(s[1], k[1], mm, behind[1]),
    laidOn(s[2], k[2], mm, behind[2])
  ]
}

// Black or white, whichever stands out more, of the family of its resin.
function offered(
  work: Work,
  i: number,
  least: (optics: Optics) => number
): { readonly id: string; readonly name: string; readonly ratio: number } | null {
  const { record, densityGMl } = work.materials.markingResins[i]!
  const tail = record.family === 'epoxy' ? '' : `-${record.family}`
  const rows = [`black-paste${tail}`, `white-paste${tail}`].flatMap(id => {
    const pigment = find('pigment', id)
    if (pigment === null) return []
    return [
      { id, name: pigment.name, ratio: least(tintOptics([{ pigment, share: OFFERED / 100 }], densityGMl)) }
    ]
  })
  return rows.length === 0 ? null : rows.reduce((a, b) => (b.ratio > a.ratio ? b : a))
}
