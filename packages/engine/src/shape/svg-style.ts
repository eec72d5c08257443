import type { SvgNode } from './svg-document.ts'

/** What of the style a plane region depends on; inherited from the element around it. */
export interface Style {
  /** Whether open subpaths enclose something. */
  readonly filled: boolean
  readonly stroked: boolean
  readonly fillRule: 'nonzero' | 'evenodd'
  readonly visible: boolean
  /** Whether a style sheet may have a say. */
  readonly classed: boolean
}

/** SVG's initial values. */
export const INITIAL: Style = {
  filled: true,
  stroked: false,
  fillRule: 'nonzero',
  visible: true,
  classed: false
}

/**
 * The style of an element: `style="…"` before the attribute of the same name, else its parent's (SVG 1.1,
 * chapter 6 "Styling"; memory). A value that means nothing counts as not given, as CSS has it.
 *
 * Limits: style sheets (`<style>`, `class`) are not read.
 */
export function styleOf(node: SvgNode, parent: Style): Style {
  const inline = inlineStyle(node)
  const of = (name: string): string =>
    (inline.get(name) ?? node.attributes.get(name) ?? '').trim().toLowerCase()
  const painted = (value: string, before: boolean, initial: boolean): boolean =>
    value === '' || value === 'inherit' ? before : value === 'initial' ? initial : value !== 'none'
  const rule = of('fill-rule')
  const visibility = of('visibility')
  return {
    filled: painted(of('fill'), parent.filled, INITIAL.filled),
    stroked: painted(of('stroke'), parent.stroked, INITIAL.stroked),
    fillRule: rule === 'evenodd' ? 'evenodd' : /^(nonzero|initial)$/.test(rule) ? 'nonzero' : parent.fillRule,
    visible:
      /^(visible|initial)$/.test(visibility) || (parent.visible && !/^(hidden|collapse)$/.test(visibility)),
    classed: parent.classed || node.attributes.has('class')
  }
}

/** Whether an element and all in it is left out of the drawing. */
export function displayed(node: SvgNode): boolean {
  const value = inlineStyle(node).get('display') ?? node.attributes.get('display') ?? ''
  return value.trim().toLowerCase() !== 'none'
}

/** Properties that would change a shape but are read from attributes only, or not at all. */
const UNREAD_IN_STYLE = new Set(
  (
    'transform transform-origin transform-box translate rotate scale offset-path zoom d x y width height ' +
    'cx cy r rx ry clip-path clip mask filter'
  ).split(' ')
)
const UNREAD_ATTRIBUTES = ['clip-path', 'mask', 'filter', 'transform-origin']

/** What of an element's style would change its shape but is not applied: names of properties. */
export function unapplied(node: SvgNode): string[] {
  const some = (value: string | undefined): boolean => value !== undefined && value.trim() !== 'none'
  const out = new Set(UNREAD_ATTRIBUTES.filter(name => some(node.attributes.get(name))))
  for (const [name, value] of inlineStyle(node)) {
    if (UNREAD_IN_STYLE.has(name) && some(value)) out.add(`${name} in style`)
  }
  return [...out]
}

const styles = new WeakMap<SvgNode, ReadonlyMap<string, string>>()

// Declarations of a style attribute; the last of a name counts.
function inlineStyle(node: SvgNode): ReadonlyMap<string, string> {
  let found = styles.get(node)
  if (found === undefined) {
    const map = new Map<string, string>()
    for (const part of (node.attributes.get('style') ?? '').split(';')) {
      const colon = part.indexOf(':')
      if (colon < 0) continue
      const value = part.slice(colon + 1).replace(/![\t\n\f\r ]*important[\t\n\f\r ]*$/i, '')
      map.set(part.slice(0, colon).trim().toLowerCase(), value.trim())
    }
    found = map
    styles.set(node, found)
  }
  return found
}
