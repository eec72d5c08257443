import { z } from 'zod'
import { choice, id, length, moment, span, words } from './field.ts'

const when = {
  at: moment('when it begins').optional(),
  note: words('a note').optional()
}
const face = choice('which face', ['front', 'back'])

const one = <const D extends string>(word: D, description: string) =>
  z.strictObject({ do: z.literal(word), ...when }).meta({ description })

/** One thing done to the piece, in order. The word in `do` says what. */
export const stepField = z
  .discriminatedUnion('do', [
    z.strictObject({ do: z.literal('prepare timber'), what: id('a timber').optional(), ...when }),
    one('make mould', 'cut, join, line, level and test the mould'),
    z.strictObject({ do: z.literal('set timber'), what: id('a timber').optional(), ...when }),
    z.strictObject({ do: z.literal('pour'), what: id('a pour'), ...when }),
    z.strictObject({ do: z.literal('set stones'), what: id('a pour'), ...when }),
    z.strictObject({
      do: z.literal('wait'),
      for: span('how long; left out: as long as what it waits for takes').optional(),
      until: choice('what has to bear by then: the next pour, leaving the mould, a cutter, paper, load', [
        'recoat',
        'demould',
        'machine',
        'sand',
        'load'
      ]).optional(),
      ...when
    }),
    one('demould', 'take it out of the mould'),
    one('turn over', 'the other face comes up'),
    one('drill pins', 'holes that tie both faces to one datum'),
    z.strictObject({
      do: z.literal('flatten'),
      face,
      by: length('what comes off; left out: the allowance of the piece', 0, 100).optional(),
      ...when
    }),
    z.strictObject({ do: z.literal('cut'), what: id('a cut'), ...when }),
    z.strictObject({ do: z.literal('mark'), what: id('a marking'), ...when }),
    z.strictObject({ do: z.literal('fill'), what: id('a marking'), ...when }),
    z.strictObject({ do: z.literal('sand'), face, by: length('what comes off', 0, 20).optional(), ...when }),
    one('trim', 'what stands round the outline sawn or routed off'),
    one('work edges', 'the edges worked'),
    z.strictObject({ do: z.literal('coat'), face: choice('which face', ['front', 'back', 'both']), ...when }),
    z.strictObject({ do: z.literal('fit'), what: id('hardware'), ...when }),
    one('deliver', 'the piece goes into use')
  ])
  .meta({ id: 'step', description: 'one thing done to the piece', sample: [{ do: 'pour', what: 'green' }] })
