import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

const HOURS = {
  mon: ['08:00-18:00'],
  tue: ['08:00-18:00'],
  wed: ['08:00-18:00'],
  thu: ['08:00-18:00'],
  fri: ['08:00-18:00'],
  sat: ['08:00-18:00'],
  sun: []
}
const at = (time: string) => `2026-03-02T${time}+01:00`
const pour = (more: object) => ({ ...PLAIN, pours: [{ id: 'clear', resin: 'deep', depth: 20, ...more }] })
const two = (first: object, second: object) => ({
  ...PLAIN,
  pours: [
    { id: 'first', resin: 'medium', depth: 5, ...first },
    { id: 'second', resin: 'medium', height: 10, after: '10 h', ...second }
  ]
})
const marbled = (resin: string, second: object) =>
  pour({
    resin,
    depth: 3,
    marbling: [
      { share: 50, tint: [] },
      { share: 50, tint: [], ...second }
    ]
  })
const layers = (count: number) => ({
  ...PLAIN,
  pours: [
    { id: 'layer 1', resin: 'thin', depth: 3 },
    ...Array.from({ length: count - 1 }, (_, k) => ({
      id: `layer ${k + 2}`,
      resin: 'thin',
      height: 3 * (k + 2),
      after: '3 h'
    }))
  ]
})
const stage = (stage: string, time: string, id: string) => ({
  id,
  kind: 'stage',
  pour: 'clear',
  stage,
  at: at(time)
})

export const pairs: readonly Pair[] = [
  {
    id: 'window-away',
    about: 'a pour half an hour before the bench closes',
    sound: { piece: pour({ start: at('10:00') }), shop: { castwright: 1, hours: HOURS } },
    edit: { op: 'replace', path: '/pours/0/start', value: at('17:30') },
    severity: 'caution'
  },
  {
    id: 'window-away',
    about: 'colours that are to be drawn in the evening, when nobody is there',
    sound: {
      piece: {
        ...marbled('medium', {}),
        pours: [{ ...marbled('medium', {}).pours[0]!, start: at('09:00') }]
      },
      shop: { castwright: 1, hours: HOURS }
    },
    edit: { op: 'replace', path: '/pours/0/start', value: at('16:45') },
    severity: 'caution'
  },
  {
    id: 'window-away',
    about: 'a pour at half past ten at night where no hours are given',
    sound: { piece: pour({ start: at('10:00') }) },
    edit: { op: 'replace', path: '/pours/0/start', value: at('22:30') },
    severity: 'caution'
  },
  {
    id: 'peak-unattended',
    about: 'a deep pour that is hottest after midnight',
    sound: { piece: pour({ depth: 40, start: at('07:00') }) },
    edit: { op: 'replace', path: '/pours/0/start', value: at('19:00') },
    severity: 'caution'
  },
  {
    id: 'blush-between',
    about: 'a second pour in the morning after a damp night',
    sound: {
      piece: two({}, { after: '10 h' }),
      shop: { castwright: 1, climate: { night: 18, day: 24, humidity: 80 } }
    },
    edit: { op: 'replace', path: '/pours/1/after', value: '18 h' },
    severity: 'caution',
    noFix: 'the wash is work, not a change of the piece; the weather is not the piece’s'
  },
  {
    id: 'blush-between',
    about: 'a night that crosses the dew point between two pours',
    sound: {
      piece: two({}, { after: '14 h' }),
      shop: { castwright: 1, climate: { night: 18, day: 24, humidity: 50 } }
    },
    on: 'shop',
    edit: { op: 'replace', path: '/climate/humidity', value: 80 },
    severity: 'caution',
    noFix: 'the weather is not the piece’s'
  },
  {
    id: 'swirl-apart',
    about: 'a white that sets half as fast again as the black',
    sound: { piece: marbled('thin', { pace: 1 }) },
    edit: { op: 'replace', path: '/pours/0/marbling/1/pace', value: 1.5 },
    severity: 'caution'
  },
  {
    id: 'reading-odd',
    about: 'a pour read as stringing at ten and gelled a day later',
    sound: {
      piece: pour({ resin: 'medium', depth: 5, start: at('09:00') }),
      readings: [stage('strings', '10:55', 'r-00000001'), stage('tacky', '18:30', 'r-00000002')]
    },
    on: 'readings',
    edit: {
      op: 'replace',
      path: '/1',
      value: { ...stage('gelled', '10:00', 'r-00000002'), at: '2026-03-03T10:00+01:00' }
    },
    severity: 'caution',
    noFix: 'a reading is what was seen: the maker looks again'
  },
  {
    id: 'reading-odd',
    about: 'a pour read as gelled before it was mixed',
    sound: {
      piece: pour({ resin: 'medium', depth: 5, start: at('09:00') }),
      readings: [stage('gelled', '15:30', 'r-00000001')]
    },
    on: 'readings',
    edit: { op: 'replace', path: '/0/at', value: at('08:00') },
    severity: 'caution',
    noFix: 'a reading is what was seen: the maker looks again'
  },
  {
    id: 'hotter-shallow',
    about: 'a shallower second pour on a first that is still warm',
    sound: {
      piece: {
        ...PLAIN,
        pours: [
          { id: 'first', resin: 'medium', depth: 9 },
          { id: 'second', resin: 'medium', height: 17, after: '3 d' }
        ]
      }
    },
    edit: { op: 'replace', path: '/pours/1/after', value: '4 h' },
    severity: 'note',
    noFix: 'a note: it says why, there is nothing to mend'
  },
  {
    id: 'factors-together',
    about: 'warm parts in a warm room on a layer that still cures',
    sound: {
      piece: {
        ...PLAIN,
        pours: [
          { id: 'first', resin: 'medium', depth: 5 },
          { id: 'second', resin: 'medium', height: 12.4, after: '7 h' }
        ]
      },
      shop: { castwright: 1, climate: { night: 26, day: 29 } }
    },
    edit: { op: 'add', path: '/pours/1/startTemperature', value: 38 },
    severity: 'caution'
  },
  {
    id: 'layers-seen',
    about: 'a third layer of a clear build-up',
    sound: { piece: layers(2) },
    edit: { op: 'add', path: '/pours/2', value: { id: 'layer 3', resin: 'thin', height: 9, after: '3 h' } },
    severity: 'note',
    noFix: 'one deep pour is another way of building: the maker chooses'
  }
]
