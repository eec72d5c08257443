// Compiles the WebAssembly kernel of the cast and keeps it as text, so that neither the build nor the app needs the
// compiler. `node scripts/kernel.mjs` writes it, `--check` says whether the kept one is what the source gives.
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import asc from 'assemblyscript/asc'

const root = join(fileURLToPath(import.meta.url), '..', '..')
const source = join(root, 'packages/engine/kernel/field.ts')
const kept = join(root, 'packages/engine/src/cast/field/kernel-bytes.ts')

/** The text of kernel-bytes.ts as the source gives it now. */
export async function kernelText() {
  const { error, binary, stderr } = await compile()
  if (error) throw new Error(`the kernel does not compile: ${error.message}\n${stderr.toString()}`)
  const text = Buffer.from(binary).toString('base64')
  const lines = text.match(/.{1,100}/g).map(line => `  '${line}'`)
  return `// Made by scripts/kernel.mjs from packages/engine/kernel/field.ts. Do not edit.\n\n/** The compiled kernel, base64. */\nexport const KERNEL_BASE64: string = [\n${lines.join(',\n')}\n].join('')\n`
}

async function compile() {
  let binary
  const result = await asc.main(
    ['field.ts', '--outFile', 'field.wasm', '-O3', '--noAssert', '--runtime', 'stub', '--enable', 'simd'],
    {
      readFile: name => (name === 'field.ts' ? readFileSync(source, 'utf8') : null),
      writeFile: (name, data) => {
        if (name === 'field.wasm') binary = data
      },
      listFiles: () => []
    }
  )
  return { ...result, binary }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const text = await kernelText()
  if (process.argv.includes('--check')) {
    const same = readFileSync(kept, 'utf8') === text
    if (!same) console.error('kernel-bytes.ts is not what the source gives: run `node scripts/kernel.mjs`')
    process.exit(same ? 0 : 1)
  }
  writeFileSync(kept, text)
}
