import type { ChildProcess } from 'node:child_process'
import { spawn, spawnSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, it } from 'vitest'
import { testFolder } from './folder.ts'

/** The command as a maker starts it: built, in a process of its own. */
const bin = fileURLToPath(new URL('../bin/castwright.mjs', import.meta.url))
const { at } = testFolder()
const children: ChildProcess[] = []
afterAll(() => {
  for (const c of children) if (c.exitCode === null) c.kill('SIGKILL')
})

interface Running {
  readonly child: ChildProcess
  readonly url: string
  readonly said: () => string
  readonly ended: Promise<number | null>
}

function started(...args: string[]): Promise<Running> {
  const child = spawn(process.execPath, [bin, 'serve', ...args], { stdio: ['ignore', 'ignore', 'pipe'] })
  children.push(child)
  let said = ''
  const ended = new Promise<number | null>(done => child.once('exit', done))
  return new Promise((done, fail) => {
    child.stderr!.on('data', part => {
      said += part
      const url = /Castwright is at (\S+)/.exec(said)?.[1]
      if (url !== undefined && said.includes('Ctrl-C stops')) done({ child, url, said: () => said, ended })
    })
    void ended.then(code => fail(new Error(`ended with ${code}: ${said}`)))
  })
}

const once = (...args: string[]) => spawnSync(process.execPath, [bin, 'serve', ...args], { encoding: 'utf8' })

describe('castwright serve', () => {
  it('says its address, holds the examples, and closes cleanly: all of it in one file', async () => {
    const folder = at('desk')
    const { child, url, said, ended } = await started('--port', '0', '--data', folder)
    expect(url).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/)
    expect(said()).toContain(`pieces are kept in ${folder}`)
    const { pieces } = (await (await fetch(`${url}/api/pieces`)).json()) as { pieces: { id: string }[] }
    expect(pieces.map(p => p.id).sort()).toEqual(['herontable', 'meadowboards', 'saltmarshpanel'])
    // An event stream that is open must not keep it from closing.
    const events = await fetch(`${url}/api/events`)
    child.kill('SIGTERM')
    expect(await ended).toBe(0)
    await events.body?.cancel().catch(() => undefined)
    expect(readdirSync(folder).sort()).toEqual(['castwright.db', 'lock.db'])
    expect(readFileSync(join(folder, 'castwright.db')).subarray(0, 15).toString()).toBe('SQLite format 3')
  })

  it('is told when another one has the folder; what a killed one left is taken over', async () => {
    const folder = at('held')
    const first = await started('--port', '0', '--data', folder, '--empty')
    const second = once('--port', '0', '--data', folder)
    expect([second.status, second.stdout]).toEqual([2, ''])
    expect(second.stderr).toContain(
      `found in use by process ${first.child.pid}; allowed: one server a folder`
    )
    const saved = await fetch(`${first.url}/api/pieces/keptpiece`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', 'x-castwright': '1' },
      body: JSON.stringify({ base: 0, edit: 'kept-edit', document: { castwright: 1, name: 'Kept' } })
    })
    expect(saved.status).toBe(200)
    first.child.kill('SIGKILL')
    await first.ended
    const third = await started('--port', '0', '--data', folder)
    const { pieces } = (await (await fetch(`${third.url}/api/pieces`)).json()) as { pieces: { id: string }[] }
    // No examples among them: the folder is not new.
    expect(pieces.map(p => p.id)).toEqual(['keptpiece'])
    third.child.kill('SIGINT')
    expect(await third.ended).toBe(0)
  })

  it('takes no other port than the one that was asked for', async () => {
    const other = createServer()
    const port = await new Promise<number>(done =>
      other.listen(0, '127.0.0.1', () => done((other.address() as { port: number }).port))
    )
    const { status, stderr } = once('--port', String(port), '--data', at('taken'))
    other.close()
    expect(status).toBe(2)
    expect(stderr).toBe(
      `castwright serve: port ${port}: found in use; allowed: a free one: give another --port\n`
    )
    expect(existsSync(at('taken', 'in-use'))).toBe(false)
  })

  it.each([
    ['--port', 'many'],
    ['--port', '70000'],
    ['--prot', '1'],
    ['words', '--lan']
  ])('%s %s is refused with words and the code 2', (...args) => {
    const { status, stderr } = once(...args)
    expect(status).toBe(2)
    expect(stderr).toMatch(/^castwright serve: found .*; allowed: .*\n$/)
  })

  // The kernel's own count (proc(5), VmRSS); the bar is the issue's: under 120 MB resident.
  it.runIf(existsSync('/proc/self/status'))('is small: under 120 MB resident when it idles', async () => {
    const { child, url, ended } = await started('--port', '0', '--data', at('small'))
    await (await fetch(`${url}/api/pieces`)).text()
    await (await fetch(`${url}/`)).text()
    const kb = Number(/VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'))![1])
    child.kill('SIGTERM')
    await ended
    expect(kb / 1000).toBeLessThan(120)
    expect(kb / 1000, 'a process that holds a server').toBeGreaterThan(30)
  })
})
