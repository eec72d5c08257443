import { union } from './combine.ts'
import { DrawingError, quote } from './drawing-error.ts'
import type { Matrix } from './matrix.ts'
import { determinant, multiply } from './matrix.ts'
import { Pen, PointBudget } from './pen.ts'
import type { FillRule, Region, Ring } from './region.ts'
import { EMPTY, regionOfRings } from './region.ts'
import type { Skipped, SvgLimits, SvgNode, SvgTree } from './svg-document.ts'
import { parseSvg, SVG_LIMITS } from './svg-document.ts'
import { SvgError } from './svg-error.ts'
import type { Viewport } from './svg-length.ts'
import { parseLength, userUnits } from './svg-length.ts'
import { drawShape, SHAPES } from './svg-shapes.ts'
import type { Style } from './svg-style.ts'
import { INITIAL_STYLE, inlineStyle, styleOf } from './svg-style.ts'
import { parseTransform } from './svg-transform.ts'
import { fitViewBox, pageOf, parseViewBox } from './svg-viewport.ts'
import { refuseTangle } from './tangle.ts'

export type { Skipped, SvgLimits } from './svg-document.ts'
export { SVG_LIMITS } from './svg-document.ts'
export { SvgError } from './svg-error.ts'

/** A drawn shape, in mm, y up. */
export interface SvgShape {
  /** Its own id, or that of the `use` that draws it. */
  readonly id: string | null
  /** For messages: 'rect "lid"' or 'path in line 12'. */
  readonly name: string
  readonly rings: readonly Ring[]
  /** Lines that are not closed: they enclose nothing and are not part of the region. */
  readonly open: readonly Float64Array[]
  readonly fillRule: FillRule
  /** What the rings enclose by the fill rule. */
  readonly region: Region
}

export interface SvgReading {
  /** All shapes, in the order they are drawn. */
  readonly shapes: readonly SvgShape[]
  /** Size of the page, mm; null where the file does not give it. */
  readonly widthMm: number | null
  readonly heightMm: number | null
  /** All shapes together, or those of the element asked for. */
  readonly region: Region
  /** What was not read, and why. At most 1000 entries; a last one then says how many more there were. */
  readonly skipped: readonly Skipped[]
  /** What was taken for granted about the size. */
  readonly assumed: readonly string[]
}

export interface SvgOptions {
  /** Most that a chord may stray from its curve, mm. */
  readonly tolMm: number
  /** The region is then that of the element with this id, and of all within it; `shapes` still has all. */
  readonly id?: string
  readonly limits?: Partial<SvgLimits>
}

/**
 * Reads the shapes of an SVG text in mm. The top left corner of the page comes to the origin and y points up,
 * so that the drawing lies below the x axis.
 *
 * Read: path, rect, circle, ellipse, line, polyline, polygon; g, a, svg, switch, symbol and `use` of the same
 * file; transform; viewBox, preserveAspectRatio and physical units; fill-rule, display, visibility. A shape with
 * neither fill nor stroke is not drawn and not read.
 * Not read, and reported: text, pictures, style sheets, clipping, masks, animation, anything outside the file.
 * Never loaded: anything outside the text. Refused: DOCTYPE, whatever exceeds a limit.
 *
 * Limits: strokes have no width here, a shape is its outline; shapes lying over each other count together, so a
 * hole must be in the same path as its outline; nothing is cut off at the page or a nested viewport.
 *
 * @throws SvgError with line and column
 */
export function readSvg(text: string, { tolMm, id, limits }: SvgOptions): SvgReading {
  const bounds = { ...SVG_LIMITS, ...limits }
  const tree = parseSvg(text, bounds)
  const { root } = tree
  const page = located(root, () => pageOf(root))
  const reader = new Reader(tree, tolMm, bounds, id)
  if (root.attributes.has('transform')) reader.skip(root, 'transform of the outermost svg', 'put it on a g')
  reader.drawRoot(page.matrix, page.viewport)
  const chosen = reader.shapes.filter((_, i) => reader.chosen[i])
  const region = located(root, () => {
    refuseTangle(chosen.flatMap(s => s.region.rings))
    return chosen.length === 0 ? EMPTY : union(...chosen.map(s => s.region))
  })
  return {
    shapes: reader.shapes,
    widthMm: page.widthMm,
    heightMm: page.heightMm,
    region,
    skipped: reader.skippedList(),
    assumed: page.assumed
  }
}

// Tells where the drawing is wrong; errors of any other kind are our own and pass.
function located<T>(node: SvgNode, work: () => T): T {
  try {
    return work()
  } catch (e) {
    if (!(e instanceof DrawingError)) throw e
    throw new SvgError(`<${node.tag}>: ${e.message}`, node.line, node.column)
  }
}

/** What comes down to an element from those around it. */
interface Context {
  readonly matrix: Matrix
  readonly viewport: Viewport
  readonly style: Style
  /** Whether the element asked for, or one around this, has the id. */
  readonly chosen: boolean
  /** The elements `use` is drawing, outermost first. */
  readonly uses: readonly SvgNode[]
  /** Id of the nearest `use` that has one. */
  readonly useId: string | null
}

