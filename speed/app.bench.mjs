// The app in a browser against the real server: first paint, edit to findings, script while dragging; and the
// memory of the server. Chromium is slower without a graphics card than a maker's laptop: limits hold all the same.
import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const root = join(import.meta.dirname, '..')
const browserPath = process.env.CASTWRIGHT_BROWSER ?? '/usr/bin/chromium'
const FLAGS = JSON.parse(readFileSync(join(import.meta.dirname, '../scripts/browser-flags.json'), 'utf8'))

// A server of its own in a folder of its own; it ends with the measurement.
async function withServer(work) {
  const data = mkdtempSync(join(tmpdir(), 'castwright-speed-'))
  const args = [join(root, 'packages/cli/bin/castwright.mjs'), 'serve', '--port', '0', '--data', data]
  const server = spawn(process.execPath, args, { stdio: ['ignore', 'ignore', 'pipe'] })
  try {
    const url = await new Promise((done, fail) => {
      let text = ''
      server.stderr.on('data', part => {
        text += part
        const found = /http:\/\/127\.0\.0\.1:\d+/.exec(text)
        if (found) done(found[0])
      })
      server.on('exit', () => fail(new Error(text)))
    })
    return await work(url, server.pid)
  } finally {
    await new Promise(done => {
      server.removeAllListeners('exit')
      server.on('exit', done)
      server.kill('SIGTERM')
    })
    rmSync(data, { recursive: true, force: true })
  }
}

function withPage(work) {
  return withServer(async url => {
    const { chromium } = await import('playwright-core')
    const browser = await chromium.launch({ executablePath: browserPath, args: FLAGS })
    try {
      return await work(await browser.newPage({ viewport: { width: 1440, height: 900 } }), url)
    } finally {
      await browser.close()
    }
  })
}

const firstPaint = () =>
  withPage(async (page, url) => {
    await page.goto(url)
    await page.getByRole('button', { name: 'Panel', exact: true }).waitFor()
    const ms = await page.evaluate(() => performance.getEntriesByName('first-contentful-paint')[0].startTime)
    return { ms, note: 'empty cache' }
  })

const firstPlan = () =>
  withPage(async (page, url) => {
    const from = performance.now()
    await page.goto(`${url}/piece/saltmarshpanel`)
    await page.locator('#verdict').waitFor()
    return { ms: performance.now() - from, note: 'empty cache, until the verdict of a first pass' }
  })

// From the key that ends the edit until findings of the edited piece are on the screen.
const editToFindings = id =>
  withPage(async (page, url) => {
    await page.goto(`${url}/piece/${id}`)
    await page.locator('#verdict').waitFor()
    const field = page.getByLabel(/^The whole piece, outline: width$/)
    await field.waitFor()
    const times = []
    for (let k = 0; k < 12; k++) {
      await page.waitForTimeout(900)
      await field.fill(String(Number(await field.inputValue()) + (k % 2 === 0 ? -2 : 2)))
      times.push(
        await page.evaluate(
          () =>
            new Promise(done => {
              const input = document.activeElement
              const from = performance.now()
              const seen = new MutationObserver(() => {
                if (document.querySelector('.sheet.old')) return
                seen.disconnect()
                requestAnimationFrame(() => done(performance.now() - from))
              })
              input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }))
              requestAnimationFrame(() =>
                seen.observe(document.querySelector('.sheet'), {
                  attributes: true,
                  attributeFilter: ['class']
                })
              )
            })
        )
      )
    }
    const warm = times.slice(4).sort((a, b) => a - b)
    return { ms: warm[Math.floor(warm.length / 2)], note: `median of ${warm.length} edits, warm` }
  })

// Script time per frame while a timber is dragged, by the browser's own count.
const dragFrame = () =>
  withPage(async (page, url) => {
    await page.goto(`${url}/piece/herontable`)
    await page.locator('#verdict').waitFor()
    await page.waitForTimeout(2500)
    const part = page.locator('.plane.wide .part').first()
    const box = await part.boundingBox()
    const cdp = await page.context().newCDPSession(page)
    await cdp.send('Performance.enable')
    const script = async () =>
      (await cdp.send('Performance.getMetrics')).metrics.find(m => m.name === 'ScriptDuration').value
    const [x, y] = [box.x + box.width / 3, box.y + box.height / 2]
    await page.mouse.move(x, y)
    await page.mouse.down()
    const frames = 60
    const before = await script()
    for (let k = 1; k <= frames; k++) {
      await page.mouse.move(x + k, y + (k % 7))
      await page.evaluate(() => new Promise(done => requestAnimationFrame(done)))
    }
    const after = await script()
    await page.mouse.up()
    return { ms: ((after - before) * 1000) / frames, note: `mean of ${frames} frames` }
  })

const serverMemory = () =>
  withServer(async (url, pid) => {
    await fetch(`${url}/api/pieces`)
    await new Promise(done => setTimeout(done, 1500))
    const kb = Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))[1])
    return { ms: kb / 1024, note: 'MB, not ms: resident after the start' }
  })

export const variants = [
  {
    name: 'paint',
    about: 'app: first contentful paint of the pieces, cold',
    bar: 'under 1000',
    run: firstPaint
  },
  { name: 'plan', about: 'app: a piece opened cold until its verdict', run: firstPlan },
  ...['saltmarshpanel', 'herontable', 'meadowboards'].map(id => ({
    name: `edit ${id}`,
    about: `app: an edit of ${id} until its findings`,
    bar: 'under 100',
    run: () => editToFindings(id)
  })),
  { name: 'drag', about: 'app: script a frame while a timber is dragged', bar: 'at most 8', run: dragFrame },
  { name: 'memory', about: 'server: resident memory', bar: 'under 120 MB', run: serverMemory }
]
