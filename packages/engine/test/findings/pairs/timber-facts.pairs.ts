import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

const timber = (more: object, piece: object = {}) => ({
  ...PLAIN,
  ...piece,
  timbers: PLAIN.timbers!.map((t, i) => (i === 0 ? { ...t, ...more } : t))
})
const pins = (moisture: number) => [
  {
    id: 'moisture-05',
    kind: 'moisture',
    timber: 'left',
    moisture,
    way: 'pins',
    depth: 10,
    at: '2026-03-02T09:00+01:00'
  }
]
// A pocket of 80 mm across the grain of the left board, with a part that fits it closely.
const fitted = (moisture: number) =>
  timber(
    { moisture },
    {
      cuts: [
        {
          id: 'pocket',
          face: 'back',
          shape: { rectangle: [80, 60], corner: 0, at: [-95, 0] },
          finishedDepth: 6
        }
      ],
      hardware: [
        { id: 'plate', kind: 'keyhole-plate', in: 'pocket', width: 59.8, length: 79.8, clearance: 0.1 }
      ]
    }
  )

export const pairs: readonly Pair[] = [
  {
    id: 'planed-hollow',
    about: 'five times as much off the face of a board that is wetter inside',
    sound: {
      piece: { ...PLAIN, flatten: { back: 1, front: 1 } },
      shop: { castwright: 1, climate: { humidity: 30 } },
      readings: pins(10.9)
    },
    edit: { op: 'replace', path: '/flatten/front', value: 5 },
    severity: 'caution'
  },
  {
    id: 'timber-rest',
    about: 'a plate let in closely while the board is still drier than the shop',
    sound: { piece: fitted(8.5) },
    edit: { op: 'replace', path: '/timbers/0/moisture', value: 6 },
    severity: 'note',
    noFix: 'it settles with time: what is left to do then is in no key of the piece'
  },
  {
    id: 'timber-rest',
    about: 'a plate let in closely while the board is wetter than the shop: its hole closes',
    sound: { piece: fitted(8.5) },
    edit: { op: 'replace', path: '/timbers/0/moisture', value: 11.5 },
    severity: 'caution',
    noFix: 'it settles with time: what is left to do then is in no key of the piece'
  },
  {
    id: 'timber-thin',
    about: 'a board with 4 mm of cup that is barely thicker than its timber',
    sound: { piece: timber({ rough: { thickness: 26, cup: '0.5 mm', bow: 0.5, twist: 0.5 } }) },
    edit: { op: 'replace', path: '/timbers/0/rough/cup', value: '6 mm' },
    severity: 'caution'
  },
  {
    id: 'step-felt',
    about: 'a board worked flush with metal',
    sound: { piece: timber({ flush: 'nothing' }) },
    edit: { op: 'replace', path: '/timbers/0/flush', value: 'metal' },
    severity: 'caution'
  },
  {
    id: 'seal-scant',
    about: 'a seal coat spread over ash as thin as a varnish',
    sound: {
      piece: { ...PLAIN, pours: [{ id: 'seal', kind: 'seal', resin: 'medium', depth: 0.2 }, ...PLAIN.pours] }
    },
    edit: { op: 'replace', path: '/pours/0/depth', value: 0.08 },
    severity: 'note'
  },
  {
    id: 'char-loose',
    about: 'a charred top that is not brushed out',
    sound: { piece: timber({ charredTop: 1, brushed: true }) },
    edit: { op: 'replace', path: '/timbers/0/brushed', value: false },
    severity: 'caution'
  }
]
