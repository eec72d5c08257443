import { pieceSchema, readingSchema, schemaPage, shopSchema } from '@castwright/engine'
import { argumentsOf } from '../arguments.ts'
import { Failure } from '../failure.ts'
import type { Command } from './command.ts'

const SCHEMAS = { piece: pieceSchema, shop: shopSchema, reading: readingSchema } as const

/** `castwright schema`: the JSON Schema of a document, for editors. */
export const schemaCommand: Command = {
  name: 'schema',
  about: 'the JSON Schema of a document (piece, shop, reading): every key, its unit, what is allowed',
  help: `castwright schema piece|shop|reading

The JSON Schema (2020-12) of a document. An editor that knows it completes and checks as you type.
`,
  run: args => {
    const given = argumentsOf('schema', args, { words: [1, 1, 'one of piece, shop, reading'] })
    if (given.flags.has('help')) return { out: schemaCommand.help, code: 0 }
    const word = given.words[0]!
    if (!Object.hasOwn(SCHEMAS, word))
      throw new Failure(`castwright schema: found "${word}"; allowed: piece, shop, reading`)
    return { out: `${JSON.stringify(schemaPage(SCHEMAS[word as keyof typeof SCHEMAS]), null, 2)}\n`, code: 0 }
  }
}
