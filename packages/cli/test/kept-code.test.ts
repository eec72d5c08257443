import { spawnSync } from 'node:child_process'
import { copyFileSync, mkdirSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import { testFolder } from './folder.ts'

const { at, put } = testFolder()
mkdirSync(at('bin'))
mkdirSync(at('dist'))
const bin = at('bin', 'castwright.mjs')
copyFileSync(fileURLToPath(new URL('../bin/castwright.mjs', import.meta.url)), bin)

// `late` is compiled from the text when it is first called; the rest comes out of what was kept.
const says = (first: string, second: string) =>
  `exports.main=async([what])=>{process.stdout.write('${first}');if(what==='late')late();return 0};function late(){process.stdout.write('${second}')}`
const call = (what: string, env = {}) => {
  const { stdout, stderr } = spawnSync(process.execPath, [bin, what], {
    encoding: 'utf8',
    env: { ...process.env, ...env }
  })
  return stdout + stderr
}

it('runs a bundle that changed to another of equal length, not what was kept of the one before', () => {
  const one = says('one', ' and three')
  put('dist/castwright.cjs', one)
  expect(call('early', { CASTWRIGHT_KEEP: '1' })).toBe('one')
  expect(readdirSync(at('dist'))).toEqual(['castwright.cjs', 'castwright.cjs.compiled'])
  const kept = readFileSync(at('dist', 'castwright.cjs.compiled'))
  expect(call('late')).toBe('one and three')
  for (const [first, second] of [
    ['two', ' and seven'],
    ['eleven', ' twelve']
  ] as const) {
    const other = says(first, second)
    expect(other.length).toBe(one.length)
    put('dist/castwright.cjs', other)
    expect(call('early')).toBe(first)
    expect(call('late')).toBe(first + second)
  }
  // The one before runs again, and only who is asked to keeps anything.
  put('dist/castwright.cjs', one)
  expect(call('late')).toBe('one and three')
  expect(readFileSync(at('dist', 'castwright.cjs.compiled')).equals(kept)).toBe(true)
})
