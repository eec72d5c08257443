import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Work } from '../../src/findings/work.ts'
import { KINDS, newPiece } from '../../src/piece/kind.ts'
import { checkPiece, usualShop } from '../../src/piece/read.ts'
import { workOf } from '../../src/work.ts'
import { PANEL } from '../sheets/pieces.ts'

const folder = join(import.meta.dirname, '../../../../examples')

function worked(document: unknown): Work {
  const files = Object.fromEntries(
    readdirSync(folder)
      .filter(f => f.endsWith('.svg'))
      .map(f => [f, readFileSync(join(folder, f), 'utf8')])
  )
  return workOf({ piece: checkPiece(document, 'the piece'), shop: usualShop(), files, effort: 'preview' })
}

/** A board with an undercut edge against clear resin, a crowned top let stand, a V-groove along a line. */
const LEANING = {
  castwright: 1,
  name: 'Leaning',
  about: 'Invented for the tests.',
  outline: { rectangle: [200, 100] },
  flatten: { back: 0.5, front: 0.5 },
  timbers: [
    {
      id: 'board',
      species: 'ash-white',
      outline: {
        polygon: [
          [-104, -54],
          [10, -54],
          [24, 0],
          [6, 54],
          [-104, 54]
        ]
      },
      underside: {
        polygon: [
          [-104, -54],
          [30, -54],
          [40, 0],
          [26, 54],
          [-104, 54]
        ]
      },
      thickness: 20,
      moisture: 8.5
    },
    {
      id: 'island',
      species: 'walnut-black',
      outline: { circle: 40, at: [70, 0] },
      thickness: 12,
      moisture: 8.5,
      crown: { rise: 6, along: 0 }
    }
  ],
  pours: [{ id: 'river', resin: 'deep', height: 20 }],
  cuts: [
    {
      id: 'line',
      face: 'front',
      along: {
        points: [
          [-80, -30],
          [-40, 10],
          [60, 20]
        ]
      },
      profile: 'v',
      angle: 60,
      depth: 3
    }
  ]
}

/** Both edges of a slanted side drawn with 3000 points each, as a scanned or traced slab may be. */
const edge = (y: number) =>
  Array.from({ length: 3000 }, (_, k) => [
    -400 + (800 * k) / 2999,
    y + 0.3 * Math.sin(0.7 * k) + 4 * Math.sin(0.013 * k)
  ])
const MANY_POINTS = {
  castwright: 1,
  name: 'Many points',
  about: 'Invented for the tests.',
  outline: { rectangle: [700, 400] },
  mould: { margin: 60 },
  timbers: [
    {
      species: 'ash-white',
      outline: { polygon: [...edge(20), [400, 240], [-400, 240]] },
      underside: { polygon: [...edge(10), [400, 240], [-400, 240]] },
      thickness: 40,
      moisture: 8,
      crown: { rise: 5, along: 0 }
    }
  ],
  pours: [{ resin: 'deep', height: 46 }]
}

/** Every example and a fresh piece of every kind, by name. */
export const PIECES: readonly (readonly [name: string, make: () => Work])[] = [
  ...readdirSync(folder)
    .filter(f => f.endsWith('.piece.json'))
    .map(f => [f, () => worked(JSON.parse(readFileSync(join(folder, f), 'utf8')))] as const),
  ...KINDS.map(({ kind }) => [`a new ${kind}`, () => worked(newPiece(kind))] as const),
  ['a panel with shells', () => worked(PANEL)],
  ['a leaning piece', () => worked(LEANING)],
  ['a slab of many points', () => worked(MANY_POINTS)]
]
