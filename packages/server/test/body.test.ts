import { connect } from 'node:net'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { bodyBytes, bodyParts } from '../src/body.ts'
import type { Desk } from './desk.ts'
import { desk, pieceNamed } from './desk.ts'

let d: Desk
beforeAll(async () => {
  d = await desk()
  await d.ask('PUT', '/api/pieces/bodies0001', {
    base: 0,
    edit: 'body-edit1',
    document: pieceNamed('Bodies')
  })
})
afterAll(() => d.close())

/** A request whose body comes part by part; `then` is what happens after the last. */
function slowly(parts: readonly string[], then: 'end' | 'wait' | 'break'): Request {
  let k = 0
  const body = new ReadableStream<Uint8Array>({
    pull(controller) {
      const part = parts[k++]
      if (part !== undefined) controller.enqueue(new TextEncoder().encode(part))
      else if (then === 'end') controller.close()
      else if (then === 'break') controller.error(new Error('aborted'))
      else return new Promise<void>(() => undefined)
    }
  })
  return new Request('http://x/', { method: 'PUT', body, duplex: 'half' } as RequestInit)
}

test('a body is taken whole, whatever its parts', async () => {
  const whole = await bodyBytes(slowly(['<svg', '>', '</svg>'], 'end'), 100)
  expect(Buffer.from(whole).toString()).toBe('<svg></svg>')
})

test('one that stops is refused as too slow: its beginning is not taken for all of it', async () => {
  const read = async () => {
    for await (const _ of bodyParts(slowly(['<svg></svg>'], 'wait'), 100, 40));
  }
  await expect(read()).rejects.toMatchObject({ status: 408 })
})

test('one that breaks off, or is longer than it may be, is refused', async () => {
  await expect(bodyBytes(slowly(['<svg>'], 'break'), 100)).rejects.toMatchObject({ status: 400 })
  await expect(bodyBytes(slowly(['x'.repeat(60), 'x'.repeat(60)], 'end'), 100)).rejects.toMatchObject({
    status: 413
  })
})

test('a drawing whose sender goes away in the middle is not kept', async () => {
  await new Promise<void>(done => {
    const line = connect(d.serving.port, '127.0.0.1', () => {
      line.write(
        `PUT /api/pieces/bodies0001/files/half.svg HTTP/1.1\r\nhost: 127.0.0.1:${d.serving.port}\r\nx-castwright: 1\r\ncontent-type: text/plain\r\ncontent-length: 5000\r\n\r\n<svg xmlns="http://www.w3.org/2000/svg">`
      )
      setTimeout(() => line.destroy(), 60)
    })
    line.on('close', () => done())
  })
  await new Promise(done => setTimeout(done, 60))
  const piece = (await (await d.ask('GET', '/api/pieces/bodies0001')).json()) as { files: object }
  expect(piece.files).toEqual({})
})
