import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Desk } from './desk.ts'
import { desk, pieceNamed } from './desk.ts'

let d: Desk
beforeAll(async () => {
  d = await desk()
})
afterAll(() => d.close())

const save = (id: string, base: number, edit: string, document: unknown) =>
  d.ask('PUT', `/api/pieces/${id}`, { base, edit, document })

describe('a piece', () => {
  test('is kept with every revision, byte for byte', async () => {
    const texts = ['a', 'b', 'c'].map(note =>
      pieceNamed('Panel', { note, deep: { list: [1, 'ä', null, 1.5] } })
    )
    for (const [i, document] of texts.entries()) {
      const answer = await save('panel00001', i, `edit000${i}`, document)
      expect(answer.status).toBe(200)
      expect(((await answer.json()) as { revision: number }).revision).toBe(i + 1)
    }
    for (const [i, document] of texts.entries()) {
      const got = (await (await d.ask('GET', `/api/pieces/panel00001/revisions/${i + 1}`)).json()) as {
        document: unknown
      }
      expect(JSON.stringify(got.document)).toBe(JSON.stringify(document))
    }
    const list = (await (await d.ask('GET', '/api/pieces/panel00001/revisions')).json()) as {
      revisions: unknown[]
    }
    expect(list.revisions).toHaveLength(3)
  })

  test('the same edit sent again is not doubled', async () => {
    const document = pieceNamed('Once')
    const first = await (await save('once000001', 0, 'samesame1', document)).json()
    const again = await (await save('once000001', 0, 'samesame1', document)).json()
    expect(again).toEqual(first)
    const list = (await (await d.ask('GET', '/api/pieces/once000001/revisions')).json()) as {
      revisions: unknown[]
    }
    expect(list.revisions).toHaveLength(1)
  })

  test('two devices at once: neither is written over, both are kept', async () => {
    await save('both000001', 0, 'begin0001', pieceNamed('Both'))
    const [one, two] = await Promise.all([
      save('both000001', 1, 'device-one', pieceNamed('Both', { by: 'one' })),
      save('both000001', 1, 'device-two', pieceNamed('Both', { by: 'two' }))
    ])
    expect([one.status, two.status].sort()).toEqual([200, 409])
    const won = one.status === 200 ? 'one' : 'two'
    const lost = won === 'one' ? two : one
    const clash = (await lost.json()) as {
      error: { code: string }
      document: { by: string }
      aside: { number: number }
    }
    expect(clash.error.code).toBe('changed-elsewhere')
    expect(clash.document.by).toBe(won)
    const aside = (await (
      await d.ask('GET', `/api/pieces/both000001/asides/${clash.aside.number}`)
    ).json()) as { document: { by: string } }
    expect(aside.document.by).toBe(won === 'one' ? 'two' : 'one')
  })

  test('put away and brought back it is as it was', async () => {
    await save('away000001', 0, 'away-edit1', pieceNamed('Away'))
    expect((await d.ask('DELETE', '/api/pieces/away000001')).status).toBe(200)
    const ids = async (query = '') =>
      ((await (await d.ask('GET', `/api/pieces${query}`)).json()) as { pieces: { id: string }[] }).pieces.map(
        p => p.id
      )
    expect(await ids()).not.toContain('away000001')
    expect(await ids('?away=1')).toContain('away000001')
    await d.ask('POST', '/api/pieces/away000001/back', {})
    expect(await ids()).toContain('away000001')
  })

  test.each([
    ['no object', [1]],
    ['no version', { name: 'x' }],
    ['no name', { castwright: 1 }],
    ['too deep', pieceNamed('deep', { d: JSON.parse(`${'['.repeat(80)}${']'.repeat(80)}`) })],
    ['too long', pieceNamed('long', { note: 'x'.repeat(2_100_000) })]
  ])('a document with %s is refused with words, and nothing is kept', async (_, document) => {
    const answer = await save('wrong00001', 0, 'wrong-edit', document)
    expect(answer.status).toBe(400)
    expect(((await answer.json()) as { error: { says: string } }).error.says).toMatch(/allowed|found/)
    expect((await d.ask('GET', '/api/pieces/wrong00001')).status).toBe(404)
  })

  test('one that cannot be planned is saved all the same: nothing typed is lost', async () => {
    expect(
      (await save('halfdone01', 0, 'half-edit1', pieceNamed('Half', { outline: { circle: 'soon' } }))).status
    ).toBe(200)
  })
})

