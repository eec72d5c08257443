import { writeFileSync } from 'node:fs'
import { KINDS, nearestWord, newPiece } from '@castwright/engine'
import { argumentsOf } from '../arguments.ts'
import { diskWords, Failure } from '../failure.ts'
import type { Command } from './command.ts'

/** `castwright new`: a piece file to start from. */
export const newCommand: Command = {
  name: 'new',
  about: `start a piece from a kind: ${KINDS.map(k => k.kind).join(', ')}`,
  help: `castwright new [KIND] [-o FILE]

A piece file to change: it plans as it stands. Without -o it goes to standard output. A file that is there
already is never overwritten.

${KINDS.map(k => `  ${k.kind.padEnd(10)}${k.about}`).join('\n')}

  -o FILE           writes it there, for example side-table.piece.json
`,
  run: args => {
    const given = argumentsOf('new', args, { texts: ['out'], words: [0, 1, 'one kind'] })
    if (given.flags.has('help')) return { out: newCommand.help, code: 0 }
    const word = given.words[0] ?? 'panel'
    const names = KINDS.map(k => k.kind)
    const kind = names.find(n => n === word)
    if (kind === undefined) {
      const near = nearestWord(word, names)
      throw new Failure(
        `castwright new: found the kind "${word}"; allowed: ${names.join(', ')}${near === null ? '' : `; the nearest is "${near}"`}`
      )
    }
    const text = `${pretty(newPiece(kind))}\n`
    const path = given.texts.get('out')
    if (path === undefined) return { out: text, code: 0 }
    try {
      writeFileSync(path, text, { flag: 'wx' })
    } catch (e) {
      throw new Failure(
        `${path}: found ${diskWords(e)}; allowed: a new file in a folder that can be written to`
      )
    }
    return { out: `written: ${path}\nnow:     castwright check ${path}\n`, code: 0 }
  }
}

/** JSON as a person would lay it out: short lists and objects stay on one line. */
function pretty(value: unknown, indent = ''): string {
  const flat = JSON.stringify(value, null, 1).replace(/\n\s*/g, ' ')
  if (value === null || typeof value !== 'object' || (flat.length + indent.length <= 96 && indent !== ''))
    return flat
  const deeper = `${indent}  `
  if (Array.isArray(value)) return `[\n${value.map(v => deeper + pretty(v, deeper)).join(',\n')}\n${indent}]`
  return `{\n${Object.entries(value)
    .map(([k, v]) => `${deeper}${JSON.stringify(k)}: ${pretty(v, deeper)}`)
    .join(',\n')}\n${indent}}`
}
