import { escapeXml } from './svg.ts'

/** Text that is markup already. Only {@link html} and {@link raw} make it. */
export class Markup {
  readonly text: string

  constructor(text: string) {
    this.text = text
  }
}

type Part = string | number | Markup | null | false | readonly Part[]

/**
 * Markup from a template: what is put in is text and is escaped, unless it is markup itself. Lists are joined,
 * null and false vanish. The only way words of a piece get into a page.
 */
export function html(strings: TemplateStringsArray, ...parts: readonly Part[]): Markup {
  let out = strings[0]!
  parts.forEach((part, i) => {
    out += written(part) + strings[i + 1]!
  })
  return new Markup(out)
}

/** Markup we wrote ourselves (drawings, styles). Never words of a piece. */
export function raw(text: string): Markup {
  return new Markup(text)
}

function written(part: Part): string {
  if (part === null || part === false) return ''
  if (part instanceof Markup) return part.text
  if (typeof part === 'string' || typeof part === 'number') return escapeXml(String(part))
  return part.map(written).join('')
}

/** JSON inside a script element: no sign of it can end the element or start a comment. */
export function scriptJson(value: unknown): Markup {
  return raw(
    JSON.stringify(value).replace(
      /[<>&\u2028\u2029]/g,
      c => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`
    )
  )
}
