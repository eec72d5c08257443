import { describe, expect, it } from 'vitest'
import type { SvgReading } from '../../src/shape/svg.ts'
import { readSvg, SvgError } from '../../src/shape/svg.ts'
import { mutateSvg } from './svg-mutation.ts'
import { SAMPLES } from './svg-samples.ts'

const COUNT = Number(process.env['CASTWRIGHT_MUTATIONS'] ?? 1000)
/** Longest one text may take, ms. */
const MOST_MS = 2000

/** The first coordinate that is no finite number, or null. */
function badCoordinate(reading: SvgReading): number | null {
  const lines = [...reading.region.rings, ...reading.shapes.flatMap(s => [...s.region.rings, ...s.open])]
  for (const line of lines) for (const v of line) if (!Number.isFinite(v)) return v
  for (const v of [reading.widthMm, reading.heightMm]) if (!Number.isFinite(v)) return v
  return null
}

const slow = (began: number) => performance.now() - began >= MOST_MS

function again(text: string): number {
  const began = performance.now()
  try {
    readSvg(text, { tolMm: 0.05 })
  } catch {
    // What it throws was looked at the first time.
  }
  return performance.now() - began
}

describe('mutated SVG texts', () => {
  it(`throw SvgError or give finite coordinates, ${COUNT} seeds`, () => {
    let read = 0
    for (let seed = 1; seed <= COUNT; seed++) {
      const text = mutateSvg(seed)
      const began = performance.now()
      try {
        const reading = readSvg(text, { tolMm: 0.05 })
        expect(badCoordinate(reading), `seed ${seed}`).toBeNull()
        if (reading.shapes.length > 0) read++
      } catch (e) {
        if (!(e instanceof SvgError)) throw new Error(`seed ${seed} throws ${String(e)}`, { cause: e })
        expect(e.message, `seed ${seed}`).toMatch(/^line \d+: ./)
        expect(e.line >= 1 && e.column >= 1, `seed ${seed}: line ${e.line}, column ${e.column}`).toBe(true)
      }
      // A machine that is busy with other tests may stall one: what was slow is read once more.
      const took = slow(began) ? again(text) : 0
      expect(took, `seed ${seed} took ${Math.round(took)} ms`).toBeLessThan(MOST_MS)
    }
    // The mutations are not all fatal: a good share is still read, so the geometry is tried too.
    expect(read).toBeGreaterThan(COUNT / 5)
    expect(read).toBeLessThan((COUNT * 4) / 5)
  }, 600_000)

  it('are the same for the same seed', () => {
    expect(mutateSvg(7)).toBe(mutateSvg(7))
    expect(mutateSvg(7)).not.toBe(mutateSvg(8))
  })

  it('start from texts that are read without a word', () => {
    for (const [name, text] of Object.entries(SAMPLES)) {
      const reading = readSvg(text, { tolMm: 0.05 })
      expect(reading.shapes.length, name).toBeGreaterThan(2)
      expect(badCoordinate(reading), name).toBeNull()
    }
  })
})
