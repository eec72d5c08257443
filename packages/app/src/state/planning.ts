import { batch, effect, untracked } from '@preact/signals'
import { modelFrom } from '../../../engine/src/sheets/page-data.ts'
import { loadPathMap } from '../late/path-map.ts'
import type { Answer } from '../worker/messages.ts'
import { deskFacts } from './desk-ask.ts'
import { askEngine, stopEngine } from './engine.ts'
import { handHolds } from './hand.ts'
import { castShare, failure, picture, pictured, piece, problems, stale, view } from './open-piece.ts'
import { units } from './preferences.ts'
import { face, width } from './screen.ts'

/** How long the desk rests before the full pass of heat and cure, ms. */
const REST_MS = 350

let asked = 0
let drawnFor = ''
let rest: ReturnType<typeof setTimeout> | undefined

/**
 * Plans what is on the desk: a first pass at once, the full pass when the hand rests; that one goes on with the cast
 * of the whole mould, coarse first, and is shown anew each time it grew better.
 */
export function plan(): void {
  clearTimeout(rest)
  ask('preview')
}

/** Waits for no plan any more. */
export function stopPlanning(): void {
  clearTimeout(rest)
  asked = 0
  castShare.value = null
  stopEngine()
}

function ask(effort: 'preview' | 'full'): void {
  const facts = deskFacts()
  const at = piece.value
  if (facts === null || at === null) return
  if (view.value !== null && effort === 'preview') stale.value = true
  castShare.value = null
  asked = askEngine(
    {
      kind: 'plan',
      ...facts,
      asOf: new Date().toISOString(),
      width: width.value,
      face: face.value,
      shown: units.value,
      effort
    },
    answer => {
      const arrived = { answer, id: at.id }
      if (handHolds.value && answer.kind === 'planned') waiting = arrived
      else show(arrived)
    }
  )
}

interface Arrived {
  readonly answer: Answer
  readonly id: string
}

/** What came while a hand held something: the last of it is shown when it lets go. */
let waiting: Arrived | null = null

effect(() => {
  if (handHolds.value || waiting === null) return
  const arrived = waiting
  waiting = null
  show(arrived)
})

function show({ answer, id }: Arrived): void {
  // An answer to what is no longer on the desk is not shown.
  if (answer.seq !== asked || piece.peek()?.id !== id) return
  batch(() => {
    if (answer.kind === 'planned') {
      pictured.value = `${answer.view.plane.view.face} ${answer.view.model}`
      view.value = { ...answer.view, model: modelFrom(JSON.parse(answer.view.model)) }
      stale.value = false
      problems.value = []
      failure.value = null
    } else if (answer.kind === 'refused') problems.value = answer.problems
    else if (answer.kind === 'failed') failure.value = answer.says
    castShare.value = castingOf(answer)
  })
  if (answer.kind === 'planned') void loadPathMap().catch(() => undefined)
  if (answer.kind === 'planned' && answer.view.effort === 'full') paint(answer.view.plane.view.face)
  if (answer.kind === 'planned' && answer.view.effort === 'preview')
    rest = setTimeout(() => ask('full'), REST_MS)
}

// The picture of what is shown, unless it is there already. It comes before the cast goes on.
function paint(side: 'front' | 'back'): void {
  const of = pictured.peek()
  const facts = untracked(deskFacts)
  if (picture.peek()?.of === of || facts === null) return
  askEngine({ kind: 'picture', ...facts, face: side }, answer => {
    if (answer.kind === 'picture') picture.value = { of, placed: answer.picture }
  })
}

// How far the cast is that this answer belongs to; null: none goes on.
function castingOf(answer: Answer): number | null {
  if (answer.kind === 'planned' && answer.view.effort === 'preview') return null
  return 'share' in answer && answer.share < 1 ? answer.share : null
}

// Another face, another width of the screen, other units: another drawing.
effect(() => {
  const now = `${face.value} ${width.value} ${Object.values(units.value)}`
  if (drawnFor !== '' && drawnFor !== now) plan()
  drawnFor = now
})
