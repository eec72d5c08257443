import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

/**
 * What a first visit loads until a piece stands there with its whole mould cast, as it is sent (brotli where it is
 * squeezed): a budget, so that a dependency that slips in is noticed on the day. What is loaded when it is asked for
 * (drawing tools, drawing files, photos, the shop, cup tests and cards, programs and their proving, the bench, sheets to print) has a budget of its own;
 * the round view has its library.
 */
const BUDGET_KB = 400
const LATER_KB = 345
const site = join(import.meta.dirname, '..', 'dist', 'site')
const assets = join(site, 'assets')

/** A script and all that it imports before it runs. */
function reached(name: string, seen: Set<string>): Set<string> {
  if (seen.has(name)) return seen
  seen.add(name)
  const text = readFileSync(join(assets, name), 'utf8')
  for (const [, file] of text.matchAll(/(?:from|import)\s*"\.\/([^"]+\.js)"/g)) reached(file!, seen)
  return seen
}

const kbOf = (path: string) => statSync(existsSync(`${path}.br`) ? `${path}.br` : path).size / 1000

test('the app is sent in less than 400 kB until the whole mould is cast', () => {
  expect(existsSync(join(site, 'index.html')), 'the app is built before the tests').toBe(true)
  const html = readFileSync(join(site, 'index.html'), 'utf8')
  const entry = /src="\/assets\/([^"]+\.js)"/.exec(html)![1]!
  const scripts = readdirSync(assets).filter(f => f.endsWith('.js'))
  const window = reached(entry, new Set())
  const worker = [...window]
    .map(f => /new URL\([^)]*?(main-[^"'`]+\.js)/.exec(readFileSync(join(assets, f), 'utf8'))?.[1])
    .find(f => f !== undefined)!
  const casting = scripts.find(f => f.startsWith('casting-'))
  const first = reached(casting!, reached(worker, window))
  // The worker holds the engine, and its parts are no longer one file.
  expect(first.size).toBeGreaterThan(3)
  const round = scripts.filter(f => /WebGLRenderer/.test(readFileSync(join(assets, f), 'utf8')))
  expect(round).toHaveLength(1)
  const others = readdirSync(site, { recursive: true, withFileTypes: true })
    .filter(f => f.isFile() && !/\.(br|js)$/.test(f.name) && f.name !== 'files.json')
    // A style that the page does not name comes with the part of the app that it is of.
    .filter(f => !f.name.endsWith('.css') || html.includes(f.name))
    .map(f => join(f.parentPath, f.name))
  const rows = [...[...first].map(f => join(assets, f)), ...others].map(path => ({
    name: path.slice(site.length),
    kb: kbOf(path)
  }))
  const sum = rows.reduce((kb, r) => kb + r.kb, 0)
  expect(sum, rows.map(r => `${r.name} ${r.kb.toFixed(1)}`).join('\n')).toBeLessThan(BUDGET_KB)
  // A site of next to nothing would pass as well: it is no app.
  expect(sum).toBeGreaterThan(150)

  const styles = readdirSync(assets).filter(f => f.endsWith('.css') && !html.includes(f))
  const later = [...styles, ...scripts.filter(f => !first.has(f) && !round.includes(f))]
  expect(later.reduce((kb, f) => kb + kbOf(join(assets, f)), 0)).toBeLessThan(LATER_KB)
})
