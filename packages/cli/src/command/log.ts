import {
  READING_FORMS,
  readingFromWords,
  readReadings,
  stateFrom,
  stepKeys,
  workOf
} from '@castwright/engine'
import type { Given } from '../arguments.ts'
import { argumentsOf } from '../arguments.ts'
import { Failure } from '../failure.ts'
import { load } from '../load.ts'
import { momentOf } from '../moment.ts'
import type { Photo } from '../photo-folder.ts'
import { keepPhoto, photoAt, photoFolder } from '../photo-folder.ts'
import { newId } from '../reading-id.ts'
import { exchanged } from '../readings-exchange.ts'
import { appendReadings, readingsIn, readingsPath } from '../readings-file.ts'
import { stateReport } from '../state-report.ts'
import type { Command, Ended } from './command.ts'

const FORMS = READING_FORMS.map(f => `  ${f.form}`).join('\n')

/** `castwright log`: adds a reading, and says where the build stands. */
export const logCommand: Command = {
  name: 'log',
  about: 'write down what was read, begun or done at the bench; where the build stands',
  help: `castwright log PIECE [KIND ...] [--at now|HH:MM|MOMENT] [--note "..."] [--lot LOT] [--json] [--shop FILE] [--readings FILE]

Adds one reading to NAME.readings.jsonl beside NAME.piece.json, then says where the build stands: what is done, what
stands, what is otherwise than planned, what is left. Without a kind it only says that. Every later command goes by
what was read. Nothing is ever taken out: a slip is taken back by "withdrawn last".

  castwright log table.piece.json height green 11.2 mm
  castwright log table.piece.json gelled green --at 14:30
  castwright log table.piece.json done pour green 25 min
  castwright log table.piece.json photo first-pour.jpg --note "the first bubbles"
  castwright log table.piece.json trouble leak green --note "front left corner"

Kinds, and what follows each; a bare number is mm, g, °C, min, ml or %:
${FORMS}

The picture of a photo (JPEG, PNG or WebP, at most 12 MB) is copied to NAME.photos beside the readings; the record as
made shows it.

"strings", "tacky", "gelled" and "hard" may stand for the stage.

  --at MOMENT       when it was taken: now (usual), HH:MM of today, or 2026-12-05T09:00+01:00
  --note "..."      a note
  --lot LOT         the lot it was mixed from, with "mixed"
  --json            the state as JSON
  --as-of MOMENT    what counts as now
  --shop FILE       your own facts; left out: shop.json beside the piece
  --readings FILE   another readings file
  --server URL      exchange readings and photos with a running Castwright: what each lacks it gets
  --id ID           the piece on that server; left out: the one of the same name
`,
  run: args => {
    const given = argumentsOf('log', args, ALLOWED)
    if (given.flags.has('help')) return { out: logCommand.help, code: 0 }
    const path = given.words[0]!
    const file = readingsPath(path, given.texts.get('readings'))
    const asOf = momentOf(given.texts.get('as-of'))
    if (given.words.length === 1) return stateOfBuild(given, path, file, asOf, '')
    const { input } = load({ piece: path, shop: given.texts.get('shop'), readings: there(file) })
    const before = workOf({ ...input, effort: 'preview' })
    const { entries } = before
    const ids = (list: readonly { readonly id: string }[]) => list.map(e => e.id)
    const said = readingFromWords(given.words.slice(1), {
      pours: ids(entries.pours),
      timbers: ids(entries.timbers),
      cuts: ids(entries.cuts),
      steps: stepKeys(before.steps),
      readings: (input.readings ?? []).map(r => r.id)
    })
    const photo = said['kind'] === 'photo' ? photoTyped(given.words.slice(2), String(said['photo'])) : null
    const typed = photo === null ? said : { ...said, photo: photo.name }
    const note = given.texts.get('note')
    const lot = given.texts.get('lot')
    if (lot !== undefined && typed['kind'] !== 'mixed')
      throw new Failure(
        `--lot: found with "${String(typed['kind'])}"; allowed: with "mixed". Nothing was logged`
      )
    const at = takenAt(given.texts.get('at'), asOf)
    if (Date.parse(at) > Date.parse(asOf))
      throw new Failure(
        `--at: found ${at}, which is yet to come; allowed: a moment up to now, ${asOf}. Nothing was logged`
      )
    const record = {
      ...typed,
      ...(note === undefined ? {} : { note }),
      ...(lot === undefined ? {} : { lot }),
      id: newId(at),
      at
    }
    // What is written must read back.
    readReadings(`${JSON.stringify(record)}\n`, 'castwright log')
    const takeAway = photo === null ? () => {} : keepPhoto(photoFolder(file), photo)
    let cut: string | null
    try {
      cut = appendReadings(file, [record])
    } catch (e) {
      takeAway()
      throw e
    }
    const says = [
      ...(cut === null ? [] : [`${file}: its last record was cut off and is left out: ${cut.slice(0, 120)}`]),
      ...clockBack(input.readings ?? [], at, given.texts.has('at')),
      `logged in ${file} as ${record.id}`
    ]
    return stateOfBuild(given, path, file, asOf, says.map(s => `${s}\n`).join(''))
  }
}

