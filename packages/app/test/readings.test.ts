import { expect, test } from 'vitest'
import { browser, soon } from './browser.ts'
import { example, openDesk } from './desk.ts'

const open = browser()

const reading = (id: string, more: object) => ({
  id,
  timber: 'north bank',
  at: '2026-01-05T09:00+01:00',
  ...more
})

test('what is measured of a timber stands at its step: before it is opened, and as it comes', async () => {
  const desk = await openDesk()
  await desk.lay('measured1', example('saltmarsh-panel'))
  const post = async (record: object) => {
    const answer = await desk.ask('POST', '/api/pieces/measured1/readings', record)
    expect(await answer.text()).toContain('"again":false')
  }
  await post(reading('moisture-1', { kind: 'moisture', moisture: 8.9 }))

  const { page } = await open(`${desk.url}/piece/measured1`)
  const text = () => page.locator('body').textContent()
  await soon(text).toContain('measured 8.9 %')

  // One exponential from 16 % to 9 %, weighed weekly.
  const kg = (day: number) => 3 * (1 + (9 + 7 * Math.exp(-0.028 * day)) / 100)
  for (let i = 0; i < 7; i++)
    await post(
      reading(`weight-00${i}`, {
        kind: 'weight',
        mass: `${kg(7 * i).toFixed(3)} kg`,
        at: new Date(Date.UTC(2026, 1, 2 + 7 * i, 8)).toISOString().replace('.000Z', 'Z'),
        ...(i === 0 ? { moisture: 16 } : {})
      })
    )
  await soon(text).toMatch(/ready on about \d+ \w{3} 2026, between \d+ \w{3} 2026 and/)
})
