import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { CHECKS } from '../../src/findings/every-check.ts'
import type { Finding } from '../../src/findings/finding.ts'
import { typedAt } from '../../src/findings/fix.ts'
import type { Operation, Patch } from '../../src/piece/patch.ts'
import { parseQuantity } from '../../src/quantity/parse.ts'
import { UNITS } from '../../src/quantity/unit.ts'
import type { Given, Pair } from './harness.ts'
import { findings as asked, mended, PLAIN, spoiled } from './harness.ts'

const folder = join(import.meta.dirname, 'pairs')
const pairs: Pair[] = []
for (const file of readdirSync(folder)
  .filter(f => f.endsWith('.pairs.ts'))
  .sort()) {
  pairs.push(...((await import(join(folder, file))) as { pairs: readonly Pair[] }).pairs)
}

// The same documents give the same findings: each set is asked once, however many tests look at it.
const known = new Map<string, readonly Finding[]>()
function findings(given: Given): readonly Finding[] {
  const key = JSON.stringify(given)
  const found = known.get(key) ?? asked(given)
  known.set(key, found)
  return found
}

const stops = (list: readonly Finding[]) => list.filter(f => f.severity === 'stop').map(f => f.id)

describe('minimal pairs', () => {
  it('the plain panel has nothing against it', () => {
    expect(findings({ piece: PLAIN })).toEqual([])
  })

  it('every check has a pair', () => {
    const have = new Set(pairs.map(p => p.id))
    expect(CHECKS.map(c => c.id).filter(id => !have.has(id))).toEqual([])
  })

  it('every pair is of a check', () => {
    const checks = new Set(CHECKS.map(c => c.id))
    expect(pairs.map(p => p.id).filter(id => !checks.has(id))).toEqual([])
  })

  for (const pair of pairs) {
    describe(`${pair.id}: ${pair.about}`, () => {
      const without = () => findings(pair.sound)
      const withEdit = () => findings(spoiled(pair))

      it('comes with the edit and not without', () => {
        expect(without().filter(f => f.id === pair.id)).toEqual([])
        const found = withEdit().filter(f => f.id === pair.id)
        expect(found.length).toBeGreaterThan(0)
        expect(found[0]!.severity).toBe(pair.severity)
      })

      it('says where, what, and on what basis', () => {
        for (const f of withEdit().filter(x => x.id === pair.id)) {
          expect(f.says).toMatch(/^.{15,400}$/s)
          expect(f.basis.length).toBeGreaterThan(8)
          expect(
            f.at === '' || typedAt(spoiled(pair).piece, f.at) !== undefined || f.at.startsWith('/')
          ).toBe(true)
          expect(f.says).not.toMatch(/NaN|undefined|Infinity|\bnull\b/)
          if (f.limit !== null) expect(f.value).not.toBeNull()
          if (f.band !== null) expect(f.band[0]).toBeLessThanOrEqual(f.band[1])
        }
      })

      it('its fix clears it, brings no new stop, and half of it does not do', () => {
        const given = spoiled(pair)
        const before = findings(given)
        const found = before.filter(f => f.id === pair.id)
        for (const f of found) {
          if (f.fix === null) {
            expect(pair.noFix, `${pair.id} has no fix: say why in noFix`).toBeTruthy()
            continue
          }
          // One finding is mended at a time; others of the same id may stand at other places.
          const after = findings(mended(given, f.fix))
          expect(
            after.filter(x => x.id === f.id && x.at === f.at),
            `fix ${JSON.stringify(f.fix)}`
          ).toEqual([])
          expect(stops(after).filter(id => !stops(before).includes(id))).toEqual([])
          const half = halved(given, f.fix)
          if (half !== null && f.limit !== null) {
            expect(
              findings(mended(given, half)).filter(x => x.id === f.id && x.at === f.at).length,
              `half: ${JSON.stringify(half)}`
            ).toBeGreaterThan(0)
          }
        }
      })
    })
  }
})

// A fix that sets one number, with only half the change; null when it is another kind of fix.
function halved(given: Given, fix: Patch): Patch | null {
  if (fix.length !== 1) return null
  const op = fix[0] as Operation & { value?: unknown }
  if (op.op !== 'replace') return null
  const old = numberOf(typedAt(given.piece, op.path))
  const next = numberOf(op.value)
  if (old === null || next === null || old.value === next.value) return null
  // Counts stay whole: half of one more is none, half of three more is one.
  const whole = Number.isInteger(old.value) && Number.isInteger(next.value) && Number.isInteger(op.value)
  const half = (next.value - old.value) / 2
  const value = old.value + (whole ? Math.trunc(half) : half)
  return [
    {
      op: 'replace',
      path: op.path,
      value: next.unit === null ? value : `${Number((value / next.unit).toFixed(6))} ${next.word}`
    }
  ]
}

function numberOf(typed: unknown): { value: number; unit: number | null; word: string } | null {
  if (typeof typed === 'number') return { value: typed, unit: null, word: '' }
  if (typeof typed !== 'string') return null
  for (const d of ['length', 'mass', 'volume', 'time', 'percent'] as const) {
    const q = parseQuantity(typed, d)
    if (q) return { value: q.value, unit: UNITS[q.unit]!.times / (UNITS[q.unit]!.per ?? 1), word: q.unit }
  }
  return null
}
