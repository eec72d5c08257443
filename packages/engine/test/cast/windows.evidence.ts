import { hardMin } from '../../src/cast/hard.ts'
import type { Windows } from '../../src/cast/windows.ts'
import { windowsOf } from '../../src/cast/windows.ts'
import { RESINS } from '../../src/catalogue/resin.ts'
import { runSlab } from '../../src/resin/slab.ts'
import type { Evidence } from '../evidence.ts'
import { once } from '../resin/rows.ts'

/** Each class at its usual depth on an 18 mm board (as a resistance, as the classes were fitted) at 22 °C. */
const USUAL = { deep: 40, medium: 8, thin: 3 } as const
type Name = keyof typeof USUAL

interface Run {
  readonly windows: Windows
  readonly hard: number
}

const runs = once(
  () =>
    new Map(
      (Object.keys(USUAL) as Name[]).map((name): [Name, Run] => {
        const record = RESINS.find(r => r.id === name)!
        const { resin: run } = runSlab(
          {
            resin: record.model!,
            depthMm: USUAL[name],
            bed: { layers: [], hFloorWm2K: 1 / (1 / 6 + 0.018 / 0.12) },
            roomC: 22
          },
          7 * 86_400
        )
        return [name, { windows: windowsOf(record, run), hard: hardMin(run.history)! }]
      })
    )
)

const hours = (name: Name, what: (r: Run) => number) => () => what(runs().get(name)!) / 60

interface Row {
  readonly name: Name
  readonly what: string
  /** What makers say, h: the end of their range that is compared. */
  readonly said: number
  readonly told: string
  readonly ours: () => number
  readonly tolerance: number
  readonly why: string
}

const early = 'does not meet it: the class hardens early (its heat warms it on the way)'
const near = 'makers differ by more than that'
const ROWS: readonly Row[] = [
  {
    name: 'medium',
    what: 'marbling, the middle of its window',
    said: 2,
    told: 'near 2 h',
    ours: hours('medium', r => (r.windows.marbling!.open + r.windows.marbling!.close!) / 2),
    tolerance: 0.5,
    why: near
  },
  {
    name: 'thin',
    what: 'recoat without sanding, from',
    said: 3,
    told: '3-6 h for a fast resin',
    ours: hours('thin', r => r.windows.recoat.open),
    tolerance: 2,
    why: early
  },
  {
    name: 'thin',
    what: 'recoat without sanding, until',
    said: 6,
    told: '3-6 h for a fast resin',
    ours: hours('thin', r => r.windows.recoat.close!),
    tolerance: 3,
    why: `${early}; on the safe side`
  },
  {
    name: 'medium',
    what: 'recoat without sanding, from',
    said: 6,
    told: '6-18 h for a medium one',
    ours: hours('medium', r => r.windows.recoat.open),
    tolerance: 2,
    why: early
  },
  {
    name: 'medium',
    what: 'recoat without sanding, until',
    said: 18,
    told: '6-18 h for a medium one',
    ours: hours('medium', r => r.windows.recoat.close!),
    tolerance: 7,
    why: `${early}; on the safe side`
  },
  {
    name: 'deep',
    what: 'recoat without sanding, from',
    said: 12,
    told: '12-24 h for a slow one',
    ours: hours('deep', r => r.windows.recoat.open),
    tolerance: 1,
    why: near
  },
  {
    name: 'deep',
    what: 'recoat without sanding, until',
    said: 24,
    told: '12-24 h for a slow one',
    ours: hours('deep', r => r.windows.recoat.close!),
    tolerance: 1.5,
    why: near
  },
  {
    name: 'deep',
    what: 'out of the mould',
    said: 48,
    told: '48 h, 48-72 h, 80 h',
    ours: hours('deep', r => r.windows.demould.open),
    tolerance: 3,
    why: near
  },
  {
    name: 'thin',
    what: 'hard',
    said: 12,
    told: '12 h',
    ours: hours('thin', r => r.hard),
    tolerance: 4,
    why: `${early}; a day is waited before it is sanded`
  },
  {
    name: 'medium',
    what: 'hard',
    said: 24,
    told: '24-36 h',
    ours: hours('medium', r => r.hard),
    tolerance: 11,
    why: `${early}; a day is waited before it is sanded`
  },
  {
    name: 'deep',
    what: 'hard',
    said: 72,
    told: '48-72 h, sanded on the third day',
    ours: hours('deep', r => r.hard),
    tolerance: 5,
    why: near
  }
]

export const rows: readonly Evidence[] = ROWS.map(
  ({ name, what, said, told, ours, tolerance, why }): Evidence => ({
    model: 'cast/windows',
    what: `${USUAL[name]} mm of the ${name} class at 22 °C: ${what}`,
    source: `common practice, told as ${told}; no single source`,
    confidence: 'practice',
    unit: 'h',
    published: said,
    tolerance,
    why,
    ours
  })
)
