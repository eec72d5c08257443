import type { Operation } from '../../piece/patch.ts'
import { decimals, formatMm } from '../../quantity/format.ts'
import type { Condition, RescueCase, Trouble, TroubleCase, WayDraft } from '../condition.ts'
import { flattenBoth } from '../patch/cut-patch.ts'
import { tenth } from '../patch/pour-patch.ts'
import { askBy, howMuch, isDone, REST_DAYS } from './spot.ts'

/** A face that is further out of flat than it may be. */
export const bowOver: Condition = {
  kind: 'bow over',
  about: 'a face is further out of flat than it may be',
  found,
  questions: at => [
    ...askBy(at, 'How far out of flat is it, in mm?'),
    {
      key: 'rested',
      asks: 'Has it lain two weeks in the room where it will live, air on both faces?',
      options: [
        { word: 'yes', means: 'then what is left of it stays' },
        { word: 'no', means: 'then part of it may go by itself, or come back after flattening' }
      ]
    },
    {
      key: 'shape',
      asks: 'Is it hollow across, along, or twisted?',
      options: [
        { word: 'cup', means: 'one face is damper or finished otherwise' },
        { word: 'bow', means: 'layers that shrank unlike' },
        { word: 'twist', means: 'the mould was not level, or the timber is not straight' }
      ]
    }
  ],
  refused: () => [],
  ways
}

function found({ built }: RescueCase): Trouble[] {
  const may = built.bow?.flatnessMm ?? built.piece.flatness ?? null
  if (may === null) return []
  return (['front', 'back'] as const).flatMap((face): Trouble[] => {
    const read = built.readings.flatMap(r => (r.kind === 'flatness' && r.face === face ? [r] : []))
    const last = read.reduce<(typeof read)[number] | null>(
      (a, b) => (a === null || Date.parse(b.at) >= Date.parse(a.at) ? b : a),
      null
    )
    if (last === null || last.out <= may) return []
    return [
      {
        kind: 'bow over',
        of: face,
        byMm: last.out,
        says: `the ${face} is ${formatMm(last.out)} out of flat; ${decimals(may, 2)} mm is let pass`,
        readings: [last.id]
      }
    ]
  })
}

function ways(at: TroubleCase): WayDraft[] {
  const { built, state } = at
  const by = howMuch(at, 1)
  const may = built.bow?.flatnessMm ?? built.piece.flatness ?? null
  const rested = at.answers.get('rested')
  const unlike =
    built.faces[0].coat?.id !== built.faces[1].coat?.id || built.faces[0].coats !== built.faces[1].coats
  const front = built.document.finish?.front ?? built.document.finish?.both
  const alike: Operation[] =
    front === undefined
      ? []
      : [
          {
            op: built.document.finish === undefined ? 'add' : 'replace',
            path: '/finish',
            value: { both: front }
          }
        ]
  const coated = built.steps.some((s, i) => s.kind === 'coat' && isDone(state.steps[i]!.progress))
  return [
    {
      id: 'rest',
      does: `Let it rest ${REST_DAYS} days with air on both faces, then flatten as planned`,
      how: [
        'lay it on sticks in the room where it will live, nothing on it, turned every few days',
        'measure it again, and log flatness'
      ],
      hazards: [],
      patch: [],
      gives: [],
      handsMin: 20,
      waitDays: REST_DAYS,
      chance: rested === 'no' ? 'about even' : 'seldom works',
      excluded: rested === 'yes' ? 'it has rested' : null,
      favoured: rested === 'no' ? 'it has not rested yet: flattened now it would move again' : null
    },
    {
      id: 'flatten',
      does: `Flatten both faces ${tenth(by)} mm more`,
      how: [
        'take half off one face, turn it over, then the other: never all off one',
        'let it rest a day between, then the last pass'
      ],
      hazards: ['machine-cutting', 'router-by-hand', 'sanding-cured-resin', 'sanding-timber'],
      patch: flattenBoth(built, by),
      gives: [`${formatMm(2 * by)} of the thickness, and so much less over every cut`],
      handsMin: 0,
      waitDays: 1,
      chance: 'usually works',
      excluded: coated ? 'it is coated: first the coat would come off' : null,
      favoured: rested === 'yes' ? 'it has rested: what is left stays' : null
    },
    {
      id: 'alike',
      does: 'Finish the back as the front',
      how: ['coat both faces alike and on the same day, then let it rest two weeks'],
      hazards: ['finish-vapour', 'oily-rags'],
      patch: alike,
      gives: [],
      handsMin: 30,
      waitDays: REST_DAYS,
      chance: 'about even',
      excluded: unlike ? null : 'both faces are finished alike already',
      favoured:
        at.answers.get('shape') === 'cup' && unlike
          ? 'it is hollow across, and its faces are finished unlike'
          : null
    },
    {
      id: 'accept',
      does: `Let it be ${formatMm(by)} out of flat`,
      how: ['say so to whoever gets it'],
      hazards: [],
      patch: [
        {
          op: built.document.flatness === undefined ? 'add' : 'replace',
          path: '/flatness',
          value: Math.ceil(by * 10) / 10
        }
      ],
      gives: may === null ? [] : [`${decimals(may, 2)} mm as it was wanted`],
      handsMin: 0,
      waitDays: 0,
      chance: 'usually works'
    }
  ]
}
