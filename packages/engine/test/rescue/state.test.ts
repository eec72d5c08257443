import { describe, expect, it } from 'vitest'
import { daysOf } from '../../src/days.ts'
import { stateOf } from '../../src/rescue/state.ts'
import { finishedThickness } from '../../src/stack/stack.ts'
import { stepKeys } from '../../src/steps/step-key.ts'
import { workOf } from '../../src/work.ts'
import { AS_OF, inputOf, PANEL, reading } from './bench.ts'

const poured = (hour = 9, mass = 820) => reading(hour, { kind: 'poured', pour: 'green', mass })
const height = (mm: number, hour = 20) => reading(hour, { kind: 'height', pour: 'green', height: mm })

describe('what was read stands in the place of what was planned', () => {
  it('a height: levels, volumes left and covers follow from it, by hand', () => {
    const planned = workOf(inputOf())
    const built = workOf(inputOf([height(11.2)]))
    expect(built.stack.pours[0]!.level).toBe(11.2)
    // The gap between the boards is 166 x 266 (their edges stand 3 mm over the outline), and the margin of the mould
    // round all of it; what the clear takes more is the area of the free space times 0.8 mm.
    const { surfaceMm2, level } = planned.stack.pours[0]!
    expect(level).toBeCloseTo(12, 9)
    const more = built.stack.pours[1]!.filledMl - planned.stack.pours[1]!.filledMl
    expect(more).toBeCloseTo((surfaceMm2 * 0.8) / 1000, 3)
    expect(built.stack.pours[1]!.level).toBe(planned.stack.pours[1]!.level)
    expect(built.stack.pours[1]!.floor).toBe(11.2)
    // As if the document had said so.
    const said = workOf(
      inputOf([], { ...PANEL, pours: [{ ...PANEL.pours[0], depth: 11.2 }, PANEL.pours[1]] })
    )
    expect(built.stack.pours[1]!.massG).toBeCloseTo(said.stack.pours[1]!.massG, 9)
    expect(built.batches[1]!.mixedG).toBeCloseTo(said.batches[1]!.mixedG, 9)
  })

  it('a height over what comes next leaves that nothing, and the plan still stands', () => {
    const built = workOf(inputOf([height(25.4)]))
    expect(built.stack.pours[0]!.level).toBe(25.4)
    expect(built.stack.pours[1]!.massG).toBe(0)
    expect(built.stack.castHeight).toBe(26)
  })

  it('a height under what lies below is kept, told, and not planned by', () => {
    const odd = reading(30, { kind: 'height', pour: 'clear', height: 9 })
    const input = inputOf([height(11.2), odd])
    expect(workOf(input).stack.pours[1]!.level).toBe(25)
    expect(stateOf(input, AS_OF).contradictions.map(c => c.says)).toEqual([
      'clear was read 9.0 mm high, and what it lies on stands at 11.2 mm: one of the two is wrong. It is not planned by.'
    ])
  })

  it('the moment of a pour: the wait until the next one is the real one', () => {
    const input = inputOf([poured(9), reading(9 + 60, { kind: 'mixed', pour: 'clear', mass: 900 })])
    const work = workOf(input)
    const k = work.steps.findIndex(s => s.kind === 'pour' && s.pour!.id === 'clear')
    expect(work.clock[k]!.startMin).toBe(60 * 60)
    expect(work.casts[1]!.startMin).toBe(60 * 60)
  })

  it('a thickness after a flattening that is done: what was taken off, and the finished piece', () => {
    const planned = workOf(inputOf())
    const key = stepKeys(planned.steps)[planned.steps.findIndex(s => s.kind === 'flatten')]!
    const after = planned.stack.states[planned.steps.findIndex(s => s.kind === 'flatten')]!
    const mm = after.highZ - after.lowZ - 0.7
    const built = workOf(
      inputOf([reading(200, { kind: 'done', step: key }), reading(201, { kind: 'thickness', thickness: mm })])
    )
    expect(finishedThickness(built.stack)).toBeCloseTo(finishedThickness(planned.stack) - 0.7, 9)
    // Without knowing which flattening is done it tells only what it told before.
    const alone = workOf(inputOf([reading(201, { kind: 'thickness', thickness: mm })]))
    expect(finishedThickness(alone.stack)).toBe(finishedThickness(planned.stack))
  })

  it('a film that was measured', () => {
    const built = workOf(inputOf([reading(300, { kind: 'film', face: 'back', film: 0.07 })]))
    expect(built.faces[1].filmMm).toEqual([0.07, 0.07, 0.07])
    expect(built.faces[0].filmMm).toEqual(workOf(inputOf()).faces[0].filmMm)
  })
})

