import type { z } from 'zod'
import { cutField, edgeField, hardwareField, markingField } from '../piece/cut-field.ts'
import { JsonProblem, readJson } from '../piece/json.ts'
import { pourField } from '../piece/pour-field.ts'
import { InputProblem, problemsOf } from '../piece/problem.ts'
import { timberField } from '../piece/timber-field.ts'

/** What can be copied: one entry of one of these kinds. */
export type ClipKind = 'timber' | 'pour' | 'cut' | 'hardware' | 'marking' | 'edge'

/** An entry as the clipboard holds it, with the drawings it names. */
export interface Clipping {
  readonly castwright: 1
  readonly kind: ClipKind
  readonly entry: Readonly<Record<string, unknown>>
  readonly files: Readonly<Record<string, string>>
}

/** The list of a piece each kind lies in, and how many it takes. */
export const LIST = {
  timber: 'timbers',
  pour: 'pours',
  cut: 'cuts',
  hardware: 'hardware',
  marking: 'markings',
  edge: 'edges'
} as const
export const MOST: Readonly<Record<ClipKind, number>> = {
  timber: 200,
  pour: 100,
  cut: 500,
  hardware: 200,
  marking: 100,
  edge: 10
}
const SCHEMA: Readonly<Record<ClipKind, z.ZodType>> = {
  timber: timberField,
  pour: pourField,
  cut: cutField,
  hardware: hardwareField,
  marking: markingField,
  edge: edgeField
}

/** Bounds of what is taken from a clipboard: characters in all and of one drawing, and drawings. */
const MOST_TEXT = 8_000_000
const MOST_DRAWING = 4_000_000
const MOST_DRAWINGS = 20
/** Most problems named of an entry that is not sound. */
const MOST_SAID = 3

/** The text to put on the clipboard. */
export function clippingText(clipping: Clipping): string {
  return JSON.stringify(clipping)
}

/**
 * A clipping from a clipboard's text, whoever put it there: bounded in size and depth, its entry read by the
 * schema of its kind, the names of its drawings plain. Words where it is not one.
 */
export function readClipping(text: string): Clipping | { readonly problem: string } {
  if (text.length > MOST_TEXT)
    return { problem: `the clipboard holds ${text.length} characters; allowed: at most ${MOST_TEXT}` }
  let value: unknown
  try {
    value = readJson(text)
  } catch (e) {
    if (!(e instanceof JsonProblem)) throw e
    return { problem: 'the clipboard holds no part of a piece; copy a timber, pour, cut or the like first' }
  }
  if (
    value === null ||
    typeof value !== 'object' ||
    Array.isArray(value) ||
    !Object.hasOwn(value, 'castwright')
  )
    return { problem: 'the clipboard holds no part of a piece; copy a timber, pour, cut or the like first' }
  const clip = value as Record<string, unknown>
  if (clip['castwright'] !== 1)
    return { problem: `a part of version ${short(clip['castwright'])}; allowed: version 1` }
  const unknown = Object.keys(clip).find(key => !['castwright', 'kind', 'entry', 'files'].includes(key))
  if (unknown !== undefined)
    return { problem: `the unknown key ${short(unknown)}; allowed: castwright, kind, entry, files` }
  const kind = clip['kind']
  if (typeof kind !== 'string' || !Object.hasOwn(SCHEMA, kind))
    return { problem: `a part of the kind ${short(kind)}; allowed: ${Object.keys(SCHEMA).join(', ')}` }
  const files = filesIn(clip['files'] ?? {})
  if ('problem' in files) return files
  const schema = SCHEMA[kind as ClipKind]
  const read = schema.safeParse(clip['entry'])
  if (!read.success) {
    const problems = problemsOf(read.error.issues, schema, clip['entry']).slice(0, MOST_SAID)
    return { problem: new InputProblem(`the copied ${kind}`, problems).message }
  }
  return {
    castwright: 1,
    kind: kind as ClipKind,
    entry: clip['entry'] as Clipping['entry'],
    files: files.files
  }
}

function filesIn(value: unknown): { readonly files: Record<string, string> } | { readonly problem: string } {
  if (value === null || typeof value !== 'object' || Array.isArray(value))
    return { problem: '"files" is no object of drawings by name' }
  const entries = Object.entries(value)
  if (entries.length > MOST_DRAWINGS)
    return { problem: `${entries.length} drawings; allowed: at most ${MOST_DRAWINGS}` }
  const files: Record<string, string> = {}
  for (const [name, text] of entries) {
    // A plain name of a drawing: no folder, no leading dot, nothing a file system reads otherwise.
    if (!/^[A-Za-z0-9À-ɏ][A-Za-z0-9À-ɏ _.-]{0,150}\.svg$/i.test(name))
      return { problem: `a drawing called ${short(name)}; allowed: a plain name that ends with .svg` }
    if (typeof text !== 'string' || text.length > MOST_DRAWING)
      return { problem: `the drawing ${short(name)} is no text of at most ${MOST_DRAWING} characters` }
    files[name] = text
  }
  return { files }
}

function short(value: unknown): string {
  const text = JSON.stringify(value) ?? 'nothing'
  return text.length > 40 ? `${text.slice(0, 40)}...` : text
}
