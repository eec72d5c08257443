import { expect, test } from 'vitest'
import { browser, soon } from './browser.ts'
import { drawing, example, openDesk } from './desk.ts'

/** A name of this machine that is not loopback: what a phone would ask under. */
const NAME = 'desk.test'
const open = browser([`--host-resolver-rules=MAP ${NAME} 127.0.0.1`])
/** What a device that is not paired is answered, and that plain http under such a name is trusted less. */
const REFUSED = /status of (401|403|429)/

/** All that an unpaired device might ask for. */
const PATHS = [
  '/api/pieces',
  '/api/pieces/panel123',
  '/api/pieces/panel123/revisions',
  '/api/pieces/panel123/revisions/1',
  '/api/pieces/panel123/photos',
  '/api/pieces/panel123/readings',
  '/api/shop',
  '/api/devices',
  '/api/events',
  '/api/health',
  '/health'
]

test('a device is paired by words, sees the pieces, and is shut out at once', async () => {
  const desk = await openDesk({ names: [NAME] })
  await desk.lay('panel123', example('saltmarsh-panel'))
  await desk.lay('heron123', example('heron-table'), { 'heron-table.svg': drawing('heron-table.svg') })
  const phoneUrl = `http://${NAME}:${desk.port}`
  const { page: phone } = await open(`${phoneUrl}/piece/panel123`, { meant: REFUSED })
  const refused = () =>
    phone.evaluate(
      paths =>
        Promise.all(paths.map(p => fetch(p, { headers: { 'x-castwright': '1' } }).then(r => r.status))),
      PATHS
    )
  const pairing = phone.getByRole('heading', { name: 'This device is not paired' })

  // Not paired: the pairing page and nothing else.
  await pairing.waitFor()
  expect(await refused()).toEqual(PATHS.map(() => 401))
  expect(await phone.locator('body').textContent()).not.toMatch(/Saltmarsh|Heron/)
  expect(await phone.getByRole('link', { name: /Pieces|Shop|Devices|Sheet/ }).count()).toBe(0)
  const put = await phone.evaluate(() =>
    fetch('/api/pieces/stolen12', {
      method: 'PUT',
      headers: { 'x-castwright': '1', 'content-type': 'application/json' },
      body: JSON.stringify({ base: 0, edit: 'edit-1234', document: { castwright: 1, name: 'Mine' } })
    }).then(r => r.status)
  )
  expect(put).toBe(401)

  // The desk itself, on loopback, opens a pairing.
  const { page: at } = await open(`${desk.url}/devices`)
  await at.getByRole('button', { name: 'Pair a device' }).click()
  const words = (await at.locator('.three-words').textContent())!
  expect(words.split(' ')).toHaveLength(3)
  expect(
    await at.getByRole('img', { name: /code/i }).evaluate(i => (i as HTMLImageElement).naturalWidth)
  ).toBeGreaterThan(0)

  const type = async (text: string) => {
    await phone.getByRole('textbox', { name: 'Pairing words' }).fill(text)
    await phone.getByRole('button', { name: 'Pair this device' }).click()
  }
  await type('three wrong words')
  await soon(() => phone.getByRole('alert').textContent()).toMatch(/not the words/)
  expect(await refused()).toEqual(PATHS.map(() => 401))
  await type(` ${words.toUpperCase()} `)
  await phone.locator('.shelf-card', { hasText: 'Heron' }).waitFor()
  await phone.locator('.shelf-card', { hasText: 'Saltmarsh' }).click()
  await phone.locator('.layer').first().waitFor()
  expect(await phone.evaluate(() => document.cookie), 'no script reads the session').toBe('')
  // Devices are let in at the desk, not from another device.
  expect(
    await phone.evaluate(() =>
      fetch('/api/pairing', { method: 'POST', headers: { 'x-castwright': '1' } }).then(r => r.status)
    )
  ).toBe(403)

  // What the desk changes comes to the phone.
  await at.goto(`${desk.url}/piece/panel123`)
  await at.getByRole('button', { name: 'Reed green' }).click()
  const depth = at.locator('.layer.open .fields').getByRole('textbox', { name: /: depth$/ })
  await depth.fill('12')
  await depth.press('Enter')
  await soon(() => phone.locator('.layer .facts dd').allTextContents()).toContain('12.0mm')

  // Revoked at the desk: the phone stands before the pairing page without touching it.
  await at.goto(`${desk.url}/devices`)
  await at.getByRole('button', { name: /^Revoke/ }).click()
  await pairing.waitFor()
  expect(await refused()).toEqual(PATHS.map(() => 401))
  await phone.reload()
  await pairing.waitFor()
  // The words were good once.
  await type(words)
  await soon(() => phone.getByRole('alert').textContent()).toMatch(/no pairing is open/)
  await soon(() => at.getByRole('button', { name: /^Revoke/ }).count()).toBe(0)
})
