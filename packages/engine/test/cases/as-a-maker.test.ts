import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import { plan } from '../../src/plan.ts'
import { runSheetMarkdown } from '../../src/sheets/run-sheet-md.ts'
import { stepDetail } from '../../src/sheets/run-step.ts'
import { equilibriumMoisturePct } from '../../src/timber/moisture.ts'
import { findings, mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne } from './asked.ts'

// What was found by building pieces from the file alone: numbers by hand, words by sense.

const planned = (piece: PieceDocument) =>
  plan(
    { piece: checkPiece(piece, 'piece'), shop: checkShop({ castwright: 1 }, 'shop').value },
    { asOf: '2026-03-02T09:00:00Z', effort: 'preview' }
  )
type Planned = ReturnType<typeof planned>
const said = (p: Planned, kind: string) => {
  const { does, facts } = stepDetail(
    p.plan,
    p.work,
    p.work.steps.findIndex(s => s.kind === kind)
  )
  return { does: does.join(' '), facts: facts.map(f => `${f.label} ${f.value} ${f.unit}`).join(' · ') }
}

const scales = (timberMm: number): PieceDocument => ({
  ...PLAIN,
  outline: { rectangle: [120, 32] },
  mould: { margin: 12 },
  timbers: [
    {
      id: 'scale',
      species: 'maple-sugar',
      outline: { rectangle: [60, timberMm], at: [-34, 0] },
      thickness: 12,
      moisture: 7,
      flush: 'metal',
      grain: 0
    }
  ],
  pours: [{ id: 'end', resin: 'deep', fill: 'timber' }]
})

describe('scales beside steel', () => {
  it('steps by the width that is left of them, not by that of the blank', () => {
    // Wood Handbook eq. 13-2 by hand: 32 mm, C_T 0.00353 (table 13-5), 7 % to the balance of 24 °C and 65 %; half an edge.
    const byHand = (32 * 0.00353 * (equilibriumMoisturePct(24, 0.65) - 7)) / 2
    for (const blankMm of [34, 50]) {
      const found = theOne({ piece: scales(blankMm) }, 'step-felt')
      expect(found.value).toBeCloseTo(byHand, 4)
      expect(found.says).toMatch(/is 32 mm across the grain/)
    }
  })
})

describe('a pin in resin', () => {
  const pinned: PieceDocument = {
    ...PLAIN,
    cuts: [
      {
        id: 'hole',
        kind: 'bore',
        face: 'front',
        shape: { circle: 6 },
        through: true,
        way: 'drill',
        toleranceClass: 'H7'
      }
    ],
    hardware: [{ id: 'rivet', kind: 'dowel-pin-6', in: 'hole', toleranceClass: 'm6', fitting: 'press' }]
  }

  it('glued in loose is no longer reamed, nor called a fit of its class', () => {
    const { fix } = theOne({ piece: pinned }, 'press-in-resin')
    const piece = mended({ piece: pinned }, fix!).piece
    expect(asked({ piece }, 'press-in-resin')).toEqual([])
    const p = planned(piece)
    expect(said(p, 'cut').does).not.toMatch(/ream/)
    expect(said(p, 'fit').facts).not.toMatch(/H7/)
  })
})

describe('a dial under a flood coat', () => {
  const tray: PieceDocument = {
    ...PLAIN,
    cuts: [{ id: 'seat', face: 'front', shape: { circle: 61 }, finishedDepth: 6, mask: true }],
    hardware: [{ id: 'dial', kind: 'round-insert', in: 'seat', face: 'front', diameter: 60, depth: 8 }],
    finish: { front: { coat: 'flood-coat', film: 2.5 }, back: { coat: 'epoxy-seal' } }
  }

  it('has one depth of its hole, the coat counted, wherever that is said', () => {
    // 6 in the sanded face, 2.5 of coat round it.
    const p = planned(tray)
    expect(said(p, 'cut').facts).toMatch(/Finished 6\.0 mm; with the coats 8\.5/)
    expect(said(p, 'fit').facts).toMatch(/Its hole 8\.5 mm deep in the end/)
    expect(asked({ piece: tray }, 'pocket-shallow')).toEqual([])
  })

  it('says names of coats short, and of the next coat only where there is one', () => {
    const { does } = said(planned(tray), 'coat')
    expect(does).toMatch(/Front: 1 coat of flood coat of thin epoxy, poured/)
    expect(does).toMatch(/Next coat of epoxy seal coat after/)
    expect(does).not.toMatch(/Next coat of flood/)
  })
})

