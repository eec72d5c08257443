import { parseArgs } from 'node:util'
import type { Despite } from '@castwright/engine'
import { nearestWord } from '@castwright/engine'
import { Failure } from './failure.ts'

/** What may follow a command. `text` takes a value. */
export interface Allowed {
  readonly flags?: readonly string[]
  readonly texts?: readonly string[]
  /** Words that stand alone: how many at least and at most, and what they are. */
  readonly words: readonly [least: number, most: number, what: string]
}

/** Arguments taken apart. */
export interface Given {
  readonly words: readonly string[]
  readonly flags: ReadonlySet<string>
  readonly texts: ReadonlyMap<string, string>
  readonly despite: readonly Despite[]
}

/** Stands before a number below zero while the arguments are taken apart. */
const BELOW = '\u0000'

/** Most words of a reason that a sheet prints. */
const MOST_REASON = 300

/**
 * Takes the arguments of a command apart.
 * `--despite ID --because "..."` come in pairs, as often as needed, where `texts` names both.
 * @throws Failure for what the command does not know, what is missing, and what comes twice
 */
export function argumentsOf(command: string, args: readonly string[], allowed: Allowed): Given {
  const texts = allowed.texts ?? []
  const flags = ['help', ...(allowed.flags ?? [])]
  const { tokens } = parseArgs({
    // A number below zero is a word, no option: "temperature -5".
    args: args.map(a => (/^-\d/.test(a) ? `${BELOW}${a}` : a)),
    options: {
      ...Object.fromEntries(
        texts.map(t => [t, { type: 'string' as const, ...(t === 'out' ? { short: 'o' } : {}) }])
      ),
      ...Object.fromEntries(
        flags.map(f => [f, { type: 'boolean' as const, ...(f === 'help' ? { short: 'h' } : {}) }])
      )
    },
    strict: false,
    allowPositionals: true,
    tokens: true
  })
  const words: string[] = []
  const got = new Set<string>()
  const values = new Map<string, string>()
  const despite: Despite[] = []
  let open: string | null = null
  for (const token of tokens) {
    if (token.kind === 'positional') words.push(plain(token.value))
    if (token.kind !== 'option') continue
    const { name, rawName } = token
    const value = token.value === undefined ? undefined : plain(token.value)
    const known = [...texts, ...flags]
    if (!known.includes(name)) {
      const near = nearestWord(name, known)
      throw new Failure(
        `castwright ${command}: found ${rawName}; allowed: ${near === null ? list(known) : `--${near}, among others`}`
      )
    }
    if (flags.includes(name)) {
      if (value !== undefined)
        throw new Failure(`castwright ${command}: found ${rawName}=${value}; allowed: ${rawName} alone`)
      got.add(name)
      continue
    }
    if (value === undefined || value === '')
      throw new Failure(
        `castwright ${command}: found ${rawName} with nothing after it; allowed: ${rawName} and a value`
      )
    if (name === 'despite') {
      if (open !== null) throw alone(command, open)
      open = value
    } else if (name === 'because') {
      if (open === null)
        throw new Failure(
          `castwright ${command}: found --because without --despite before it; allowed: --despite ID --because "..."`
        )
      despite.push({ id: open, because: reason(command, value) })
      open = null
    } else {
      if (values.has(name)) throw new Failure(`castwright ${command}: found ${rawName} twice; allowed: once`)
      values.set(name, value)
    }
  }
  if (open !== null) throw alone(command, open)
  const [least, most, what] = allowed.words
  if (!got.has('help') && (words.length < least || words.length > most)) {
    const found = words.length === 0 ? 'nothing' : words.map(w => `"${w}"`).join(' ')
    throw new Failure(`castwright ${command}: found ${found}; allowed: ${what}`)
  }
  return { words, flags: got, texts: values, despite }
}

function plain(word: string): string {
  return word.startsWith(BELOW) ? word.slice(BELOW.length) : word
}

function alone(command: string, id: string): Failure {
  return new Failure(
    `castwright ${command}: found --despite ${id} without a reason; allowed: --despite ${id} --because "why it is right to go on"`
  )
}

function reason(command: string, text: string): string {
  const plain = text.replace(/\s+/g, ' ').trim()
  if (plain.length < 3 || plain.length > MOST_REASON)
    throw new Failure(
      `castwright ${command}: found a reason of ${plain.length} characters; allowed: 3 to ${MOST_REASON}`
    )
  return plain
}

function list(names: readonly string[]): string {
  return names.map(n => `--${n}`).join(', ')
}