/** Elements that hold definitions or words: never drawn where they stand. */
const SILENT: ReadonlySet<string> = new Set(
  `defs symbol title desc metadata clipPath mask pattern marker linearGradient radialGradient stop filter view
   cursor font font-face color-profile`.split(/\s+/)
)
const OUTSIDE = 'it lies outside the file; nothing outside is ever loaded'
const REASONS: Readonly<Record<string, string>> = {
  text: 'turn text into paths',
  image: 'pictures are not read, and nothing outside the file is ever loaded',
  foreignObject: 'only SVG is read',
  style: 'style sheets are not read: display, fill-rule and transform in them have no effect',
  script: 'scripts are never run',
  animate: 'animation is not read',
  animateMotion: 'animation is not read',
  animateTransform: 'animation is not read',
  set: 'animation is not read'
}
const MOST_SKIPPED = 1000

class Reader {
  readonly shapes: SvgShape[] = []
  /** chosen[i]: whether shape i belongs to the element asked for. */
  readonly chosen: boolean[] = []
  readonly #tree: SvgTree
  readonly #tolMm: number
  readonly #limits: SvgLimits
  readonly #id: string | undefined
  readonly #budget: PointBudget
  readonly #skipped: Skipped[]
  #unlisted = 0
  #drawn = 0
  #uses = 0

  constructor(tree: SvgTree, tolMm: number, limits: SvgLimits, id: string | undefined) {
    this.#tree = tree
    this.#tolMm = tolMm
    this.#limits = limits
    this.#id = id
    this.#budget = new PointBudget(limits.points)
    this.#skipped = [...tree.skipped]
  }

  drawRoot(matrix: Matrix, viewport: Viewport): void {
    const { root } = this.#tree
    const inline = inlineStyle(root)
    const style = styleOf(root, inline, INITIAL_STYLE)
    const context: Context = {
      matrix,
      viewport,
      style,
      chosen: this.#id === undefined || root.attributes.get('id') === this.#id,
      uses: [],
      useId: null
    }
    if (!hidden(root, inline)) for (const child of root.children) this.#draw(child, context)
  }

