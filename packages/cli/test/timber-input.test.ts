import { describe, expect, it } from 'vitest'
import { answer } from '../src/main.ts'
import { SOUND, testFolder } from './folder.ts'

const { put } = testFolder()
const first = SOUND.timbers[0]!
const piece = (timber: object, more: object = {}) =>
  put('bad.piece.json', JSON.stringify({ ...SOUND, timbers: [{ ...first, ...timber }], ...more }))
const reading = (record: object) => {
  const path = put('read.piece.json', JSON.stringify(SOUND))
  put(
    'read.readings.jsonl',
    `${JSON.stringify({ id: 'reading-1', at: '2026-11-27T09:00+01:00', ...record })}\n`
  )
  return path
}
const shop = (change: object) => {
  put('shop.json', JSON.stringify({ castwright: 1, ...change }))
  return put('wet.piece.json', JSON.stringify(SOUND))
}

/** What is wrong, and what the one message about it must hold: where, what was found, what is allowed. */
const CASES: readonly (readonly [about: string, path: () => string, says: RegExp])[] = [
  [
    'a species nobody knows, with the nearest',
    () => piece({ species: 'wallnut black' }),
    /at timbers\[0\]\.species: found a timber "wallnut black".* nearest: walnut-black/
  ],
  [
    'moisture of 200 %',
    () => piece({ moisture: 200 }),
    /at timbers\[0\]\.moisture: found 200; allowed: .*0 to 60/
  ],
  [
    'humidity over 100 %',
    () =>
      piece(
        {},
        { climate: { dry: { temperature: 20, humidity: 30 }, damp: { temperature: 20, humidity: 120 } } }
      ),
    /at climate\.damp\.humidity: found 120; allowed: .*0 to 100/
  ],
  [
    'a board that hangs below nothing',
    () => piece({ rough: { cup: -2 } }),
    /at timbers\[0\]\.rough\.cup: found -2/
  ],
  ['a board with a word nobody knows', () => piece({ rough: { cupp: 2 } }), /the nearest known key is "cup"/],
  [
    'moisture of 200 % read at the bench',
    () => reading({ kind: 'moisture', timber: 'left', moisture: 200 }),
    /readings\.jsonl line 1 at moisture: found 200; allowed: .*0 to 60/
  ],
  [
    'a sample that gains in the oven',
    () => reading({ kind: 'sample', timber: 'left', wet: '50 g', dry: '52 g' }),
    /readings\.jsonl line 1 at dry: found "52 g"; allowed: 16\.7 to 50 g/
  ],
  [
    'a timber that weighs nothing',
    () => reading({ kind: 'weight', timber: 'left', mass: 0 }),
    /readings\.jsonl line 1 at mass: found 0/
  ],
  [
    'humidity of the shop over 100 %',
    () => shop({ climate: { humidity: 120 } }),
    /shop\.json at climate\.humidity: found 120; allowed: .*1 to 99/
  ]
]

describe('timber that cannot be', () => {
  for (const [about, path, says] of CASES)
    it(`${about}: a clear message, code 2`, () => {
      const { out, err, code } = answer(['check', path()])
      expect([out, code]).toEqual(['', 2])
      expect(err).toMatch(says)
      expect(err).not.toMatch(/\n\s+at |undefined|\[object|NaN/)
    })

  it('weights from the file beside the piece make a forecast in the plan', () => {
    const path = put('log.piece.json', JSON.stringify(SOUND))
    const kg = (day: number) => 3 * (1 + (9 + 7 * Math.exp(-0.028 * day)) / 100)
    put(
      'log.readings.jsonl',
      Array.from(
        { length: 8 },
        (_, i) =>
          `${JSON.stringify({
            id: `weight-00${i}`,
            kind: 'weight',
            timber: 'left',
            mass: `${kg(7 * i).toFixed(3)} kg`,
            ...(i === 0 ? { moisture: 16 } : {}),
            at: new Date(Date.UTC(2026, 0, 5 + 7 * i, 8)).toISOString().replace('.000Z', 'Z')
          })}\n`
      ).join('')
    )
    put('shop.json', JSON.stringify({ castwright: 1 }))
    const { out, code } = answer(['check', path, '--json'])
    const wet = (JSON.parse(out) as { findings: { id: string; says: string }[] }).findings.find(
      f => f.id === 'timber-wet'
    )
    expect(wet?.says).toMatch(/by its weights ready on about \d+ \w{3} 2026, between \d+ \w{3} 2026 and/)
    expect([0, 1]).toContain(code)
  })
})
