import type { CatalogueKind } from '@castwright/engine'
import { CATALOGUE, FINDING_IDS, find, LOOKED_FOR, nearestIds, nearestWord } from '@castwright/engine'
import { argumentsOf } from '../arguments.ts'
import { Failure } from '../failure.ts'
import { columns, lineWidth, wrap } from '../paint.ts'
import type { Command } from './command.ts'

const KIND_NAMES = (Object.keys(CATALOGUE) as CatalogueKind[]).filter(k => k !== 'hazard')

/** `castwright list`: what a piece may name. */
export const listCommand: Command = {
  name: 'list',
  about:
    'the catalogue: timbers, resins, pigments, stones, coats, boards, cutters, hardware; and every check',
  help: `castwright list KIND [WORD] [--json]

What a piece may name, with where each figure comes from. KIND is one of
${KIND_NAMES.join(', ')}; or checks: every check by its
id, with what it looks for. With WORD the rows whose id or name has it; one row alone is shown whole.

  --json            the rows as JSON
`,
  run: args => {
    const given = argumentsOf('list', args, {
      flags: ['json'],
      words: [1, 2, 'a kind, and a word if you like']
    })
    if (given.flags.has('help')) return { out: listCommand.help, code: 0 }
    const [word, wanted] = given.words as [string, string | undefined]
    const rows: readonly Listed[] =
      word === CHECK_WORD || `${word}s` === CHECK_WORD ? checksOf(wanted) : rowsOf(kindOf(word), wanted)
    if (given.flags.has('json')) return { out: `${JSON.stringify(rows, null, 2)}\n`, code: 0 }
    if (rows.length === 1 && wanted !== undefined) return { out: whole(rows[0]!), code: 0 }
    return { out: `${columns(rows.map(r => [r.id, 'name' in r ? r.name : r.about])).join('\n')}\n`, code: 0 }
  }
}

const CHECK_WORD = 'checks'

type Listed = Row | (typeof LOOKED_FOR)[number]
type Row = (typeof CATALOGUE)[CatalogueKind][number]

function kindOf(word: string): CatalogueKind {
  const kind = KIND_NAMES.find(k => k === word || `${k}s` === word)
  if (kind !== undefined) return kind
  const near = nearestWord(word, [...KIND_NAMES, CHECK_WORD])
  throw new Failure(
    `castwright list: found "${word}"; allowed: ${[...KIND_NAMES, CHECK_WORD].join(', ')}${near === null ? '' : `; the nearest is ${near}`}`
  )
}

function checksOf(wanted: string | undefined): readonly Listed[] {
  const all = LOOKED_FOR.map(({ id, about }) => ({ id, about }))
  if (wanted === undefined) return all
  const exact = all.find(c => c.id === wanted)
  if (exact !== undefined) return [exact]
  const low = wanted.toLowerCase()
  const rows = all.filter(c => c.id.includes(low) || c.about.toLowerCase().includes(low))
  if (rows.length > 0) return rows
  const near = nearestWord(wanted, FINDING_IDS)
  throw new Failure(
    `castwright list checks: found "${wanted}"; allowed: a name it has${near === null ? '' : `; the nearest is ${near}`}`
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

function whole(row: Listed): string {
  const width = lineWidth()
  const lines: string[] = []
  for (const [key, value] of Object.entries(row)) {
    const text = typeof value === 'string' ? value : JSON.stringify(value)
    const [first = '', ...rest] = wrap(text, width, ' '.repeat(24))
    lines.push(`${key.padEnd(23)} ${first.trimStart()}`, ...rest)
  }
  return `${lines.join('\n')}\n`
}
