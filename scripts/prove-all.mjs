// npm run prove-all: the heavy counts. Writes docs/prove-all.md with what ran and how it ended.
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { cpus } from 'node:os'
import { join } from 'node:path'
import { ensureBuild, ensurePackages, root, tool } from './setup.mjs'

ensurePackages()
if (ensureBuild() !== 0) process.exit(2)

const RUNS = [
  {
    about: '10,000 mutated documents: a clear message or a plan without NaN; no crash, no hang',
    file: 'packages/engine/test/piece/mutation-',
    env: { CASTWRIGHT_MUTATIONS: '10000' }
  },
  {
    about: '10,000 mutated drawings: a clear message or a region; no crash, no hang',
    file: 'packages/engine/test/shape/svg-mutation.test.ts',
    env: { CASTWRIGHT_MUTATIONS: '10000' }
  },
  {
    about: '10,000 mutated programs: complaints with their lines and sound moves; no crash, no hang',
    file: 'packages/engine/test/proving/read/mutation.test.ts',
    env: { CASTWRIGHT_MUTATIONS: '10000' }
  },
  {
    about: '400 seeded pockets with islands: cleared where the cutter reaches, and nowhere else',
    file: 'packages/engine/test/cuts/area/pocket-path.test.ts',
    env: { CASTWRIGHT_POCKETS: '400' }
  },
  {
    about: '400 seeded pieces cut by machine: every program reads back and proves clean',
    file: 'packages/engine/test/programs/clean-',
    env: { CASTWRIGHT_PROVED: '400' }
  },
  {
    about:
      '240 examples changed by chance: where the plan has no stop the programs are written, and every twelfth proves clean',
    file: 'packages/engine/test/programs/varied-example.test.ts',
    env: { CASTWRIGHT_VARIED: '240' }
  },
  {
    about: '1,000 seeded calendars: no window, hour or resource violated, by a verifier of its own',
    file: 'packages/engine/test/calendar/solve/seeded.test.ts',
    env: { CASTWRIGHT_CALENDARS: '1000' }
  },
  {
    about: 'the best order of 8 seeded boards: every permutation of their steps planned one by one',
    file: 'packages/engine/test/orders/orders.test.ts',
    env: { CASTWRIGHT_ORDERS: '8' }
  },
  {
    about: '2,000 seeded sound pieces: none raises a stop',
    file: 'packages/engine/test/findings/sound.test.ts',
    env: { CASTWRIGHT_SOUND: '2000' }
  },
  {
    about: '1,000 seeded stacks against a general solid modeller: every volume within 0.1 %',
    file: 'packages/engine/test/stack/twin-',
    env: { CASTWRIGHT_PIECES: '1000' }
  },
  {
    about: 'every field of the documents at both its ends, and left out',
    file: 'packages/engine/test/piece/ends.test.ts',
    env: { CASTWRIGHT_ENDS: 'all' }
  },
  {
    about:
      '200 seeded cup tests in a world with other numbers: each 90 % band on later peaks, gel and strings holds in 85 to 95 %',
    file: 'packages/engine/test/resin/cup-coverage.test.ts',
    env: { CASTWRIGHT_CUPS: '200' }
  },
  {
    about:
      '2,000 seeded drying logs of another integrator: 90 % bands on the day and the moisture hold in 82 to 99 %',
    file: 'packages/engine/test/timber/drying-log.test.ts',
    env: { CASTWRIGHT_LOGS: '2000' }
  },
  {
    about:
      '2,000 seeded hiding cards with errors of colour and depth: 90 % bands on absorption, scattering and hiding depth hold in 85 to 95 %',
    file: 'packages/engine/test/colour/card.test.ts',
    env: { CASTWRIGHT_CARDS: '2000' }
  },
  {
    about: 'the cast in three directions against its explicit twin, cells halved, the twin in quarter steps',
    file: 'packages/engine/test/cast/field/twin.test.ts',
    env: { CASTWRIGHT_TWIN: 'fine' }
  },
  {
    about: '60 mutated documents cast as whole moulds: plain numbers, energy within 0.1 %, no crash, no hang',
    file: 'packages/engine/test/cast/whole/mutation.test.ts',
    env: { CASTWRIGHT_WHOLE: '60' }
  },
  {
    about: '100 kills of the server under write load: every acknowledged revision is there',
    file: 'packages/server/test/kill.test.ts',
    env: { CASTWRIGHT_KILLS: '100' }
  }
]

const cache = join(root, '.cache')
mkdirSync(cache, { recursive: true })
const lines = [
  '# Heavy counts',
  '',
  `Written by \`npm run prove-all\` with Node ${process.version} on ${cpus().length} × ${cpus()[0]?.model.trim()}. \`npm test\` runs the same tests with smaller counts.`,
  '',
  '| what | tests | minutes |',
  '| --- | --- | ---: |'
]
let failed = 0
for (const run of RUNS) {
  console.log(`\n== ${run.about}`)
  const report = join(cache, 'prove-all.json')
  rmSync(report, { force: true })
  const from = Date.now()
  tool(
    'vitest',
    [
      'run',
      run.file,
      '--testTimeout=3600000',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${report}`
    ],
    {
      env: { ...process.env, ...run.env }
    }
  )
  const r = JSON.parse(readFileSync(report, 'utf8'))
  failed += r.numFailedTests + r.numFailedTestSuites
  lines.push(
    `| ${run.about} | ${r.numPassedTests} passed, ${r.numFailedTests} failed | ${((Date.now() - from) / 60_000).toFixed(1)} |`
  )
}
writeFileSync(join(root, 'docs', 'prove-all.md'), `${lines.join('\n')}\n`)
process.exit(failed === 0 ? 0 : 1)
