import { describe, expect, it } from 'vitest'
import { COATS } from '../../src/catalogue/coat.ts'
import { HARDWARE } from '../../src/catalogue/hardware.ts'
import { HAZARDS } from '../../src/catalogue/safety.ts'
import type { HazardFacts, HazardPiece } from '../../src/steps/safety.ts'
import { HAZARDS_OF, HEAVY_G, safetyOf } from '../../src/steps/safety.ts'
import type { Step, StepKind } from '../../src/steps/step.ts'

const epoxy = { record: { family: 'epoxy' } }
const facts = (more: Partial<HazardFacts> = {}): HazardFacts => ({
  hardware: [],
  coats: { front: null, back: null },
  resins: [epoxy],
  markingResins: [epoxy],
  base: { material: 'particleboard' } as unknown as HazardFacts['base'],
  ...more
})
const none = { sands: false, wet: false, between: false }
const light: HazardPiece = { massG: 2000, food: false, byHand: false, timber: false, sanding: none }
const step = (kind: StepKind, more: object = {}): Step =>
  ({ kind, number: 1, says: '', at: '', up: null, inMould: false, ...more }) as Step
const ids = (s: Step, f = facts(), p = light): string[] =>
  safetyOf(s, f, p)
    .map(h => h.id)
    .sort()
const entry = (value: object) => ({ id: 'one', at: '', index: 0, value })