  skip(node: SvgNode, what: string, why: string): void {
    if (this.#skipped.length < MOST_SKIPPED) this.#skipped.push({ what, why, line: node.line })
    else this.#unlisted++
  }

  skippedList(): Skipped[] {
    if (this.#unlisted === 0) return this.#skipped
    return [...this.#skipped, { what: `${this.#unlisted} more`, why: 'the list is full', line: 1 }]
  }

  #draw(node: SvgNode, outer: Context): void {
    if (++this.#drawn > this.#limits.elements) {
      throw new SvgError(
        `more than ${this.#limits.elements} elements to draw once <use> is expanded; at most that many are drawn`,
        node.line,
        node.column
      )
    }
    const { tag } = node
    if (SILENT.has(tag)) return
    const inline = inlineStyle(node)
    if (hidden(node, inline)) return
    const why = Object.hasOwn(REASONS, tag) ? REASONS[tag]! : null
    if (why !== null) {
      this.skip(node, tag, why)
      return
    }
    const drawable = SHAPES.has(tag) || ['g', 'a', 'svg', 'switch', 'use'].includes(tag)
    if (!drawable) {
      this.skip(node, quote(tag), 'no element of SVG that is read here')
      return
    }
    if (inline.has('transform')) {
      this.skip(node, nameOf(node, null), 'it is placed by a transform in its style; use the attribute')
      return
    }
    for (const name of ['clip-path', 'mask']) {
      const value = inline.get(name) ?? node.attributes.get(name)
      if (value !== undefined && value.trim() !== 'none')
        this.skip(node, `${name} of ${nameOf(node, null)}`, 'nothing is cut off by it')
    }
    const own = node.attributes.get('transform')
    const matrix =
      own === undefined
        ? outer.matrix
        : multiply(
            outer.matrix,
            located(node, () => parseTransform(own))
          )
    const id = node.attributes.get('id')
    const context: Context = {
      ...outer,
      matrix,
      style: styleOf(node, inline, outer.style),
      chosen: outer.chosen || (id !== undefined && id === this.#id)
    }
    if (SHAPES.has(tag)) this.#shape(node, context)
    else if (tag === 'use') this.#use(node, context)
    else if (tag === 'svg') this.#viewport(node, node.attributes, context)
    else if (tag === 'switch') {
      const first = node.children.find(
        c => !c.attributes.has('requiredExtensions') && c.tag !== 'foreignObject'
      )
      if (first) this.#draw(first, context)
    } else for (const child of node.children) this.#draw(child, context)
  }

  #shape(node: SvgNode, context: Context): void {
    const { style, matrix, viewport, useId } = context
    if (!style.visible) return
    const name = nameOf(node, useId)
    if (!style.filled && !style.stroked && !style.classed) {
      this.skip(node, name, 'it has neither fill nor stroke, so it is not drawn')
      return
    }
    // Written so that a map that is no number is refused here and not drawn.
    if (!(Math.abs(determinant(matrix)) > 0)) {
      this.skip(node, name, 'its transform leaves it no area')
      return
    }
    const shape = located(node, (): SvgShape => {
      const pen = new Pen(this.#tolMm, this.#budget, matrix)
      drawShape(node, pen, viewport)
      return {
        id: useId ?? node.attributes.get('id') ?? null,
        name,
        rings: pen.rings,
        open: pen.open,
        fillRule: style.fillRule,
        region: pen.rings.length === 0 ? EMPTY : regionOfRings(pen.rings, style.fillRule)
      }
    })
    if (shape.rings.length === 0 && shape.open.length === 0) return
    this.shapes.push(shape)
    this.chosen.push(context.chosen)
  }

  #use(node: SvgNode, context: Context): void {
    const href = node.attributes.get('href')?.trim() ?? ''
    const name = `use of ${quote(href)}`
    if (!href.startsWith('#')) {
      this.skip(node, name, href === '' ? 'it refers to nothing' : OUTSIDE)
      return
    }
    const target = this.#tree.ids.get(href.slice(1))
    if (target === undefined) {
      this.skip(node, name, 'the file has no element with that id')
      return
    }
    const fail = (message: string): never => {
      throw new SvgError(message, node.line, node.column)
    }
    if (context.uses.includes(target)) fail(`${name} draws itself`)
    if (context.uses.length >= this.#limits.useDepth) {
      fail(`<use> within what <use> draws, more than ${this.#limits.useDepth} deep; at most that is read`)
    }
    if (++this.#uses > this.#limits.uses) {
      fail(`more than ${this.#limits.uses} expansions of <use>; at most that many are drawn`)
    }
    const shift = located(node, () => this.#place(node.attributes, context.viewport))
    const inner: Context = {
      ...context,
      matrix: multiply(context.matrix, [1, 0, 0, 1, shift.x, shift.y]),
      uses: [...context.uses, target],
      useId: node.attributes.get('id') ?? context.useId
    }
    if (target.tag === 'symbol' || target.tag === 'svg') {
      // Width and height of the use go before those of what it draws; x and y are the use's (SVG 1.1, 5.6).
      const attributes = new Map(target.attributes)
      for (const key of ['width', 'height']) {
        const value = node.attributes.get(key)
        if (value !== undefined) attributes.set(key, value)
        else if (target.tag === 'symbol') attributes.delete(key)
      }
      if (target.tag === 'symbol') {
        attributes.delete('x')
        attributes.delete('y')
      }
      const inline = inlineStyle(target)
      if (hidden(target, inline)) return
      this.#viewport(target, attributes, {
        ...inner,
        style: styleOf(target, inline, inner.style),
        chosen: inner.chosen || target.attributes.get('id') === this.#id
      })
    } else this.#draw(target, inner)
  }

  // A nested svg, or a symbol as drawn by a use.
  #viewport(node: SvgNode, attributes: ReadonlyMap<string, string>, context: Context): void {
    const placed = located(node, () => {
      const { x, y } = this.#place(attributes, context.viewport)
      const size = (name: 'width' | 'height'): number | null => {
        const text = attributes.get(name)
        const axis = name === 'width' ? 'x' : 'y'
        if (text === undefined || text.trim() === 'auto') return context.viewport[name]
        const value = userUnits(parseLength(text, name), axis, context.viewport, name)
        if (value < 0) throw new DrawingError(`${name} is ${value}; it must not be negative`)
        return value
      }
      const width = size('width')
      const height = size('height')
      const text = attributes.get('viewBox')
      if (width === 0 || height === 0) return null
      if (text === undefined) {
        return { matrix: [1, 0, 0, 1, x, y] as Matrix, viewport: { width, height } }
      }
      const box = parseViewBox(text)
      if (box.width === 0 || box.height === 0) return null
      // Of an unknown page the viewBox keeps its own size.
      return {
        matrix: fitViewBox(
          box,
          x,
          y,
          width ?? box.width,
          height ?? box.height,
          attributes.get('preserveAspectRatio')
        ),
        viewport: { width: box.width, height: box.height }
      }
    })
    if (placed === null) return
    const inner = { ...context, matrix: multiply(context.matrix, placed.matrix), viewport: placed.viewport }
    for (const child of node.children) this.#draw(child, inner)
  }

  #place(attributes: ReadonlyMap<string, string>, viewport: Viewport): { x: number; y: number } {
    const at = (name: 'x' | 'y') => {
      const text = attributes.get(name)
      return text === undefined ? 0 : userUnits(parseLength(text, name), name, viewport, name)
    }
    return { x: at('x'), y: at('y') }
  }
}

function hidden(node: SvgNode, inline: ReadonlyMap<string, string>): boolean {
  return (inline.get('display') ?? node.attributes.get('display'))?.trim().toLowerCase() === 'none'
}

function nameOf(node: SvgNode, useId: string | null): string {
  const id = useId ?? node.attributes.get('id')
  return id === undefined ? `${node.tag} in line ${node.line}` : `${node.tag} ${quote(id)}`
}
