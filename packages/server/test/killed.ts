import type { ChildProcess } from 'node:child_process'
import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect } from 'vitest'
import { openFolder } from '../src/database.ts'

/** How many kills a test goes through. */
export const KILLS = Number(process.env['CASTWRIGHT_KILLS'] ?? 20)

const folders: string[] = []
afterAll(() => {
  for (const f of folders) rmSync(f, { recursive: true, force: true })
})

/** A folder of its own, removed when the tests of the file are over. */
export function ownFolder(): string {
  const made = mkdtempSync(join(tmpdir(), 'castwright-kill-'))
  folders.push(made)
  return made
}

/** mulberry32, seeded: the moments of the kills. */
export function randomFrom(seed: number): () => number {
  let a = seed
  return () => {
    a = (a + 0x6d2b79f5) | 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
}

function started(data: string): Promise<{ url: string; child: ChildProcess }> {
  const child = spawn(process.execPath, [join(import.meta.dirname, 'killed-server.mjs'), data], {
    stdio: ['ignore', 'pipe', 'inherit']
  })
  return new Promise((done, fail) => {
    child.stdout!.once('data', (line: Buffer) => done({ url: line.toString().trim(), child }))
    child.once('exit', code => fail(new Error(`the server ended with ${code} before it said its address`)))
  })
}

/** A write of the load; what ends it once the server is killed is not its fault. */
export type Write = (url: string) => Promise<void>

/**
 * Starts a server over a folder, writes to it until it is killed with SIGKILL, and opens what it left.
 *
 * @param writes each is repeated, side by side with the others, as long as the server lives
 * @param loaded resolves once the load has lasted long enough
 * @param says names the kill where something is wrong
 */
export async function killed(
  folder: string,
  writes: readonly Write[],
  loaded: (url: string) => Promise<void>,
  says: string
): Promise<ReturnType<typeof openFolder>> {
  const { url, child } = await started(folder)
  child.removeAllListeners('exit')
  let alive = true
  const ended = new Promise<void>(done => child.once('exit', () => done()))
  const writers = writes.map(async write => {
    while (alive)
      try {
        await write(url)
      } catch (e) {
        if (alive && !/fetch failed|terminated|ECONNRESET|closed/.test(String(e))) throw e
        return
      }
  })
  try {
    await Promise.race([loaded(url), Promise.all(writers)])
  } finally {
    child.kill('SIGKILL')
    alive = false
    await ended
  }
  await Promise.all(writers)
  const open = openFolder(folder, () => new Date())
  const check = open.db.prepare('PRAGMA integrity_check').get() as { integrity_check: string }
  expect(check.integrity_check, says).toBe('ok')
  return open
}

/** Sends JSON to a server, as the app does. */
export function send(url: string, method: string, path: string, body: object): Promise<Response> {
  return fetch(`${url}${path}`, {
    method,
    headers: { 'content-type': 'application/json', 'x-castwright': '1' },
    body: JSON.stringify(body)
  })
}

/** Some time, ms. */
export function pause(ms: number): Promise<void> {
  return new Promise(done => setTimeout(done, ms))
}
