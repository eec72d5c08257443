import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

const at = (day: number) =>
  `2026-0${1 + Math.floor(day / 28)}-${String(1 + (day % 28)).padStart(2, '0')}T09:00+01:00`
const weight = (day: number, mass: number, more: object = {}) => ({
  id: `weight-${String(day).padStart(3, '0')}`,
  kind: 'weight',
  timber: 'left',
  mass,
  at: at(day),
  ...more
})

// 240 g of dry ash at 8.8 % and falling: nothing stands against it.
const settled = [weight(0, 261.2, { moisture: 8.8 }), weight(7, 260.9), weight(14, 260.7), weight(21, 260.6)]

export const pairs: readonly Pair[] = [
  {
    id: 'timber-wet',
    about: 'weights of a timber that was at 14 % when the log began',
    sound: { piece: PLAIN, readings: settled },
    on: 'readings',
    edit: { op: 'replace', path: '/0/moisture', value: 14 },
    severity: 'caution',
    noFix: 'the timber was weighed: it dries in its stack, and the next weight says how far it is'
  },
  {
    id: 'timber-wet',
    about: 'pins that read the skin of a board with a wet core',
    sound: {
      piece: PLAIN,
      readings: [
        {
          id: 'moisture-02',
          kind: 'moisture',
          timber: 'left',
          moisture: 10.5,
          way: 'pins',
          depth: 10,
          temperature: 20,
          setting: 'ash-white',
          at: at(0)
        }
      ]
    },
    on: 'readings',
    edit: { op: 'replace', path: '/0/depth', value: 3 },
    severity: 'caution',
    noFix: 'the timber was measured: it dries in its stack, and then a new reading says so'
  },
  {
    id: 'reading-odd',
    about: 'a weight that does not follow from the others',
    sound: { piece: PLAIN, readings: settled },
    on: 'readings',
    edit: { op: 'replace', path: '/2/mass', value: 280 },
    severity: 'caution',
    noFix: 'a reading is mended by another reading, never by the piece'
  },
  {
    id: 'reading-odd',
    about: 'a meter set to a timber nobody knows',
    sound: {
      piece: PLAIN,
      readings: [
        {
          id: 'moisture-03',
          kind: 'moisture',
          timber: 'left',
          moisture: 9,
          setting: 'douglas-fir-coast',
          at: at(0)
        }
      ]
    },
    on: 'readings',
    edit: { op: 'replace', path: '/0/setting', value: 'duglas fur' },
    severity: 'caution',
    noFix: 'a reading is mended by another reading, never by the piece'
  },
  {
    id: 'reading-odd',
    about: 'moisture of a timber that the piece does not have',
    sound: {
      piece: PLAIN,
      readings: [{ id: 'moisture-04', kind: 'moisture', timber: 'left', moisture: 9, at: at(0) }]
    },
    on: 'readings',
    edit: { op: 'replace', path: '/0/timber', value: 'lift' },
    severity: 'caution',
    noFix: 'a reading is mended by another reading, never by the piece'
  }
]
