import { nearest } from '../piece/nearest.ts'
import type { Problem } from '../piece/problem.ts'
import { InputProblem } from '../piece/problem.ts'
import { TROUBLES } from '../piece/reading-schema.ts'
import { standingReadings } from '../piece/standing-readings.ts'
import type { Planned } from '../plan.ts'
import { plan } from '../plan.ts'
import { keptOf } from '../quantity/kept.ts'
import type { PlanInput } from '../work.ts'
import { workOf } from '../work.ts'
import type { Condition, Question, Refusal, RescueCase, Trouble, TroubleKind } from './condition.ts'
import { CONDITIONS } from './conditions/every-condition.ts'
import { notedTroubles } from './noted.ts'
import { RANK_RULE, ranked } from './rank.ts'
import { stateFrom } from './state.ts'
import type { Reckoned } from './time-money.ts'
import { reckoned } from './time-money.ts'
import type { Base, ClosedWay, Way } from './weigh.ts'
import { weigh } from './weigh.ts'

/** What is asked for: one kind of trouble, or what the readings show; and what was answered. */
export interface RescueAsk {
  readonly asOf: string
  readonly what?: TroubleKind
  /** The entry it is about, where it is asked for. */
  readonly of?: string
  /** By how much, mm, where it is asked for. */
  readonly byMm?: number
  readonly answers?: Readonly<Record<string, string>>
  /** quick: ready by the first calendar found, machine minutes by area and feed. */
  readonly effort?: 'quick' | 'full'
}

/** One trouble with what is asked about it and the ways on, the best first. */
export interface Rescue {
  readonly trouble: Trouble
  readonly questions: readonly (Question & { readonly answer: string | null })[]
  /** Causes that were answered and cannot have been, with the arithmetic. */
  readonly refused: readonly Refusal[]
  readonly ways: readonly Way[]
  /** Ways that are not open, each with the reason: why there are no more. */
  readonly closed: readonly ClosedWay[]
  readonly rule: string
}

/**
 * Ways on after something went differently: for each trouble that was read or asked for, what is asked about it, and
 * each way re-planned and ranked. Prices and hours of the shop rank them; nothing says what the cause was.
 * @throws InputProblem when the piece cannot be used, or for an answer that nothing asks for
 */
export function rescues(input: PlanInput, ask: RescueAsk): Rescue[] {
  const { at, standing } = keptOf(stands, input, ask.asOf, () => asItStands(input, ask.asOf), MOST_STANDS)
  const found = troublesOf(at, ask)
  if (found.length === 0) {
    checkAnswers(ask, new Set())
    return []
  }
  const effort = ask.effort ?? 'full'
  const base: Base = {
    ...standing,
    reckoned: keptOf(reckonings, standing, effort, () => reckoned(at.input, standing.work, ask)),
    effort
  }
  const out = found.map(({ condition, trouble }) => one(at, base, condition, trouble, ask.answers ?? {}))
  const asked = new Set(out.flatMap(r => r.questions.map(q => q.key)))
  checkAnswers(ask, asked)
  return out
}

interface Standing {
  readonly at: RescueCase
  readonly standing: Planned
}

/** Moments a piece is kept for: each holds two whole plans, and the clock of an open page goes on. */
const MOST_STANDS = 2

// One trouble after the other is asked of the same piece, and answered anew: it stands as it stood.
const stands = new WeakMap<object, Map<string, Standing>>()
const reckonings = new WeakMap<object, Map<string, Reckoned>>()

function asItStands(input: PlanInput, asOf: string): Standing {
  const quick: PlanInput = { ...input, effort: 'preview', whole: null }
  const standing = plan(quick, { asOf, effort: 'preview' })
  const bare = standingReadings(input.readings ?? []).length === 0
  const planned = bare ? standing.work : workOf({ ...quick, readings: [] })
  return {
    at: {
      input: quick,
      plan: planned,
      built: standing.work,
      state: stateFrom(planned, standing.work, asOf),
      asOf
    },
    standing
  }
}

function checkAnswers(ask: RescueAsk, asked: ReadonlySet<string>): void {
  const unknown = Object.keys(ask.answers ?? {}).filter(k => !asked.has(k))
  if (unknown.length > 0)
    throw new InputProblem(
      'rescue',
      unknown.map(k => notAsked(k, [...asked]))
    )
}