describe('the shop', () => {
  test('is kept by revision, and a change on an older one is told', async () => {
    const put = (base: number, edit: string, name: string) =>
      d.ask('PUT', '/api/shop', { base, edit, document: { castwright: 1, name } })
    expect((await put(0, 'shop-edit1', 'one')).status).toBe(200)
    const late = await put(0, 'shop-edit2', 'two')
    expect(late.status).toBe(409)
    const { aside } = (await late.json()) as { aside: { number: number } }
    const kept = (await (await d.ask('GET', `/api/shop/asides/${aside.number}`)).json()) as {
      document: { name: string }
    }
    expect(kept.document.name).toBe('two')
    expect(await (await put(0, 'shop-edit2', 'two')).json()).toMatchObject({ aside })
    expect((await d.ask('DELETE', `/api/shop/asides/${aside.number}`)).status).toBe(200)
    expect(((await (await d.ask('GET', '/api/shop')).json()) as { aside: unknown[] }).aside).toEqual([])
    expect((await put(1, 'shop-edit3', 'three')).status).toBe(200)
    const got = (await (await d.ask('GET', '/api/shop')).json()) as {
      revision: number
      document: { name: string }
    }
    expect([got.revision, got.document.name]).toEqual([2, 'three'])
  })
})

describe('events', () => {
  test('tell what changed, and what was missed is told by its number', async () => {
    const hear = async (last?: string, until = 1): Promise<{ id: string; event: string }[]> => {
      const end = new AbortController()
      const answer = await fetch(`${d.serving.url}/api/events`, {
        signal: end.signal,
        headers: last === undefined ? {} : { 'last-event-id': last }
      })
      const heard: { id: string; event: string }[] = []
      let text = ''
      const reader = answer.body!.pipeThrough(new TextDecoderStream()).getReader()
      while (heard.length < until) {
        const { value } = await reader.read()
        text += value ?? ''
        heard.length = 0
        for (const block of text.split('\n\n')) {
          const event = /^event: (.*)$/m.exec(block)?.[1]
          if (event !== undefined) heard.push({ event, id: /^id: (.*)$/m.exec(block)?.[1] ?? '' })
        }
      }
      end.abort()
      return heard
    }
    const waiting = hear(undefined, 1)
    await new Promise(done => setTimeout(done, 150))
    await save('events0001', 0, 'event-edit1', pieceNamed('Events'))
    const [first] = await waiting
    expect(first!.event).toBe('piece')
    await save('events0001', 1, 'event-edit2', pieceNamed('Events', { n: 2 }))
    await save('events0001', 2, 'event-edit3', pieceNamed('Events', { n: 3 }))
    const missed = await hear(first!.id, 2)
    expect(missed.map(e => Number(e.id))).toEqual([Number(first!.id) + 1, Number(first!.id) + 2])
    expect((await hear('99999999999999', 1))[0]!.event).toBe('start-over')
    // A number of a server that ran before this one: nobody knows what was missed.
    expect((await hear('3', 1))[0]!.event).toBe('start-over')
  })
})

test('a piece takes so many drawings and no more; one of a name that is there is replaced', async () => {
  await save('drawn00001', 0, 'drawn-edit1', pieceNamed('Drawn'))
  const put = (k: number) =>
    d.ask('PUT', `/api/pieces/drawn00001/files/slab-${k}.svg`, `<svg xmlns="http://www.w3.org/2000/svg"/>`, {
      'content-type': 'text/plain'
    })
  for (let k = 0; k < 60; k++) expect((await put(k)).status).toBe(200)
  const refused = await put(60)
  expect(refused.status).toBe(400)
  expect(((await refused.json()) as { error: { says: string } }).error.says).toMatch(
    /60 drawings.*allowed: 60/
  )
  expect((await put(7)).status).toBe(200)
})
