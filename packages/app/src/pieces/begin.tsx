import { useEffect, useMemo, useState } from 'preact/hooks'
import { readJson } from '../../../engine/src/piece/json.ts'
import type { Kind as KindEntry } from '../../../engine/src/piece/kind.ts'
import { KINDS } from '../../../engine/src/piece/kind.ts'
import { startedPiece, usualStart } from '../../../engine/src/piece/started.ts'
import { parseQuantity } from '../../../engine/src/quantity/parse.ts'
import { Drawing } from '../look/drawing.tsx'
import { QuantityField } from '../look/field.tsx'
import { PickFile } from '../look/pick-file.tsx'
import { engineAnswer } from '../state/engine.ts'
import { fields, readFields } from '../state/fields.ts'
import { createPiece } from '../state/pieces.ts'
import { go } from '../state/route.ts'
import { shop } from '../state/shop.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import type { Thumb } from '../worker/views.ts'

type Stored = number | string
type Kind = KindEntry['kind']

/** "What are you making?": a kind, then its size and what it is made of, then the sheet. */
export function Begin(p: { readonly kind: Kind | null; readonly onKind: (kind: Kind | null) => void }) {
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
          {KINDS.map(({ kind }) => (
            <button key={kind} type="button" class="btn" onClick={() => p.onKind(kind)}>
              {w.pieces.kinds[kind]}
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
  const open = async (_: string, text: string) => {
    setProblem(null)
    const document = readJson(text) as Json
    if (
      typeof document !== 'object' ||
      document === null ||
      typeof document['name'] !== 'string' ||
      document['castwright'] === undefined
    )
      throw new Error(w.file.noPiece)
    go(`/piece/${await createPiece(document)}`)
  }
  return (
    <p class="f">
      <PickFile
        words={w.pieces.file}
        accept=".json,application/json"
        mostBytes={MOST_BYTES}
        onProblem={setProblem}
        onText={open}
      />
      {problem === null ? null : (
        <span class="says-bad" role="alert">
          {problem}
        </span>
      )}
    </p>
  )
}

const MOST_BYTES = 2_000_000

function StartForm({ kind, onBack }: { readonly kind: Kind; readonly onBack: () => void }) {
  const start = useMemo(() => usualStart(kind), [kind])
  const [name, setName] = useState<string>(w.pieces.kinds[kind])
  const [size, setSize] = useState<readonly [Stored, Stored]>([start.sizeMm[0], start.sizeMm[1]])
  const [thick, setThick] = useState<Stored>(start.thicknessMm)
  const [species, setSpecies] = useState(start.species)
  const [resin, setResin] = useState(start.resin)
  const [busy, setBusy] = useState(false)
  const [picture, setPicture] = useState<Thumb | null>(null)
  useEffect(readFields, [])
  const sizeMm = [mm(size[0]), mm(size[1])] as const
  const thicknessMm = mm(thick)
  const document = (called: string) =>
    startedPiece({ kind, name: called, sizeMm, thicknessMm, species, resin }) as unknown as Json
  // What it will look like, as it is typed.
  useEffect(() => {
    let here = true
    void engineAnswer({
      kind: 'thumb',
      document: document('new'),
      files: {},
      shop: shop.value?.document ?? null,
      asOf: new Date().toISOString()
    }).then(t => {
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
    go(`/piece/${await createPiece(document(name))}`)
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
