import { InputProblem, nearestWord } from '@castwright/engine'
import { castCommand } from './command/cast.ts'
import { checkCommand } from './command/check.ts'
import type { Command, Ended, PaperModule } from './command/command.ts'
import { cupCommand } from './command/cup.ts'
import { cutsCommand } from './command/cuts.ts'
import { daysCommand } from './command/days.ts'
import { listCommand } from './command/list.ts'
import { exchangeLog, logCommand } from './command/log.ts'
import { newCommand } from './command/new.ts'
import { planCommand } from './command/plan.ts'
import { proveCommand } from './command/prove.ts'
import { quoteCommand } from './command/quote.ts'
import { rescueCommand } from './command/rescue.ts'
import { schemaCommand } from './command/schema.ts'
import type { ServerModule } from './command/serve.ts'
import { serveApp, serveCommand } from './command/serve.ts'
import { Failure } from './failure.ts'
import { plain } from './paint.ts'
import { put } from './put.ts'
import { VERSION } from './version.ts'

const COMMANDS: readonly Command[] = [
  newCommand,
  checkCommand,
  planCommand,
  castCommand,
  cutsCommand,
  proveCommand,
  daysCommand,
  logCommand,
  rescueCommand,
  quoteCommand,
  cupCommand,
  listCommand,
  schemaCommand,
  serveCommand
]

/** Most lines of what is wrong with a document that are printed at once. */
const MOST_PROBLEMS = 12

/**
 * The command line: results to standard output, messages to standard error. The server, and what writes PDF files,
 * are loaded only when they are asked for: `server` and `paper` bring them. @returns the exit code
 */
export async function main(
  args: readonly string[],
  server?: () => Promise<ServerModule>,
  paper?: () => Promise<PaperModule>
): Promise<number> {
  const ended = await endOf(args, server, paper)
  try {
    await put(process.stderr, ended.err ?? '')
    await put(process.stdout, ended.out)
  } catch (e) {
    if (!(e instanceof Failure)) throw e
    await put(process.stderr, `${e.message}\n`).catch(() => {})
    return 2
  }
  return ended.code
}

async function endOf(
  args: readonly string[],
  server?: () => Promise<ServerModule>,
  paper?: () => Promise<PaperModule>
): Promise<Ended> {
  const [word, ...rest] = args
  if (word === 'serve' && server !== undefined) return served(rest, server)
  if (word === 'log' && rest.some(a => /^--server(=|$)/.test(a))) return later(() => exchangeLog(rest))
  const prints = COMMANDS.some(c => c.name === word && c.prints)
  return answer(args, prints ? await paper?.() : undefined)
}

// What has to wait for an answer from elsewhere.
async function later(run: () => Promise<Ended>): Promise<Ended> {
  try {
    return await run()
  } catch (e) {
    return failed(e)
  }
}

async function served(args: readonly string[], server: () => Promise<ServerModule>): Promise<Ended> {
  return later(() => serveApp(args, server, line => process.stderr.write(`${line}\n`)))
}

/** What a command line answers, without writing it anywhere: every failure is a message and the code 2. */
export function answer(args: readonly string[], paper?: PaperModule): Ended {
  try {
    return dispatch(args, paper)
  } catch (e) {
    return failed(e)
  }
}

function failed(e: unknown): Ended {
  if (e instanceof InputProblem) return { out: '', err: problemText(e), code: 2 }
  if (e instanceof Failure) return { out: '', err: `${plain(e.message)}\n`, code: 2 }
  if (process.env['CASTWRIGHT_TRACE'] !== undefined) throw e
  const what = e instanceof Error ? e.message : String(e)
  return {
    out: '',
    err: `castwright met a mistake of its own: ${plain(what)}\nNothing was written. Please tell us, with the piece file.\n`,
    code: 2
  }
}

function dispatch(args: readonly string[], paper: PaperModule | undefined): Ended {
  const [word, ...rest] = args
  if (word === undefined || word === 'help' || word === '--help' || word === '-h') {
    const about = COMMANDS.find(c => c.name === rest[0])
    if (about === undefined && rest[0] !== undefined && !['help', 'version'].includes(rest[0]))
      throw unknown(rest[0])
    return { out: about?.help ?? help(), code: 0 }
  }
  if (word === 'version' || word === '--version' || word === '-v') return { out: `${VERSION}\n`, code: 0 }
  const command = COMMANDS.find(c => c.name === word)
  if (command !== undefined) return command.run(rest, paper)
  throw unknown(word)
}

function unknown(word: string): Failure {
  const names = COMMANDS.map(c => c.name)
  const near = nearestWord(word, names)
  return new Failure(
    `castwright: found "${word}"; allowed: ${names.join(', ')}, help, version${near === null ? '' : `; the nearest is ${near}`}`
  )
}

function help(): string {
  const rows = COMMANDS.map(c => `  ${c.name.padEnd(10)}${c.about}`)
  return `castwright: will this piece of timber and cast resin work, what do I do and when, what do I buy

${rows.join('\n')}
  help      this page; "castwright help COMMAND" for one of them
  version   of this build

Ends with 0 when no stop stands, 1 when one does, 2 when the input cannot be used.
`
}

function problemText(e: InputProblem): string {
  const lines = e.message.split('\n').map(plain)
  const more = lines.length - MOST_PROBLEMS
  return `${[...lines.slice(0, MOST_PROBLEMS), ...(more > 0 ? [`and ${more} more`] : [])].join('\n')}\n`
}
