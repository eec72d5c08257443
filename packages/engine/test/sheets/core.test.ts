import { describe, expect, it } from 'vitest'
import { PIGMENTS } from '../../src/catalogue/pigment.ts'
import type { Bands } from '../../src/catalogue/pigment-optics.ts'
import type { Looks, MixLook } from '../../src/fits/looks.ts'
import { insideOf } from '../../src/fits/looks.ts'
import { bounds, inside } from '../../src/shape/measure.ts'
import type { CoreModel } from '../../src/sheets/core-model.ts'
import { castPartsAt, corePartsAt, finishedOf } from '../../src/sheets/core-model.ts'
import { coreStrip } from '../../src/sheets/core-strip.ts'
import { coreWords } from '../../src/sheets/core-words.ts'
import { bodyColour, isClear, pourColour, seenColour } from '../../src/sheets/look.ts'
import type { Mark, RegionMark, TextMark } from '../../src/sheets/mark.ts'
import { textWidthMm } from '../../src/sheets/mark.ts'
import { coreModelOf } from '../../src/sheets/model.ts'
import { modelData, modelFrom } from '../../src/sheets/page-data.ts'
import { sectionOf } from '../../src/sheets/section-cut.ts'
import { seeded } from '../../src/sheets/seeded.ts'
import { coreAt } from '../../src/stack/core.ts'
import { BOARDS, PANEL, planOf, TABLE } from './pieces.ts'

const panel = planOf(PANEL)
const models: Record<string, CoreModel> = {
  panel: coreModelOf(panel.work),
  table: coreModelOf(planOf(TABLE).work),
  boards: coreModelOf(planOf(BOARDS).work),
  'panel face down': coreModelOf(planOf({ ...PANEL, down: 'front' }).work)
}

/** Points inside the outline, the same on every run. */
function points(model: CoreModel, count: number, seed: number): [number, number][] {
  const random = seeded(seed)
  const b = bounds(model.geometry.outline)
  const out: [number, number][] = []
  while (out.length < count) {
    const x = b.minX + random() * (b.maxX - b.minX)
    const y = b.minY + random() * (b.maxY - b.minY)
    if (inside(model.geometry.outline, x, y)) out.push([x, y])
  }
  return out
}

describe('a core as parts', () => {
  it('fills the finished thickness without gap or overlap, back to front', () => {
    for (const [name, model] of Object.entries(models)) {
      for (const [x, y] of points(model, 60, 5)) {
        const parts = corePartsAt(model, x, y)
        let at = 0
        for (const p of parts) {
          const [a, b] = [finishedOf(model, p.from), finishedOf(model, p.to)].sort((m, n) => m - n) as [
            number,
            number
          ]
          expect(a, `${name} at ${x}, ${y}`).toBeCloseTo(at, 9)
          at = b
        }
        expect(at).toBeCloseTo(model.finishedHigh - model.finishedLow, 9)
      }
    }
  })

  it('is the core of the stack, voids added', () => {
    for (const model of Object.values(models)) {
      for (const [x, y] of points(model, 40, 6)) {
        const solid = corePartsAt(model, x, y).filter(p => p.material !== null)
        if (model.down === 'front') solid.reverse()
        expect(solid.map(p => [p.from, p.to, p.material])).toEqual(
          coreAt(model.geometry, model.events, x, y).map(p => [p.from, p.to, p.material])
        )
      }
    }
  })

  it('names the hole it meets and what sits in it, and is empty beside the piece', () => {
    const model = models['panel']!
    const [cx, cy] = [panel.work.fits[0]!.x, panel.work.fits[0]!.y]
    expect(corePartsAt(model, cx, cy).map(p => p.words)).toEqual(['compass hole, compass'])
    expect(corePartsAt(model, 0, 200)).toEqual([])
    expect(coreWords(model, 0, 200)).toContain('outside the piece')
  })

  it('says what a cover does, in agreement with the finding about it', () => {
    const model = models['panel']!
    const stop = panel.plan.findings.find(f => f.id === 'opaque-cover')!
    const cover = panel.work.covers[0]!.layers[0]!
    const parts = corePartsAt(model, cover.x, cover.y)
    const at = parts.findIndex(p => p.seen !== null)
    // The void, and before it what is left of the green.
    expect(parts[at]!.material).toBeNull()
    expect(parts[at + 1]!.to - parts[at + 1]!.from).toBeCloseTo(stop.value!, 6)
    expect(parts[at]!.seen!.shows).toBe(stop.severity === 'stop' ? 'yes' : 'faint')
    expect(stop.says).toContain(`a difference of ${parts[at]!.seen!.difference.toFixed(1)}`)
    expect(coreWords(model, cover.x, cover.y)).toMatch(/void .*shows: /)
    // Beside the channel nothing is behind it.
    expect(corePartsAt(model, cover.x, cover.y - 9).every(p => p.seen === null)).toBe(true)
  })
})

