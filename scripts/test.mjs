// npm test: sets up what is missing, runs every check, ends with "N passed, N failed".
import { spawnSync } from 'node:child_process'
import { mkdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { ensureBrowser, ensureBuild, ensurePackages, root, tool } from './setup.mjs'

ensurePackages()
let passed = 0
let failed = 0
const results = []
const note = (name, ok) => {
  results.push([name, ok])
  if (ok) passed++
  else failed++
}
const check = (name, work) => {
  console.log(`\n== ${name}`)
  note(name, work() === 0)
}

check('types', () => tool('tsc', ['-b', 'tsconfig.json']))
check('build', ensureBuild)
check('lint', () => tool('biome', ['check', '--error-on-warnings', '.']))
check('import direction', () => tool('depcruise', ['--config', '.dependency-cruiser.cjs', 'packages']))
check('dead exports', () => tool('knip', []))
check(
  'kernel as compiled from its source',
  () =>
    spawnSync(process.execPath, [join(root, 'scripts/kernel.mjs'), '--check'], { stdio: 'inherit' }).status
)
check('lock file carries no address', () => {
  const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'))
  const bad = Object.entries(lock.packages).filter(
    ([, p]) => typeof p.resolved === 'string' && /^[a-z+]+:/.test(p.resolved)
  )
  for (const [name, p] of bad) console.error(`${name}: ${p.resolved}`)
  return bad.length
})

console.log('\n== tests')
const browser = ensureBrowser()
if (browser === null) {
  console.error(
    'no Chromium found: install one (Debian: apt install chromium) or set CASTWRIGHT_BROWSER to its path; the page tests fail without it'
  )
}
const cache = join(root, '.cache')
mkdirSync(cache, { recursive: true })
const report = join(cache, 'vitest.json')
rmSync(report, { force: true })
tool('vitest', ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`], {
  env: { ...process.env, ...(browser === null ? {} : { CASTWRIGHT_BROWSER: browser }) }
})
try {
  const r = JSON.parse(readFileSync(report, 'utf8'))
  passed += r.numPassedTests
  failed += r.numFailedTests
  // A file that did not load has no failed test of its own.
  const broken = r.testResults.filter(
    f => f.status === 'failed' && f.assertionResults.every(a => a.status !== 'failed')
  )
  failed += broken.length
  for (const f of broken) console.error(`${f.name}: ${f.message}`)
  const skipped = r.numPendingTests + (r.numTodoTests ?? 0)
  if (skipped > 0) console.log(`${skipped} tests skipped`)
} catch (e) {
  failed++
  console.error(`the tests left no report: ${e.message}`)
}

console.log('')
for (const [name, ok] of results) console.log(`${ok ? 'passed' : 'FAILED'}  ${name}`)
console.log(`${passed} passed, ${failed} failed`)
process.exit(failed === 0 ? 0 : 1)
