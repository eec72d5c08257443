import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { InputProblem } from '../../src/piece/problem.ts'
import { plainPiece, stackOf } from './build.ts'

type TimberDocument = NonNullable<PieceDocument['timbers']>[number]
type CutDocument = NonNullable<PieceDocument['cuts']>[number]
type PourDocument = PieceDocument['pours'][number]

const timber = (more: Partial<TimberDocument> = {}): TimberDocument => ({
  species: 'ash-white',
  outline: { rectangle: [80, 60] },
  thickness: 20,
  ...more
})
const withTimbers = (...timbers: TimberDocument[]) => plainPiece({ timbers })
const withCut = (cut: object) => plainPiece({ cuts: [{ face: 'front', depth: 3, ...cut } as CutDocument] })
const withPour = (pour: object, more: Partial<PieceDocument> = {}) =>
  plainPiece({ pours: [{ resin: 'medium', depth: 20 }, { resin: 'thin', ...pour } as PourDocument], ...more })
const frame = (size: number, hole: number): TimberDocument['outline'] => ({
  difference: [{ rectangle: [size, size] }, { rectangle: [hole, hole] }]
})

/** Each document has one thing wrong: where it is said to be, and some words of it. */
const cases: readonly (readonly [name: string, document: PieceDocument, path: string, words: string])[] = [
  [
    'an outline that crosses itself',
    withTimbers(
      timber({
        outline: {
          polygon: [
            [0, 0],
            [40, 40],
            [40, 0],
            [0, 40]
          ]
        }
      })
    ),
    '/timbers/0/outline/polygon',
    'crosses itself near (20, 20)'
  ],
  [
    'a hole outside its outline',
    withTimbers(
      timber({
        outline: {
          polygon: [
            [0, 0],
            [40, 0],
            [40, 40],
            [0, 40]
          ],
          holes: [
            [
              [30, 30],
              [60, 30],
              [60, 35],
              [30, 35]
            ]
          ]
        }
      })
    ),
    '/timbers/0/outline/holes/0',
    'leaves its outline'
  ],
  [
    'a corner larger than half the side',
    plainPiece({ outline: { rectangle: [300, 200], corner: 101 } }),
    '/outline/corner',
    '101'
  ],
  [
    'a timber outside the mould',
    withTimbers(timber({ outline: { rectangle: [80, 60], at: [130, 0] } })),
    '/timbers/0/outline',
    'outside the mould by 12 cm²'
  ],
  [
    'an underside outside the mould',
    withTimbers(
      timber({
        outline: { rectangle: [80, 60], at: [105, 0] },
        underside: { rectangle: [100, 60], at: [105, 0] }
      })
    ),
    '/timbers/0/underside',
    'outside the mould by 3 cm²'
  ],
  [
    'timbers in the same place',
    withTimbers(
      timber({ id: 'left' }),
      timber({ id: 'right', outline: { rectangle: [80, 60], at: [60, 0] } })
    ),
    '/timbers/1/outline',
    'right and left in the same place, 12 cm² near (30, 0)'
  ],
  [
    'a timber whose slanted side leans into another',
    withTimbers(
      timber({ outline: { rectangle: [80, 60], at: [-40, 0] } }),
      timber({
        outline: { rectangle: [140, 60] },
        underside: { rectangle: [20, 60], at: [60, 0] },
        thickness: 40
      })
    ),
    '/timbers/1/outline',
    'in the same place'
  ],
  [
    'rows of a measured top that differ in length',
    withTimbers(
      timber({
        measured: {
          from: [0, 0],
          step: [10, 10],
          rises: [
            [0, 0],
            [0, 0, 0]
          ]
        }
      })
    ),
    '/timbers/0/measured/rises/1',
    'a row of 3 points after one of 2'
  ],
  [
    'a measured top that dips through the underside',
    withTimbers(
      timber({
        measured: {
          from: [-40, -30],
          step: [80, 60],
          rises: [
            [0, 0],
            [0, -22]
          ]
        }
      })
    ),
    '/timbers/0/measured/rises',
    'dips 2 mm through the underside'
  ],
  [
    'a hollow deeper than the timber is thick',
    withTimbers(timber({ crown: { rise: -21 } })),
    '/timbers/0/crown/rise',
    'dips 1 mm'
  ],
  [
    'an underside without the hole of the outline',
    withTimbers(timber({ outline: frame(80, 30), underside: { rectangle: [60, 60] } })),
    '/timbers/0/underside',
    'has 1 outlines and holes, the upper edge 2'
  ],
  [
    'an underside with two parts where the outline has a hole',
    withTimbers(
      timber({
        outline: frame(80, 30),
        underside: { union: [{ rectangle: [20, 20] }, { rectangle: [20, 20], at: [40, 0] }] }
      })
    ),
    '/timbers/0/underside',
    'lacks a hole or an outline'
  ],
  [
    'edges that wander too far apart',
    withTimbers(
      timber({
        outline: {
          polygon: [
            [0, 0],
            [90, 0],
            [90, 90],
            [75, 90],
            [75, 15],
            [15, 15],
            [15, 90],
            [0, 90]
          ]
        },
        underside: {
          polygon: [
            [0, 0],
            [15, 0],
            [15, 75],
            [75, 75],
            [75, 0],
            [90, 0],
            [90, 90],
            [0, 90]
          ]
        }
      })
    ),
    '/timbers/0/underside',
    'crosses itself'
  ],
  [
    'a former inside a timber',
    plainPiece({
      mould: { margin: 0, formers: [{ id: 'plug', shape: { circle: 20 } }] },
      timbers: [timber()]
    }),
    '/mould/formers/0/shape',
    'plug where timber 1 lies'
  ],
  [
    'a former outside the mould',
    plainPiece({ mould: { margin: 0, formers: [{ shape: { circle: 20, at: [150, 0] } }] } }),
    '/mould/formers/0/shape',
    'outside the mould'
  ],
  [
    'a former upside down',
    plainPiece({ mould: { margin: 0, formers: [{ shape: { circle: 20 }, from: 8, to: 8 }] } }),
    '/mould/formers/0/to',
    'a top at 8 under a foot at 8'
  ],
  [
    'a mould smaller than the outline',
    plainPiece({ mould: { shape: { rectangle: [290, 200] } } }),
    '/mould/shape',
    'smaller than the outline'
  ],
  [
    'a pour outside the mould',
    plainPiece({ pours: [{ resin: 'medium', depth: 5, region: { circle: 50, at: [400, 0] } }] }),
    '/pours/0/region',
    'outside the mould'
  ],
  [
    'more resin than could be meant',
    plainPiece({ pours: [{ resin: 'medium', mass: '400 kg' }] }),
    '/pours/0/mass',
    'more than 2000 mm high'
  ],
  [
    'a groove without a width',
    withCut({
      along: {
        points: [
          [0, 0],
          [50, 0]
        ]
      }
    }),
    '/cuts/0/width',
    'nothing'
  ],
  [
    'a V with a shape',
    withCut({ shape: { circle: 30 }, profile: 'v' }),
    '/cuts/0/profile',
    '"v" with a shape'
  ],
  [
    'a V right through',
    plainPiece({
      cuts: [
        {
          face: 'front',
          along: {
            points: [
              [0, 0],
              [50, 0]
            ]
          },
          profile: 'v',
          through: true
        }
      ]
    }),
    '/cuts/0/through',
    'right through'
  ],
  [
    'a V of a width that its depth does not make',
    withCut({
      along: {
        points: [
          [0, 0],
          [50, 0]
        ]
      },
      profile: 'v',
      width: 6
    }),
    '/cuts/0/width',
    '6 mm, but a V of 60° this deep is 3.46 mm wide'
  ],
  ['an inlay into nothing', withPour({ kind: 'inlay', fill: 'cut' }), '/pours/1/into', 'nothing'],
  [
    'an inlay into both faces',
    withPour(
      { kind: 'inlay', fill: 'cut', into: ['a', 'b'] },
      {
        cuts: [
          { id: 'a', face: 'front', shape: { circle: 10 }, depth: 3 },
          { id: 'b', face: 'back', shape: { circle: 10 }, depth: 3 }
        ]
      }
    ),
    '/pours/1/into',
    'cuts in both faces'
  ],
  [
    'an inlay on the other face than its cut',
    withPour(
      { kind: 'inlay', fill: 'cut', into: ['a'], face: 'back' },
      { cuts: [{ id: 'a', face: 'front', shape: { circle: 10 }, depth: 3 }] }
    ),
    '/pours/1/face',
    '"back"'
  ],
  [
    'a pour into the mould that says what it fills',
    withPour(
      { depth: 3, into: ['a'] },
      { cuts: [{ id: 'a', face: 'front', shape: { circle: 10 }, depth: 3 }] }
    ),
    '/pours/1/into',
    'with a pour into the mould'
  ],
  [
    'a fill to timber without timber',
    plainPiece({ pours: [{ resin: 'deep', fill: 'timber' }] }),
    '/pours/0/fill',
    'the piece has none'
  ],
  ['a cast to "cut"', plainPiece({ pours: [{ resin: 'deep', fill: 'cut' }] }), '/pours/0/fill', '"cut"'],
  [
    'a flood to the timber',
    withPour({ kind: 'flood', fill: 'timber' }),
    '/pours/1/fill',
    '"timber" with a flood'
  ],
  [
    'a height for a flood under the piece',
    withPour({ kind: 'flood', face: 'back', height: 3 }),
    '/pours/1/height',
    'below 0'
  ],
  [
    'marbling that does not add up',
    withPour({
      depth: 3,
      marbling: [
        { share: 60, tint: [] },
        { share: 30, tint: [] }
      ]
    }),
    '/pours/1/marbling',
    '90 %'
  ],
  [
    'a scale of no length',
    plainPiece({ markings: [{ linear: { from: [5, 5], to: [5, 5], length: 4, at: [0] } }] }),
    '/markings/0/linear/to',
    'ends where it starts'
  ]
]

