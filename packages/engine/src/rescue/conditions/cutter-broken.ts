import type { Operation } from '../../piece/patch.ts'
import type { Condition, TroubleCase, WayDraft } from '../condition.ts'
import { cutSpot } from './spot.ts'

/** Days until a cutter is here where the shop says none (practice). */
const DELIVERY_DAYS = 3

/** A cutter that broke in the work. */
export const cutterBroken: Condition = {
  kind: 'cutter broken',
  about: 'a cutter broke or burned in the work',
  found: () => [],
  questions: () => [
    {
      key: 'spare',
      asks: 'Is there another of the same in the shop?',
      options: [
        { word: 'yes', means: 'then the program goes on with it' },
        { word: 'no', means: 'then another size, by hand, or wait' }
      ]
    },
    {
      key: 'inside',
      asks: 'Is all of the broken one out of the work?',
      options: [
        { word: 'yes', means: 'the cutter can go on' },
        { word: 'no', means: 'get it out first: steel in the cut breaks the next one' }
      ]
    },
    {
      key: 'moved',
      asks: 'Has the work moved, or did the machine lose its place?',
      options: [
        { word: 'yes', means: 'find the zero again from pins or marks before anything is cut' },
        { word: 'no', means: 'measure the height of the new cutter; the rest stands' }
      ]
    }
  ],
  refused: () => [],
  ways
}

function ways(at: TroubleCase): WayDraft[] {
  const { built } = at
  const { shop } = at.input
  const cut = cutSpot(at)
  const typed = cut === null ? undefined : built.document.cuts![cut.index]!
  const zero =
    at.answers.get('moved') === 'yes'
      ? ['touch pins or two marks, log place, and take the frame from them']
      : []
  const out =
    at.answers.get('inside') === 'yes'
      ? []
      : ['get every splinter out: tweezers, magnet, light from the side']
  const spare = at.answers.get('spare')
  const usedId = typed?.cutter ?? null
  const others = shop.cutters.filter(
    c => c.id !== usedId && c.kind === shop.cutters.find(u => u.id === usedId)?.kind
  )
  const other = others[0] ?? shop.cutters.find(c => c.id !== usedId && c.kind.includes('flat'))
  const anew = [
    ...out,
    ...zero,
    'measure the height of the new cutter, air cut over the place where it broke',
    'restart the program from the line before it broke'
  ]
  const byHand: Operation[] =
    cut === null
      ? []
      : [
          {
            op: typed!.way === undefined ? 'add' : 'replace',
            path: `/cuts/${cut.index}/way`,
            value: 'router'
          }
        ]
  const delivery = Math.max(0, ...shop.prices.filter(p => p.item === usedId).map(p => p.days))
  return [
    {
      id: 'spare',
      does: 'Go on with a spare of the same',
      how: anew,
      hazards: ['machine-cutting'],
      patch: [],
      gives: [],
      handsMin: 25,
      waitDays: 0,
      chance: 'usually works',
      excluded: spare === 'no' ? 'there is no other of the same' : null,
      favoured: spare === 'yes' ? 'there is one' : null
    },
    {
      id: 'buy',
      does: 'Buy the same again and wait for it',
      how: anew,
      hazards: ['machine-cutting'],
      patch: [],
      gives: [],
      handsMin: 25,
      waitDays: delivery > 0 ? delivery : DELIVERY_DAYS,
      chance: 'usually works',
      excluded: spare === 'yes' ? 'there is one in the shop' : null
    },
    {
      id: 'other',
      does: other === undefined ? 'Cut it with another cutter' : `Cut ${cut?.id ?? 'it'} with ${other.id}`,
      how: [
        ...out,
        ...zero,
        'have the programs written anew for it, and prove them',
        'measure its height, air cut, then cut'
      ],
      hazards: ['machine-cutting'],
      patch:
        cut === null || other === undefined
          ? []
          : [
              {
                op: typed!.cutter === undefined ? 'add' : 'replace',
                path: `/cuts/${cut.index}/cutter`,
                value: other.id
              }
            ],
      gives: ['corners as round as that cutter'],
      handsMin: 40,
      waitDays: 0,
      chance: 'usually works',
      excluded:
        cut === null
          ? 'the piece has no cuts'
          : other === undefined
            ? 'the shop has no other cutter for it'
            : null
    },
    {
      id: 'by-hand',
      does: `Finish ${cut?.id ?? 'it'} by router and template`,
      how: [
        ...out,
        'print the template 1 : 1, make it of 6 mm board, try it on scrap',
        'rout in passes of 3 mm at most'
      ],
      hazards: ['router-by-hand', 'sanding-cured-resin'],
      patch: byHand,
      gives: ['some of its trueness: a router by hand is off by some tenths'],
      handsMin: 60,
      waitDays: 0,
      chance: 'usually works',
      excluded:
        cut === null
          ? 'the piece has no cuts'
          : cut.value.way !== 'machine'
            ? 'it is cut by hand already'
            : null
    }
  ]
}
