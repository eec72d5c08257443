import { createHash } from 'node:crypto'

const STYLE =
  ':root{color-scheme:light dark}body{margin:3rem auto;padding:0 1.5rem;max-width:38rem;font:1.125rem/1.45 "Alegreya Sans","Gill Sans",system-ui,sans-serif;background:light-dark(#fbf8f1,#23201c);color:light-dark(#292724,#ece5d8)}h1{font-size:1.4375rem}a{color:inherit}'

/** What a page of refusal may do: nothing but look as it does (Content Security Policy Level 3, hash source; memory). */
export const PROBLEM_POLICY = `default-src 'none'; style-src 'sha256-${createHash('sha256').update(STYLE).digest('base64')}'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`

/** Whether a browser asks for something to show, not a script for something to read. */
export function wantsPage(method: string, accept: string | undefined): boolean {
  return method === 'GET' && (accept ?? '').includes('text/html')
}

/** Why what was opened is not there, as a page: who pressed a link reads no JSON. */
export function problemPage(says: string): string {
  const words = capital(says.endsWith('.') ? says : `${says}.`)
  const head = 'Not to be had as it stands'
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${head}</title><style>${STYLE}</style></head><body><main><h1>${head}</h1><p>${escaped(words)}</p></main></body></html>`
}

function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1)
}

function escaped(words: string): string {
  return words.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
}
