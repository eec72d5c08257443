import { describe, expect, it } from 'vitest'
import type { Confidence } from '../../src/catalogue/record.ts'
import {
  basicGravityOf,
  bendingModulusOf,
  coefficientOf,
  density12Of,
  genusOf,
  isSoftwood,
  linkedCoefficientPerPct,
  openPoredOf,
  TIMBERS
} from '../../src/catalogue/timber.ts'
import type { TimberRecord } from '../../src/catalogue/timber-record.ts'
import { csvRows, fixture, LINK_EXCEPTIONS } from './fixture.ts'

const [header, ...cells] = csvRows(fixture('timber.csv'))
const table = cells.map(row => Object.fromEntries(header!.map((name, i) => [name, row[i]!])))

const figures: Readonly<Record<string, keyof TimberRecord>> = {
  shrink_R_pct: 'shrinkRadialPct',
  shrink_T_pct: 'shrinkTangentialPct',
  shrink_V_pct: 'shrinkVolumePct',
  C_R_per_pct: 'radialPerPct',
  C_T_per_pct: 'tangentialPerPct',
  shrink_start_MC_pct: 'shrinkageStartPct',
  SG_green: 'gravityGreen',
  SG_12: 'gravity12',
  density12_kg_m3: 'density12KgM3',
  E_L_12_MPa: 'modulus12MPa'
}

/** The tag that a cell in words comes down to: its weakest. */
const inOneWord = (words: string): Confidence => {
  if (words.includes('midpoint')) return 'derived'
  if (words.includes('memory')) return 'memory'
  return words === 'derived' ? 'derived' : 'read'
}

const byId = (id: string): TimberRecord => {
  const row = TIMBERS.find(t => t.id === id)
  if (row === undefined) throw new Error(`no timber ${id}`)
  return row
}

describe('the timbers against the published table', () => {
  it('has the table whole: 21 columns, 122 rows', () => {
    expect(header).toHaveLength(21)
    expect(table).toHaveLength(122)
    expect(cells.every(row => row.length === 21)).toBe(true)
    expect(TIMBERS).toHaveLength(122)
  })

  it('has every figure of every row, and null for every empty cell', () => {
    let compared = 0
    for (const [i, row] of table.entries()) {
      const timber = TIMBERS[i]!
      for (const [column, field] of Object.entries(figures)) {
        const cell = row[column]!
        expect(timber[field], `${timber.id} ${column}`).toBe(cell === '' ? null : Number(cell))
        compared++
      }
    }
    expect(compared).toBe(1220)
  })

  it('has every word of every row', () => {
    for (const [i, row] of table.entries()) {
      const timber = TIMBERS[i]!
      expect(timber.name.replace(' (DIN value)', ''), timber.id).toBe(row['species'])
      expect(timber.botanical, timber.id).toBe(row['botanical'])
      expect(timber.region, timber.id).toBe(row['region'])
      expect(timber.basis, timber.id).toBe(row['basis'])
      expect(timber.poreType ?? '', timber.id).toBe(row['pore_type'])
      const open = timber.openPored === null ? '' : timber.openPored ? '1' : '0'
      expect(open, timber.id).toBe(row['open_pored'])
      expect(timber.source, timber.id).toBe(row['source'])
      expect(timber.note ?? '', timber.id).toBe(row['note'])
    }
  })

  it('has every tag of every row, in words where one does not do', () => {
    for (const [i, row] of table.entries()) {
      const timber = TIMBERS[i]!
      const words = [row['conf_shrink']!, row['conf_C']!, row['conf_SG_E']!]
      const tags = [timber.shrinkageKnown, timber.coefficientKnown, timber.gravityKnown]
      expect(timber.knownInWords ?? tags, timber.id).toEqual(words)
      const expected = words.map(inOneWord)
      // Its note says that the coefficients were worked out, while the tag is that of the shrinkage.
      if (timber.id === 'camphor-laurel') expected[1] = 'derived'
      expect(tags, timber.id).toEqual(expected)
    }
  })

  it('gives species with two sources two rows', () => {
    for (const id of ['teak', 'iroko', 'sapele']) {
      expect(byId(id).botanical).toBe(byId(`${id}-din`).botanical)
      expect(byId(id).basis).toBe('green to ovendry')
      expect(byId(`${id}-din`).basis).toBe('differential swelling')
    }
  })
})