/** What can hurt at each kind of step, written down apart from the table under test. */
const BITES: readonly [
  what: string,
  step: Step,
  ids: readonly string[],
  facts?: HazardFacts,
  piece?: HazardPiece
][] = [
  [
    'timber is sawn and sanded',
    step('prepare timber', { timber: entry({ charred: 0 }) }),
    ['sanding-timber', 'sawing']
  ],
  [
    'timber is charred',
    step('prepare timber', { timber: entry({ charred: 2 }) }),
    ['charring', 'sanding-timber', 'sawing']
  ],
  ['boards of the mould are sawn', step('make mould'), ['sawing']],
  ['timber is laid in the mould', step('set timber'), []],
  [
    'epoxy is mixed, poured, and left over',
    step('pour', { pour: entry({}) }),
    ['leftover-in-cup', 'mixing-resin', 'pouring']
  ],
  [
    'polyester takes a peroxide',
    step('pour', { pour: entry({}) }),
    ['leftover-in-cup', 'mixing-resin', 'peroxide-catalyst', 'pouring'],
    facts({ resins: [{ record: { family: 'polyester' } }] })
  ],
  [
    'polyurethane holds isocyanates',
    step('pour', { pour: entry({}) }),
    ['isocyanate', 'leftover-in-cup', 'mixing-resin', 'pouring'],
    facts({ resins: [{ record: { family: 'polyurethane' } }] })
  ],
  ['hands come near tacky resin', step('set stones', { pour: entry({}) }), ['mixing-resin']],
  ['a pour heats while the next is waited for', step('wait', { why: 'recoat' }), ['hot-piece']],
  ['a pour heats before it is taken out', step('wait', { why: 'demould' }), ['hot-piece']],
  ['a hard casting waits for the cutter', step('wait', { why: 'machine' }), []],
  ['a warm casting is taken out', step('demould'), ['hot-piece']],
  [
    'glass splinters at demoulding, and it is heavy',
    step('demould'),
    ['glass-mould', 'heavy-lift', 'hot-piece'],
    facts({ base: { material: 'glass' } as unknown as HazardFacts['base'] }),
    { ...light, massG: HEAVY_G }
  ],
  ['a light piece is turned', step('turn over'), []],
  ['a heavy piece is turned', step('turn over'), ['heavy-lift'], facts(), { ...light, massG: HEAVY_G }],
  ['pin holes are drilled', step('drill pins'), ['drilling']],
  ['the machine flattens', step('flatten', { face: 'back' }), ['machine-cutting', 'sanding-cured-resin']],
  [
    'a router flattens',
    step('flatten', { face: 'back' }),
    ['router-by-hand', 'sanding-cured-resin'],
    facts(),
    { ...light, byHand: true }
  ],
  [
    'the machine cuts',
    step('cut', { cut: entry({ way: 'machine' }) }),
    ['machine-cutting', 'sanding-cured-resin']
  ],
  [
    'a router cuts',
    step('cut', { cut: entry({ way: 'router' }) }),
    ['router-by-hand', 'sanding-cured-resin']
  ],
  ['a drill cuts', step('cut', { cut: entry({ way: 'drill' }) }), ['drilling', 'sanding-cured-resin']],
  ['a saw cuts', step('cut', { cut: entry({ way: 'saw' }) }), ['sanding-cured-resin', 'sawing']],
  [
    'a router on a sled cuts',
    step('cut', { cut: entry({ way: 'sled' }) }),
    ['router-by-hand', 'sanding-cured-resin']
  ],
  [
    'the machine marks',
    step('mark', { marking: entry({ way: 'machine' }) }),
    ['machine-cutting', 'sanding-cured-resin']
  ],
  ['resin fills a marking', step('fill', { marking: entry({}) }), ['leftover-in-cup', 'mixing-resin']],
  [
    'polyester fills a marking',
    step('fill', { marking: entry({}) }),
    ['leftover-in-cup', 'mixing-resin', 'peroxide-catalyst'],
    facts({ markingResins: [{ record: { family: 'polyester' } }] })
  ],
  ['a face is sanded', step('sand', { face: 'front' }), ['sanding-cured-resin']],
  [
    'a face of timber and resin is sanded, in the end wet',
    step('sand', { face: 'front' }),
    ['sanding-cured-resin', 'sanding-timber', 'wet-sanding'],
    facts(),
    { ...light, timber: true, sanding: { ...none, sands: true, wet: true } }
  ],
  [
    'coats are sanded between',
    step('coat', { face: 'back' }),
    ['sanding-finish'],
    facts(),
    { ...light, sanding: { ...none, between: true } }
  ],
  [
    'a board is sanded just before its coat',
    step('coat', { face: 'back' }),
    ['sanding-cured-resin', 'sanding-timber'],
    facts(),
    { ...light, timber: true, sanding: { ...none, sands: true } }
  ],
  [
    'a coat of a face that meets food',
    step('coat', { face: 'back' }),
    ['food-side'],
    facts(),
    { ...light, food: true }
  ],
  ['waste is sawn or routed off', step('trim'), ['router-by-hand', 'sanding-cured-resin', 'sawing']],
  ['edges are routed and sanded', step('work edges'), ['router-by-hand', 'sanding-cured-resin']],
  ['nothing is coated', step('coat', { face: 'both' }), []],
  ['nothing is fitted', step('fit'), []],
  ['a light piece leaves', step('deliver'), []],
  [
    'a heavy piece that meets food leaves',
    step('deliver'),
    ['food-side', 'heavy-lift'],
    facts(),
    { ...light, massG: HEAVY_G, food: true }
  ]
]

/** Whom a hazard must defer to: named here by what hurts, not by what the table says. */
const DEFERS: readonly [ids: readonly string[], to: RegExp][] = [
  [
    [
      'mixing-resin',
      'pouring',
      'leftover-in-cup',
      'hot-piece',
      'peroxide-catalyst',
      'isocyanate',
      'glass-mould',
      'sanding-cured-resin',
      'spray',
      'finish-vapour',
      'wet-sanding',
      'sanding-finish'
    ],
    /safety data sheet/
  ],
  [['machine-cutting', 'router-by-hand', 'sawing', 'drilling', 'charring', 'pressure-pot'], /manual/],
  [['mains-wiring'], /licensed electrician/],
  [['mains-wiring'], /local electrical codes/],
  [['charring', 'spray', 'pressure-pot'], /local rules/],
  [['sanding-timber', 'heavy-lift', 'machine-cutting'], /rules for workshops where you live/],
  [['oily-rags'], /tin of the oil.*fire service/],
  [['food-side'], /declaration.*food authority/],
  [['magnets-swallow'], /doctor/]
]

