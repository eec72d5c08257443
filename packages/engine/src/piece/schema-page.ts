import { z } from 'zod'
import { quantityHint } from '../quantity/parse.ts'
import { FIXED_UNIT } from '../quantity/unit.ts'
import type { QuantityField } from './field.ts'

/** A node of a JSON Schema, as far as this project writes them. */
export interface SchemaNode {
  $ref?: string
  $defs?: Record<string, SchemaNode>
  type?: string
  const?: unknown
  enum?: unknown[]
  description?: string
  examples?: unknown[]
  minimum?: number
  maximum?: number
  minItems?: number
  maxItems?: number
  minLength?: number
  maxLength?: number
  properties?: Record<string, SchemaNode>
  prefixItems?: SchemaNode[]
  items?: SchemaNode | false
  anyOf?: SchemaNode[]
  oneOf?: SchemaNode[]
  'x-quantity'?: QuantityField
}

const pages = new WeakMap<z.ZodType, SchemaNode>()

/** The published JSON Schema (2020-12) of a document schema: the same source as its types. */
export function schemaPage(schema: z.ZodType): SchemaNode {
  let page = pages.get(schema)
  if (!page) {
    page = named(z.toJSONSchema(schema, { io: 'input', target: 'draft-2020-12' })) as SchemaNode
    pages.set(schema, page)
  }
  return page
}

// zod leaves `examples` out of a schema that transforms what it reads, as every quantity does.
function named(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(named)
  if (node === null || typeof node !== 'object') return node
  return Object.fromEntries(
    Object.entries(node).map(([key, value]) => {
      const sample = key === 'sample' && Array.isArray(value)
      return [sample ? 'examples' : key, sample ? value : named(value)]
    })
  )
}

/** What is allowed at a path, in words. */
export function allowedAt(schema: z.ZodType, path: readonly PropertyKey[], document: unknown): string {
  const node = nodeAt(schema, path, document)
  if (!node) return 'nothing here'
  return allowed(schemaPage(schema), node)
}

function allowed(page: SchemaNode, at: SchemaNode): string {
  const node = resolve(page, at)
  const q = node['x-quantity']
  if (q) return `${quantityHint(q.dimension)}, from ${q.min} to ${q.max} ${FIXED_UNIT[q.dimension]}`
  if (node.const !== undefined) return JSON.stringify(node.const)
  if (node.enum) return node.enum.map(e => JSON.stringify(e)).join(', ')
  const about = node.description ? ` (${node.description})` : ''
  const branches = node.anyOf ?? (node.type === undefined ? node.oneOf : undefined)
  if (branches) {
    const words = discriminator(branchesOf(page, node))
    if (words)
      return `an object whose "${words.key}" is one of ${words.values.map(v => JSON.stringify(v)).join(', ')}`
    return `${branches.map(b => allowed(page, b)).join(', or ')}${about}`
  }
  switch (node.type) {
    case 'number':
      return `a number from ${node.minimum} to ${node.maximum}${about}`
    case 'integer':
      return `a whole number from ${node.minimum} to ${node.maximum}${about}`
    case 'boolean':
      return `true or false${about}`
    case 'string':
      return `text${node.maxLength === undefined ? '' : ` of 1 to ${node.maxLength} characters`}${about}`
    case 'array':
      return `a list${count(node)}${about}`
    default:
      return `an object${about}`
  }
}

function count(node: SchemaNode): string {
  if (node.minItems !== undefined && node.minItems === node.maxItems) return ` of ${node.minItems}`
  if (node.minItems !== undefined && node.maxItems !== undefined)
    return ` of ${node.minItems} to ${node.maxItems}`
  return node.maxItems === undefined ? '' : ` of at most ${node.maxItems}`
}

/** An example of what is allowed at a path, as JSON text; "" when there is none. */
export function exampleAt(schema: z.ZodType, path: readonly PropertyKey[], document: unknown): string {
  const node = nodeAt(schema, path, document)
  const example = node === null ? undefined : exampleOf(schemaPage(schema), node)
  return example === undefined ? '' : JSON.stringify(example)
}

