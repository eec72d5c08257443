import { POUR_MIN_A_BLANK, POUR_MIN_PER_KG } from '../cast/batches.ts'
import { leastHeatLimit, ROUND_PEAK_MIN, WELL_UNDER_K } from '../cast/peak-limit.ts'
import { mixingOf } from '../catalogue/mixing.ts'
import { PRACTICE_WAIT } from './practice-minutes.ts'
import type { OnStep, TaskList } from './task-list.ts'
import { byDocument, byModel, byPractice } from './task-list.ts'
import type { TaskWork } from './task-work.ts'

/** A pour as the tasks after it see it: what closes counts from its first stir, what opens from its last batch. */
export interface Poured {
  readonly index: number
  readonly id: string
  /** Task of the first stir. */
  readonly mix: string
  /** Task of the last batch poured. */
  readonly pour: string
}

/** A pour: weighed, stirred and poured batch by batch, watched, bubbles, stones and colours in their time. */
export function pourIt(
  list: TaskList,
  on: OnStep,
  work: TaskWork,
  after: readonly string[]
): { readonly poured: Poured; readonly ends: readonly string[] } {
  const { index, id, value } = on.step.pour!
  const batches = work.rounds[index]?.batches ?? null
  const mixed = batches?.mixed ?? null
  const allowed = mixed?.allowedMin ?? null
  const way = mixingOf(value.mixing)
  const count = mixed?.count ?? 1
  const batchG = (batches?.mixedG ?? 0) / count
  const brushed =
    value.kind === 'seal'
      ? byPractice('brush', on.blanks, (on.blanks * work.stack.pours[index]!.surfaceMm2) / 1e6)
      : null
  const inMould = value.kind === 'cast' ? ['mould'] : []
  const pigments = value.tint.length + (value.marbling ?? []).reduce((n, m) => n + m.tint.length, 0)
  const weigh = byPractice('weigh', count)
  const tint = byPractice('pigment', count * pigments)
  let last = list.add(
    on,
    {
      what: 'weigh',
      kind: 'mix',
      says: `Weigh ${count === 1 ? 'the batch' : `${count} batches`} of ${id}`,
      takes: {
        minutes: weigh.minutes + tint.minutes,
        basis:
          pigments === 0
            ? weigh.basis
            : { from: 'practice', says: `${weigh.basis.says}; a pigment ${tint.basis.says}` }
      },
      needs: ['hands', 'vessels']
    },
    after
  )
  const standing = value.minutes
  let first: string | null = null
  let pouredBefore: string | null = null
  for (let k = 1; k <= count; k++) {
    const number = count === 1 ? '' : ` ${k}`
    const mix = list.add(
      on,
      {
        what: `mix${number}`,
        kind: 'mix',
        says: count === 1 ? `Mix ${id}` : `Mix batch ${k} of ${id}`,
        takes: byModel(way.minutes, `${way.name}: ${way.source}`),
        mayPause: false,
        needs: ['hands', 'vessels']
      },
      [last]
    )
    first ??= mix
    const pourMin = Math.max(
      (POUR_MIN_PER_KG * batchG) / 1000,
      (POUR_MIN_A_BLANK * on.blanks) / count,
      POUR_MIN_A_BLANK
    )
    const pour = list.add(
      on,
      {
        what: `pour${number}`,
        kind: 'pour',
        says: count === 1 ? on.step.says : `${brushed === null ? 'Pour' : 'Brush on'} batch ${k} of ${id}`,
        takes:
          standing !== undefined
            ? byDocument(Math.max(1, standing - way.minutes))
            : brushed !== null
              ? { ...brushed, minutes: brushed.minutes / count }
              : byModel(pourMin, `${POUR_MIN_PER_KG} min a kilogram: common practice, no source`),
        mayPause: false,
        needs: ['hands', ...inMould]
      },
      [mix]
    )
    list.gap({
      before: mix,
      after: pour,
      from: 'start',
      to: 'end',
      // Whole minutes are placed: each is rounded up.
      mostMin:
        allowed === null
          ? null
          : Math.max(allowed, Math.ceil(way.minutes) + Math.ceil(list.task(pour).minutes)),
      says: `${id}: out of the cup before it sets there`,
      late: 'it heats up and sets in the cup'
    })
    // Where a blank is full the next batch begins another: there is no seam.
    if (pouredBefore !== null && brushed === null && ((k - 1) * on.blanks) % count !== 0)
      list.gap({
        before: pouredBefore,
        after: pour,
        mostMin: PRACTICE_WAIT.betweenBatches + way.minutes + pourMin,
        says: `${id}: batches run into each other`,
        late: 'a seam shows between two batches'
      })
    pouredBefore = pour
    last = pour
  }
  const poured: Poured = { index, id, mix: first!, pour: last }
  const ends = value.kind === 'seal' ? [last] : afterPour(list, on, work, poured)
  ends.push(
    list.add(
      on,
      { what: 'clean up', kind: 'watch', says: 'Clean the vessels and tools', takes: byPractice('cleanUp') },
      [last]
    )
  )
  return { poured, ends }
}

