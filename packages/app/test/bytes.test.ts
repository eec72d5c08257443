import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

/**
 * What a first visit loads before the piece is seen in the round, as it is sent (brotli where it is squeezed): a
 * budget, so that a dependency that slips in is noticed on the day.
 */
const BUDGET_KB = 400
const site = join(import.meta.dirname, '..', 'dist', 'site')

test('the app is sent in less than 400 kB before the round view', () => {
  expect(existsSync(join(site, 'index.html')), 'the app is built before the tests').toBe(true)
  const html = readFileSync(join(site, 'index.html'), 'utf8')
  const entry = /src="(\/assets\/[^"]+\.js)"/.exec(html)![1]!
  const manifest = JSON.parse(readFileSync(join(site, 'files.json'), 'utf8')) as Record<
    string,
    { file: string; isDynamicEntry?: boolean }
  >
  const onDemand = new Set(
    Object.values(manifest)
      .filter(f => f.isDynamicEntry === true)
      .map(f => f.file)
  )
  const rows = readdirSync(site, { recursive: true, withFileTypes: true })
    .filter(f => f.isFile() && !f.name.endsWith('.br') && f.name !== 'files.json')
    .map(f => join(f.parentPath, f.name))
    .filter(path => !onDemand.has(path.slice(site.length + 1)))
    .map(path => ({
      name: path.slice(site.length),
      kb: statSync(existsSync(`${path}.br`) ? `${path}.br` : path).size / 1000
    }))
  expect(rows.some(r => r.name === entry)).toBe(true)
  expect(
    rows.some(r => /main-.*\.js$/.test(r.name)),
    'the worker counts'
  ).toBe(true)
  const sum = rows.reduce((kb, r) => kb + r.kb, 0)
  expect(sum, rows.map(r => `${r.name} ${r.kb.toFixed(1)}`).join('\n')).toBeLessThan(BUDGET_KB)
  // A site of next to nothing would pass as well: it is no app.
  expect(sum).toBeGreaterThan(150)
})