describe('what is bought', () => {
  it('is the board to start from, not the timber that is made of it', () => {
    const p = planned(PLAIN)
    const board = p.work.timberFacts[0]!.rough!.startMm
    const line = p.work.buy.find(b => b.group === 'timber')!
    expect(board).toBeGreaterThan(20)
    expect(line.note).toContain(`from a board at least ${Math.ceil(board)} mm thick`)
  })
})

describe('what contradicts itself', () => {
  const says = (run: () => unknown) => {
    try {
      run()
    } catch (e) {
      return (e as Error).message
    }
    return 'nothing'
  }

  it('is told where it stands: driest air damper than the dampest', () => {
    const air = (dry: number, damp: number) => ({
      ...PLAIN,
      climate: { dry: { temperature: 20, humidity: dry }, damp: { temperature: 20, humidity: damp } }
    })
    expect(says(() => checkPiece(air(80, 30), 'piece'))).toMatch(
      /^piece at climate\.dry\.humidity: found 80; allowed: at most the 30 % of the dampest air/
    )
    expect(says(() => checkPiece(air(30, 30), 'piece'))).toBe('nothing')
  })

  it('is told where it stands: a card whose white and black are changed about', () => {
    const steps = (overBlack: string, overWhite: string) =>
      [0.5, 1].map(depth => ({ depth, overBlack, overWhite }))
    const card = (more: object) => ({
      castwright: 1 as const,
      cards: [{ pigment: 'white-paste', percent: 3, steps: steps('#404040', '#909090'), ...more }]
    })
    expect(says(() => checkShop(card({}), 'shop'))).toBe('nothing')
    expect(says(() => checkShop(card({ steps: steps('#909090', '#404040') }), 'shop'))).toMatch(
      /^shop at cards\[0\]\.steps\[0\]\.overWhite: found "#404040"; allowed: a colour no darker/
    )
    expect(says(() => checkShop(card({ black: '#e7e7e7', white: '#1c1c1c' }), 'shop'))).toMatch(
      /^shop at cards\[0\]\.black: found "#e7e7e7"; allowed: a black of the card that is plainly darker/
    )
    // Opaque steps look alike over both, and no reading is exact.
    expect(says(() => checkShop(card({ steps: steps('#919191', '#8f8f8f') }), 'shop'))).toBe('nothing')
  })
})

describe('a face sanded after its lines are filled', () => {
  it('loses by all grades together what the plan takes off it', () => {
    const piece: PieceDocument = {
      ...PLAIN,
      markings: [
        {
          id: 'scale',
          linear: { from: [80, -60], to: [80, 60], length: 8, at: [0, 0.5, 1] },
          width: 1.4,
          sandedAfter: 0.3,
          filled: [{ pigment: 'black-paste', percent: 3 }]
        }
      ]
    }
    const p = planned(piece)
    const step = p.work.steps.find(s => s.kind === 'sand')!
    expect(step.byMm).toBe(0.3)
    expect(said(p, 'sand').facts).toMatch(/Take off 0\.3 mm .* Sanding takes off 0\.3 mm in all/)
  })
})

describe('a wood screw', () => {
  it('is not asked for a thread to take a nut', () => {
    const piece: PieceDocument = {
      ...PLAIN,
      cuts: [
        {
          id: 'pilot',
          kind: 'bore',
          face: 'back',
          shape: { circle: 3, at: [100, 0] },
          depth: 4,
          way: 'drill'
        }
      ],
      hardware: [{ id: 'screw', kind: 'wood-screw-4', in: 'pilot', thread: 12 }]
    }
    expect(asked({ piece }, 'thread-short')).toEqual([])
  })
})