const ALLOWED = {
  flags: ['json'],
  texts: ['at', 'note', 'lot', 'shop', 'readings', 'as-of', 'server', 'id'],
  words: [1, 40, 'one piece file, then what was read, for example: height green 11.2 mm'] as const
}

/** `castwright log --server`: what the file and the server each lack goes over. */
export async function exchangeLog(args: readonly string[]): Promise<Ended> {
  const given = argumentsOf('log', args, { ...ALLOWED, words: [1, 1, 'one piece file'] })
  const path = given.words[0]!
  const file = readingsPath(path, given.texts.get('readings'))
  const { input } = load({ piece: path, shop: given.texts.get('shop'), readings: there(file) })
  const says = await exchanged({
    url: given.texts.get('server')!,
    id: given.texts.get('id'),
    name: input.piece.value.name,
    file,
    own: readingsIn(file).readings
  })
  return stateOfBuild(given, path, file, momentOf(given.texts.get('as-of')), says.map(s => `${s}\n`).join(''))
}

// A name as it was typed, or as words when the shell took it apart.
function photoTyped(words: readonly string[], joined: string): Photo {
  try {
    return photoAt(words.length === 1 ? words[0]! : joined)
  } catch (e) {
    if (e instanceof Failure) throw new Failure(`${e.message}. Nothing was logged`)
    throw e
  }
}

function stateOfBuild(given: Given, path: string, file: string, asOf: string, err: string): Ended {
  const { input, says } = load({ piece: path, shop: given.texts.get('shop'), readings: there(file) })
  const quick = { ...input, effort: 'preview' as const }
  const built = workOf(quick)
  const state = stateFrom(workOf({ ...quick, readings: [] }), built, asOf)
  return {
    out: given.flags.has('json')
      ? `${JSON.stringify(state, null, 2)}\n`
      : stateReport(input.piece.value.name, state),
    err: says.map(s => `${s}\n`).join('') + err,
    code: 0
  }
}

function there(file: string): string | undefined {
  return readingsIn(file).readings.length + readingsIn(file).unread.length > 0 ? file : undefined
}

/** The moment a reading was taken: now, HH:MM of the day that is now, or a moment. */
function takenAt(asked: string | undefined, asOf: string): string {
  if (asked === undefined || asked === 'now') return asOf
  if (/^([01]?\d|2[0-3]):[0-5]\d$/.test(asked))
    return `${asOf.slice(0, 10)}T${asked.padStart(5, '0')}${/(Z|[+-]\d\d:\d\d)$/.exec(asOf)![0]}`
  try {
    return momentOf(asked)
  } catch {
    throw new Failure(
      `--at: found "${asked}"; allowed: now, HH:MM of today, or a moment with its offset, for example 2026-12-05T09:00+01:00`
    )
  }
}

/** Sorted by their ids, readings of one log stand in the order of their moments. */
function clockBack(readings: readonly { readonly at: string }[], at: string, asked: boolean): string[] {
  const last = readings.at(-1)
  if (asked || last === undefined || Date.parse(at) >= Date.parse(last.at)) return []
  return [
    `this clock reads ${at}, and the last reading was taken ${last.at}: the clock has gone backwards, or was ahead then. The reading is kept; say --at when it was taken`
  ]
}
