import { GLOSS_BANDS, readAtDeg } from '../coat/gloss.ts'
import type { Work } from '../findings/work.ts'
import type { Flood } from '../finish/flood.ts'
import type { Lengths } from '../piece/lengths.ts'
import { decimals, formatMinutes, formatVolume } from '../quantity/format.ts'
import { mlWords } from './run-mix.ts'
import type { RunFact, RunTable } from './run-part.ts'
import { fact, newLine } from './run-part.ts'

type Finish = Work['faces'][number]

/** The coats of faces, each with its films, what to have ready, and the minutes it takes. */
export function coatTable(named: readonly (readonly [name: string, finish: Finish])[]): RunTable | null {
  const rows = named.flatMap(([name, f]): string[][] => {
    const { coating, coats } = f
    if (coating === null || coats < 1) return []
    const say = (k: string) => (named.length > 1 ? `${name}, ${k}` : `${name}: ${k}`)
    return [
      [
        say(coats === 1 ? '1 coat' : `each of ${coats} coats`),
        micrometres(coating.wetUm),
        micrometres(coating.dryUm),
        mlWords(coating.eachMl),
        decimals(coating.eachMin, 0)
      ]
    ]
  })
  if (rows.length === 0) return null
  return { title: 'Coats', head: ['Coat', 'Wet, µm', 'Dry, µm', 'Have ready, ml', 'Minutes'], rows }
}

function micrometres([low, , high]: readonly [number, number, number]): string {
  return Math.abs(high - low) < 0.5 ? decimals(high, 0) : `${decimals(low, 0)} to ${decimals(high, 0)}`
}

/** What a face comes to: gloss, spread and mass of a coat, what stands on the edge. */
export function coatFacts(f: Finish, name: string): RunFact[] {
  const { coating, gloss, coat } = f
  if (coating === null || coat === null) return []
  const wanted = gloss.wanted !== null && gloss.words.includes(gloss.wanted) ? gloss.wanted : null
  const words = wanted ?? [...new Set([gloss.words[0], gloss.words.at(-1)])].join(' to ')
  const [low, high] =
    wanted === null
      ? [gloss.low, gloss.high]
      : [Math.max(gloss.low, GLOSS_BANDS[wanted][0]), Math.min(gloss.high, GLOSS_BANDS[wanted][1])]
  return [
    fact(
      `${name}, gloss`,
      words,
      `${decimals(low, 0)} to ${decimals(high, 0)} at 60° by practice${low > 70 ? `, read at ${readAtDeg(low)}°` : ''}`
    ),
    ...(coat.wetFilmUm === null
      ? []
      : [
          fact(
            'Laid on',
            decimals(coating.laidGPerM2, 0),
            `g/m²; a litre covers ${decimals(coating.spreadM2PerL, 1)} m²`
          )
        ]),
    ...(coating.standsUm === null
      ? []
      : [fact('On the edge', `at most ${decimals(coating.standsUm, 0)}`, 'µm wet, or it runs')])
  ]
}

/** How a flood coat lies: its thickness, dam, level and levelling. */
export function floodFacts(flood: Flood, L: Lengths): RunFact[] {
  const { depthMm, standsMm, damMm, wantsDamMm, kept, withinMmPerM, wedgeMm, levelMin, longestMm } = flood
  const dam = damMm ?? wantsDamMm
  return [
    newLine(
      fact('Poured', L.of(depthMm[1], 1, 1), `${L.unit} thick, ${formatVolume(flood.volumeMl)} on the face`)
    ),
    ...(kept
      ? []
      : [
          fact(
            'Stands by itself',
            `${L.of(standsMm[0], 1)} to ${L.of(standsMm[2], 1)}`,
            `${L.unit} up to a sharp edge`
          )
        ]),
    ...(dam === null || kept ? [] : [fact('Dam', L.of(dam, 1), `${L.unit} over the face`)]),
    fact('Level the face within', ...L.slope(withinMmPerM)),
    ...(wedgeMm === null || wedgeMm < 0.05
      ? []
      : [fact('The bench by its corners', L.of(wedgeMm, 1), `${L.unit} deeper at the low end: shim it`)]),
    levelMin === null
      ? fact('It levels', `ripples up to ${L.of(longestMm, 0)}`, `${L.unit} before it sets: spread it evenly`)
      : fact('It levels in', formatMinutes(Math.max(1, levelMin)), `for ripples of ${L.of(100, 0)} ${L.unit}`)
  ]
}

/** What is said at the coat of a face that meets food. */
export function foodWords(faces: readonly string[]): string {
  const which = faces.length > 1 ? 'Both faces meet' : `The ${faces[0]} meets`
  return `${which} food: needs written compliance for the exact product, full cure and a continuous film; knife cuts break the film; not for hot food above the temperature at which it softens.`
}

/** A flood in few words: its dam, and how level the face must lie. */
export function floodWords(work: Work, i: number, L: Lengths): string[] {
  const flood = work.faces.flatMap(f => f.floods).find(f => f.step === i)
  if (flood === undefined) return []
  const dam = flood.damMm ?? flood.wantsDamMm
  return [
    ...(dam === null || flood.kept ? [] : [`dam ${L.of(dam, 1)}`]),
    `level within ${L.slope(flood.withinMmPerM).join(' ')}`
  ]
}

/** The coats of a step in few words: names, how many, minutes of work. */
export function coatBrief(finishes: readonly Finish[]): string[] {
  const coated = finishes.filter(f => f.coat !== null && f.coats > 0)
  const names = [...new Set(coated.map(f => f.coat!.name))]
  const most = Math.max(0, ...coated.map(f => f.coats))
  const minutes = coated.reduce((sum, f) => sum + f.coats * (f.coating?.eachMin ?? 0), 0)
  return [
    names.join(' and '),
    `${most} coat${most === 1 ? '' : 's'}`,
    ...(minutes < 1 ? [] : [`${formatMinutes(minutes)} of work`])
  ]
}