describe('a name mistyped', () => {
  it('asks with a question mark', () => {
    const given = {
      piece: PLAIN,
      readings: [
        { id: 'r-2026-0001', kind: 'moisture', at: '2026-03-01T09:00:00Z', timber: 'lefft', moisture: 8.5 }
      ]
    }
    expect(findings(given).map(f => f.says)).toEqual([expect.stringMatching(/did you mean left\? It tells/)])
  })
})

describe('lines of figures', () => {
  it('do not run on: timber says its size, its air, its movement and its seal one under the other', () => {
    const p = planned(PLAIN)
    const lines = runSheetMarkdown(p)
      .split('\n')
      .filter(l => / · /.test(l))
    const at = (label: string) => lines.findIndex(l => l.trim().startsWith(label))
    const order = ['In the mould', 'Air it stands in now', 'Over a year its width moves', 'Seal coat'].map(at)
    expect(order.slice(0, 3)).toEqual([order[0], order[0]! + 1, order[0]! + 2])
    const longest = lines.reduce((a, b) => (b.length > a.length ? b : a))
    expect(longest.length, longest).toBeLessThan(420)
  })
})

describe('a channel that shows', () => {
  it('made shallower says that its part then stands out', () => {
    const piece: PieceDocument = {
      ...PLAIN,
      pours: [
        {
          id: 'cover',
          resin: 'medium',
          depth: 7,
          tint: [{ pigment: 'white-paste', percent: 2 }],
          opaque: true
        },
        { id: 'clear', resin: 'medium', depth: 7 }
      ],
      cuts: [
        {
          id: 'channel',
          face: 'back',
          shape: { rectangle: [30, 20] },
          depth: 5.5,
          for: 'strip'
        }
      ],
      hardware: [{ id: 'strip', kind: 'switch-low-voltage', in: 'channel', width: 18, length: 28, depth: 5 }]
    }
    const { fix, fixSays } = theOne({ piece }, 'opaque-cover')
    const deep = Number(/channel ([\d.]+) deep/.exec(fixSays!)![1])
    expect(deep).toBeLessThan(5)
    expect(fixSays).toMatch(new RegExp(`strip then stands ${(5 - deep).toFixed(1)} out`))
    expect(asked(mended({ piece }, fix!), 'opaque-cover')).toEqual([])
  })
})

describe('a flood over one face that bows the piece', () => {
  it('is not mended by taking more off the face under it', () => {
    const piece: PieceDocument = {
      ...PLAIN,
      pours: [
        { id: 'river', resin: 'deep', fill: 'timber' },
        { id: 'flood', kind: 'flood', face: 'front', resin: 'thin', depth: 5, dam: 8 }
      ]
    }
    const found = theOne({ piece }, 'bow-after')
    const more = { ...piece, flatten: { back: 1, front: 2.5 } }
    expect(theOne({ piece: more }, 'bow-after').value).toBeGreaterThan(found.value!)
    expect(found.fix).toBeNull()
    expect(found.says).not.toMatch(/evens it out/)
  })
})

describe('a part whose hole was never placed', () => {
  it('is told so even where the hole is as tight as the part, and the hole moves to it', () => {
    const piece: PieceDocument = {
      ...PLAIN,
      cuts: [{ id: 'hole', kind: 'bore', face: 'back', shape: { circle: 10 }, depth: 4 }],
      hardware: [{ id: 'disc', kind: 'magnet-disc', in: 'hole', at: [-90, 60], diameter: 10 }]
    }
    const { says, fix, fixSays } = theOne({ piece }, 'hardware-pocket')
    // By Pythagoras: √(90² + 60²).
    expect(says).toMatch(/^disc is placed at -90, 60, hole at -?0, -?0: 108\.2 mm apart\./)
    expect(fixSays).toBe('hole at -90, 60')
    expect(fix).toEqual([{ op: 'add', path: '/cuts/0/shape/at', value: [-90, 60] }])
  })
})
