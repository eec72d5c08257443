import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { SOUND, STOPPED, testFolder } from './folder.ts'

/** The command as a maker starts it: built, in a process of its own. */
const bin = fileURLToPath(new URL('../bin/castwright.mjs', import.meta.url))
const { at, put, home } = testFolder()
const sound = put('sound.piece.json', JSON.stringify(SOUND))
const stopped = put('stopped.piece.json', JSON.stringify(STOPPED))

const shell = (line: string) => spawnSync('bash', ['-c', line], { cwd: home, encoding: 'utf8' })
const call = (...args: string[]) =>
  spawnSync(process.execPath, [bin, ...args], { cwd: home, encoding: 'utf8' })

describe('the command', () => {
  it('is built', () => {
    expect(
      existsSync(fileURLToPath(new URL('../dist/castwright.cjs', import.meta.url))),
      'run "npm run build" first'
    ).toBe(true)
  })

  it('ends with 0, 1 and 2 as it says', () => {
    expect(call('check', sound).status).toBe(0)
    expect(call('check', stopped).status).toBe(1)
    const bad = call('check', 'none.json')
    expect([bad.status, bad.stdout]).toEqual([2, ''])
    expect(bad.stderr).toBe('none.json: found no such file or folder; allowed: a file that can be read\n')
  })

  it('gives all of a long answer to a pipe', () => {
    const { stdout } = shell(`"${process.execPath}" "${bin}" schema piece | cat`)
    expect(() => JSON.parse(stdout)).not.toThrow()
    expect(stdout.length).toBeGreaterThan(65_536)
  })

  it('does not complain when its reader goes away', () => {
    const { stderr } = shell(`"${process.execPath}" "${bin}" schema piece | head -1`)
    expect(stderr).toBe('')
  })

  it('does not wait for a pipe that nobody writes to', () => {
    const { status, stderr } = shell(`mkfifo waits && timeout 20 "${process.execPath}" "${bin}" check waits`)
    expect(status).toBe(2)
    expect(stderr).toBe('waits: found no regular file; allowed: a file\n')
  })

  it('colours nothing when it is not asked to', () => {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the escape is what must not be there
    expect(call('check', stopped).stdout).not.toMatch(/\x1b/)
  })
})

describe.runIf(existsSync('/dev/full'))('a full disk', () => {
  it('on standard output: a message and code 2', () => {
    const { status, stderr } = shell(`"${process.execPath}" "${bin}" check sound.piece.json > /dev/full`)
    expect(status).toBe(2)
    expect(stderr).toBe('standard output: found no room left on the disk\n')
  })

  it('in the folder of a plan: a message, code 2, and the plan before it is whole', () => {
    const folder = at('full')
    expect(call('plan', sound, '--out', folder, '--as-of', '2026-11-20T09:00Z').status).toBe(0)
    const before = readFileSync(at('full', 'plan.json'), 'utf8')
    // The shell allows no file over 8 blocks of 1024 bytes: the page does not fit.
    const { status, stderr, stdout } = shell(
      `ulimit -f 8; trap '' XFSZ; "${process.execPath}" "${bin}" plan stopped.piece.json --out full`
    )
    expect(stdout).toBe('')
    expect(status).toBe(2)
    expect(stderr).toMatch(
      /^full: found .*; allowed: a folder that can be written to\. Nothing was written\n$/
    )
    expect(readFileSync(at('full', 'plan.json'), 'utf8')).toBe(before)
    expect(readdirSync(folder).sort()).toEqual([
      '.castwright.json',
      'back.png',
      'buy-list.csv',
      'buy-list.pdf',
      'calendar.ics',
      'care.pdf',
      'cup-labels.pdf',
      'days.json',
      'drawing.pdf',
      'front.png',
      'piece.html',
      'plan.json',
      'quote-private.pdf',
      'run-sheet.html',
      'run-sheet.md',
      'run-sheet.pdf',
      'solid-clear.stl',
      'solid-left.stl',
      'solid-right.stl',
      'solid.3mf'
    ])
  })
})

describe.runIf(process.getuid?.() !== 0)('without leave', () => {
  it('to read: a message and code 2', () => {
    shell('cp sound.piece.json secret.json && chmod 000 secret.json')
    expect(call('check', 'secret.json').stderr).toContain('no leave to use it')
  })

  it('to write: a message and code 2', () => {
    shell('mkdir shut && chmod 555 shut')
    expect(call('plan', sound, '--out', 'shut').stderr).toContain('no leave to use it')
  })
})