/** Everything the readings show, or what is asked for. */
function troublesOf(
  at: RescueCase,
  ask: RescueAsk
): { readonly condition: Condition; readonly trouble: Trouble }[] {
  const wanted = CONDITIONS.filter(c => ask.what === undefined || c.kind === ask.what)
  const out = wanted.flatMap(condition => {
    const said = at.built.readings.flatMap((r): Trouble[] =>
      r.kind === 'trouble' && r.trouble === condition.kind
        ? [
            {
              kind: condition.kind,
              of: r.of ?? null,
              byMm: r.by ?? null,
              says: `${condition.kind}${r.of === undefined ? '' : `: ${r.of}`}${r.by === undefined ? '' : `, ${r.by} mm`}, as it was logged`,
              readings: [r.id]
            }
          ]
        : []
    )
    const found = condition.found(at).filter(t => !said.some(s => s.of === t.of || s.of === null))
    // What a number shows needs no words.
    const noted = found.length > 0 ? [] : notedTroubles(at, condition.kind)
    return [...said, ...found, ...noted].map(trouble => ({ condition, trouble: named(at, trouble, ask) }))
  })
  const same = out.filter(({ trouble }) => ask.of === undefined || trouble.of === ask.of)
  if (same.length > 0 || ask.what === undefined) return same
  const trouble: Trouble = {
    kind: ask.what,
    of: ask.of ?? null,
    byMm: ask.byMm ?? null,
    says: `${ask.what}${ask.of === undefined ? '' : `: ${ask.of}`}${ask.byMm === undefined ? '' : `, ${ask.byMm} mm`}, as you say`,
    readings: []
  }
  return wanted.map(condition => ({ condition, trouble: named(at, trouble, ask) }))
}

// A trouble asked for by a name that is not there is no trouble of this piece.
function named(at: RescueCase, trouble: Trouble, ask: RescueAsk): Trouble {
  const names = Object.values(at.built.entries)
    .flat()
    .map(e => e.id)
  if (trouble.of !== null && !names.includes(trouble.of) && trouble.of !== 'front' && trouble.of !== 'back') {
    if (trouble.readings.length > 0) return { ...trouble, of: null }
    const near = nearest(trouble.of, names)
    throw new InputProblem('rescue', [
      {
        path: '',
        found: `"${trouble.of}", which nothing of the piece is called`,
        allowed: names.join(', '),
        example: near === null ? '' : `"${near}"`
      }
    ])
  }
  return ask.byMm === undefined ? trouble : { ...trouble, byMm: ask.byMm }
}

function one(
  at: RescueCase,
  base: Base,
  condition: Condition,
  trouble: Trouble,
  answers: Readonly<Record<string, string>>
): Rescue {
  const blank = { ...at, trouble, answers: new Map<string, string>() }
  const questions = condition.questions(blank)
  const given = Object.entries(answers).filter(([k]) => questions.some(q => q.key === k))
  const problems = given.flatMap(([k, v]) => wrongAnswer(questions.find(q => q.key === k)!, v))
  if (problems.length > 0) throw new InputProblem('rescue', problems)
  const full = { ...blank, answers: new Map(given) }
  const weighed = condition.ways(full).map(draft => weigh(full, base, draft))
  return {
    trouble,
    questions: questions.map(q => ({ ...q, answer: full.answers.get(q.key) ?? null })),
    refused: condition.refused(full),
    ways: ranked(weighed.filter((w): w is Way => 'after' in w)),
    closed: weighed.filter((w): w is ClosedWay => 'why' in w),
    rule: RANK_RULE
  }
}

function wrongAnswer({ key, options, free }: Question, answer: string): Problem[] {
  const words = options.map(o => o.word)
  if (words.length > 0 ? words.includes(answer) : free !== 'mm' || /^[0-9]+(\.[0-9]+)?$/.test(answer))
    return []
  return [
    {
      path: `/${key}`,
      found: `"${answer}"`,
      allowed: words.length > 0 ? words.join(', ') : 'a number of mm',
      example: words.length > 0 ? `"${nearest(answer, words) ?? words[0]}"` : '"2"'
    }
  ]
}

function notAsked(key: string, asked: readonly string[]): Problem {
  return {
    path: `/${key}`,
    found: 'an answer to what is not asked',
    allowed: asked.length === 0 ? 'no answers: nothing is asked' : asked.join(', '),
    example: nearest(key, asked) ?? ''
  }
}

/** Kinds of trouble in words, for a list. */
export const RESCUE_KINDS: readonly { readonly kind: TroubleKind; readonly about: string }[] = TROUBLES.map(
  kind => ({ kind, about: CONDITIONS.find(c => c.kind === kind)?.about ?? '' })
)
