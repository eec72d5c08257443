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
  /** What makers say, h. */
  readonly range: readonly [number, number]
  readonly told: string
  readonly ours: () => number
  /** How far beyond that range ours lies, h, and why that is let stand. */
  readonly beyond?: number
  readonly why?: string
}

const early = 'the class hardens early: said where it is shown'
const ROWS: readonly Row[] = [
  {
    name: 'medium',
    what: 'marbling, the middle of its window',
    range: [1.5, 2.5],
    told: 'told as near 2 h',
    ours: hours('medium', r => (r.windows.marbling!.open + r.windows.marbling!.close!) / 2)
  },
  {
    name: 'thin',
    what: 'marbling until',
    range: [0.33, 1],
    told: 'told as 20-30 min in the cup, longer spread thin',
    ours: hours('thin', r => r.windows.marbling!.close!)
  },
  {
    name: 'thin',
    what: 'recoat without sanding from',
    range: [2, 3],
    told: 'told as 3-6 h, tacky from 4-6 h, next coat of a fast one at 3-4 h',
    ours: hours('thin', r => r.windows.recoat.open),
    beyond: 1,
    why: early
  },
  {
    name: 'thin',
    what: 'recoat without sanding until',
    range: [5, 6],
    told: 'told as 3-6 h',
    ours: hours('thin', r => r.windows.recoat.close!),
    beyond: 2,
    why: early
  },
  {
    name: 'medium',
    what: 'recoat without sanding from',
    range: [6, 8],
    told: 'told as 6-18 h',
    ours: hours('medium', r => r.windows.recoat.open),
    beyond: 2,
    why: early
  },
  {
    name: 'medium',
    what: 'recoat without sanding until',
    range: [10, 18],
    told: 'told as 6-18 h',
    ours: hours('medium', r => r.windows.recoat.close!)
  },
  {
    name: 'deep',
    what: 'recoat without sanding from',
    range: [12, 16],
    told: 'told as 12-24 h',
    ours: hours('deep', r => r.windows.recoat.open),
    beyond: 1,
    why: early
  },
  {
    name: 'deep',
    what: 'recoat without sanding until',
    range: [20, 24],
    told: 'told as 12-24 h',
    ours: hours('deep', r => r.windows.recoat.close!)
  },
  {
    name: 'deep',
    what: 'out of the mould',
    range: [48, 72],
    told: 'told as 48 h, 48-72 h, 80 h',
    ours: hours('deep', r => r.windows.demould.open),
    beyond: 3,
    why: early
  },
  {
    name: 'thin',
    what: 'hard',
    range: [10, 14],
    told: 'told as 12 h',
    ours: hours('thin', r => r.hard),
    beyond: 2,
    why: early
  },
  {
    name: 'medium',
    what: 'hard',
    range: [24, 36],
    told: 'told as 24-36 h',
    ours: hours('medium', r => r.hard),
    beyond: 11,
    why: early
  },
  {
    name: 'deep',
    what: 'hard',
    range: [60, 84],
    told: 'told as 48-72 h, sanded on the third day',
    ours: hours('deep', r => r.hard)
  }
]

export const rows: readonly Evidence[] = ROWS.map(
  ({ name, what, range, told, ours, beyond, why }): Evidence => ({
    model: 'cast/windows',
    what: `${USUAL[name]} mm of the ${name} class at 22 °C: ${what}`,
    source: `common practice, ${told}; no single source`,
    confidence: 'practice',
    unit: 'h',
    published: (range[0] + range[1]) / 2,
    tolerance: (range[1] - range[0]) / 2 + (beyond ?? 0),
    why:
      beyond === undefined
        ? `half of the range ${range[0]}-${range[1]} h`
        : `half of the range ${range[0]}-${range[1]} h and ${beyond} h beyond it: ${why}`,
    ours
  })
)
