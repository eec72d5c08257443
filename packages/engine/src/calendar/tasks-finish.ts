import type { FaceFinish } from '../finish/faces.ts'
import { sandedAt } from '../finish/sands-at.ts'
import { faceM2 } from './machine-minutes.ts'
import { PRACTICE_WAIT } from './practice-minutes.ts'
import type { OnStep, Reckoned, TaskList } from './task-list.ts'
import { byModel, byPractice } from './task-list.ts'
import type { TaskWork } from './task-work.ts'

/** Sanding that belongs to a step, grade by grade; `plain`: the step itself is sanding. */
export function sandIt(
  list: TaskList,
  on: OnStep,
  work: TaskWork,
  index: number,
  plain: boolean,
  after: readonly string[]
): string[] {
  const there = sandedAt(work.faces, work.steps, index)
  let last = [...after]
  for (const { face, ladder, pastesUm, under } of there) {
    for (const { grade, minutes } of ladder.steps)
      last = [
        list.add(
          on,
          {
            what: `${face} P${grade.grit}${under ? ' under the flood' : ''}`,
            kind: 'sand',
            says: `Sand the ${face} with P${grade.grit}`,
            takes: byModel(minutes, 'by area, passes and discs: coat/ladder.ts'),
            times: on.blanks
          },
          last
        )
      ]
    if (pastesUm.length > 0)
      last = [
        list.add(
          on,
          {
            what: `${face} polish`,
            kind: 'sand',
            says: `Polish the ${face} with ${pastesUm.length} pastes`,
            takes: byPractice('sand', pastesUm.length, faceM2(work)),
            times: on.blanks
          },
          last
        )
      ]
  }
  if (there.length === 0 && plain)
    last = [
      list.add(
        on,
        {
          what: '',
          kind: 'sand',
          says: on.step.says,
          takes: byPractice('sand', 1, faceM2(work)),
          times: on.blanks
        },
        last
      )
    ]
  return last
}

/**
 * A coat is laid on so many blanks of a row in one go, min: half a day; of a flood as long as its bubbles rise (practice).
 * What goes on longer is parted, so that the wait of the first blank is that of the last.
 */
const COAT_ROW_MIN = { flood: 30, other: 180 } as const

/** The coats of a step, each with its wait and the paper between; returns the last coat of each face. */
export function coatIt(list: TaskList, on: OnStep, work: TaskWork, after: readonly string[]): string[] {
  const faces = work.faces.filter(
    f => f.coat !== null && f.coats > 0 && (on.step.face === 'both' || on.step.face === f.face)
  )
  if (faces.length === 0) return [...after]
  const each = faces.reduce((sum, f) => sum + coatTakes(f).minutes, 0)
  const most = faces.some(f => f.coat!.kind === 'flood') ? COAT_ROW_MIN.flood : COAT_ROW_MIN.other
  const rows = Math.min(on.blanks, Math.ceil((on.blanks * each) / most))
  if (rows <= 1) return coatRow(list, on, faces, after).ends
  const edge = (k: number) => Math.round((k * on.blanks) / rows)
  let before: readonly string[] = []
  return Array.from({ length: rows }, (_, k) => {
    const [from, to] = [edge(k) + 1, edge(k + 1)]
    const part = from === to ? `blank ${from}` : `blanks ${from} to ${to}`
    const own = coatRow(list, { ...on, blanks: to - from + 1, part }, faces, after)
    // Blanks are taken in their order, coat by coat.
    before.forEach((id, i) => {
      list.gap({ before: id, after: own.coats[i]!, says: 'one blank after the other' })
    })
    before = own.coats
    return own.ends
  }).flat()
}

function coatTakes(f: FaceFinish): Reckoned {
  const { eachMin } = f.coating ?? { eachMin: null }
  return eachMin === null
    ? byPractice('coat', 1, f.areaM2)
    : byModel(eachMin, 'by area and way of laying on: finish/coating.ts')
}

function coatRow(
  list: TaskList,
  on: OnStep,
  faces: readonly FaceFinish[],
  after: readonly string[]
): { readonly coats: readonly string[]; readonly ends: string[] } {
  const coats: string[] = []
  const most = Math.max(...faces.map(f => f.coats))
  const laid = new Map<FaceFinish, string>()
  let last = [...after]
  for (let k = 1; k <= most; k++)
    for (const f of faces.filter(f => f.coats >= k)) {
      const coat = f.coat!
      const before = laid.get(f)
      let between: string | null = null
      if (before !== undefined && coat.betweenGrit !== null) {
        between = list.add(
          on,
          {
            what: `${f.face} between coats ${k - 1} and ${k}`,
            kind: 'sand',
            says: `Sand the ${f.face} lightly with P${coat.betweenGrit[1]}`,
            takes: byPractice('betweenCoats', 1, f.areaM2),
            times: on.blanks
          },
          last
        )
        list.gap({
          before,
          after: between,
          leastMin: coat.recoatH[0] * 60,
          says: `${coat.name}: dry enough for paper`
        })
        last = [between]
      }
      const id = list.add(
        on,
        {
          what: `${f.face} coat ${k}`,
          kind: 'coat',
          says: `Coat ${k} of ${f.coats} on the ${f.face}: ${coat.name}`,
          takes: coatTakes(f),
          times: on.blanks,
          mayPause: false
        },
        last
      )
      if (before !== undefined) {
        const [from, to] = coat.recoatH
        const late =
          coat.late === 'nothing' || between !== null ? null : `${coat.late} it before the next coat`
        list.gap({
          before,
          after: id,
          leastMin: from * 60,
          mostMin: to === null || late === null ? null : to * 60,
          says: `recoat window of the ${coat.name}`,
          late,
          soft: true
        })
      }
      if (coat.kind === 'flood') watchFlood(list, on, id, f)
      laid.set(f, id)
      coats.push(id)
      last = [id]
    }
  return { coats, ends: [...laid.values()] }
}

/** Passes of the heat gun over a flood of the finish, min after it: practice. */
const FLOOD_PASSES = [5, 15, 30] as const

function watchFlood(list: TaskList, on: OnStep, coat: string, f: FaceFinish): void {
  const watch = list.add(
    on,
    {
      what: `${f.face} watch`,
      kind: 'watch',
      says: `Stay by the flood on the ${f.face}: drips and bubbles`,
      takes: {
        minutes: PRACTICE_WAIT.watched,
        basis: { from: 'practice', says: 'one to two hours: common practice, no source' }
      },
      mayPause: false,
      needs: []
    },
    []
  )
  list.gap({ before: coat, after: watch, mostMin: 0, says: 'watched from the pour on' })
  for (const moment of FLOOD_PASSES) {
    const pass = list.add(
      on,
      {
        what: `${f.face} bubbles`,
        kind: 'bubbles',
        says: `Go over the ${f.face} with the heat gun`,
        takes: byPractice('bubblePass', 1, on.blanks * f.areaM2),
        mayPause: false
      },
      [coat]
    )
    list.gap({
      before: coat,
      after: pass,
      leastMin: moment - PRACTICE_WAIT.passSlack,
      mostMin: moment + 2 * PRACTICE_WAIT.passSlack,
      says: 'bubbles of the flood: while they still rise and break',
      late: 'bubbles stay in it'
    })
  }
}
