import { regionOf } from '../../src/piece/region.ts'
import type { Shape, ShapeDocument } from '../../src/piece/shape-field.ts'
import { shape as shapeSchema } from '../../src/piece/shape-field.ts'

/** A drawing beside the piece (invented). */
export const FILES = {
  'a.svg':
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 60" width="90mm" height="60mm"><path id="p" d="M5 5H80L60 50Q20 60 5 40Z"/></svg>'
}
/** One shape of each form, placed and turned. */
export const FORMS: readonly [string, ShapeDocument][] = [
  ['circle', { circle: 60, at: [10, '1 in'] }],
  ['rectangle', { rectangle: ['4 in', 60], corner: 8, at: [-30, 12], turn: 20 }],
  [
    'polygon',
    {
      polygon: [
        [0, 0],
        ['3 in', 5],
        [70, 60],
        [10, '1 1/2 in']
      ],
      grow: 2,
      turn: -75
    }
  ],
  [
    'holes',
    {
      polygon: [
        [-50, -40],
        [50, -40],
        [60, 40],
        [-45, 40]
      ],
      holes: [
        [
          [0, 0],
          [9, 0],
          [4, 12]
        ]
      ],
      at: [3, 4]
    }
  ],
  ['path', { path: 'm0 0h80v40q-20 30 -40 0a20 12 30 0 1 -40 0z', scale: 1.5, at: [7, 7], turn: 33 }],
  ['file', { file: 'a.svg', part: 'p', at: [-20, 30], turn: 10, scale: 0.8 }],
  [
    'union',
    {
      union: [
        { circle: 40, at: [20, 5] },
        { rectangle: [60, 20], turn: 30 }
      ],
      at: [5, -9],
      turn: 15,
      grow: 1
    }
  ],
  [
    'difference',
    {
      difference: [
        { rectangle: [80, 50] },
        {
          polygon: [
            [0, 0],
            [40, 3],
            [9, 22]
          ],
          at: [4, 1]
        }
      ],
      turn: -40
    }
  ],
  ['common', { common: [{ circle: 70 }, { path: 'M-10-40H50V40H-10Z', turn: 12 }] }]
]
/** The region a shape stands for, as the engine reads it. */
export const regionFor = (s: ShapeDocument) =>
  regionOf(shapeSchema.parse(s) as Shape, 0.001, FILES, '', 'test')
