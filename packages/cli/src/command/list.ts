import type { CatalogueKind } from '@castwright/engine'
import { CATALOGUE, find, nearestIds, nearestWord } from '@castwright/engine'
import { argumentsOf } from '../arguments.ts'
import { Failure } from '../failure.ts'
import { columns, lineWidth, wrap } from '../paint.ts'
import type { Command } from './command.ts'

const KIND_NAMES = (Object.keys(CATALOGUE) as CatalogueKind[]).filter(k => k !== 'hazard')

/** `castwright list`: what a piece may name. */
export const listCommand: Command = {
  name: 'list',
  about: 'the catalogue: timbers, resins, pigments, stones, coats, boards, cutters, hardware',
  help: `castwright list KIND [WORD] [--json]

What a piece may name, with where each figure comes from. KIND is one of
${KIND_NAMES.join(', ')}. With WORD the rows whose id or name has it; one row alone is shown whole.

  --json            the rows as JSON
`,
  run: args => {
    const given = argumentsOf('list', args, {
      flags: ['json'],
      words: [1, 2, 'a kind, and a word if you like']
    })
    if (given.flags.has('help')) return { out: listCommand.help, code: 0 }
    const [word, wanted] = given.words as [string, string | undefined]
    const kind = kindOf(word)
    const rows = rowsOf(kind, wanted)
    if (given.flags.has('json')) return { out: `${JSON.stringify(rows, null, 2)}\n`, code: 0 }
    if (rows.length === 1 && wanted !== undefined) return { out: whole(rows[0]!), code: 0 }
    return { out: `${columns(rows.map(r => [r.id, r.name])).join('\n')}\n`, code: 0 }
  }
}

type Row = (typeof CATALOGUE)[CatalogueKind][number]

function kindOf(word: string): CatalogueKind {
  const kind = KIND_NAMES.find(k => k === word || `${k}s` === word)
  if (kind !== undefined) return kind
  const near = nearestWord(word, KIND_NAMES)
  throw new Failure(
    `castwright list: found "${word}"; allowed: ${KIND_NAMES.join(', ')}${near === null ? '' : `; the nearest is ${near}`}`
  )
}

function rowsOf(kind: CatalogueKind, wanted: string | undefined): readonly Row[] {
  const all: readonly Row[] = CATALOGUE[kind]
  if (wanted === undefined) return all
  const exact = find(kind, wanted)
  if (exact !== null) return [exact]
  const low = wanted.toLowerCase()
  const rows = all.filter(r => r.id.includes(low) || r.name.toLowerCase().includes(low))
  if (rows.length > 0) return rows
  throw new Failure(
    `castwright list ${kind}: found "${wanted}"; allowed: a name it has; the nearest are ${nearestIds(kind, wanted).join(', ')}`
  )
}

function whole(row: Row): string {
  const width = lineWidth()
  const lines: string[] = []
  for (const [key, value] of Object.entries(row)) {
    const text = typeof value === 'string' ? value : JSON.stringify(value)
    const [first = '', ...rest] = wrap(text, width, ' '.repeat(24))
    lines.push(`${key.padEnd(23)} ${first.trimStart()}`, ...rest)
  }
  return `${lines.join('\n')}\n`
}
