import { X509Certificate } from 'node:crypto'
import { readFileSync, statSync } from 'node:fs'
import { request } from 'node:https'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { certificatesOf } from '../src/certificates.ts'
import type { Serving } from '../src/index.ts'
import type { Desk } from './desk.ts'
import { desk } from './desk.ts'

const NAME = 'desk.test'
let d: Desk
let serving: Serving
beforeAll(async () => {
  d = await desk({ https: true, names: [NAME] })
  serving = d.serving
})
afterAll(() => d.close())

/** Asks under a name that is not loopback, as a phone does; trusting only `ca`. */
function asked(
  ca: string,
  name: string,
  path = '/api/hello'
): Promise<{ status: number; body: Buffer; type: string }> {
  return new Promise((done, fail) => {
    const r = request(
      {
        host: name,
        port: serving.port,
        path,
        ca,
        servername: name,
        lookup: (_host, options, answer) =>
          typeof options === 'object' && options.all
            ? (answer as unknown as (e: null, a: { address: string; family: number }[]) => void)(null, [
                { address: '127.0.0.1', family: 4 }
              ])
            : answer(null, '127.0.0.1', 4)
      },
      got => {
        const parts: Buffer[] = []
        got.on('data', p => parts.push(p))
        got.on('end', () =>
          done({
            status: got.statusCode!,
            body: Buffer.concat(parts),
            type: String(got.headers['content-type'])
          })
        )
      }
    )
    r.on('error', fail)
    r.end()
  })
}
const authority = () => readFileSync(join(d.folder, 'keys', 'authority.crt.pem'), 'utf8')

test('over https under a name that is not loopback, by an authority of its own; unpaired it gets nothing', async () => {
  expect(serving.url).toMatch(/^https:/)
  const hello = await asked(authority(), NAME)
  expect(hello.status).toBe(200)
  expect(JSON.parse(hello.body.toString())).toMatchObject({ https: true, device: null })
  expect((await asked(authority(), NAME, '/api/pieces')).status).toBe(401)
})

test('another authority, and another name, are not trusted', async () => {
  const other = await certificatesOf(`${d.folder}-other`, [NAME], new Date())
  await expect(asked(other.authority, NAME)).rejects.toThrow(/certificate|self-signed|verify/i)
  await expect(asked(authority(), 'other.test')).rejects.toThrow(/altnames|Hostname|does not match/i)
})

test('the authority is handed out to be installed, and verifies the server by a second reader', async () => {
  const got = await asked(authority(), NAME, '/authority.crt')
  expect(got.type).toBe('application/x-x509-ca-cert')
  const ca = new X509Certificate(got.body)
  const server = new X509Certificate(readFileSync(join(d.folder, 'keys', 'server.crt.pem')))
  expect(ca.ca).toBe(true)
  expect(server.ca).toBe(false)
  expect(server.verify(ca.publicKey)).toBe(true)
  expect(server.checkHost(NAME)).toBe(NAME)
  expect(server.checkIP('127.0.0.1')).toBe('127.0.0.1')
  const days = (Date.parse(server.validTo) - Date.parse(server.validFrom)) / 86_400_000
  expect(days).toBeLessThanOrEqual(398)
})

test('keys are for their owner alone, kept from start to start, renewed before they end', async () => {
  const keys = join(d.folder, 'keys')
  for (const name of ['authority.key.pem', 'server.key.pem'])
    expect(statSync(join(keys, name)).mode & 0o077).toBe(0)
  const now = new Date()
  const folder = `${d.folder}-kept`
  const first = await certificatesOf(folder, [NAME], now)
  expect(await certificatesOf(folder, [NAME], now)).toEqual(first)
  const renamed = await certificatesOf(folder, [NAME, 'second.test'], now)
  expect(renamed.certificate).not.toBe(first.certificate)
  expect(renamed.authority).toBe(first.authority)
  const later = await certificatesOf(
    folder,
    [NAME, 'second.test'],
    new Date(now.getTime() + 370 * 86_400_000)
  )
  expect(later.certificate).not.toBe(renamed.certificate)
  expect(later.authority).toBe(first.authority)
})