describe('relations between the columns', () => {
  // Wood Handbook, equation 13-3 against Table 13-5.
  it('finds the listed coefficients of 59 of 69 species by the link, and names the ten others', () => {
    const checked = TIMBERS.filter(
      t => t.basis === 'green to ovendry' && t.shrinkageStartPct !== null && t.coefficientKnown !== 'derived'
    )
    expect(checked).toHaveLength(69)
    const off = checked.filter(t => {
      const start = t.shrinkageStartPct!
      const radial = linkedCoefficientPerPct(t.shrinkRadialPct!, start) - t.radialPerPct!
      const tangential = linkedCoefficientPerPct(t.shrinkTangentialPct!, start) - t.tangentialPerPct!
      return Math.max(Math.abs(radial), Math.abs(tangential)) > 2e-5
    })
    expect(off.map(t => t.id).sort()).toEqual(Object.keys(LINK_EXCEPTIONS).sort())
    expect(checked.length - off.length).toBe(59)
  })

  it('finds the coefficients tagged derived by the link too', () => {
    const linked = TIMBERS.filter(t => t.basis === 'green to ovendry' && t.coefficientKnown === 'derived')
    expect(linked).toHaveLength(6)
    for (const t of linked) {
      expect(Math.abs(linkedCoefficientPerPct(t.shrinkRadialPct!) - t.radialPerPct!), t.id).toBeLessThan(2e-5)
      expect(
        Math.abs(linkedCoefficientPerPct(t.shrinkTangentialPct!) - t.tangentialPerPct!),
        t.id
      ).toBeLessThan(2e-5)
    }
  })

  it('has the tangential coefficient at least as great as the radial one', () => {
    for (const t of TIMBERS) {
      if (t.radialPerPct === null || t.tangentialPerPct === null) continue
      expect(t.radialPerPct, t.id).toBeLessThanOrEqual(t.tangentialPerPct)
    }
  })

  // Along the grain adds 0.1 to 0.2 %; iroko is off by 2.3 and black ash by 2.8 points in the table itself.
  it('has shrinkage in volume near that across both ways', () => {
    for (const t of TIMBERS) {
      if (t.shrinkVolumePct === null) continue
      const both = 100 * (1 - (1 - t.shrinkRadialPct! / 100) * (1 - t.shrinkTangentialPct! / 100))
      expect(Math.abs(both - t.shrinkVolumePct), t.id).toBeLessThan(3)
    }
  })

  // Wood Handbook equations 4-9 to 4-11; the tables are expected within 0.03.
  it('has the gravity at 12 % that follows from the basic one, but for the species named', () => {
    const off = TIMBERS.filter(t => {
      if (t.gravity12 === null || t.gravityGreen === null) return false
      const ours = t.gravityGreen / (1 - 0.265 * t.gravityGreen * 0.6)
      return Math.abs(ours - t.gravity12) > 0.0305
    })
    expect(off.map(t => t.id).sort()).toEqual(
      [
        ...['basswood-american', 'locust-black', 'pine-western-white'], // read in the table
        ...['persimmon-common', 'mahogany-african', 'limba', 'purpleheart', 'jatoba', 'ipe'],
        ...['spanish-cedar', 'lignumvitae']
      ].sort()
    )
  })

  it('has densities of 1120 times the gravity at 12 %, to the last kg', () => {
    const both = TIMBERS.filter(t => t.gravity12 !== null)
    expect(both).toHaveLength(81)
    for (const t of both)
      expect(Math.abs(t.density12KgM3! - 1120 * t.gravity12!), t.id).toBeLessThanOrEqual(0.51)
  })
})

