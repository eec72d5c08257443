import type { Rescue, TroubleKind } from '@castwright/engine'
import { nearestWord, parseQuantity, RESCUE_KINDS, rescues } from '@castwright/engine'
import { argumentsOf } from '../arguments.ts'
import { Failure } from '../failure.ts'
import { load } from '../load.ts'
import { momentOf } from '../moment.ts'
import { rescueReport } from '../rescue-report.ts'
import { wayTaken, writeTaken } from '../take.ts'
import type { Command } from './command.ts'

const KINDS = RESCUE_KINDS.map(k => `  ${k.kind.padEnd(16)} ${k.about}\n`).join('')

/** `castwright rescue`: ways on after something went differently. */
export const rescueCommand: Command = {
  name: 'rescue',
  about: 'ways on after something went differently, each planned anew and ranked',
  help: `castwright rescue PIECE [--what TROUBLE] [--of NAME] [--by MM] [--answer KEY=VALUE ...] [--take N -o FILE] [--json]

What was read (castwright log) is held against the plan. For what is past it, or what you name, it asks what happened,
and gives the ways on: each is planned anew, with its days, its money, its risk and what it gives up. It never says
what the cause was. A way is taken into a piece file of your choice.

  --what TROUBLE    what went differently; left out: what the readings show
  --of NAME         the pour, cut or timber it is about
  --by MM           by how much
  --answer K=V      an answer to what is asked; as often as needed
  --take N          writes the piece changed by way N; with -o FILE
  -o FILE           where to; where it is there already, it is kept as FILE.before
  --json            as JSON
  --shop FILE       your own facts; left out: shop.json beside the piece
  --readings FILE   what was measured; left out: NAME.readings.jsonl beside NAME.piece.json
  --as-of MOMENT    what counts as now

Troubles:
${KINDS}`,
  run: args => {
    const { rest, answers } = answersOf(args)
    const given = argumentsOf('rescue', rest, {
      flags: ['json'],
      texts: ['what', 'of', 'by', 'take', 'out', 'shop', 'readings', 'as-of'],
      words: [1, 1, 'one piece file']
    })
    if (given.flags.has('help')) return { out: rescueCommand.help, code: 0 }
    const asOf = momentOf(given.texts.get('as-of'))
    const { input, says } = load({
      piece: given.words[0]!,
      shop: given.texts.get('shop'),
      readings: given.texts.get('readings')
    })
    const what = troubleOf(given.texts.get('what'))
    const by = mmOf(given.texts.get('by'))
    const of = given.texts.get('of')
    const found = rescues(input, {
      asOf,
      answers,
      ...(what === undefined ? {} : { what }),
      ...(of === undefined ? {} : { of }),
      ...(by === undefined ? {} : { byMm: by })
    })
    const err = says.map(s => `${s}\n`).join('')
    const take = given.texts.get('take')
    if (take !== undefined)
      return { out: taken(input.piece.document, found, take, given.texts.get('out')), err, code: 0 }
    const out = given.flags.has('json')
      ? `${JSON.stringify(found, null, 2)}\n`
      : rescueReport(input.piece.value.name, found, KINDS)
    return { out, err, code: 0 }
  }
}

// `--answer K=V` comes as often as needed.
function answersOf(args: readonly string[]): {
  readonly rest: readonly string[]
  readonly answers: Readonly<Record<string, string>>
} {
  const rest: string[] = []
  const answers: Record<string, string> = {}
  for (let i = 0; i < args.length; i++) {
    const arg = args[i]!
    const inline = /^--answer=(.*)$/s.exec(arg)
    if (arg !== '--answer' && inline === null) {
      rest.push(arg)
      continue
    }
    const text = inline?.[1] ?? args[++i] ?? ''
    const pair = /^([a-z]+)=(.+)$/s.exec(text)
    if (pair === null)
      throw new Failure(
        `castwright rescue: found --answer ${text}; allowed: --answer KEY=VALUE, for example --answer lost=no`
      )
    answers[pair[1]!] = pair[2]!
  }
  return { rest, answers }
}

function troubleOf(word: string | undefined): TroubleKind | undefined {
  if (word === undefined) return undefined
  const kinds = RESCUE_KINDS.map(k => k.kind)
  const found = kinds.find(k => k === word.replaceAll('-', ' '))
  if (found !== undefined) return found
  const near = nearestWord(word, kinds)
  throw new Failure(
    `castwright rescue: found --what "${word}"; allowed: ${kinds.join(', ')}${near === null ? '' : `; the nearest is "${near}"`}`
  )
}

function mmOf(text: string | undefined): number | undefined {
  if (text === undefined) return undefined
  const mm = /^[0-9]+(\.[0-9]+)?$/.test(text) ? Number(text) : parseQuantity(text, 'length')?.value
  if (mm === undefined || !(mm >= 0 && mm <= 1000))
    throw new Failure(
      `castwright rescue: found --by ${text}; allowed: a length from 0 to 1000 mm, such as 2 or "1/8 in"`
    )
  return mm
}

function taken(document: object, found: readonly Rescue[], take: string, path: string | undefined): string {
  const ways = found.flatMap(r => r.ways)
  if (found.length > 1)
    throw new Failure(
      `castwright rescue: found ${found.length} troubles; allowed with --take: one, chosen by --what and --of`
    )
  const way = wayTaken('rescue', ways, take, path)
  return writeTaken(document, way.patch, way.does, path!)
}
