import { CATALOGUE } from '../../../engine/src/catalogue/find.ts'
import { pieceSchema } from '../../../engine/src/piece/piece-schema.ts'
import type { SchemaNode } from '../../../engine/src/piece/schema-page.ts'
import { schemaPage } from '../../../engine/src/piece/schema-page.ts'
import { shopSchema } from '../../../engine/src/piece/shop-schema.ts'
import type { Field, FieldTable } from './messages.ts'

type Names = readonly (readonly [id: string, name: string])[]
type Node = SchemaNode & { default?: unknown; required?: string[] }

const names = (kind: keyof typeof CATALOGUE): Names => CATALOGUE[kind].map(r => [r.id, r.name] as const)

/** The fields of every kind of entry, from the same schema that checks documents. */
export function fieldTable(): FieldTable {
  const page = schemaPage(pieceSchema) as Node
  const piece = resolved(page, page)
  const list = (key: string) => resolved(page, (piece.properties![key] as Node).items as Node)
  const mould = resolved(page, piece.properties!['mould'] as Node)
  const shopPage = schemaPage(shopSchema) as Node
  return {
    piece: fieldsOf(page, piece, {}),
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

function fieldsOf(page: SchemaNode, object: Node, catalogue: Readonly<Record<string, Names>>): Field[] {
  return Object.entries(object.properties ?? {})
    .filter(([key]) => key !== 'castwright' && key !== '$schema')
    .map(([key, given]) => {
      const node = resolved(page, given) as Node
      const isShape = given.$ref === '#/$defs/shape'
      const quantity = node['x-quantity']
      const typed = typeOf(node, isShape)
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
        ...(node.default === undefined ? {} : { fallback: node.default }),
        ...(example === undefined ? {} : { example }),
        required: (object.required ?? []).includes(key)
      } satisfies Field
    })
}

function typeOf(node: Node, isShape: boolean): Field['type'] {
  if (isShape) return 'shape'
  if (node['x-quantity'] !== undefined) return 'quantity'
  if (node.enum !== undefined) return 'choice'
  if (node.const === true || node.type === 'boolean') return 'yes'
  if (node.type === 'integer') return 'whole'
  if (node.type === 'number') return 'number'
  if (node.type === 'string') return 'words'
  if (node.prefixItems?.length === 2 && node.prefixItems.every(p => p['x-quantity'] !== undefined))
    return 'point'
  return 'other'
}
