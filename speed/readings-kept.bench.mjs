// Readings kept by the server, each acknowledged once it is durable: one at a time, and in batches.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const engine = await import('../packages/engine/dist/src/index.js')
const { serve } = await import('../packages/server/dist/src/index.js')
const file = new URL('../examples/saltmarsh-panel.piece.json', import.meta.url)
const COUNT = 500

async function kept(batch, together = 1) {
  const dataDir = mkdtempSync(join(tmpdir(), 'castwright-speed-'))
  const { InputProblem, readReadings } = engine
  const server = await serve({
    dataDir,
    port: 0,
    version: 'speed',
    engine: async () => ({ InputProblem, readReadings })
  })
  const send = (method, path, body) =>
    fetch(`${server.url}${path}`, {
      method,
      headers: { 'x-castwright': '1', 'content-type': 'application/json' },
      body: JSON.stringify(body)
    })
  try {
    const laid = await send('PUT', '/api/pieces/speedpiece', {
      base: 0,
      edit: 'laid-for-speed',
      document: JSON.parse(readFileSync(file, 'utf8'))
    })
    if (!laid.ok) throw new Error(await laid.text())
    const all = Array.from({ length: COUNT }, (_, k) => ({
      kind: 'temperature',
      temperature: 20 + (k % 10),
      id: `speed-${String(k).padStart(5, '0')}`,
      at: '2026-12-01T09:00+01:00'
    }))
    const from = performance.now()
    const post = async k => {
      const part = all.slice(k, k + batch)
      const answer = await send(
        'POST',
        '/api/pieces/speedpiece/readings',
        batch === 1 ? part[0] : { readings: part }
      )
      if (!answer.ok) throw new Error(await answer.text())
    }
    for (let k = 0; k < COUNT; k += batch * together)
      await Promise.all(
        Array.from({ length: together }, (_, i) => k + i * batch)
          .filter(from => from < COUNT)
          .map(post)
      )
    const ms = performance.now() - from
    return { ms, note: `${Math.round((1000 * COUNT) / ms)} readings a second` }
  } finally {
    await server.close()
    rmSync(dataDir, { recursive: true, force: true })
  }
}

export const variants = [
  { name: 'readings one', about: '500 readings kept, sent one at a time', bar: 'none', run: () => kept(1) },
  {
    name: 'readings together',
    about: '500 readings kept, sent one at a time by 25 devices at once',
    bar: 'none',
    run: () => kept(1, 25)
  },
  {
    name: 'readings batch',
    about: '500 readings kept, sent by fifty',
    bar: 'under 1000',
    run: () => kept(50)
  }
]