describe('the state of a build', () => {
  it('begins with nothing, and ends with everything', () => {
    const none = stateOf(inputOf(), AS_OF)
    expect(none).toMatchObject({ next: 0, stands: [], changed: [], contradictions: [] })
    expect(none.says).toMatch(/^Nothing is begun\. First: /)
    const all = stateOf(
      inputOf(none.steps.map((s, i) => reading(10 + i, { kind: 'done', step: s.key }))),
      '2027-01-30T12:00+01:00'
    )
    expect(all.next).toBe(null)
    expect(all.says).toBe('All steps are done.')
    expect(all.contradictions).toEqual([])
  })

  it('takes what came before as done, and says what stands, what changed and what is left', () => {
    const state = stateOf(
      inputOf([poured(9), height(11.2), reading(9.2, { kind: 'minutes', step: 'pour green', minutes: 25 })]),
      AS_OF
    )
    const at = state.steps.findIndex(s => s.key === 'pour green')
    expect(state.steps.slice(0, at).every(s => s.progress === 'implied')).toBe(true)
    expect(state.steps[at]).toMatchObject({
      progress: 'done',
      beganAt: '2026-12-05T09:00+01:00',
      minutes: 25
    })
    expect(state.stands).toContain('it is in its mould')
    expect(state.stands.join()).toMatch(/green stands: 820 g poured, 11\.2 mm high as read/)
    expect(state.changed.map(c => c.what)).toContain('level')
    expect(state.changed[0]!.says).toBe('green stands 11.2 mm high as cast, 0.8 mm lower than planned')
    expect(state.left.join()).toMatch(/of clear to pour/)
  })

  it('a wait is begun when what is before it is done, and over when its time is', () => {
    const input = inputOf([
      reading(9, { kind: 'began', step: 'pour green' }),
      reading(9.5, { kind: 'done', step: 'pour green' })
    ])
    const work = workOf(input)
    const k = work.steps.findIndex(s => s.kind === 'wait')
    const ends = Date.parse('2026-12-05T09:30+01:00') + work.clock[k]!.waitMin * 60_000
    const stateAt = (ms: number) =>
      stateOf(input, new Date(ms).toISOString().replace(/\.\d+Z$/, 'Z')).steps[k]!.progress
    expect(stateAt(ends - 60_000)).toBe('begun')
    expect(stateAt(ends + 60_000)).toBe('implied')
  })

  it('a pour of which too little was read is being poured until that has gelled, and over then', () => {
    const some = inputOf([poured(), reading(30, { kind: 'poured', pour: 'clear', mass: 500 })])
    const of = (asOf: string) => stateOf(some, asOf).steps.find(s => s.key === 'pour clear')!.progress
    expect(of('2026-12-06T06:30+01:00')).toBe('begun')
    // A slow resin has gelled after four days, whatever is missing: and the rest of the build still has its days.
    expect(of('2026-12-10T08:00+01:00')).toBe('done')
    expect(daysOf(some, { asOf: '2026-12-10T08:00+01:00' }).clash).toBe(null)
  })

  it('withdrawn readings count nowhere', () => {
    const slip = height(3)
    const back = reading(21, { kind: 'withdrawn', reading: slip.id })
    expect(stateOf(inputOf([slip, back]), AS_OF)).toEqual(stateOf(inputOf(), AS_OF))
  })
})

describe('readings that contradict each other are kept and told', () => {
  const says = (...r: ReturnType<typeof reading>[]) =>
    stateOf(inputOf(r), AS_OF)
      .contradictions.map(c => c.says)
      .join('\n')
  const of = (hour: number, kind: string, more: object) => reading(hour, { kind, ...more })
  it.each([
    [
      'a name',
      () => says(of(9, 'height', { pour: 'gren', height: 11 })),
      'of the pour “gren”, which the piece does not have; the nearest is “green”'
    ],
    ['a step', () => says(of(9, 'done', { step: 'pour gren' })), 'of the step “pour gren”'],
    ['a moment ahead', () => says(of(9 + 72, 'humidity', { humidity: 50 })), 'lies ahead of now'],
    [
      'done before begun',
      () => says(of(10, 'began', { step: 'pour green' }), of(9, 'done', { step: 'pour green' })),
      'was done before it was begun'
    ],
    [
      'poured before mixed',
      () => says(of(10, 'mixed', { pour: 'green' }), of(9, 'poured', { pour: 'green', mass: 5 })),
      'green was poured before it was mixed'
    ],
    [
      'out of the mould before the pour',
      () => says(of(9, 'demoulded', {}), of(12, 'poured', { pour: 'clear', mass: 900 })),
      'it left the mould before a pour into it'
    ],
    [
      'stages that go back',
      () =>
        says(
          of(12, 'stage', { pour: 'green', stage: 'hard' }),
          of(14, 'stage', { pour: 'green', stage: 'tacky' })
        ),
      'resin does not go back'
    ],
    [
      'two heights',
      () => says(height(11.2, 20), height(14, 21)),
      'green was read 11.2 mm high, and 14.0 mm at 2026-12-05 21:00: the last one is planned by'
    ],
    [
      'more poured than mixed',
      () => says(of(9, 'mixed', { pour: 'green', mass: 500 }), poured(9.2, 820)),
      '820 g were poured of green, and 500 g mixed: 64 % more'
    ]
  ])('%s', (_, found, words) => {
    expect(found()).toContain(words)
  })

  it('sound readings contradict nothing', () => {
    expect(
      says(
        of(9, 'mixed', { pour: 'green', mass: 860 }),
        poured(9.2),
        height(11.9),
        of(18, 'stage', { pour: 'green', stage: 'gelled' })
      )
    ).toBe('')
  })
})
