import { CATALOGUE } from '../../../engine/src/catalogue/find.ts'
import { pieceSchema } from '../../../engine/src/piece/piece-schema.ts'
import type { SchemaNode } from '../../../engine/src/piece/schema-page.ts'
import { schemaPage } from '../../../engine/src/piece/schema-page.ts'
import { shopSchema } from '../../../engine/src/piece/shop-schema.ts'
import type { Field, FieldTable } from './messages.ts'

type Names = readonly (readonly [id: string, name: string])[]
type Node = SchemaNode & { default?: unknown; required?: string[] }

/** How deep groups and lists go on. */
const MOST_DEPTH = 3

const names = (kind: keyof typeof CATALOGUE): Names => CATALOGUE[kind].map(r => [r.id, r.name] as const)

/** The fields of every kind of entry, from the same schema that checks documents. */
export function fieldTable(): FieldTable {
  const page = schemaPage(pieceSchema) as Node
  const piece = resolved(page, page)
  const list = (key: string) => resolved(page, (piece.properties![key] as Node).items as Node)
  const mould = resolved(page, piece.properties!['mould'] as Node)
  const shopPage = schemaPage(shopSchema) as Node
  return {
    piece: fieldsOf(page, piece, { climate: names('room') }),
    mould: fieldsOf(page, mould, { base: names('board'), liner: names('liner'), wallBoard: names('board') }),
    flatten: fieldsOf(page, resolved(page, piece.properties!['flatten'] as Node), {}),
    timber: fieldsOf(page, list('timbers'), { species: names('timber') }),
    pour: fieldsOf(page, list('pours'), { resin: names('resin') }),
    cut: fieldsOf(page, list('cuts'), {}),
    hardware: fieldsOf(page, list('hardware'), { kind: names('hardware') }),
    marking: fieldsOf(page, list('markings'), { resin: names('resin') }),
    edge: fieldsOf(page, list('edges'), {}),
    former: fieldsOf(page, resolved(page, (mould.properties!['formers'] as Node).items as Node), {}),
    shop: fieldsOf(shopPage, resolved(shopPage, shopPage), {}),
    tint: names('pigment'),
    stones: names('stone'),
    coats: names('coat'),
    rooms: names('room')
  }
}

function resolved(page: SchemaNode, node: SchemaNode): Node {
  if (node.$ref === undefined) return node
  const { $ref, ...own } = node
  return { ...page.$defs![$ref.replace('#/$defs/', '')]!, ...own }
}

function fieldsOf(
  page: SchemaNode,
  object: Node,
  catalogue: Readonly<Record<string, Names>>,
  depth = 0
): Field[] {
  return Object.entries(object.properties ?? {})
    .filter(([key]) => key !== 'castwright' && key !== '$schema')
    .map(([key, given]) => {
      const node = resolved(page, given) as Node
      const isShape = given.$ref === '#/$defs/shape'
      const quantity = node['x-quantity']
      const typed = typeOf(page, node, isShape)
      const inner = typed === 'group' ? node : typed === 'list' ? resolved(page, node.items as Node) : null
      const example = node.examples?.[0]
      return {
        key,
        description: (node.description ?? '').replace(
          / \((a number in|letters, digits|degrees\)|YYYY).*$/,
          ''
        ),
        type: typed,
        ...(quantity === undefined
          ? {}
          : { dimension: quantity.dimension, min: quantity.min, max: quantity.max }),
        ...(quantity === undefined && node.minimum !== undefined ? { min: node.minimum } : {}),
        ...(quantity === undefined && node.maximum !== undefined ? { max: node.maximum } : {}),
        ...(typed === 'choice' ? { options: node.enum as string[] } : {}),
        ...(catalogue[key] === undefined ? {} : { catalogue: catalogue[key] }),
        ...(inner === null || depth >= MOST_DEPTH
          ? {}
          : { fields: fieldsOf(page, inner, { ...catalogue, ...CATALOGUES[key] }, depth + 1) }),
        ...(node.default === undefined ? {} : { fallback: node.default }),
        ...(example === undefined ? {} : { example }),
        required: (object.required ?? []).includes(key)
      } satisfies Field
    })
}

/** Catalogues that fit keys inside a group or list of that name. */
const CATALOGUES: Readonly<Record<string, Readonly<Record<string, Names>>>> = {
  tint: { pigment: names('pigment') },
  filled: { pigment: names('pigment') },
  stones: { kind: names('stone') },
  front: { coat: names('coat') },
  back: { coat: names('coat') },
  both: { coat: names('coat') },
  cutters: { kind: names('cutter') }
}

function typeOf(page: SchemaNode, node: Node, isShape: boolean): Field['type'] {
  if (isShape) return 'shape'
  if (node['x-quantity'] !== undefined) return 'quantity'
  if (node.enum !== undefined) return 'choice'
  if (node.const === true || node.type === 'boolean') return 'yes'
  if (node.type === 'integer') return 'whole'
  if (node.type === 'number') return 'number'
  if (node.type === 'string') return 'words'
  if (node.prefixItems?.length === 2 && node.prefixItems.every(p => p['x-quantity'] !== undefined))
    return 'point'
  // A room by its name, a number of pieces: what a maker types first.
  const simple = node.anyOf?.find(n => n.type === 'string' || n.type === 'integer')
  if (simple !== undefined) return simple.type === 'integer' ? 'whole' : 'words'
  if (node.type === 'object' && node.properties !== undefined) return 'group'
  if (node.type === 'array' && node.items !== undefined && node.items !== false) {
    const item = resolved(page, node.items)
    if (item.type === 'object' && item.properties !== undefined)
      return node.items.$ref === '#/$defs/shape' ? 'other' : 'list'
    if (item.type === 'string') return 'lines'
  }
  return 'other'
}
