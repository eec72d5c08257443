// npm run speed: ratios and limits, one process per variant, several runs each; writes docs/speed.md with --write.
import { spawnSync } from 'node:child_process'
import { readdirSync, writeFileSync } from 'node:fs'
import { cpus } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const here = dirname(fileURLToPath(import.meta.url))
const RUNS = Number(process.env.SPEED_RUNS ?? 5)
// `npm run speed -- --only=cast` measures one file and prints; the page wants them all
const only = process.argv.find(a => a.startsWith('--only='))?.slice('--only='.length)
const rows = []
for (const file of readdirSync(here)
  .filter(f => f.endsWith('.bench.mjs'))
  .sort()) {
  const { variants } = await import(join(here, file))
  if (only && !file.startsWith(only)) continue
  for (const variant of variants) {
    const times = []
    let note = ''
    for (let k = 0; k < Math.min(RUNS, variant.runs ?? RUNS); k++) {
      const done = spawnSync(process.execPath, [join(here, 'one.mjs'), join(here, file), variant.name], {
        encoding: 'utf8'
      })
      if (done.status !== 0) throw new Error(`${variant.name}: ${done.stderr}`)
      const r = JSON.parse(done.stdout.trim().split('\n').at(-1))
      times.push(r.ms)
      note = r.note
    }
    times.sort((a, b) => a - b)
    rows.push({ ...variant, min: times[0], median: times[Math.floor(times.length / 2)], note })
  }
}
// a small ratio is read as how many times faster
const ratioText = x => (x < 0.1 ? `1/${(1 / x).toFixed(0)}` : x.toFixed(2))
const lines = [
  '# Speed',
  '',
  `Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model.trim()}, ${RUNS} runs of one process a variant; times in ms. Run: \`npm run speed -- --write\`. Read the ratios: the machine is shared.`,
  '',
  '| work | min | median | bar | ratio to its peer | note |',
  '| --- | ---: | ---: | --- | ---: | --- |'
]
for (const r of rows) {
  const peer = rows.find(p => p.name === r.peer)
  const ratio = peer ? ratioText(r.median / peer.median) : ''
  lines.push(
    `| ${r.about} | ${r.min.toFixed(1)} | ${r.median.toFixed(1)} | ${r.bar ?? ''} | ${ratio} | ${r.note ?? ''} |`
  )
}
const text = `${lines.join('\n')}\n`
console.log(text)
if (process.argv.includes('--write') && !only) writeFileSync(join(here, '../docs/speed.md'), text)
