import { quote } from './drawing-error.ts'
import type { Matrix } from './matrix.ts'
import { determinant, multiply } from './matrix.ts'
import { Pen, PointBudget } from './pen.ts'
import { drawShape, place, SHAPES } from './svg-basic.ts'
import type { SvgDocument, SvgNode } from './svg-document.ts'
import { MOST_DEPTH, MOST_ELEMENTS } from './svg-document.ts'
import { placed, SvgError } from './svg-error.ts'
import { nestedView } from './svg-nested.ts'
import type { SvgLines } from './svg-regions.ts'
import { SkippedList } from './svg-skipped.ts'
import type { Style } from './svg-style.ts'
import { displayed, INITIAL, styleOf, unapplied } from './svg-style.ts'
import { readTransform, shift, within } from './svg-transform.ts'
import type { Page, Viewport } from './svg-viewport.ts'

/** Most expansions of `use`. */
const MOST_USES = 10_000
/** Most points of all shapes once curves are flattened. */
const MOST_POINTS = 2_000_000
/** Holds what is drawn only where it is referred to, or never. */
const NOT_DRAWN = new Set(
  (
    'defs symbol clipPath mask marker pattern linearGradient radialGradient filter title desc metadata style ' +
    'script view font cursor color-profile'
  ).split(' ')
)
const CONTAINERS = new Set(['g', 'a', 'svg', 'switch', 'use'])
const WHY: Readonly<Record<string, string>> = {
  text: 'turn text into paths',
  image: 'pictures are not read, and nothing outside the file is loaded',
  foreignObject: 'only SVG is read',
  animate: 'nothing moves here',
  animateMotion: 'nothing moves here',
  animateTransform: 'nothing moves here',
  set: 'nothing moves here'
}

/** Conditions whose answer is not known here. */
const UNKNOWN_HERE = ['requiredExtensions', 'systemLanguage']

/** What comes down to an element from what is around it. */
interface Around {
  readonly matrix: Matrix
  readonly view: Viewport
  readonly style: Style
  /** Elements around it, those of `use` included. */
  readonly depth: number
  /** Whether it is asked for. */
  readonly chosen: boolean
  /** The outermost `use` that draws it. */
  readonly use: SvgNode | null
}

/** Draws a document as lines. One reading, one object. */
export class Drawing {
  readonly drawn: SvgLines[] = []
  readonly skipped = new SkippedList()
  /** Whether the element asked for is drawn at all. */
  reached: boolean
  readonly #document: SvgDocument
  readonly #tolMm: number
  readonly #wanted: SvgNode | null
  readonly #budget = new PointBudget(MOST_POINTS)
  #drawn = 0
  #uses = 0
  // The elements now being drawn, outermost first.
  readonly #active = new Set<SvgNode>()

  /** @param wanted the element asked for; null for all */
  constructor(document: SvgDocument, tolMm: number, wanted: SvgNode | null) {
    this.#document = document
    this.#tolMm = tolMm
    this.#wanted = wanted
    this.reached = wanted === null
    for (const { tag, line } of document.unread) {
      this.skipped.add(
        { line, column: 1 },
        tag,
        tag === 'script'
          ? 'scripts are never run'
          : 'style sheets are not read: what they fill or hide is not known'
      )
    }
  }

  /** Draws all of it. `toMm` takes the page's user units to mm, y up. @throws SvgError */
  run(page: Page, toMm: Matrix): void {
    const { root } = this.#document
    if (root.attributes.has('transform')) {
      this.skipped.add(root, 'transform of the outermost svg', 'put it on a g within')
    }
    if (!displayed(root)) return
    if (root === this.#wanted) this.reached = true
    const style = styleOf(root, INITIAL)
    this.#active.add(root)
    this.#children(root, { matrix: toMm, view: page, style, depth: 1, chosen: this.reached, use: null })
  }

  #children(node: SvgNode, around: Around): void {
    for (const child of node.children) this.#draw(child, around)
  }

