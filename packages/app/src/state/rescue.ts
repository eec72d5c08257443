import { signal } from '@preact/signals'
import type { TroubleKind } from '../../../engine/src/rescue/condition.ts'
import type { Rescue, RescueAsk } from '../../../engine/src/rescue/rescues.ts'
import type { Way } from '../../../engine/src/rescue/weigh.ts'
import { newId } from '../net/api.ts'
import type { Answer } from '../worker/messages.ts'
import { momentAt } from './clock.ts'
import { edit } from './desk.ts'
import { deskFacts } from './desk-ask.ts'
import { engineAnswer } from './engine.ts'
import { record } from './sending.ts'

/** What went differently and the ways on; null: nothing was asked. */
export const rescued = signal<readonly Rescue[] | null>(null)
export const rescueSays = signal('')
export const rescuing = signal(false)

/** Asks for ways on: of one kind of trouble, or of what the readings show. */
export async function askRescue(
  what: TroubleKind | undefined,
  of: string | null,
  answers: Readonly<Record<string, string>> = {}
): Promise<void> {
  rescuing.value = true
  rescued.value ??= []
  const answer = await asked({
    ...(what === undefined ? {} : { what }),
    ...(of === null ? {} : { of }),
    answers
  })
  rescuing.value = false
  if (answer === null) return
  if (answer.kind === 'rescue') {
    rescued.value = answer.rescues
    rescueSays.value = ''
  } else if (answer.kind === 'refused')
    rescueSays.value = answer.problems.map(p => `${p.found}; ${p.allowed}`).join('. ')
  else if (answer.kind === 'failed') rescueSays.value = answer.says
}

/** Looks whether a reading breaks the plan: what rests on it appears. */
export async function probe(reading: string): Promise<void> {
  const answer = await asked({})
  if (answer?.kind !== 'rescue' || rescued.value !== null) return
  const broken = answer.rescues.filter(r => r.trouble.readings.includes(reading))
  if (broken.length > 0) rescued.value = broken
}

async function asked(ask: Omit<RescueAsk, 'asOf'>): Promise<Answer | null> {
  const facts = deskFacts()
  return facts === null
    ? null
    : engineAnswer({ kind: 'rescue', ...facts, asOf: new Date().toISOString(), ask })
}

/** Puts it away: the step stands there again. */
export function endRescue(): void {
  rescued.value = null
  rescueSays.value = ''
}

/** Goes on by a way: the piece is changed, and that it went differently stays on record. */
export function takeWay({ trouble }: Rescue, way: Way): void {
  if (trouble.readings.length === 0)
    void record({
      kind: 'trouble',
      trouble: trouble.kind,
      ...(trouble.of === null ? {} : { of: trouble.of }),
      ...(trouble.byMm === null ? {} : { by: trouble.byMm }),
      note: `${way.does} (${trouble.says})`.slice(0, 300),
      id: newId(),
      at: momentAt(Date.now())
    })
  if (way.patch.length > 0) edit(way.does, way.patch)
  endRescue()
}
