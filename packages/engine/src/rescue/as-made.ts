import { mixLots } from '../cost/mix-lots.ts'
import { lotWords } from '../cost/shelf.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { Reading } from '../piece/reading-schema.ts'
import { decimals, formatMass, formatMinutes } from '../quantity/format.ts'
import type { PlanInput } from '../work.ts'
import { workOf } from '../work.ts'
import type { AsMadeSetting } from './as-made-settings.ts'
import { settingsOf } from './as-made-settings.ts'
import { momentWords } from './moment-words.ts'
import type { BuildState } from './state.ts'
import { stateFrom } from './state.ts'

/** A figure as planned and as built; built null: nothing was read. In words with their unit. */
export interface AsMadeFigure {
  readonly what: string
  readonly planned: string
  readonly built: string | null
}

/** A photo taken at the bench. */
export interface AsMadePhoto {
  /** The name it is kept under. */
  readonly photo: string
  /** "2026-12-05 09:00, pour green: the first bubbles". */
  readonly says: string
}

/** What a piece was made of and how: to repair it, to teach by it, to make it again. */
export interface AsMade {
  readonly name: string
  readonly asOf: string
  readonly says: string
  readonly timbers: readonly { readonly name: string; readonly figures: readonly AsMadeFigure[] }[]
  readonly pours: readonly { readonly name: string; readonly figures: readonly AsMadeFigure[] }[]
  readonly steps: readonly { readonly says: string; readonly when: string }[]
  readonly changed: readonly string[]
  readonly odd: readonly string[]
  readonly settings: readonly AsMadeSetting[]
  readonly photos: readonly AsMadePhoto[]
  readonly notes: readonly string[]
}

/**
 * The record of a build from its plan and its readings: recipe, levels, moments, minutes, what came otherwise.
 * @throws InputProblem when the piece cannot be used
 */
export function asMadeOf(input: PlanInput, asOf: string): AsMade {
  const quick = { ...input, effort: 'preview' as const, whole: null }
  const built = workOf(quick)
  const plan = built.readings.length === 0 ? built : workOf({ ...quick, readings: [] })
  const state = stateFrom(plan, built, asOf)
  const { readings, entries } = built
  const lengths = lengthsOf(built.shop)
  const mm = (x: number) => `${lengths.of(x, 1)} ${lengths.unit}`
  return {
    name: built.piece.name,
    asOf,
    says: state.says,
    timbers: entries.timbers.map(({ id, index }) => {
      const read = readings.flatMap(r => (r.kind === 'moisture' && r.timber === id ? [r.moisture] : []))
      return {
        name: `${id}: ${built.materials.timbers[index]!.name}`,
        figures: [
          {
            what: 'Moisture',
            planned: `${decimals(plan.seasons[index]!.moisturePct, 1)} %`,
            built: read.length === 0 ? null : read.map(pct => `${decimals(pct, 1)} %`).join(', ')
          }
        ]
      }
    }),
    pours: entries.pours.map(({ id, index, value }) => {
      const of = (kind: 'mixed' | 'poured') =>
        readings.flatMap(r => (r.kind === kind && r.pour === id && r.mass !== undefined ? [r.mass] : []))
      const sum = (list: readonly number[]) =>
        list.length === 0 ? null : formatMass(list.reduce((a, b) => a + b, 0))
      const heights = readings.flatMap(r => (r.kind === 'height' && r.pour === id ? [mm(r.height)] : []))
      const moments = readings.flatMap(r =>
        (r.kind === 'poured' || r.kind === 'mixed') && r.pour === id ? [momentWords(r.at)] : []
      )
      const tint = value.tint.map(t => `${t.pigment} ${decimals(t.percent, 2)} %`).join(', ')
      const pour = plan.stack.pours[index]!
      const lots = {
        planned: lotWords(mixLots(plan.needs, plan.shop, { pour: index })?.taken ?? []),
        built: lotWords(
          readings.flatMap(r => (r.kind === 'mixed' && r.pour === id && r.lot !== undefined ? [r.lot] : []))
        )
      }
      // What was poured sets the start of the piece as built: the plan's own is asked.
      const { start } = plan.piece.pours[index]!
      return {
        name: `${id}: ${built.materials.resins[index]!.name}${tint === '' ? '' : `, ${tint}`}`,
        figures: [
          {
            what: 'Mixed',
            planned: formatMass((plan.batches[index]?.mixedG ?? 0) * plan.quantity.blanks),
            built: sum(of('mixed'))
          },
          {
            what: 'Poured',
            planned: formatMass(pour.massG * plan.quantity.blanks),
            built: sum(of('poured'))
          },
          ...(lots.planned === '' && lots.built === ''
            ? []
            : [
                {
                  what: 'Lot',
                  planned: lots.planned === '' ? 'none known' : lots.planned,
                  built: lots.built === '' ? null : lots.built
                }
              ]),
          ...(value.kind === 'cast'
            ? [{ what: 'Level as cast', planned: mm(pour.level), built: heights.at(-1) ?? null }]
            : []),
          {
            what: 'When',
            planned: start === undefined ? 'as the days had it' : momentWords(start),
            built: moments[0] ?? null
          }
        ]
      }
    }),
    steps: state.steps.map(s => ({ says: s.says, when: whenOf(s) })),
    changed: state.changed.map(c => lengths.beside(c.says)),
    odd: state.contradictions.map(c => lengths.beside(c.says)),
    settings: settingsOf(built).map(s => ({ ...s, says: lengths.beside(s.says) })),
    photos: readings.flatMap(r => (r.kind === 'photo' ? [{ photo: r.photo, says: whenAndWhere(r) }] : [])),
    notes: readings.flatMap(r => (r.note === undefined || r.kind === 'photo' ? [] : [whenAndWhere(r)]))
  }
}

function whenAndWhere(r: Reading): string {
  const step = 'step' in r && r.step !== undefined ? `, ${r.step}` : ''
  return `${momentWords(r.at)}${step}${r.note === undefined ? '' : `: ${r.note}`}`
}

function whenOf(s: BuildState['steps'][number]): string {
  const took = s.minutes === null ? '' : `, took ${formatMinutes(s.minutes)}`
  if (s.doneAt !== null) return `done ${momentWords(s.doneAt)}${took}`
  if (s.progress === 'implied') return `done, no moment was read${took}`
  return s.beganAt === null ? 'not yet' : `begun ${momentWords(s.beganAt)}`
}
