import { existsSync } from 'node:fs'
import type { Patch } from '@castwright/engine'
import { applyPatch, checkPiece } from '@castwright/engine'
import { Failure } from './failure.ts'
import { replaceFile } from './replace-file.ts'
import { MOST_DOCUMENT_BYTES, readText } from './text-file.ts'

/** One of several ways as `--take N` names it. @throws Failure when there is no such way, or no file to write to */
export function wayTaken<W>(command: string, ways: readonly W[], take: string, path: string | undefined): W {
  const way = /^[1-9][0-9]?$/.test(take) ? ways[Number(take) - 1] : undefined
  if (way === undefined)
    throw new Failure(
      `castwright ${command}: found --take ${take}; allowed: ${ways.length === 0 ? 'none: no way is open' : `1 to ${ways.length}`}`
    )
  if (path === undefined)
    throw new Failure(`castwright ${command}: found --take without a file; allowed: --take N -o FILE`)
  return way
}

/** Writes the piece with a patch laid on; a file that is there is kept as FILE.before. Gives what to say of it. */
export function writeTaken(document: object, patch: Patch, does: string, path: string): string {
  const after = applyPatch(document, patch)
  // What is written must read back.
  checkPiece(after, path)
  if (existsSync(path)) replaceFile(`${path}.before`, readText(path, MOST_DOCUMENT_BYTES))
  replaceFile(path, `${JSON.stringify(after, null, 2)}\n`)
  return `${does}: written to ${path}\nnow: castwright plan ${path} --out FOLDER\n`
}