describe('a piece that cannot be built', () => {
  for (const [name, document, path, words] of cases) {
    it(`says so once, and where: ${name}`, () => {
      let found: unknown
      try {
        stackOf(document)
      } catch (e) {
        found = e
      }
      expect(found).toBeInstanceOf(InputProblem)
      const { problems } = found as InputProblem
      expect(problems.map(p => [p.path, p.found])).toEqual([[path, expect.stringContaining(words)]])
      expect(problems[0]!.allowed.length).toBeGreaterThan(5)
      expect((found as Error).message).not.toMatch(/NaN|Infinity|undefined/)
    })
  }

  it('says all misplaced things at once', () => {
    const away = (x: number) => timber({ outline: { rectangle: [20, 20], at: [x, 0] } })
    expect(() => stackOf(withTimbers(away(-200), away(0), away(200)))).toThrowError(
      /timbers\[0\]\.outline[\s\S]*timbers\[2\]\.outline/
    )
  })
})

describe('a piece that only looks wrong', () => {
  const sound: readonly (readonly [name: string, document: PieceDocument])[] = [
    ['timber flush with the wall', withTimbers(timber({ outline: { rectangle: [300, 60] } }))],
    [
      'timbers edge to edge',
      withTimbers(
        timber({ outline: { rectangle: [80, 60], at: [-40, 0] } }),
        timber({ outline: { rectangle: [80, 60], at: [40, 0] } })
      )
    ],
    ['one timber above the other', withTimbers(timber({ thickness: 8 }), timber({ thickness: 8, base: 8 }))],
    [
      'a slanted side that reaches over a lower timber without touching it',
      withTimbers(
        timber({ outline: { rectangle: [80, 60], at: [-60, 0] }, thickness: 6 }),
        timber({
          outline: { rectangle: [120, 60], at: [30, 0] },
          underside: { rectangle: [60, 60], at: [60, 0] },
          thickness: 40
        })
      )
    ],
    [
      'a former on a timber',
      plainPiece({
        mould: { margin: 0, formers: [{ shape: { circle: 20 }, from: 20 }] },
        timbers: [timber()],
        pours: [{ resin: 'medium', depth: 30 }]
      })
    ],
    [
      'a V whose width agrees with its depth',
      withCut({
        along: {
          points: [
            [0, 0],
            [50, 0]
          ]
        },
        profile: 'v',
        width: 3.464
      })
    ]
  ]
  for (const [name, document] of sound) {
    it(`is built: ${name}`, () => {
      expect(stackOf(document).pours[0]!.massG).toBeGreaterThan(0)
    })
  }
})
