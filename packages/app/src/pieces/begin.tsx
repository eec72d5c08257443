import { useEffect, useState } from 'preact/hooks'
import { parseQuantity } from '../../../engine/src/quantity/parse.ts'
import { Drawing } from '../look/drawing.tsx'
import { QuantityField } from '../look/field.tsx'
import { engineAnswer } from '../state/engine.ts'
import { fields, readFields } from '../state/fields.ts'
import { createPiece } from '../state/pieces.ts'
import { go } from '../state/route.ts'
import { shop } from '../state/shop.ts'
import { w } from '../text/words.ts'
import type { Json, Thumb } from '../worker/messages.ts'
import { KIND_START } from './kind-start.ts'

type Stored = number | string

/** "What are you making?": a kind, then its size and what it is made of, then the sheet. */
export function Begin(p: { readonly kind: string | null; readonly onKind: (kind: string | null) => void }) {
  if (p.kind !== null) return <StartForm kind={p.kind} onBack={() => p.onKind(null)} />
  return (
    <section class="paper begin" aria-labelledby="begin-head">
      <svg class="empty-outline" viewBox="0 0 120 54" aria-hidden="true">
        <path d="M8 6H112V48H8ZM60 0V54M0 27H120" />
      </svg>
      <div>
        <h2 id="begin-head" class="big">
          {w.pieces.what}
        </h2>
        <p class="f">{w.pieces.sub}</p>
        <p class="kinds">
          {Object.entries(w.pieces.kinds).map(([kind, words]) => (
            <button key={kind} type="button" class="btn" onClick={() => p.onKind(kind)}>
              {words}
            </button>
          ))}
        </p>
        <OpenFile />
      </div>
    </section>
  )
}

// A piece file from elsewhere, laid among the pieces; what it says is checked when it is planned.
function OpenFile() {
  const [problem, setProblem] = useState<string | null>(null)
  const read = async (file: File | undefined) => {
    if (file === undefined) return
    setProblem(null)
    try {
      if (file.size > MOST_BYTES)
        throw new Error(`found ${Math.round(file.size / 1000)} kB; allowed: up to ${MOST_BYTES / 1000} kB`)
      const document = JSON.parse(await file.text()) as Json
      if (
        typeof document !== 'object' ||
        document === null ||
        typeof document['name'] !== 'string' ||
        document['castwright'] === undefined
      )
        throw new Error('found no piece; allowed: a JSON object with "castwright" and "name"')
      go(`/piece/${await createPiece(document)}`)
    } catch (e) {
      setProblem(`${file.name}: ${e instanceof Error ? e.message : String(e)}`)
    }
  }
  return (
    <p class="f">
      <label class="link file">
        {w.pieces.file}
        <input
          type="file"
          accept=".json,application/json"
          onChange={e => void read(e.currentTarget.files?.[0])}
        />
      </label>
      {problem === null ? null : (
        <span class="says-bad" role="alert">
          {problem}
        </span>
      )}
    </p>
  )
}

const MOST_BYTES = 2_000_000

function StartForm({ kind, onBack }: { readonly kind: string; readonly onBack: () => void }) {
  const start = KIND_START[kind]!
  const [name, setName] = useState(w.pieces.kinds[kind] ?? kind)
  const [size, setSize] = useState<readonly [Stored, Stored]>([start.sizeMm[0], start.sizeMm[1]])
  const [thick, setThick] = useState<Stored>(start.sizeMm[2])
  const [species, setSpecies] = useState(start.species)
  const [resin, setResin] = useState(start.resin)
  const [busy, setBusy] = useState(false)
  const [picture, setPicture] = useState<Thumb | null>(null)
  useEffect(readFields, [])
  const sizeMm = [mm(size[0]), mm(size[1])] as const
  const thicknessMm = mm(thick)
  // What it will look like, as it is typed.
  useEffect(() => {
    let here = true
    void engineAnswer({
      kind: 'new',
      start: { kind, name: 'new', sizeMm, thicknessMm, species, resin }
    }).then(async a => {
      if (a.kind !== 'new' || !here) return
      const t = await engineAnswer({
        kind: 'thumb',
        document: a.document,
        files: {},
        shop: shop.value?.document ?? null,
        asOf: new Date().toISOString()
      })
      if (t.kind === 'thumb' && here) setPicture(t.thumb)
    })
    return () => {
      here = false
    }
  }, [kind, sizeMm[0], sizeMm[1], thicknessMm, species, resin])
  const timbers = fields.value?.timber.find(f => f.key === 'species')?.catalogue ?? [
    [start.species, start.species] as const
  ]
  const resins = fields.value?.pour.find(f => f.key === 'resin')?.catalogue ?? [
    [start.resin, start.resin] as const
  ]
  const begin = async () => {
    setBusy(true)
    const answer = await engineAnswer({
      kind: 'new',
      start: { kind, name, sizeMm, thicknessMm, species, resin }
    })
    if (answer.kind === 'new') go(`/piece/${await createPiece(answer.document)}`)
    setBusy(false)
  }
  return (
    <section class="paper begin form" aria-labelledby="begin-head">
      <form
        onSubmit={e => {
          e.preventDefault()
          void begin()
        }}
      >
        <h2 id="begin-head" class="big">
          {w.pieces.kinds[kind]}
        </h2>
        <p class="f">{w.pieces.invented}</p>
        <div class="asks">
          <label>
            <span>{w.pieces.name}</span>
            <input
              type="text"
              class="words"
              value={name}
              maxLength={120}
              required
              onInput={e => setName(e.currentTarget.value)}
            />
          </label>
          <label>
            <span>{start.round ? w.shape.diameter : w.pieces.width}</span>
            <QuantityField
              label={start.round ? w.shape.diameter : w.pieces.width}
              value={size[0]}
              dimension="length"
              min={40}
              max={5000}
              onChange={v => v !== undefined && setSize(start.round ? [v, v] : [v, size[1]])}
            />
          </label>
          {start.round ? null : (
            <label>
              <span>{w.pieces.depth}</span>
              <QuantityField
                label={w.pieces.depth}
                value={size[1]}
                dimension="length"
                min={40}
                max={5000}
                onChange={v => v !== undefined && setSize([size[0], v])}
              />
            </label>
          )}
          <label>
            <span>{w.pieces.thickness}</span>
            <QuantityField
              label={w.pieces.thickness}
              value={thick}
              dimension="length"
              min={4}
              max={200}
              onChange={v => v !== undefined && setThick(v)}
            />
          </label>
          <label>
            <span>{w.pieces.species}</span>
            <select value={species} onChange={e => setSpecies(e.currentTarget.value)}>
              {timbers.map(([id, words]) => (
                <option key={id} value={id}>
                  {words}
                </option>
              ))}
            </select>
          </label>
          <label>
            <span>{w.pieces.resin}</span>
            <select value={resin} onChange={e => setResin(e.currentTarget.value)}>
              {resins.map(([id, words]) => (
                <option key={id} value={id}>
                  {words}
                </option>
              ))}
            </select>
          </label>
        </div>
        <p class="kinds">
          <button type="submit" class="btn main" disabled={busy || name.trim() === ''}>
            {w.pieces.begin}
          </button>
          <button type="button" class="btn" onClick={onBack}>
            {w.pieces.cancel}
          </button>
        </p>
      </form>
      <div class="preview">
        {picture === null ? null : <Drawing drawn={picture.drawn} name="plan thumb" words={null} />}
      </div>
    </section>
  )
}

function mm(stored: Stored): number {
  return typeof stored === 'number' ? stored : (parseQuantity(stored, 'length')?.value ?? 0)
}
