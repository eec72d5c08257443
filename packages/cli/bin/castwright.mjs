#!/usr/bin/env node
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Script } from 'node:vm'

const file = fileURLToPath(new URL('../dist/castwright.cjs', import.meta.url))
const compiled = `${file}.compiled`

if (existsSync(file)) {
  const source = readFileSync(file)
  // The engine of JavaScript knows compiled code by the length of its source alone: ours stands behind a hash of it.
  const hash = createHash('sha256').update(source).digest()
  const kept = existsSync(compiled) ? readFileSync(compiled) : null
  const script = new Script(`(function(exports,require,module,__filename){${source.toString('utf8')}\n})`, {
    filename: file,
    ...(kept?.subarray(0, hash.length).equals(hash) && { cachedData: kept.subarray(hash.length) })
  })
  const unit = { exports: {} }
  script.runInThisContext()(unit.exports, createRequire(file), unit, file, dirname(file))
  process.exitCode = await unit.exports.main(
    process.argv.slice(2),
    () => import('@castwright/server'),
    () => import('@castwright/server/paper')
  )
  // The build asks once for what has been compiled by now; whoever reads meanwhile finds all of it or the one before.
  if (process.env.CASTWRIGHT_KEEP === '1') {
    writeFileSync(`${compiled}.${process.pid}`, Buffer.concat([hash, script.createCachedData()]))
    renameSync(`${compiled}.${process.pid}`, compiled)
  }
} else {
  process.stderr.write('castwright is not built yet: run "npm start" once in the folder of the project\n')
  process.exitCode = 2
}
