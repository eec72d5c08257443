import { existsSync, realpathSync } from 'node:fs'
import { basename, dirname, isAbsolute, join, relative, resolve } from 'node:path'
import type { PlanInput, Problem, Shop } from '@castwright/engine'
import { fileNamesOf, InputProblem, readPiece, readReadings, readShop, usualShop } from '@castwright/engine'
import { Failure } from './failure.ts'
import { MOST_DOCUMENT_BYTES, MOST_READINGS_BYTES, MOST_SVG_BYTES, readLog, readText } from './text-file.ts'

/** Where a command finds its documents. */
export interface Sources {
  readonly piece: string
  readonly shop?: string | undefined
  readonly readings?: string | undefined
}

/** A piece with all that is read for it, and what is worth saying of that. */
export interface Loaded {
  readonly input: PlanInput
  readonly says: readonly string[]
}

/**
 * Reads a piece, its shop, its readings and the drawings it names.
 * The shop is the one asked for, else `shop.json` beside the piece, else the built-in one; readings are those
 * asked for, else `NAME.readings.jsonl` beside `NAME.piece.json`.
 * @throws Failure, InputProblem
 */
export function load(sources: Sources): Loaded {
  const says: string[] = []
  const piece = readPiece(readText(sources.piece, MOST_DOCUMENT_BYTES), sources.piece)
  const folder = dirname(sources.piece)
  const shop = shopOf(sources.shop, folder)
  const readings = readingsOf(sources, says)
  const files = drawings(fileNamesOf(piece.value), folder, sources.piece)
  return { input: { piece, shop, readings, files, source: sources.piece }, says }
}

function shopOf(asked: string | undefined, folder: string): Shop {
  const beside = join(folder, 'shop.json')
  const path = asked ?? (existsSync(beside) ? beside : undefined)
  return path === undefined ? usualShop() : readShop(readText(path, MOST_DOCUMENT_BYTES), path).value
}

function readingsOf(sources: Sources, says: string[]) {
  const beside = sources.piece.replace(/(\.piece)?\.json$/, '.readings.jsonl')
  const path = sources.readings ?? (beside !== sources.piece && existsSync(beside) ? beside : undefined)
  if (path === undefined) return []
  const { readings, unread } = readReadings(readLog(path, MOST_READINGS_BYTES), path)
  for (const u of unread) says.push(`${path} line ${u.line}: ${u.why}`)
  return readings
}

/** The texts of the drawings a piece names: files of its own folder, and of nowhere else. */
function drawings(
  names: readonly { name: string; at: string }[],
  folder: string,
  source: string
): Record<string, string> {
  const out: Record<string, string> = {}
  const problems: Problem[] = []
  for (const { name, at } of names) {
    if (Object.hasOwn(out, name)) continue
    try {
      out[name] = readText(inFolder(folder, name), MOST_SVG_BYTES)
    } catch (e) {
      if (!(e instanceof Failure)) throw e
      const found = /found (.*?); allowed: (.*)$/s.exec(e.message)
      problems.push({
        path: at,
        found: `"${name}": ${found?.[1] ?? e.message}`,
        allowed: found?.[2] ?? 'an SVG file beside the piece file',
        example: '"slabs.svg"'
      })
    }
  }
  if (problems.length > 0) throw new InputProblem(source, problems)
  return out
}

function inFolder(folder: string, name: string): string {
  const path = resolve(folder, name)
  const leaves = (from: string, to: string) => {
    const way = relative(from, to)
    return way === '' || way.startsWith('..') || isAbsolute(way)
  }
  const real = existsSync(path) ? realpathSync(path) : path
  const home = realpathSync(folder === '' ? '.' : folder)
  if (
    isAbsolute(name) ||
    leaves(resolve(folder), path) ||
    leaves(home, existsSync(path) ? real : join(home, name))
  )
    throw new Failure(
      `${basename(name)}: found a place outside the folder of the piece; allowed: a file beside the piece file`
    )
  return path
}
