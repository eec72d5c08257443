import { CATALOGUE } from '../../../engine/src/catalogue/find.ts'
import type { Piece } from '../../../engine/src/piece/piece-schema.ts'
import { pieceSchema } from '../../../engine/src/piece/piece-schema.ts'
import { usualShop } from '../../../engine/src/piece/read.ts'
import type { SchemaNode } from '../../../engine/src/piece/schema-page.ts'
import { schemaPage } from '../../../engine/src/piece/schema-page.ts'
import { shopSchema } from '../../../engine/src/piece/shop-schema.ts'
import type { Field, FieldTable } from './field-table.ts'

type Names = readonly (readonly [id: string, name: string])[]
type Node = SchemaNode & { default?: unknown; required?: string[] }

/** Keys that the least piece says, which are not usual values. */
const SAID = new Set(['depth', 'shape', 'lines', 'formers'])

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
  const usual = usualPiece()
  return {
    piece: fieldsOf(page, piece, { climate: names('room') }, usual),
    mould: fieldsOf(
      page,
      mould,
      { base: names('board'), liner: names('liner'), wallBoard: names('board') },
      usual.mould
    ),
    flatten: fieldsOf(page, resolved(page, piece.properties!['flatten'] as Node), {}, usual.flatten),
    timber: fieldsOf(page, list('timbers'), { species: names('timber') }, usual.timbers[0]),
    pour: fieldsOf(page, list('pours'), { resin: names('resin') }, usual.pours[0]),
    cut: fieldsOf(page, list('cuts'), {}, usual.cuts[0]),
    hardware: fieldsOf(page, list('hardware'), { kind: names('hardware') }, usual.hardware[0]),
    marking: fieldsOf(page, list('markings'), { resin: names('resin') }, usual.markings[0]),
    edge: fieldsOf(page, list('edges'), {}, usual.edges[0]),
    former: fieldsOf(page, resolved(page, (mould.properties!['formers'] as Node).items as Node), {}),
    shop: fieldsOf(shopPage, resolved(shopPage, shopPage), {}, usualShop()),
    tint: names('pigment'),
    stones: names('stone'),
    coats: names('coat'),
    rooms: names('room')
  }
}

/** A piece of which as little as may be is said: what stands in it all the same is what the schema takes as usual. */
function usualPiece(): Piece {
  const outline = { circle: 100 }
  return pieceSchema.parse({
    castwright: 1,
    name: 'usual',
    outline,
    mould: { formers: [{ shape: outline }] },
    timbers: [{ species: 'oak-european', outline, thickness: 20 }],
    pours: [{ resin: 'deep', depth: 10 }],
    cuts: [{ face: 'back', shape: outline, depth: 5 }],
    hardware: [{ kind: 'magnet-disc' }],
    markings: [
      {
        lines: [
          [
            [0, 0],
            [10, 0]
          ]
        ]
      }
    ],
    edges: [{ profile: 'round', size: 2 }]
  })
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
  usual: unknown = {},
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
      const fallback = node.default ?? (usual as Record<string, unknown> | undefined)?.[key]
      const required = (object.required ?? []).includes(key)
      const example = node.examples?.[0]
      return {
        key,
        description: (node.description ?? '').replace(
          / \((a number in|letters, digits|degrees\)|YYYY).*$/,
          ''
        ),
        type: typed,
        ...(typed === 'number' ? unitOf(node.description ?? '') : {}),
        ...(quantity === undefined
          ? {}
          : { dimension: quantity.dimension, min: quantity.min, max: quantity.max }),
        ...(quantity === undefined && node.minimum !== undefined ? { min: node.minimum } : {}),
        ...(quantity === undefined && node.maximum !== undefined ? { max: node.maximum } : {}),
        ...(typed === 'choice' ? { options: node.enum as string[] } : {}),
        ...(catalogue[key] === undefined ? {} : { catalogue: catalogue[key] }),
        ...(inner === null || depth >= MOST_DEPTH
          ? {}
          : {
              fields: fieldsOf(
                page,
                inner,
                { ...catalogue, ...CATALOGUES[key] },
                typed === 'group' ? fallback : {},
                depth + 1
              )
            }),
        ...(fallback === undefined || required || SAID.has(key) ? {} : { fallback }),
        ...(example === undefined ? {} : { example }),
        required
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
  cutters: { kind: names('cutter') },
  cards: { pigment: names('pigment'), resin: names('resin') }
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

/** The unit a description of a number names after its last comma. */
function unitOf(description: string): { readonly unit?: string } {
  const unit = /, (K|°C|g|g\/ml|mm|W|days|degrees)(?:;.*)?$/.exec(description)?.[1]
  return unit === undefined ? {} : { unit: unit === 'degrees' ? '°' : unit }
}
