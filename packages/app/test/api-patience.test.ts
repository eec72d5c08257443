import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { ApiProblem, api, patienceMs, SLOWEST_BYTES_PER_S, Unreachable } from '../src/net/api.ts'

/** Largest photo the desk takes, bytes: packages/server/src/api-bench.ts. */
const PHOTO_BYTES = 12_000_000

/** What a fetch was given: its signal is what a request is cut off by (fetch standard, 5.1). */
let asked: { path: string; init: RequestInit; answer: (r: Response) => void } | null = null

beforeEach(() => {
  vi.useFakeTimers()
  vi.stubGlobal(
    'fetch',
    (path: string, init: RequestInit) =>
      new Promise<Response>((answer, fail) => {
        asked = { path, init, answer }
        init.signal?.addEventListener('abort', () => fail(new DOMException('over', 'AbortError')))
      })
  )
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
  asked = null
})

/** How a request ended, or `waits`. */
function end(request: Promise<unknown>): () => string {
  let how = 'waits'
  request.then(
    () => {
      how = 'answered'
    },
    e => {
      how = e instanceof Unreachable ? 'unreachable' : e instanceof ApiProblem ? 'problem' : String(e)
    }
  )
  return () => how
}

test('the time of a body grows with its size, from 15 s on', () => {
  expect(patienceMs(0)).toBe(15_000)
  // 12 MB at half of 1 Mbit/s, by hand: 96 Mbit / 0.5 Mbit/s = 192 s.
  expect(patienceMs(PHOTO_BYTES) - patienceMs(0)).toBeCloseTo(192_000, 6)
  expect(SLOWEST_BYTES_PER_S).toBe(62_500)
})

test('a question without a body is given up after 15 s, a photo is not', async () => {
  const small = end(api('GET', '/api/pieces'))
  await vi.advanceTimersByTimeAsync(14_900)
  expect(small()).toBe('waits')
  await vi.advanceTimersByTimeAsync(200)
  expect(small()).toBe('unreachable')

  const photo = new Blob([new Uint8Array(PHOTO_BYTES)], { type: 'image/jpeg' })
  const large = end(api('POST', '/api/pieces/panel123/photos', photo))
  await vi.advanceTimersByTimeAsync(200_000)
  expect(large()).toBe('waits')
  expect(asked!.init.body).toBe(photo)
  expect(new Headers(asked!.init.headers).get('content-type')).toBe('image/jpeg')
  await vi.advanceTimersByTimeAsync(8_000)
  expect(large()).toBe('unreachable')
})

test('an answer that keeps coming is waited for; one that stops is not, and is no crash', async () => {
  for (const [gapMs, how] of [
    [10_000, 'answered'],
    [16_000, 'unreachable']
  ] as const) {
    const request = end(api('GET', '/api/pieces/panel123'))
    const { signal } = asked!.init
    const parts = ['{"a":"', 'ü'.repeat(1000), '","b":', '[1,2]', '}'].map(t => new TextEncoder().encode(t))
    // A character is cut in two where the network pleases.
    const bytes = [parts[0]!, parts[1]!.slice(0, 7), parts[1]!.slice(7), ...parts.slice(2)]
    asked!.answer(
      new Response(
        new ReadableStream({
          start: c =>
            signal!.addEventListener('abort', () => c.error(new DOMException('over', 'AbortError'))),
          pull: async c => {
            await new Promise(then => setTimeout(then, gapMs))
            if (signal!.aborted) return
            const next = bytes.shift()
            if (next === undefined) c.close()
            else c.enqueue(next)
          }
        })
      )
    )
    await vi.advanceTimersByTimeAsync(120_000)
    expect(request(), `${gapMs} ms between parts`).toBe(how)
  }
})

test('what was sent as JSON is sent as JSON; a refusal carries its words', async () => {
  const request = api('PUT', '/api/shop', { base: 0 })
  expect(await (asked!.init.body as Blob).text()).toBe('{"base":0}')
  expect(new Headers(asked!.init.headers).get('content-type')).toBe('application/json')
  asked!.answer(
    new Response('{"error":{"code":"too-large","says":"found 5 bytes; allowed: 4"}}', { status: 413 })
  )
  await expect(request).rejects.toMatchObject({
    status: 413,
    code: 'too-large',
    message: 'found 5 bytes; allowed: 4'
  })
})
