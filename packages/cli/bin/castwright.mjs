#!/usr/bin/env node
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Script } from 'node:vm'

const file = fileURLToPath(new URL('../dist/castwright.cjs', import.meta.url))
const compiled = `${file}.compiled`

if (existsSync(file)) {
  const script = new Script(
    `(function(exports,require,module,__filename){${readFileSync(file, 'utf8')}\n})`,
    {
      filename: file,
      ...(existsSync(compiled) ? { cachedData: readFileSync(compiled) } : {})
    }
  )
  const unit = { exports: {} }
  script.runInThisContext()(unit.exports, createRequire(file), unit, file, dirname(file))
  process.exitCode = await unit.exports.main(
    process.argv.slice(2),
    () => import('@castwright/server'),
    () => import('@castwright/server/paper')
  )
  // The build asks once for what has been compiled by now.
  if (process.env.CASTWRIGHT_KEEP === '1') writeFileSync(compiled, script.createCachedData())
} else {
  process.stderr.write('castwright is not built yet: run "npm start" once in the folder of the project\n')
  process.exitCode = 2
}
