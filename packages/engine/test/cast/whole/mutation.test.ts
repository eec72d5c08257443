import { describe, expect, it } from 'vitest'
import { InputProblem } from '../../../src/piece/problem.ts'
import { plan } from '../../../src/plan.ts'
import { castRun } from '../../../src/whole.ts'
import { drawnInput } from '../../piece/mutation-half.ts'
import { notNumbers } from '../../piece/not-numbers.ts'

/** Pieces that are cast: few in the usual run, `npm run prove-all` raises it. */
const COUNT = Number(process.env['CASTWRIGHT_WHOLE'] ?? 3)
/** Looks after which a run that has not come to an end is one that hangs: thirty pours take a hundred. */
const MOST_LOOKS = 1000

describe('documents spoiled by lot', () => {
  it(
    `that can still be planned are cast as a whole mould: ${COUNT} of them, to plain numbers`,
    () => {
      const bad: string[] = []
      let cast = 0
      for (let seed = 1; cast < COUNT; seed++) {
        try {
          const input = drawnInput(seed)
          const run = castRun(input, { effort: 'preview' })
          if (run === null) continue
          let looks = 0
          while (!run.advance(100)) if (++looks > MOST_LOOKS) throw new Error('it does not end')
          const whole = run.best()!
          cast++
          const { plan: made } = plan(
            { ...input, whole },
            { asOf: '2026-11-01T08:00+01:00', effort: 'preview' }
          )
          bad.push(...notNumbers({ ...made, name: '' }).map(f => `seed ${seed}: ${f}`))
          if (!(Math.abs(whole.energy.closure) < 1e-3))
            bad.push(`seed ${seed}: closure ${whole.energy.closure}`)
        } catch (e) {
          if (!(e instanceof InputProblem))
            bad.push(`seed ${seed}: ${e instanceof Error ? e.stack : String(e)}`)
        }
        if (bad.length > 20) break
      }
      expect(bad.slice(0, 5)).toEqual([])
    },
    60_000 + COUNT * 30_000
  )
})
