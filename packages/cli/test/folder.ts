import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll } from 'vitest'

/** A folder of its own for the tests of a file; it goes when they are done. */
export function testFolder() {
  const home = mkdtempSync(join(tmpdir(), 'castwright-cli-'))
  afterAll(() => rmSync(home, { recursive: true, force: true }))
  return {
    home,
    at: (...names: string[]) => join(home, ...names),
    put: (name: string, content: string | Uint8Array) => {
      const path = join(home, name)
      writeFileSync(path, content)
      return path
    }
  }
}

/** Every file of a folder with its content, for "nothing changed". */
export function contents(folder: string): Record<string, string> {
  return Object.fromEntries(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter(f => f.isFile())
      .map(f => {
        const path = join(f.parentPath, f.name)
        return [path.slice(folder.length + 1), readFileSync(path, 'latin1')]
      })
  )
}

/** A sound piece that plans quickly. */
export const SOUND = {
  castwright: 1,
  name: 'a plain panel',
  outline: { rectangle: [300, 200] },
  timbers: [
    {
      id: 'left',
      species: 'ash-white',
      outline: { rectangle: [103, 206], at: [-101.5, 0] },
      thickness: 20,
      moisture: 8.5
    },
    {
      id: 'right',
      species: 'ash-white',
      outline: { rectangle: [103, 206], at: [101.5, 0] },
      thickness: 20,
      moisture: 8.5
    }
  ],
  pours: [{ id: 'clear', resin: 'deep', fill: 'timber' }],
  finish: { both: { coat: 'hardwax-oil' } }
}

/** The same with a stop: a thin resin poured far too deep. */
export const STOPPED = { ...SOUND, pours: [{ id: 'clear', resin: 'thin', fill: 'timber' }] }
