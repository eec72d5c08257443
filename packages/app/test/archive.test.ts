import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { browser, soon } from './browser.ts'
import type { Desk } from './desk.ts'
import { drawing, example, openDesk } from './desk.ts'

const open = browser()

/** All that a desk holds of its pieces and its shop, as it answers it. */
async function whole(desk: Desk): Promise<unknown> {
  const json = async (path: string) => (await desk.ask('GET', path)).json()
  const { pieces } = (await json('/api/pieces')) as { pieces: { id: string }[] }
  return {
    shop: await json('/api/shop'),
    pieces: await Promise.all(
      pieces.map(async ({ id }) => {
        const { revisions } = (await json(`/api/pieces/${id}/revisions`)) as {
          revisions: { revision: number }[]
        }
        return {
          piece: await json(`/api/pieces/${id}`),
          revisions,
          documents: await Promise.all(revisions.map(r => json(`/api/pieces/${id}/revisions/${r.revision}`)))
        }
      })
    )
  }
}

test('everything written to an archive and brought back to an empty folder is equal', async () => {
  const first = await openDesk()
  await first.lay('panel123', example('saltmarsh-panel'))
  await first.lay('heron123', example('heron-table'), { 'heron-table.svg': drawing('heron-table.svg') })
  await first.ask('PUT', '/api/shop', {
    base: 0,
    edit: 'shop-edit-1',
    document: { castwright: 1, name: 'Quay shed' }
  })
  const { page } = await open(`${first.url}/piece/panel123`)
  await page.getByRole('button', { name: 'Reed green', exact: true }).click()
  const depth = page.locator('.layer.open .fields').getByRole('textbox', { name: /: depth$/ })
  await depth.fill('12')
  await depth.press('Enter')
  await soon(() => first.revisions('panel123')).toBe(2)

  await page.getByRole('link', { name: 'Devices' }).click()
  const coming = page.waitForEvent('download')
  await page.getByRole('link', { name: 'Write the archive' }).click()
  const file = await (await coming).path()
  expect(readFileSync(file).subarray(0, 2).toString(), 'a zip file (APPNOTE 4.3.7)').toBe('PK')

  // Another folder, another browser: nothing of the first is there.
  const second = await openDesk()
  expect(await second.pieces()).toEqual([])
  const { page: there } = await open(`${second.url}/devices`)
  const bring = async () => {
    await there
      .locator('input[type=file]')
      .setInputFiles({ name: 'castwright.zip', mimeType: 'application/zip', buffer: readFileSync(file) })
    await soon(() => there.locator('main').textContent()).toMatch(/brought back: \d+ pieces?/)
  }
  await bring()
  const were = await whole(first)
  expect(await whole(second)).toEqual(were)
  // Brought back once more, nothing is doubled.
  await bring()
  expect(await whole(second)).toEqual(were)
  await there.goto(`${second.url}/piece/heron123`)
  await there.locator('.layer').first().waitFor()
})

test('a file that is no archive is refused with words and changes nothing', async () => {
  const desk = await openDesk()
  await desk.lay('panel123', example('saltmarsh-panel'))
  const were = await whole(desk)
  const { page } = await open(`${desk.url}/devices`, { meant: /status of 4\d\d/ })
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'holiday.zip', mimeType: 'application/zip', buffer: Buffer.from('not a zip') })
  await soon(() => page.getByRole('alert').textContent()).toMatch(/holiday\.zip: .*\w{4,}/)
  expect(await whole(desk)).toEqual(were)
})
