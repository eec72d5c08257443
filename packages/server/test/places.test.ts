import { request } from 'node:http'
import { connect } from 'node:tls'
import { expect, test } from 'vitest'
import { desk } from './desk.ts'

test('a machine carried to another network goes by its new address, and by the old one no longer', async () => {
  let addresses = ['192.168.4.7']
  const d = await desk({ lan: true, addresses: () => addresses, lookMs: 20 })
  const met = (name: string) =>
    new Promise<number>((done, fail) => {
      const { port } = d.serving
      const r = request(
        { host: '127.0.0.1', port, path: '/api/hello', headers: { host: `${name}:${port}` } },
        a => {
          a.resume()
          a.on('end', () => done(a.statusCode!))
        }
      )
      r.on('error', fail)
      r.end()
    })
  expect([await met('192.168.4.7'), await met('10.1.2.3'), await met('127.0.0.1')]).toEqual([200, 421, 200])
  addresses = ['10.1.2.3']
  await expect
    .poll(async () => [await met('192.168.4.7'), await met('10.1.2.3'), await met('127.0.0.1')], {
      timeout: 10_000
    })
    .toEqual([421, 200, 200])
  const { url } = (await (await d.ask('POST', '/api/pairing')).json()) as { url: string }
  expect(url).toContain('http://10.1.2.3:')
  await d.close()
})

test('over https its certificate names the new address, without a new start', async () => {
  let addresses = ['192.168.4.7']
  const d = await desk({ lan: true, https: true, addresses: () => addresses, lookMs: 20 })
  const named = () =>
    new Promise<string>((done, fail) => {
      const line = connect({ port: d.serving.port, host: '127.0.0.1', rejectUnauthorized: false }, () => {
        done(line.getPeerCertificate().subjectaltname ?? '')
        line.destroy()
      })
      line.on('error', fail)
    })
  expect(await named()).toContain('192.168.4.7')
  addresses = ['10.1.2.3']
  await expect.poll(named, { timeout: 10_000 }).toContain('10.1.2.3')
  // And it stays: no look that began earlier brings the old one back.
  for (let n = 0; n < 20; n++) {
    const names = await named()
    expect(names).toContain('10.1.2.3')
    expect(names).not.toContain('192.168.4.7')
    await new Promise(done => setTimeout(done, 10))
  }
  await d.close()
})
