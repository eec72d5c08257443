import { readdirSync } from 'node:fs'
import { createRequire } from 'node:module'
import { homedir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import { InputProblem, readReadings } from '@castwright/engine'
import type { Example, Serving } from '@castwright/server'
import { argumentsOf } from '../arguments.ts'
import { Failure } from '../failure.ts'
import { load } from '../load.ts'
import { pageAssets } from '../page-assets.ts'
import { plain } from '../paint.ts'
import { VERSION } from '../version.ts'
import type { Command, Ended } from './command.ts'

export type ServerModule = typeof import('@castwright/server')

/** The port asked for when none is said; when it is in use, the next free one of ten. */
const PORT = 8417
const TRIES = 10

/** `castwright serve`: the app on this machine and, paired, the phone at the bench. */
export const serveCommand: Command = {
  name: 'serve',
  about: 'the app on this machine (and, paired, the phone at the bench)',
  help: `castwright serve [--port N] [--data DIR] [--lan] [--https] [--empty]

Opens the app on this machine and says its address. Pieces, with every revision, are kept in one folder. With
--lan it also serves the local network: to devices that were paired at this desk ("Devices" in the app), and to
nobody else. It runs until it is stopped (Ctrl-C).

  --port N          this port and no other; without it ${PORT}, or the next free one
  --data DIR        where pieces are kept; without it ${usualFolder('~')}
  --lan             serves paired devices of the local network too
  --https           by a certificate authority of your own, made on first use: install it on the phone once
                    ("Devices" shows how); then the app opens there without network too
  --empty           does not lay the examples among the pieces of a new folder
`,
  run: args => {
    const given = argumentsOf('serve', args, {
      flags: ['lan', 'https', 'empty'],
      texts: ['port', 'data'],
      words: [0, 0, 'no words']
    })
    if (given.flags.has('help')) return { out: serveCommand.help, code: 0 }
    throw new Failure('castwright serve: found no server beside the command; allowed: a whole installation')
  }
}

/** Starts the server and resolves when it was stopped. `say` is told the address. */
export async function serveApp(
  args: readonly string[],
  server: () => Promise<ServerModule>,
  say: (line: string) => void,
  stopped: (serving: Serving) => Promise<void> = untilSignal
): Promise<Ended> {
  const given = argumentsOf('serve', args, {
    flags: ['lan', 'https', 'empty'],
    texts: ['port', 'data'],
    words: [0, 0, 'no words']
  })
  if (given.flags.has('help')) return { out: serveCommand.help, code: 0 }
  const port = portOf(given.texts.get('port'))
  const dataDir = resolve(given.texts.get('data') ?? usualFolder(homedir()))
  const { serve, ServerProblem } = await server()
  let serving: Serving
  try {
    serving = await serve({
      dataDir,
      port: port ?? PORT,
      tries: port === null ? TRIES : 1,
      lan: given.flags.has('lan'),
      https: given.flags.has('https'),
      site: siteFolder(),
      examples: given.flags.has('empty') ? [] : examples(),
      version: VERSION,
      assets: () => pageAssets(),
      // The command holds the engine already: a second one beside it would be felt.
      engine: async () => ({ InputProblem, readReadings }),
      log: line => say(plain(line))
    })
  } catch (e) {
    if (e instanceof ServerProblem) throw new Failure(`castwright serve: ${e.message}`)
    throw e
  }
  say(`Castwright is at ${serving.url}`)
  for (const url of serving.urls.slice(1)) say(`                 ${url}   for devices paired under "Devices"`)
  say(`pieces are kept in ${dataDir}; Ctrl-C stops`)
  await stopped(serving)
  return { out: '', code: 0 }
}

function untilSignal(serving: Serving): Promise<void> {
  return new Promise(done => {
    let stopping = false
    const stop = () => {
      if (stopping) return
      stopping = true
      void serving.close().then(done)
    }
    process.on('SIGINT', stop)
    process.on('SIGTERM', stop)
  })
}

function portOf(text: string | undefined): number | null {
  if (text === undefined) return null
  const port = Number(text)
  if (!Number.isInteger(port) || port < 0 || port > 65_535)
    throw new Failure(`castwright serve: found --port ${text}; allowed: 1 to 65535, or 0 for any free one`)
  return port
}

function usualFolder(home: string): string {
  const base = home === '~' ? undefined : process.env['XDG_DATA_HOME']
  return join(base ?? join(home, '.local', 'share'), 'castwright')
}

// The app lies beside the command in its project; without it the server says so.
function siteFolder(): string | null {
  try {
    return join(
      dirname(createRequire(import.meta.url).resolve('@castwright/app/package.json')),
      'dist',
      'site'
    )
  } catch {
    return null
  }
}

const PIECE = '.piece.json'

// The examples of the project, those made to go wrong left out, with the drawings they name.
function examples(): Example[] {
  const site = siteFolder()
  if (site === null) return []
  const folder = join(site, '..', '..', '..', '..', 'examples')
  let names: string[] = []
  try {
    names = readdirSync(folder).filter(n => n.endsWith(PIECE) && !n.includes('.spoiled.'))
  } catch {
    return []
  }
  return names.sort().flatMap((name): Example[] => {
    try {
      const { input } = load({ piece: join(folder, name) })
      const id = name
        .slice(0, -PIECE.length)
        .replace(/[^a-z0-9]/g, '')
        .slice(0, 24)
      return [
        {
          id,
          document: input.piece.document as unknown as Record<string, unknown>,
          files: (input.files ?? {}) as Record<string, string>
        }
      ]
    } catch (e) {
      if (e instanceof Failure || e instanceof InputProblem) return []
      throw e
    }
  })
}