function exampleOf(page: SchemaNode, at: SchemaNode): unknown {
  const node = resolve(page, at)
  if (node.examples && node.examples.length > 0) return node.examples[0]
  const q = node['x-quantity']
  if (q)
    return Math.min(
      q.max,
      Math.max(
        q.min,
        { length: 18, mass: 300, volume: 250, temperature: 21, time: 120, percent: 12 }[q.dimension]
      )
    )
  if (node.const !== undefined) return node.const
  if (node.enum) return node.enum[0]
  const branch = node.anyOf?.[0] ?? (node.type === undefined ? node.oneOf?.[0] : undefined)
  if (branch) return exampleOf(page, branch)
  return {
    number: node.minimum,
    integer: node.minimum,
    boolean: true,
    string: 'text',
    array: [],
    object: undefined
  }[node.type ?? 'object']
}

/** The words a choice at a path is of; none where it is no choice. */
export function wordsAt(schema: z.ZodType, path: readonly PropertyKey[], document: unknown): string[] {
  return (nodeAt(schema, path, document)?.enum ?? []).filter(word => typeof word === 'string')
}

/** The keys an object at a path may have. */
export function keysAt(schema: z.ZodType, path: readonly PropertyKey[], document: unknown): string[] {
  const node = nodeAt(schema, path, document)
  return node?.properties ? Object.keys(node.properties) : []
}

/** Walks the published schema along a path; the document tells which branch of a union is meant. */
function nodeAt(schema: z.ZodType, path: readonly PropertyKey[], document: unknown): SchemaNode | null {
  const page = schemaPage(schema)
  let node = pick(page, page, document)
  let value = document
  for (const key of path) {
    value =
      value !== null && typeof value === 'object' ? (value as Record<PropertyKey, unknown>)[key] : undefined
    const index = Number(key)
    let next: SchemaNode | undefined
    if (node.properties && typeof key === 'string')
      next = Object.hasOwn(node.properties, key) ? node.properties[key] : undefined
    else if (node.prefixItems && Number.isInteger(index)) next = node.prefixItems[index]
    if (!next && node.items && Number.isInteger(index)) next = node.items
    if (!next && key === discriminator(branchesOf(page, node))?.key)
      next = { enum: discriminator(branchesOf(page, node))!.values }
    if (!next) return null
    node = pick(page, next, value)
  }
  return node
}

function branchesOf(page: SchemaNode, node: SchemaNode): SchemaNode[] {
  const branches = node.anyOf ?? (node.type === undefined ? node.oneOf : undefined)
  return (branches ?? []).map(b => resolve(page, b))
}

function pick(page: SchemaNode, at: SchemaNode, value: unknown): SchemaNode {
  const node = resolve(page, at)
  if (node['x-quantity'] || value === null || typeof value !== 'object') return node
  const objects = branchesOf(page, node).filter(b => b.type === (Array.isArray(value) ? 'array' : 'object'))
  const words = discriminator(objects)
  if (words) {
    const word = (value as Record<string, unknown>)[words.key]
    return objects.find(b => b.properties?.[words.key]?.const === word) ?? node
  }
  return objects[0] ?? node
}

function discriminator(branches: readonly SchemaNode[]): { key: string; values: unknown[] } | null {
  for (const key of ['do', 'kind']) {
    const values = branches.map(b => b.properties?.[key]?.const)
    if (branches.length > 1 && values.every(v => v !== undefined)) return { key, values }
  }
  return null
}

function resolve(page: SchemaNode, node: SchemaNode): SchemaNode {
  let at = node
  for (let hops = 0; at.$ref && hops < 8; hops++) {
    const name = at.$ref.replace('#/$defs/', '')
    const target = at.$ref === '#' ? page : page.$defs?.[name]
    if (!target) return at
    const { $ref: _, ...own } = at
    at = { ...target, ...own }
  }
  return at
}