// What follows a pour while it is liquid, and near its peak.
function afterPour(list: TaskList, on: OnStep, work: TaskWork, poured: Poured): string[] {
  const { index, id } = poured
  const { value } = on.step.pour!
  const cast = work.casts[index] ?? null
  const areaM2 = (on.blanks * work.stack.pours[index]!.surfaceMm2) / 1e6
  const ends: string[] = []
  const watch = list.add(
    on,
    {
      what: 'watch',
      kind: 'watch',
      says: `Stay by ${id}: bubbles, leaks, level. Other work can be done beside it`,
      takes: {
        minutes: PRACTICE_WAIT.watched,
        basis: { from: 'practice', says: 'one to two hours: common practice, no source' }
      },
      mayPause: false,
      needs: []
    },
    []
  )
  list.gap({ before: poured.pour, after: watch, mostMin: 0, says: `${id} is watched from the pour on` })
  ends.push(watch)
  const moments = cast?.windows.passes.moments ?? []
  let before = poured.pour
  moments.forEach((moment, k) => {
    const pass = list.add(
      on,
      {
        what: `bubbles ${k + 1}`,
        kind: 'bubbles',
        says: `Go over ${id} with the heat gun`,
        takes: byPractice('bubblePass', 1, areaM2),
        mayPause: false
      },
      [before]
    )
    list.gap({
      before: poured.pour,
      after: pass,
      leastMin: Math.max(0, moment - PRACTICE_WAIT.passSlack),
      mostMin: moment + PRACTICE_WAIT.passSlack + (k === 0 ? PRACTICE_WAIT.passSlack : 0),
      says: `bubbles of ${id}: while they still rise and break`,
      late: 'bubbles stay in it'
    })
    before = pass
    ends.push(pass)
  })
  if (cast === null) return ends
  const inWindow = (
    task: string,
    window: { readonly open: number; readonly close: number | null },
    says: string,
    late: string
  ) => {
    list.gap({ before: poured.pour, after: task, leastMin: window.open, says })
    if (window.close !== null)
      list.gap({
        before: poured.mix,
        after: task,
        from: 'start',
        to: 'end',
        mostMin: Math.max(window.close, window.open + list.task(task).minutes),
        says,
        late
      })
    ends.push(task)
  }
  const { marbling, stones } = cast.windows
  if (value.marbling !== undefined && marbling !== null) {
    const task = list.add(
      on,
      {
        what: 'marble',
        kind: 'marble',
        says: `Draw the colours of ${id}`,
        takes: byPractice('marble', on.blanks, areaM2),
        mayPause: false
      },
      [poured.pour]
    )
    inWindow(
      task,
      marbling,
      `colours of ${id}: the trail of a stick holds but still flows`,
      'the colours run to mud, or no longer flow'
    )
  }
  if (stones !== null && value.stones.some(s => s.set === 'into the pour')) {
    const task = list.add(
      on,
      {
        what: 'stones',
        kind: 'stones',
        says: `Put the stones into ${id}`,
        takes: stonesTake(on, areaM2, 'into the pour'),
        mayPause: false
      },
      [poured.pour]
    )
    inWindow(
      task,
      stones,
      `stones of ${id}: they stay where they are put`,
      'they sink too deep, or lie on top'
    )
  }
  const near = cast.peakBandC[1] > leastHeatLimit(work.piece, work.materials, index)[0] - WELL_UNDER_K
  if (near) {
    const peak = list.add(
      on,
      {
        what: 'peak',
        kind: 'watch',
        says: `Be there when ${id} is hottest, near a limit`,
        takes: byModel(
          2 * ROUND_PEAK_MIN,
          `${ROUND_PEAK_MIN} min on either side of the peak of the cure model`
        ),
        mayPause: false,
        needs: []
      },
      [poured.pour]
    )
    const least = Math.max(0, cast.peakMin - ROUND_PEAK_MIN)
    list.gap({
      before: poured.mix,
      after: peak,
      from: 'start',
      leastMin: least,
      mostMin: least + ROUND_PEAK_MIN,
      says: `${id} is hottest then, near a limit: somebody has to be there`,
      late: 'nobody sees it overheat'
    })
    ends.push(peak)
  }
  return ends
}

/** Stones laid out before a pour or on the tacky layer below it. */
export function setStones(
  list: TaskList,
  on: OnStep,
  work: TaskWork,
  before: Poured | undefined,
  after: readonly string[]
): string[] {
  const areaM2 = (on.blanks * work.stack.pours[on.step.pour!.index]!.surfaceMm2) / 1e6
  const task = list.add(
    on,
    { what: '', kind: 'stones', says: on.step.says, takes: stonesTake(on, areaM2, null) },
    after
  )
  const tacky = before === undefined ? undefined : work.casts[before.index]?.windows.tacky
  if (before !== undefined && tacky !== undefined && on.step.pour!.value.stones.some(onTacky)) {
    const says = `stones stick to ${before.id} and no longer sink in`
    list.gap({ before: before.pour, after: task, leastMin: tacky.open, says })
    if (tacky.close !== null)
      list.gap({
        before: before.mix,
        after: task,
        from: 'start',
        mostMin: Math.max(tacky.close, tacky.open + 1),
        says,
        late: 'they lie loose on it',
        soft: true
      })
  }
  return [task]
}

function onTacky({ set }: { readonly set: string }): boolean {
  return set === 'on the tacky layer'
}

function stonesTake(on: OnStep, areaM2: number, set: 'into the pour' | null) {
  const those = on.step.pour!.value.stones.filter(s => (s.set === 'into the pour') === (set !== null))
  const single = on.blanks * those.reduce((sum, s) => sum + (s.placed?.length ?? 0), 0)
  const zones = on.blanks * those.filter(s => s.placed === undefined).length
  const one = byPractice('stone', single)
  const zone = byPractice('stonesZone', zones, zones > 0 ? areaM2 : 0)
  return {
    minutes: Math.max(1, one.minutes + zone.minutes),
    basis: { from: 'practice' as const, says: `a stone ${one.basis.says}; a zone ${zone.basis.says}` }
  }
}
