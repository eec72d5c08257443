import { cupCourse } from '../../src/resin/fit/cup-course.ts'
import { filmGelS } from '../../src/resin/gel.ts'
import { labelFit } from '../../src/resin/label-fit.ts'
import { type Evidence, table } from '../evidence.ts'
import { ball } from './cup-ball.ts'
import { integrate } from './odex.ts'
import { worst } from './rows.ts'
import { CLASSES } from './sets.ts'

/** Class, V/A in mm, minutes: before the rise, on it and after. */
const COURSES: readonly (readonly [keyof typeof CLASSES, number, number])[] = [
  ['deep', 14, 300],
  ['deep', 14, 700],
  ['medium', 8, 60],
  ['medium', 8, 95],
  ['medium', 8, 140],
  ['thin', 7, 8],
  ['thin', 7, 15]
]

function centres([name, va, minutes]: (typeof COURSES)[number]): readonly [number, number] {
  const resin = CLASSES[name]
  const untilS = minutes * 60
  const course = cupCourse({
    resin,
    rateFactor: 1,
    volumePerAreaMm: va,
    hWm2K: 9,
    roomC: 22,
    startC: 24,
    untilS
  })
  const y = integrate(
    ball(resin, (3 * va) / 1000, 8, 9, 295.15),
    [...new Array<number>(8).fill(297.15), ...new Array<number>(8).fill(0)],
    untilS
  )
  return [course.centreC.at(-1)!, y[0]! + (y[0]! - y[1]!) / 8 - 273.15]
}

export const rows: readonly Evidence[] = [
  table({
    model: 'resin/fit/cup-course',
    what: 'temperature in the middle of a cup before, on and after its rise, three classes',
    source: 'ODEX (Hairer & Wanner), tolerance 1e-11, on the same eight shells written out anew',
    confidence: 'computed',
    unit: 'K',
    tolerance: 1,
    why: 'steps of the fit allow 0.3 K; a thermometer is not read closer',
    cells: COURSES.length,
    worst: () => worst(COURSES.map(centres))
  }),
  {
    model: 'resin/label-fit',
    what: 'film gel time of a medium resin whose label says 4 h at 23 °C',
    source: 'the label itself: one figure is met',
    confidence: 'exact',
    unit: 'h',
    published: 4,
    tolerance: 1e-6,
    why: 'by division: t is as 1/rate',
    ours: () =>
      filmGelS(labelFit(CLASSES.medium, { gelTime: { minutes: 240, tempC: 23 } }).model.kinetics, 23) / 3600
  }
]
