import { useEffect, useState } from 'preact/hooks'
import { ApiProblem, api } from '../net/api.ts'
import { device, told } from '../state/reach.ts'
import { w } from '../text/words.ts'

interface Known {
  readonly id: string
  readonly name: string
  readonly paired: string
  readonly seen: string
}
interface Pairing {
  readonly words: string
  readonly url: string
  readonly qr: string
  readonly expires: string
}

/** Devices that may see the pieces, and how another one is let in. */
export function DevicesScreen() {
  const [known, setKnown] = useState<readonly Known[]>([])
  const [pairing, setPairing] = useState<Pairing | null>(null)
  const [says, setSays] = useState('')
  const read = () =>
    void api<{ devices: readonly Known[] }>('GET', '/api/devices')
      .then(d => setKnown(d.devices))
      .catch(e => setSays(e instanceof ApiProblem ? e.message : w.state.unreachable))
  useEffect(() => {
    read()
    addEventListener('castwright-devices', read)
    return () => removeEventListener('castwright-devices', read)
  }, [])
  const open = () =>
    void api<Pairing>('POST', '/api/pairing')
      .then(setPairing)
      .catch(e => setSays(e instanceof ApiProblem ? e.message : w.state.unreachable))
  return (
    <main class="shop" id="main">
      <section class="paper intro">
        <h2 class="big">{w.devices.title}</h2>
        <p class="f">{w.devices.says}</p>
        {device.value?.desk ? (
          <p class="kinds">
            <button type="button" class="btn main" onClick={open}>
              {w.devices.pair}
            </button>
          </p>
        ) : null}
        <p class="says-bad" role="alert">
          {says}
        </p>
        {pairing === null ? null : (
          <div class="pairing" role="status">
            <img
              class="qr"
              alt={w.devices.code}
              src={`data:image/svg+xml;charset=utf-8,${encodeURIComponent(pairing.qr)}`}
              width="180"
              height="180"
            />
            <div>
              <p>{w.devices.scan}</p>
              <p class="f">{w.devices.orType(new URL(pairing.url).origin)}</p>
              <p class="three-words">{pairing.words}</p>
              <p class="f">
                {w.devices.until(
                  new Date(pairing.expires).toLocaleTimeString('en-GB', {
                    hour: '2-digit',
                    minute: '2-digit'
                  })
                )}
              </p>
            </div>
          </div>
        )}
      </section>
      <section class="paper" aria-labelledby="known-head">
        <h2 id="known-head">{w.devices.known}</h2>
        {known.length === 0 ? <p class="f">{w.devices.none}</p> : null}
        <ul class="plain">
          {known.map(d => (
            <li key={d.id} class="r known">
              <b>{d.name}</b>
              <span class="f">
                {w.devices.seen(
                  new Date(d.seen).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' })
                )}
              </span>
              <button
                type="button"
                class="btn"
                aria-label={`${w.devices.revoke} ${d.name}`}
                onClick={() =>
                  void told(async () => {
                    await api('DELETE', `/api/devices/${d.id}`)
                    read()
                  }).then(setSays)
                }
              >
                {w.devices.revoke}
              </button>
            </li>
          ))}
        </ul>
      </section>
      <section class="paper" aria-labelledby="keep-head">
        <h2 id="keep-head">{w.devices.archive}</h2>
        <p class="f">{w.devices.archiveSays}</p>
        <p class="kinds">
          <a class="btn" href="/api/export" download="castwright.zip">
            {w.devices.export}
          </a>
          <label class="btn file">
            {w.devices.import}
            <input
              type="file"
              accept=".zip,application/zip"
              onChange={e => void bring(e.currentTarget.files?.[0]).then(setSays)}
            />
          </label>
        </p>
      </section>
    </main>
  )
}

async function bring(file: File | undefined): Promise<string> {
  if (file === undefined) return ''
  try {
    const { pieces, revisions } = await api<{ pieces: number; revisions: number }>(
      'POST',
      '/api/import',
      new Blob([file], { type: 'application/zip' })
    )
    return w.devices.imported(pieces, revisions)
  } catch (e) {
    return e instanceof ApiProblem ? `${file.name}: ${e.message}` : w.state.unreachable
  }
}