describe('the core strip', () => {
  const flat = (marks: readonly Mark[]): Mark[] =>
    marks.flatMap(m => (m.kind === 'group' ? flat(m.marks) : [m]))

  it('draws each part as high as it is thick, front at the top whichever face lay down', () => {
    for (const name of ['panel', 'panel face down']) {
      const model = models[name]!
      const [x, y] = [20, 16]
      const parts = corePartsAt(model, x, y)
      const { marks } = coreStrip(model, x, y, { levels: 'finished', widthMm: 58, heightMm: 90 })
      const drawn = flat(marks).filter((m): m is RegionMark => m.kind === 'region' && m.paint !== null)
      expect(drawn).toHaveLength(parts.length)
      const thick = model.finishedHigh - model.finishedLow
      drawn.forEach((m, i) => {
        const ys = [...m.rings[0]!].filter((_, k) => k % 2 === 1)
        const share = (Math.max(...ys) - Math.min(...ys)) / (90 - 2 * 5.5)
        expect(share).toBeCloseTo((parts[i]!.to - parts[i]!.from) / thick, 9)
      })
      const heights = drawn.map(m => m.rings[0]![1]!)
      expect([...heights].sort((a, b) => a - b)).toEqual(heights)
      // The first pour lies on the face that lay down.
      expect(parts[parts.length - 1]!.name).toBe(model.down === 'back' ? 'Clear' : 'Reed green')
    }
  })

  it('carries the thickness of each part, and keeps its labels apart', () => {
    const model = models['panel']!
    const { marks } = coreStrip(model, 20, 16, { levels: 'finished', widthMm: 58, heightMm: 90 })
    const strong = flat(marks).filter((m): m is TextMark => m.kind === 'text' && m.at[0] === 58)
    expect(strong.map(t => t.text)).toEqual(
      [...corePartsAt(model, 20, 16)].reverse().map(p => (p.to - p.from).toFixed(1))
    )
    const feet = strong.map(t => t.at[1])
    for (let k = 1; k < feet.length; k++) expect(feet[k - 1]! - feet[k]!).toBeGreaterThan(4)
  })

  it('gives thicknesses as cast: what flattening takes off is still there', () => {
    const model = models['table']!
    // From the document: pours to 20 and 39 in a mould, 2 off each face.
    const parts = castPartsAt(model, 0, 0)
    expect(parts.map(p => [p.from, p.to])).toEqual([
      [0, 20],
      [20, 39]
    ])
    for (const [name, any] of Object.entries(models))
      for (const [x, y] of points(any, 30, 8)) {
        const cast = castPartsAt(any, x, y)
        const finished = corePartsAt(any, x, y)
        const inner = cast
          .map(p => ({ ...p, from: Math.max(p.from, any.finishedLow), to: Math.min(p.to, any.finishedHigh) }))
          .filter(p => p.to - p.from > 1e-6)
        expect(
          inner.map(p => [p.from, p.to, p.name]),
          `${name} at ${x}, ${y}`
        ).toEqual(finished.map(p => [p.from, p.to, p.name]))
      }
  })

  it('keeps every label of the strip on its sheet', () => {
    const model = models['panel']!
    const covered = points(model, 400, 9).filter(([x, y]) => {
      const parts = corePartsAt(model, x, y)
      return parts.some((p, i) => p.seen !== null && parts[i + 1]!.material!.kind === 'pour')
    })
    expect(covered.length).toBeGreaterThan(0)
    const said = new Set<string>()
    // The words are those of any strength of the tint.
    for (const strength of [0.02, 1, 50]) {
      const [x, y] = covered[0]!
      const times = (bands: Bands): Bands => [bands[0] * strength, bands[1] * strength, bands[2] * strength]
      const judged: CoreModel = {
        ...model,
        looks: {
          ...model.looks,
          pours: model.looks.pours.map(l => ({
            ...l,
            scatterPerMm: times(l.scatterPerMm),
            absorbPerMm: times(l.absorbPerMm)
          }))
        }
      }
      said.add(corePartsAt(judged, x, y).find(p => p.seen)!.seen!.shows)
      const sheet = coreStrip(judged, x, y, { levels: 'finished', widthMm: 58, heightMm: 90 })
      for (const m of flat(sheet.marks)) {
        if (m.kind !== 'text' || m.anchor === 'end' || m.anchor === 'middle') continue
        const wide = textWidthMm(m.text, m.heightMm, m.strong)
        expect(m.at[0] + wide, m.text).toBeLessThanOrEqual(58 + 1e-6)
      }
    }
    expect(said).toContain('no')
    expect(said).toContain('yes')
  })

  it('counts as cast from the base of the mould when asked', () => {
    const model = models['panel']!
    const words = (levels: 'finished' | 'as cast') =>
      flat(coreStrip(model, 20, 16, { levels, widthMm: 58, heightMm: 90 }).marks)
        .filter((m): m is TextMark => m.kind === 'text' && m.anchor === 'end' && m.at[0] < 20)
        .map(t => t.text)
    expect(words('finished')).toEqual(['0', '5', '10', '15', '20', '25'])
    expect(words('as cast')).toEqual(['0', '5', '10', '15', '20', '25', '30'])
  })
})

