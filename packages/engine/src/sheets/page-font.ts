import { raw } from './markup.ts'

/** A face of the type the pages are set in, as the base64 of its WOFF2 file. */
export interface PageFont {
  readonly weight: 400 | 500 | 700
  readonly italic: boolean
  readonly base64: string
}

/** Stands in every page that carries the type: its licence asks for that. */
export const FONT_LICENCE = raw(
  '<!-- Set in Alegreya Sans, copyright 2013 The Alegreya Sans Project Authors, under the SIL Open Font License 1.1 (https://openfontlicense.org); the font data below stays under that licence. -->'
)

/** The type as rules of a style. @throws Error for a font that is not base64 */
export function fontFaces(fonts: readonly PageFont[]): string {
  return fonts
    .map(f => {
      if (!/^[A-Za-z0-9+/]+={0,2}$/.test(f.base64))
        throw new Error(`a font of weight ${f.weight} that is not base64`)
      return `@font-face{font-family:"Alegreya Sans";font-weight:${f.weight};font-style:${f.italic ? 'italic' : 'normal'};src:url(data:font/woff2;base64,${f.base64}) format("woff2")}`
    })
    .join('')
}