describe('gaps filled', () => {
  it('leaves a listed value as it is and says so', () => {
    const walnut = byId('walnut-black')
    expect(coefficientOf(walnut, 'tangential')).toEqual({
      value: 0.00274,
      derived: false,
      confidence: 'read',
      doubt: 1.25
    })
    expect(basicGravityOf(walnut)).toMatchObject({ value: 0.51, derived: false, confidence: 'memory' })
    expect(density12Of(walnut)).toMatchObject({ value: 616, derived: false })
    expect(bendingModulusOf(walnut)).toMatchObject({ value: 11_600, derived: false })
  })

  // Worked by hand: 7.8/(3000 − 156) = 0.0027426; 4.0/(2200 − 48) = 0.0018587 (teak's older shrinkage).
  it('works out a coefficient by hand figures, and refuses nonsense', () => {
    expect(linkedCoefficientPerPct(7.8)).toBeCloseTo(0.0027426, 7)
    expect(linkedCoefficientPerPct(4, 22)).toBeCloseTo(0.0018587, 7)
    expect(() => linkedCoefficientPerPct(Number.NaN)).toThrow(/NaN/)
    expect(() => linkedCoefficientPerPct(26)).toThrow(/26/)
    expect(() => linkedCoefficientPerPct(5, 3)).toThrow(/3 %/)
  })

  it('fills every coefficient but two radial ones of which the row says nothing', () => {
    const open: string[] = []
    for (const t of TIMBERS) {
      expect(coefficientOf(t, 'tangential'), t.id).not.toBeNull()
      if (coefficientOf(t, 'radial') === null) open.push(t.id)
    }
    expect(open).toEqual(['silvertop-ash', 'myrtle-beech'])
  })

  it('marks what it fills as derived, no better known than what it came from', () => {
    const marri = coefficientOf(byId('marri'), 'tangential')!
    expect(marri.derived).toBe(true)
    expect(marri.confidence).toBe('derived')
    expect(marri.doubt).toBe(2)
    // 6.5·30/18 = 10.833; 10.833/(3000 − 216.67) = 0.0038922
    expect(marri.value).toBeCloseTo(0.0038922, 7)
    const olive = basicGravityOf(byId('olive'))!
    expect(olive).toMatchObject({ derived: true, confidence: 'memory' })
  })

  // Australian rows that give both: Kingston & Risdon, Bootle, TDS 16b.
  it('keeps the doubt it states for green-to-12 shrinkage: 31 of 32 within two, mountain ash at 2.4', () => {
    const beyond: string[] = []
    let compared = 0
    for (const t of TIMBERS.filter(t => t.basis === 'green to 12 %')) {
      for (const direction of ['radial', 'tangential'] as const) {
        const listed = direction === 'radial' ? t.radialPerPct : t.tangentialPerPct
        const blank = { ...t, radialPerPct: null, tangentialPerPct: null }
        const filled = coefficientOf(blank, direction)
        if (listed === null || filled === null) continue
        compared++
        const ratio = filled.value / listed
        if (Math.max(ratio, 1 / ratio) > filled.doubt) beyond.push(`${t.id} ${direction} ${ratio.toFixed(1)}`)
      }
    }
    expect(compared).toBe(32)
    expect(beyond).toEqual(['mountain-ash tangential 2.4'])
  })

  // Basic densities and densities at 12 % both given: WA Forest Products Commission, Aust. Forestry 67:152, TDS 16b.
  it('finds basic gravity from density within a tenth where both are given', () => {
    for (const id of ['jarrah', 'marri', 'blackbutt', 'alpine-ash', 'beefwood', 'goldfields-blackbutt']) {
      const t = byId(id)
      const filled = basicGravityOf({ ...t, gravityGreen: null })!
      expect(filled.derived, id).toBe(true)
      expect(Math.max(filled.value / t.gravityGreen!, t.gravityGreen! / filled.value), id).toBeLessThan(
        filled.doubt
      )
    }
  })

  it('is its own way back: density from the gravity found from density', () => {
    for (const t of TIMBERS.filter(t => t.density12KgM3 !== null)) {
      const basic = basicGravityOf({ ...t, gravityGreen: null })!
      const back = density12Of({ ...t, density12KgM3: null, gravityGreen: basic.value })!
      expect(back.value).toBeCloseTo(t.density12KgM3!, 8)
    }
  })

  it('knows gravity, density and modulus of every timber', () => {
    for (const t of TIMBERS) {
      for (const filled of [basicGravityOf(t), density12Of(t), bendingModulusOf(t)]) {
        expect(filled, t.id).not.toBeNull()
        expect(filled!.value, t.id).toBeGreaterThan(0)
        expect(filled!.doubt, t.id).toBeGreaterThan(1)
      }
    }
    expect(density12Of(byId('honeylocust'))).toMatchObject({ derived: true })
  })

  // Wood Handbook chapter 5, functions of property against gravity, against its own Tables 5-3a and 5-5.
  it('finds moduli from gravity: half the species within an eighth, four in five within its doubt', () => {
    const ratios = TIMBERS.filter(t => t.modulus12MPa !== null && t.gravity12 !== null).map(t => {
      const filled = bendingModulusOf({ ...t, modulus12MPa: null })!
      return Math.max(filled.value / t.modulus12MPa!, t.modulus12MPa! / filled.value)
    })
    expect(ratios).toHaveLength(81)
    ratios.sort((a, b) => a - b)
    expect(ratios[40]).toBeLessThan(1.125)
    expect(ratios[80]).toBeLessThan(1.8)
    expect(ratios.filter(r => r <= 1.4).length).toBeGreaterThanOrEqual(76)
  })

  it('tells conifers from hardwoods in every row', () => {
    const conifers = TIMBERS.filter(isSoftwood).map(genusOf)
    expect(conifers).toHaveLength(26 + 3 + 3)
    expect([...new Set(conifers)].sort()).toEqual([
      ...[
        'Abies',
        'Araucaria',
        'Callitris',
        'Callitropsis',
        'Calocedrus',
        'Chamaecyparis',
        'Juniperus',
        'Larix'
      ],
      ...['Picea', 'Pinus', 'Pseudotsuga', 'Sequoia', 'Taxodium', 'Thuja', 'Tsuga']
    ])
  })

  it('says open or closed pores by genus as the rows do that say it', () => {
    for (const t of TIMBERS.filter(t => t.openPored !== null)) {
      const byGenus = openPoredOf({ ...t, openPored: null })
      if (byGenus !== null) expect(byGenus.open, t.id).toBe(t.openPored)
    }
    expect(openPoredOf(byId('oak-european'))).toMatchObject({ open: true, derived: true })
    expect(openPoredOf(byId('sycamore-maple'))).toMatchObject({ open: false, derived: true })
    expect(openPoredOf(byId('spruce-european'))).toMatchObject({ open: false, derived: true })
    expect(openPoredOf(byId('jarrah'))).toBeNull()
  })
})
