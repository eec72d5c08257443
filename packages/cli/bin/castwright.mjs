#!/usr/bin/env node
import { existsSync } from 'node:fs'

const built = new URL('../dist/castwright.mjs', import.meta.url)
if (existsSync(built)) {
  const { main } = await import(built.href)
  process.exitCode = await main(process.argv.slice(2))
} else {
  process.stderr.write('castwright is not built yet: run "npm start" once in the folder of the project\n')
  process.exitCode = 2
}