describe('safety lines', () => {
  it('stand at each kind of step where something can hurt, and at no other', () => {
    for (const [what, s, expected, f, p] of BITES) expect(ids(s, f, p), what).toEqual(expected)
    expect(new Set(BITES.map(([, s]) => s.kind))).toEqual(new Set(Object.keys(HAZARDS_OF)))
  })

  it('are there for every hazard the table of steps names', () => {
    for (const [kind, own] of Object.entries(HAZARDS_OF))
      for (const id of own) {
        const lines = safetyOf(step(kind as StepKind, { why: 'recoat' }), facts(), light).map(h => h.id)
        const place = kind === 'wait' ? `${kind} (recoat)` : kind
        expect(lines, `${id} at ${place}`).toContain(id)
      }
  })

  it('defer to whoever knows better: data sheet, manual, codes, licensed trade', () => {
    for (const [list, to] of DEFERS)
      for (const id of list) {
        const row = HAZARDS.find(h => h.id === id)
        expect(row?.defersTo.join('; '), id).toMatch(to)
      }
    expect(new Set(DEFERS.flatMap(([list]) => list))).toEqual(new Set(HAZARDS.map(h => h.id)))
  })

  it('leave all mains wiring to a licensed electrician, for every part of the catalogue that belongs to mains', () => {
    const mains = HARDWARE.filter(h => h.mains)
    expect(mains.length).toBeGreaterThan(2)
    for (const record of HARDWARE) {
      const rows = safetyOf(step('fit', { hardware: entry({}) }), facts({ hardware: [record] }), light)
      const wiring = rows.find(h => h.id === 'mains-wiring')
      expect(wiring !== undefined, record.id).toBe(record.mains)
      if (wiring === undefined) continue
      expect(wiring.lines.join(' ')).toMatch(/chosen, wired and tested by a licensed electrician/)
      expect(wiring.defersTo).toEqual(['a licensed electrician', 'local electrical codes'])
    }
    // Mains parts by their words, in case a row forgets its mark.
    for (const record of HARDWARE.filter(h => /mains/i.test(h.name)))
      expect(record.mains, record.id).toBe(true)
  })

  it('warn of what a child can swallow: magnets and coin cells', () => {
    for (const id of ['magnet-disc', 'coin-cell-holder']) {
      const record = HARDWARE.find(h => h.id === id)!
      expect(ids(step('fit', { hardware: entry({}) }), facts({ hardware: [record] })), id).toContain(
        'magnets-swallow'
      )
    }
  })

  it('fit each coat of the catalogue: mist, rags, vapour, two parts', () => {
    for (const coat of COATS) {
      const own = ids(step('coat', { face: 'front' }), facts({ coats: { front: coat, back: null } }))
      expect(own.includes('spray'), coat.id).toBe(coat.way === 'spray')
      expect(own.includes('oily-rags'), coat.id).toBe(coat.kind === 'penetrating')
      expect(own.includes('mixing-resin'), coat.id).toBe(/epoxy/.test(coat.name))
      expect(own.includes('leftover-in-cup'), coat.id).toBe(/epoxy/.test(coat.name))
      // Spirit, alcohol and thinner burn; water does not.
      expect(own.includes('finish-vapour'), coat.id).toBe(/spirit|alcohol|thinner/.test(coat.carrier))
      // The other face is not coated with it.
      expect(
        ids(step('coat', { face: 'back' }), facts({ coats: { front: coat, back: null } })),
        coat.id
      ).toEqual([])
    }
  })

  it('are all used at some step, but for the pressure pot, which no step has', () => {
    const used = new Set(BITES.flatMap(([, , list]) => list))
    for (const coat of COATS)
      for (const id of ids(step('coat', { face: 'both' }), facts({ coats: { front: coat, back: coat } })))
        used.add(id)
    for (const record of HARDWARE)
      for (const id of ids(step('fit', { hardware: entry({}) }), facts({ hardware: [record] }))) used.add(id)
    expect(HAZARDS.map(h => h.id).filter(id => !used.has(id))).toEqual(['pressure-pot'])
  })
})
