import { mkdirSync, readdirSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { answer } from '../src/main.ts'
import { SOUND, testFolder } from './folder.ts'

const { home, at, put } = testFolder()
const piece = (change: object) => JSON.stringify({ ...SOUND, ...change })

/** What cannot be used: the file, and what the one message about it must hold. */
const cases: [about: string, path: () => string, says: RegExp][] = [
  ['a file that is not there', () => at('none.json'), /no such file or folder/],
  ['a folder', () => at(''), /found a folder; allowed: a file/],
  ['an empty file', () => put('empty.json', ''), /empty/],
  [
    'a binary file',
    () => put('binary.json', new Uint8Array([0x7f, 0x45, 0x4c, 0x46, 0xff, 0xfe, 0x80])),
    /a binary file; allowed: text in UTF-8/
  ],
  ['text in UTF-16', () => put('wide.json', Buffer.from('\ufeff{}', 'utf16le')), /UTF-16/],
  [
    'a file of 200 MB',
    () => {
      const path = put('large.json', '')
      truncateSync(path, 200_000_000)
      return path
    },
    /found 200 MB; allowed: at most 16 MB/
  ],
  ['nesting deeper than any piece', () => put('deep.json', '['.repeat(100_000)), /nesting deeper than 64/],
  [
    'half a file',
    () => put('half.json', piece({}).slice(0, 100)),
    /line 1, column \d+: found text that never ends/
  ],
  [
    'a link in a circle',
    () => {
      symlinkSync('loop.json', at('loop.json'))
      return at('loop.json')
    },
    /links that lead in a circle/
  ],
  ['a device', () => '/dev/zero', /no regular file/],
  ['not a piece', () => put('list.json', '[1, 2]'), /allowed: a JSON object/],
  ['a newer version', () => put('new.json', piece({ castwright: 9 })), /written by a newer Castwright/],
  ['a wrong type', () => put('type.json', piece({ name: 7 })), /at name: found 7/],
  [
    'a missing part',
    () => put('part.json', JSON.stringify({ castwright: 1, name: 'a', pours: SOUND.pours })),
    /at outline: found nothing/
  ],
  ['a negative size', () => put('neg.json', piece({ outline: { circle: -4 } })), /found -4/],
  ['an absurd size', () => put('abs.json', piece({ outline: { circle: 1e12 } })), /found 1000000000000/],
  [
    'a number that is none',
    () => put('nan.json', piece({}).replace('"thickness":20', '"thickness":NaN')),
    /found .*NaN|found "N"/
  ],
  ['an unknown key', () => put('key.json', piece({ outlin: {} })), /the nearest known key is "outline"/],
  [
    'an unknown material',
    () => put('mat.json', piece({ pours: [{ resin: 'deeep', fill: 'timber' }] })),
    /deeep/
  ],
  [
    'an outline that crosses itself',
    () =>
      put(
        'cross.json',
        piece({
          outline: {
            polygon: [
              [0, 0],
              [100, 100],
              [100, 0],
              [0, 100]
            ]
          }
        })
      ),
    /crosses itself/
  ],
  [
    'a hole outside its outline',
    () =>
      put(
        'hole.json',
        piece({
          outline: {
            polygon: [
              [-150, -100],
              [150, -100],
              [150, 100],
              [-150, 100]
            ],
            holes: [
              [
                [400, 0],
                [420, 0],
                [420, 20]
              ]
            ]
          }
        })
      ),
    /hole/
  ],
  [
    'a timber outside the mould',
    () =>
      put(
        'outside.json',
        piece({ timbers: [{ ...SOUND.timbers[0], outline: { rectangle: [103, 206], at: [-300, 0] } }] })
      ),
    /outside the mould/
  ],
  [
    'a mould of twenty metres',
    () =>
      put(
        'long.json',
        piece({
          mould: {
            ears: [
              { rectangle: [44, 60], at: [10000, 0] },
              { rectangle: [44, 60], at: [-10000, 0] }
            ]
          }
        })
      ),
    /at mould: found 20044 mm across; allowed: at most 20000 mm/
  ],
  [
    'timbers in one place',
    () =>
      put(
        'over.json',
        piece({ timbers: [SOUND.timbers[0], SOUND.timbers[0]].map((t, i) => ({ ...t, id: `t${i}` })) })
      ),
    /in the same place/
  ],
  [
    'a pour below the one before',
    () =>
      put(
        'below.json',
        piece({
          pours: [
            { resin: 'deep', height: 12 },
            { resin: 'deep', height: 8 }
          ]
        })
      ),
    /at pours\[1\]\.height: found 8 mm as cast, below the one before/
  ],
  [
    'a drawing that is not there',
    () => put('svg.json', piece({ outline: { file: 'none.svg' } })),
    /at outline\.file: found "none\.svg": no such file/
  ],
  [
    'a drawing in another folder',
    () => put('away.json', piece({ outline: { file: '../../etc/passwd' } })),
    /outside the folder of the piece/
  ],
  [
    'a drawing behind a link out of the folder',
    () => {
      symlinkSync('/etc/passwd', at('out.svg'))
      return put('link.json', piece({ outline: { file: 'out.svg' } }))
    },
    /outside the folder of the piece/
  ],
  [
    'a drawing that is no drawing',
    () => {
      writeFileSync(at('bad.svg'), '<svg><path d="M 0"')
      return put('badsvg.json', piece({ outline: { file: 'bad.svg' } }))
    },
    /bad\.svg/
  ]
]

describe('bad input', () => {
  for (const [about, path, says] of cases) {
    it(`${about}: a clear message, code 2, nothing written`, () => {
      const file = path()
      const before = readdirSync(home)
      const { out, err, code } = answer(['plan', file, '--out', at('never')])
      expect([out, code]).toEqual(['', 2])
      expect(err).toMatch(says)
      expect(err).not.toMatch(/\n\s+at |undefined|\[object|node:/)
      for (const line of err!.trimEnd().split('\n')) expect(line.length).toBeLessThan(500)
      expect(readdirSync(home)).toEqual(before)
    })
  }

  it('a bad shop and bad readings are named as such', () => {
    const good = put('good.piece.json', piece({}))
    expect(
      answer(['check', good, '--shop', put('bad.shop.json', '{"castwright":1,"scal":{}}')]).err
    ).toContain('bad.shop.json at scal')
    expect(
      answer(['check', good, '--readings', put('bad.jsonl', '{"kind":"note"}\n{"kind":1}\n')]).err
    ).toMatch(/bad\.jsonl line 1/)
  })

  it('a reading that was cut off is left out and said so', () => {
    const good = put('cut.piece.json', piece({}))
    put('cut.readings.jsonl', '{"kind":"note","id":"r-0000001","at":"2026-11-20T08:00Z"}\n{"kind":"no')
    const { err, code } = answer(['check', good, '--as-of', '2026-11-20T09:00Z'])
    expect(code).toBe(0)
    expect(err).toMatch(/cut\.readings\.jsonl line 2: cut off/)
  })

  it('a folder as shop is refused', () => {
    mkdirSync(at('shopfolder'))
    expect(answer(['check', put('g.piece.json', piece({})), '--shop', at('shopfolder')]).err).toContain(
      'found a folder'
    )
  })
})
