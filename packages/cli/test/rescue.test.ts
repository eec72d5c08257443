import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { answer } from '../src/main.ts'
import { SOUND, testFolder } from './folder.ts'

const { put, at } = testFolder()
const NOW = ['--as-of', '2026-12-05T20:00+01:00']
const PIECE = {
  ...SOUND,
  pours: [
    { id: 'green', resin: 'deep', depth: 10 },
    { id: 'clear', resin: 'deep', height: 19 }
  ]
}
const path = put('rescued.piece.json', JSON.stringify(PIECE))
const rescue = (...words: string[]) => answer(['rescue', path, ...words, ...NOW])

describe('castwright rescue', () => {
  it('says when nothing that was read is past the plan, and what may be named', () => {
    const { out, code } = rescue()
    expect(code).toBe(0)
    expect(out).toContain('nothing that was read is past what was planned')
    expect(out).toContain('timber parted    timber and resin came apart along an edge')
  })

  it('asks what happened and ranks ways on after what was logged', () => {
    answer(['log', path, 'poured', 'green', '260 g', '--at', '09:00', ...NOW])
    answer(['log', path, 'height', 'green', '8.7', ...NOW])
    const { out, code, err } = rescue()
    expect([code, err]).toEqual([0, ''])
    expect(out).toContain('Green stands 8.7 mm high as cast; 10.0 mm was planned')
    expect(out).toContain('--answer lost=yes|no')
    expect(out).toMatch(/Ways on, the best first:\n1\. /)
    expect(out).toContain('chance: usually works (common practice, no source)')
    expect(out).toMatch(/Safety:\n {2}mixing resin: Nitrile gloves/)
    expect(out).toContain('Ranked: first what keeps the piece')
    expect(rescue('--answer', 'lost=yes', '--answer', 'mixed=no').out).toContain(
      'what is missing stayed in the vessels'
    )
  })

  it('takes a way into a file, keeps what stood there, and the new piece plans', () => {
    const json = JSON.parse(rescue('--json').out) as {
      ways: { id: string; does: string; after: { pours: number } }[]
    }[]
    const number = json[0]!.ways.findIndex(w => w.id === 'top-up') + 1
    const file = put('after.piece.json', 'what stood there')
    const { out, code } = rescue('--take', String(number), '-o', file)
    expect(code).toBe(0)
    expect(out).toContain(`written to ${file}`)
    expect(readFileSync(`${file}.before`, 'utf8')).toBe('what stood there')
    const after = JSON.parse(readFileSync(file, 'utf8'))
    expect(after.pours.map((p: { id: string }) => p.id)).toEqual(['green', 'green top-up', 'clear'])
    const checked = JSON.parse(
      answer(['check', file, '--json', '--readings', at('rescued.readings.jsonl'), ...NOW]).out
    )
    expect(checked.totals).toEqual(json[0]!.ways[number - 1]!.after)
    expect(readFileSync(path, 'utf8')).toBe(JSON.stringify(PIECE))
  })

  it.each([
    [['--what', 'leek'], 'found --what "leek"; allowed: height short'],
    [['--what', 'leak', '--of', 'gren'], 'nothing of the piece is called'],
    [['--what', 'leak', '--by', 'much'], 'found --by much; allowed: a length from 0 to 1000 mm'],
    [['--answer', 'lost'], 'found --answer lost; allowed: --answer KEY=VALUE'],
    [['--answer', 'lost=perhaps'], 'at lost: found "perhaps"; allowed: yes, no'],
    [['--answer', 'colour=red'], 'an answer to what is not asked'],
    [['--take', '99', '-o', 'x.json'], 'found --take 99; allowed: 1 to'],
    [['--take', '1'], 'found --take without a file']
  ])('says of %j what is allowed', (words, says) => {
    const { err, out, code } = rescue(...words)
    expect(code).toBe(2)
    expect(out).toBe('')
    expect(err).toContain(says)
    expect(existsSync('x.json')).toBe(false)
  })
})