  #draw(node: SvgNode, around: Around): void {
    const { tag } = node
    if (NOT_DRAWN.has(tag) || !displayed(node)) return
    const chosen = around.chosen || node === this.#wanted
    if (chosen) this.reached = true
    if (++this.#drawn > MOST_ELEMENTS) {
      throw new SvgError(
        node,
        `element number ${this.#drawn} to draw, copies by use counted; allowed: up to ${MOST_ELEMENTS}`
      )
    }
    if (around.depth >= MOST_DEPTH) {
      throw new SvgError(
        node,
        `elements nested ${around.depth + 1} deep, use counted; allowed: up to ${MOST_DEPTH}`
      )
    }
    if (!CONTAINERS.has(tag) && (!chosen || !this.#known(node))) return
    if (tag === 'use' && !chosen) return
    if (chosen) {
      for (const what of unapplied(node))
        this.skipped.add(node, `${what} of ${nameOf(node)}`, 'it is not applied')
    }
    const own = node.attributes.get('transform')
    const inner: Around = {
      ...around,
      matrix:
        own === undefined
          ? around.matrix
          : placed(node, '', () => within(multiply(around.matrix, readTransform(own)))),
      style: styleOf(node, around.style),
      depth: around.depth + 1,
      chosen
    }
    if (SHAPES.has(tag)) {
      this.#shape(node, inner)
      return
    }
    this.#active.add(node)
    if (tag === 'use') this.#use(node, inner)
    else if (tag === 'svg') this.#nested(node, node, inner)
    else if (tag === 'switch') {
      // Neither extensions nor languages are known here: the first child that asks for none.
      const first = node.children.find(
        c =>
          !NOT_DRAWN.has(c.tag) &&
          !UNKNOWN_HERE.some(name => c.attributes.has(name)) &&
          c.tag !== 'foreignObject'
      )
      if (first) this.#draw(first, inner)
    } else this.#children(node, inner)
    this.#active.delete(node)
  }

  #known(node: SvgNode): boolean {
    if (SHAPES.has(node.tag)) return true
    this.skipped.add(node, nameOf(node), Object.hasOwn(WHY, node.tag) ? WHY[node.tag]! : 'it is no shape')
    return false
  }

  #shape(node: SvgNode, { matrix, view, style, use }: Around): void {
    if (!style.visible) return
    // Written so that a map that is no number counts as flat.
    if (!(Math.abs(determinant(matrix)) > 0)) {
      this.skipped.add(node, nameOf(node), 'its transform leaves it no area')
      return
    }
    const pen = new Pen(this.#tolMm, this.#budget, matrix)
    placed(node, node.tag === 'path' ? '' : `${node.tag}: `, () => drawShape(node, view, pen))
    if (pen.rings.length === 0 && pen.open.length === 0) {
      this.skipped.add(node, nameOf(node), 'it has no size')
      return
    }
    // Closed lines enclose whether filled or only stroked, as outlines are drawn; open ones when filled.
    const rings = [...pen.rings]
    if (style.filled) rings.push(...pen.open.filter(line => line.length >= 6))
    else if (rings.length > 0 && !style.stroked && !style.classed) {
      this.skipped.add(node, nameOf(node), 'it has neither fill nor stroke, so it is not seen')
      rings.length = 0
    }
    if (rings.length === 0 && pen.open.length === 0) return
    this.drawn.push({
      id: (use ?? node).attributes.get('id') ?? null,
      name: nameOf(node),
      at: node,
      rings,
      fillRule: style.fillRule,
      open: pen.open
    })
  }

  #use(node: SvgNode, around: Around): void {
    const href = (node.attributes.get('href') ?? node.attributes.get('xlink:href') ?? '').trim()
    const target = href.startsWith('#') ? this.#document.byId.get(href.slice(1)) : undefined
    if (target === undefined) {
      this.skipped.add(
        node,
        `use of ${quote(href)}`,
        href.startsWith('#') ? 'nothing in the file has that id' : 'nothing outside the file is loaded'
      )
      return
    }
    if (NOT_DRAWN.has(target.tag) && target.tag !== 'symbol') {
      this.skipped.add(node, `use of ${quote(href)}`, `it refers to a ${target.tag}, which is no shape`)
      return
    }
    if (this.#active.has(target)) {
      throw new SvgError(node, `a use of ${quote(href)} within itself; allowed: no circles`)
    }
    if (++this.#uses > MOST_USES) {
      throw new SvgError(node, `expansion number ${this.#uses} of use; allowed: up to ${MOST_USES}`)
    }
    const { view } = around
    const [x, y] = placed(node, '', () => [place(node, 'x', view.width), place(node, 'y', view.height)])
    const inner: Around = {
      ...around,
      matrix: placed(node, '', () => within(multiply(around.matrix, shift(x, y)))),
      use: around.use ?? node
    }
    if (target.tag === 'symbol' || target.tag === 'svg') {
      if (!displayed(target)) return
      if (around.depth >= MOST_DEPTH) {
        throw new SvgError(
          node,
          `elements nested ${around.depth + 1} deep, use counted; allowed: up to ${MOST_DEPTH}`
        )
      }
      this.#active.add(target)
      this.#nested(target, node, { ...inner, style: styleOf(target, inner.style), depth: around.depth + 1 })
      this.#active.delete(target)
    } else this.#draw(target, inner)
  }

  // A view within the view. Its size is its own or, drawn by a use, first that one's.
  #nested(node: SvgNode, user: SvgNode, around: Around): void {
    const inner = placed(node, '', () => nestedView(node, user, around))
    if (inner !== null) this.#children(node, { ...around, ...inner })
    else this.skipped.add(node, nameOf(node), 'it has no size')
  }
}

function nameOf(node: SvgNode): string {
  const id = node.attributes.get('id')
  return (
    node.title.trim() || (id === undefined ? `${node.tag} in line ${node.line}` : `${node.tag} ${quote(id)}`)
  )
}
