import { Failure } from './failure.ts'

/** Longest silence of a server, ms. */
const PATIENCE_MS = 20_000
/** The same where a photo goes over, ms: 12 MB at 1 Mbit/s take 96 s. */
const PHOTO_MS = 120_000

/** What a server answers to a question, or to a document that is sent. @throws Failure */
export async function asked(home: string, path: string, body?: object): Promise<unknown> {
  const sent = body === undefined ? undefined : { type: 'application/json', bytes: JSON.stringify(body) }
  return answered(home, path, PATIENCE_MS, async answer => answer.json(), sent)
}

/** The bytes at a path of a server. @throws Failure */
export async function bytesAt(home: string, path: string): Promise<Uint8Array> {
  return answered(home, path, PHOTO_MS, async answer => new Uint8Array(await answer.arrayBuffer()))
}

/** Sends bytes to a path of a server. @throws Failure */
export async function bytesTo(home: string, path: string, type: string, bytes: Uint8Array): Promise<void> {
  await answered(home, path, PHOTO_MS, async answer => answer.json(), {
    type,
    bytes: bytes as Uint8Array<ArrayBuffer>
  })
}

async function answered<T>(
  home: string,
  path: string,
  patienceMs: number,
  read: (answer: Response) => Promise<T>,
  sent?: { readonly type: string; readonly bytes: string | Uint8Array<ArrayBuffer> }
): Promise<T> {
  try {
    const answer = await fetch(home + path, {
      headers: { 'x-castwright': '1', ...(sent === undefined ? {} : { 'content-type': sent.type }) },
      signal: AbortSignal.timeout(patienceMs),
      ...(sent === undefined ? {} : { method: 'POST', body: sent.bytes })
    })
    if (answer.ok) return await read(answer)
    const { error } = (await answer.json()) as { error?: { says?: string } }
    throw new Failure(`${home}: found ${error?.says ?? `answer ${answer.status}`}`)
  } catch (e) {
    if (e instanceof Failure) throw e
    throw new Failure(
      `${home}: found no answer (${e instanceof Error ? e.message : String(e)}); allowed: a server that runs`
    )
  }
}
