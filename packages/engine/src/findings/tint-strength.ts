import { coverDepthMm, lightThrough, strengthForLight } from '../colour/cover-depth.ts'
import { strengthDoubt, tintOptics } from '../fits/tint.ts'
import type { Operation } from '../piece/patch.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** A tint that does not do what the pour asks of it: hide from a depth, or let light through. */
export const tintStrength: Check = {
  id: 'tint-strength',
  about: 'a tint too weak to hide what it is to hide, or that lets too much or too little light through',
  cases: [],
  run: work => work.entries.pours.flatMap(({ index }) => [...hides(work, index), ...light(work, index)])
}

/** Light through that lies within this share of what is wanted is what is wanted (judgement: an eye tells about a tenth). */
const LIGHT_NEAR = 0.1
/** Steps in which a share is given, %: three figures of it. */
const step = (percent: number) => 10 ** (Math.floor(Math.log10(percent)) - 2)

function hides(work: Work, i: number): Found[] {
  const { id, at, value } = work.entries.pours[i]!
  if (value.marbling !== undefined || value.kind === 'seal') return []
  const own = finishedMm(work, i)
  const wanted = value.hidesFrom ?? (value.opaque === true ? own : undefined)
  if (wanted === undefined || wanted <= 0) return []
  const { depth, tested } = work.hiding[i]!
  if (depth !== null && depth.centralMm <= wanted) return []
  const tint = work.materials.tints[i]!
  const mm = coverDepthMm(tintOptics(tint, work.materials.resins[i]!.densityGMl))
  const mend = mm === null ? null : stronger(work, i, mm / wanted)
  const meant =
    value.hidesFrom === undefined
      ? `is ${decimals(own, 1)} mm deep`
      : `is to hide from ${decimals(wanted, 1)} mm`
  const does =
    tint.length === 0
      ? 'there is no pigment in it: nothing hides'
      : depth === null
        ? 'its tint hides at no depth'
        : `its tint hides from ${decimals(depth.centralMm, 1)} mm, somewhere between ${decimals(depth.lowMm, 1)} and ${decimals(depth.highMm, 1)}`
  return [
    {
      severity: 'caution',
      at,
      says: `${id} ${meant}; ${does}${mend === null ? '' : `. ${mend.says}`}.`,
      ...(depth === null
        ? {}
        : { value: depth.centralMm, band: [depth.lowMm, depth.highMm] as const, unit: 'mm' }),
      limit: depth === null ? null : wanted,
      basis: `Kubelka-Munk in three bands over black and white, CIEDE2000 within 1 (practice); strength of the pigment ${tested ? 'by your card' : 'within its factor'}`,
      settledBy: 'a hiding card of this tint: steps cast over black and white',
      ...(mend?.fix ?? {})
    }
  ]
}

function light(work: Work, i: number): Found[] {
  const { id, at, value } = work.entries.pours[i]!
  if (value.lightThrough === undefined || value.marbling !== undefined) return []
  const mm = finishedMm(work, i)
  const wanted = value.lightThrough / 100
  const tint = work.materials.tints[i]!
  if (mm <= 0 || tint.length === 0) return []
  const optics = tintOptics(tint, work.materials.resins[i]!.densityGMl)
  const through = lightThrough(optics, mm)
  const { tested } = work.hiding[i]!
  if (Math.abs(through - wanted) <= LIGHT_NEAR * wanted) return []
  const factor = strengthForLight(optics, mm, wanted)
  const doubt = strengthDoubt(tint)
  // Within the pigment's doubt it may be as wanted already.
  const open = factor !== null && factor <= doubt && factor >= 1 / doubt
  const mend = factor === null ? null : stronger(work, i, factor)
  return [
    {
      severity: open ? 'note' : 'caution',
      at,
      says: `${id} lets ${decimals(100 * through, 1)} % of the light through its ${decimals(mm, 1)} mm; ${decimals(value.lightThrough, 1)} % are wanted${mend === null ? '' : `. ${mend.says}`}.`,
      value: 100 * through,
      unit: '%',
      limit: value.lightThrough,
      basis: `Kubelka-Munk in three bands, luminance, against clear resin as deep; strength of the pigment ${tested ? 'by your card' : 'within its factor'}`,
      settledBy: 'a cast of that depth, held to the light beside a clear one',
      ...(mend?.fix ?? {})
    }
  ]
}

// What of a pour is in the finished piece, mm.
function finishedMm({ stack }: Work, i: number): number {
  const { floor, level, depth, side } = stack.pours[i]!
  if (side !== null) return depth
  return Math.max(0, Math.min(level, stack.finishedHigh) - Math.max(floor, stack.finishedLow))
}

// The same tint so many times as strong; within what each pigment of it may be.
function stronger(
  work: Work,
  i: number,
  factor: number
): { readonly says: string; readonly fix: Pick<Found, 'fix' | 'fixSays'> | null } | null {
  const { at } = work.entries.pours[i]!
  const tint = work.materials.tints[i]!
  const shares = tint.map(t => 100 * t.share * factor)
  const over = tint.findIndex((t, j) => shares[j]! > t.pigment.capPct + 1e-9)
  const figure = (x: number) => decimals(x, 6)
  if (over >= 0) {
    const { name, capPct } = tint[over]!.pigment
    return {
      says: `That would take ${figure(Number(shares[over]!.toPrecision(3)))} % of ${name}; allowed up to ${figure(capPct)} %`,
      fix: null
    }
  }
  const way = factor > 1 ? 'up' : 'down'
  // What is named with none of it stays at none.
  const set = shares.flatMap((s, j) => (s > 0 ? [{ j, s, percent: rounded(s, way, step(s)) }] : []))
  const fix = set.flatMap(({ j, s, percent }): Operation[] => [
    ...setQuantity(work.document, `${at}/tint/${j}/percent`, 'percent', percent, way, step(s))
  ])
  const words = set.map(({ j, percent }) => `${figure(percent)} % of ${tint[j]!.pigment.name}`).join(' and ')
  return { says: `${capital(words)} would do`, fix: { fix, fixSays: words } }
}

function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1)
}