describe('the data of a page', () => {
  it('gives the same core after a way through JSON: heights exactly, edges within 1e-5 mm', () => {
    for (const [name, model] of Object.entries(models)) {
      const back = modelFrom(JSON.parse(JSON.stringify(modelData(model))))
      for (const [x, y] of points(model, 80, 9)) {
        const wanted = coreAt(model.geometry, model.events, x, y)
        const found = coreAt(back.geometry, back.events, x, y)
        expect(
          found.map(p => p.material),
          `${name} at ${x}, ${y}`
        ).toEqual(wanted.map(p => p.material))
        found.forEach((p, i) => {
          // Slanted sides move with their edges.
          expect(p.from).toBeCloseTo(wanted[i]!.from, 4)
          expect(p.to).toBeCloseTo(wanted[i]!.to, 4)
        })
        expect(coreWords(back, x, y)).toBe(coreWords(model, x, y))
      }
    }
  })

  it('keeps heights without end, and a section', () => {
    const model = models['panel']!
    const back = modelFrom(JSON.parse(JSON.stringify(modelData(model))))
    const through = back.events.flatMap(e =>
      e.kind === 'cut' && !Number.isFinite(e.removal.floor) ? [e.removal.floor] : []
    )
    expect(through).toEqual([Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY])
    const path = { along: 'x', legs: [{ from: -260, to: 260, at: 10 }] } as const
    expect(sectionOf(back, path, 2).areas.length).toBe(sectionOf(model, path, 2).areas.length)
  })
})

describe('how a core looks', () => {
  const paste = PIGMENTS.find(p => p.id === 'green-paste')!
  const look = (percent: number): MixLook => {
    const c = (percent / 100) * paste.pigmentFraction * 1100
    const s = c * paste.scatterM2PerG
    return {
      scatterPerMm: [s, s, s],
      absorbPerMm: paste.absorbBandsM2PerG.map(k => k * c) as unknown as Bands,
      doubt: paste.bandFactor
    }
  }
  const hex = (rgb: readonly number[]) => `#${rgb.map(c => c.toString(16).padStart(2, '0')).join('')}`
  const clear: MixLook = { scatterPerMm: [0, 0, 0], absorbPerMm: [0, 0, 0], doubt: 1 }
  const ash = insideOf([219, 196, 155])
  const looks: Looks = {
    timbers: [{ wood: ash, char: null, lowMm: 0, highMm: 10 }],
    pours: [look(5), clear],
    markings: [],
    inCuts: [],
    inFormers: [],
    wall: [0.8, 0.8, 0.8],
    hollow: [0.1, 0.1, 0.1],
    faces: [0, 60],
    frontUp: true
  }
  const part = (kind: 'timber' | 'pour', index: number, from: number, to: number) => ({
    from,
    to,
    material: { kind, index }
  })

  // The catalogue gives the look of a deep layer; Kubelka-Munk must come back to it (its own inverse).
  it('gives a deep pour the colour its pigment is catalogued with', () => {
    expect(pourColour(look(5), 100)).toBe(hex(paste.srgb))
    expect(seenColour(looks, [part('timber', 0, 0, 10), part('pour', 0, 10, 60)], 'front')).toBe(
      hex(paste.srgb)
    )
  })

  it('shows timber as it is, bare and under clear resin', () => {
    expect(bodyColour(ash)).toBe('#dbc49b')
    expect(seenColour(looks, [part('timber', 0, 0, 10)], 'front')).toBe('#dbc49b')
    expect(seenColour(looks, [part('timber', 0, 0, 10), part('pour', 1, 10, 25)], 'front')).toBe('#dbc49b')
    expect(isClear(clear)).toBe(true)
    expect(isClear(look(0.5))).toBe(false)
  })

  it('lets a thin cover over a hollow look different from a thick one, and less so the thicker it is', () => {
    const light = (mm: number) => {
      const weak = { ...looks, pours: [look(0.3), clear] }
      const over = seenColour(weak, [part('pour', 0, 20 - mm, 20)], 'front')!
      const full = seenColour(weak, [part('pour', 0, 0, 20)], 'front')!
      return [1, 3, 5].reduce(
        (sum, k) =>
          sum +
          Math.abs(Number.parseInt(over.slice(k, k + 2), 16) - Number.parseInt(full.slice(k, k + 2), 16)),
        0
      )
    }
    expect(light(0.5)).toBeGreaterThan(light(2))
    expect(light(2)).toBeGreaterThanOrEqual(light(8))
    expect(seenColour(looks, [], 'front')).toBeNull()
  })
})
