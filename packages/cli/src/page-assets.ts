import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import type { PageAssets } from '@castwright/engine'
import { diskWords, Failure } from './failure.ts'

/** Script, style and type of the page, from the package that holds them. @throws Failure when it is not built */
export function pageAssets(notice?: string): PageAssets {
  const home = dirname(createRequire(import.meta.url).resolve('@castwright/page/package.json'))
  const read = (name: string): Buffer => {
    try {
      return readFileSync(join(home, name))
    } catch (e) {
      throw new Failure(
        `${name} of the page: found ${diskWords(e)}; allowed: a built project: run "npm start" once`
      )
    }
  }
  return {
    script: read('dist/page.js').toString('utf8'),
    style: read('src/page.css').toString('utf8'),
    fonts: ([400, 500, 700] as const).map(weight => ({
      weight,
      italic: false,
      base64: read(`fonts/alegreya-sans-latin-${weight}-normal.woff2`).toString('base64')
    })),
    ...(notice === undefined ? {} : { notice })
  }
}
