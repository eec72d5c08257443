import { SaxesParser } from 'saxes'
import { quote } from './drawing-error.ts'
import type { Place } from './svg-error.ts'
import { START, SvgError } from './svg-error.ts'

/** An element of SVG. Elements of other namespaces (editors' own notes) are left out with all they hold. */
export interface SvgNode extends Place {
  /** Local name: `path`, `g`. */
  readonly tag: string
  /** Attributes without a namespace by their names, and `xlink:href`. */
  readonly attributes: ReadonlyMap<string, string>
  readonly children: readonly SvgNode[]
  /** Text of its `title` child, '' without one. */
  readonly title: string
}

/** A read file: its root, and each id's first bearer in the order of the text. */
export interface SvgDocument {
  readonly root: SvgNode
  readonly byId: ReadonlyMap<string, SvgNode>
  /** Style sheets and scripts, wherever they stand: none is read. */
  readonly unread: readonly (Place & { readonly tag: string })[]
}

/** Most characters of a file. */
const MOST_CHARACTERS = 8_000_000
/** Most elements, foreign ones included. */
export const MOST_ELEMENTS = 50_000
/** Deepest nesting of elements. */
export const MOST_DEPTH = 64
/** Longest title kept, characters. */
const MOST_TITLE = 200

const SVG = 'http://www.w3.org/2000/svg'
const XLINK = 'http://www.w3.org/1999/xlink'

interface OpenNode extends SvgNode {
  readonly attributes: Map<string, string>
  readonly children: SvgNode[]
  title: string
}

/**
 * The elements of an SVG text. Nothing outside the text is ever loaded, and no entity is ever defined: a
 * DOCTYPE is refused.
 * @throws SvgError for what is no XML or no SVG, and beyond the bounds above
 */
export function readDocument(text: string): SvgDocument {
  if (text.length > MOST_CHARACTERS) {
    throw new SvgError(START, `a file of ${text.length} characters; allowed: up to ${MOST_CHARACTERS}`)
  }
  const parser = new SaxesParser({ xmlns: true, additionalNamespaces: { xlink: XLINK } })
  const builder = new Builder()
  let start: Place = START
  parser.on('error', e => {
    const said = e.message.replace(/^\d+:\d+:\s*/, '').replace(/\.$/, '')
    throw new SvgError(
      { line: parser.line, column: parser.columnIndex + 1 },
      `${quote(said)} on reading it as XML; allowed: well-formed SVG, whole, without entities of its own`
    )
  })
  parser.on('doctype', () => {
    throw new SvgError(
      { line: parser.line, column: 1 },
      'a DOCTYPE; allowed: none (delete <!DOCTYPE ...>, the drawing stays the same)'
    )
  })
  parser.on('processinginstruction', ({ target }) => {
    if (target === 'xml-stylesheet') builder.unread.push({ tag: target, line: parser.line, column: 1 })
  })
  parser.on('opentagstart', tag => {
    // The parser has read "<", the name and one more character, perhaps a line feed.
    const column = parser.columnIndex - tag.name.length - 1
    if (column > 0) start = { line: parser.line, column }
    else {
      const at = parser.position - tag.name.length - 2
      start = { line: parser.line - 1, column: Math.max(1, at - text.lastIndexOf('\n', at)) }
    }
  })
  parser.on('opentag', tag => {
    const attributes = new Map<string, string>()
    for (const a of Object.values(tag.attributes)) {
      if (a.uri === '') attributes.set(a.local, a.value)
      else if (a.uri === XLINK && a.local === 'href') attributes.set('xlink:href', a.value)
    }
    builder.open({ tag: tag.local, attributes, children: [], title: '', ...start }, tag.uri)
  })
  parser.on('closetag', () => builder.close())
  parser.on('text', piece => builder.text(piece))
  parser.on('cdata', piece => builder.text(piece))
  parser.write(text).close()
  return builder.document()
}

class Builder {
  readonly unread: (Place & { readonly tag: string })[] = []
  readonly #byId = new Map<string, SvgNode>()
  #root: OpenNode | null = null
  // One entry per open element; null for what is left out.
  readonly #open: (OpenNode | null)[] = []
  #elements = 0
  // A file may have no namespace at all; then its root says so.
  #namespace = SVG

  open(node: OpenNode, uri: string): void {
    if (++this.#elements > MOST_ELEMENTS) {
      throw new SvgError(node, `element number ${this.#elements}; allowed: up to ${MOST_ELEMENTS} elements`)
    }
    if (this.#open.length >= MOST_DEPTH) {
      throw new SvgError(node, `elements nested ${this.#open.length + 1} deep; allowed: up to ${MOST_DEPTH}`)
    }
    const parent = this.#open.at(-1)
    if (parent === undefined) {
      if (node.tag !== 'svg' || (uri !== SVG && uri !== '')) {
        throw new SvgError(node, `${quote(node.tag)} as outermost element; allowed: <svg xmlns="${SVG}">`)
      }
      this.#root = node
      this.#namespace = uri
    } else if (parent === null || uri !== this.#namespace) {
      this.#open.push(null)
      return
    } else parent.children.push(node)
    const id = node.attributes.get('id')
    if (id !== undefined && !this.#byId.has(id)) this.#byId.set(id, node)
    if (node.tag === 'style' || node.tag === 'script') this.unread.push(node)
    this.#open.push(node)
  }

  close(): void {
    this.#open.pop()
  }

  text(piece: string): void {
    if (this.#open.at(-1)?.tag !== 'title') return
    const owner = this.#open.at(-2)
    if (owner) owner.title = `${owner.title}${piece.slice(0, MOST_TITLE)}`.slice(0, MOST_TITLE)
  }

  /** @throws SvgError for a text without any element */
  document(): SvgDocument {
    if (this.#root === null) throw new SvgError(START, 'no element at all; allowed: an SVG file')
    return { root: this.#root, byId: this.#byId, unread: this.unread }
  }
}
