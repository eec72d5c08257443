import { Drawing, Written } from '../look/drawing.tsx'
import { Figure } from '../look/field.tsx'
import { chosen, piece, view } from '../state/desk.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import type { LayerView, PlannedView, StepView } from '../worker/views.ts'
import { AddEntry } from './add-entry.tsx'
import { at as valueAt } from './document-place.ts'
import { EditedFigure } from './edited-figure.tsx'
import { FindingBlock } from './finding-block.tsx'
import { findingsAt } from './finding-place.ts'
import { EntryEditor } from './late-editor.ts'
import { Peak } from './peak.tsx'
import { triedCurve, WhatIf } from './what-if.tsx'

/** The job card: layers as they lie, then steps in the order of doing; each entry is edited where it stands. */
export function JobCard() {
  const v = view.value
  return (
    <div class="card" id="card" role="region" aria-label={w.card.region}>
      {v === null ? null : (
        <>
          {findingsAt(v, { kind: 'piece' }).map(f => (
            <FindingBlock key={f.number} finding={f} named />
          ))}
          <Layers v={v} />
          <Steps v={v} />
        </>
      )}
      <PieceFields />
    </div>
  )
}

function Layers({ v }: { readonly v: PlannedView }) {
  return (
    <section class="layers" aria-labelledby="layers-head">
      <h2 id="layers-head">
        {w.card.layers} <span>{w.card.layersSays}</span>
      </h2>
      <div class="lay">
        <Drawing drawn={v.art} name="art" words={w.card.art} />
        <ol reversed class="plain">
          {v.layers.map(l => (
            <Layer key={l.index} v={v} l={l} />
          ))}
        </ol>
      </div>
      <AddEntry lists={['pours']} />
    </section>
  )
}

function Layer({ v, l }: { readonly v: PlannedView; readonly l: LayerView }) {
  const at = `/pours/${l.index}`
  const open = chosen.value === at
  return (
    <li class={`layer${open ? ' open' : ''}`}>
      <div class="r">
        <h3>
          <EntryToggle at={at} name={l.name} />
        </h3>
        <p class="f">
          {l.kind}, {l.resin}
        </p>
      </div>
      <dl class="facts">
        <div>
          <dt>{w.card.asCast}</dt>
          <dd>
            <EditedFigure at={at} field={depthKey(at)} words={`${l.name}, ${w.card.asCast}`}>
              <Figure value={l.castMm} dimension="length" digits={1} />
            </EditedFigure>
          </dd>
        </div>
        <div>
          <dt>{w.card.finished}</dt>
          <dd>
            {l.finishedMm === null ? '–' : <Figure value={l.finishedMm} dimension="length" digits={1} />}
          </dd>
        </div>
        <div>
          <dt>{w.card.volume}</dt>
          <dd>
            <Figure value={Math.round(l.liquidMl)} dimension="volume" />
          </dd>
        </div>
        <div>
          <dt>{w.card.peak}</dt>
          <dd>
            <Peak peak={l.peak} />
          </dd>
        </div>
      </dl>
      <Written markup={l.batches} />
      <Written markup={triedCurve(l.index) ?? l.curve} />
      {l.curve === '' ? null : (
        <p class="f goes-by">{triedCurve(l.index) === null ? w.card.goesBy[v.cast] : w.tryOut.dashed}</p>
      )}
      {l.levelMm === null || l.curve === '' ? null : <WhatIf l={l} planned={v} />}
      <Written markup={l.windows} />
      {open ? <EntryEditor at={at} kind="pour" name={l.name} /> : null}
      {findingsAt(v, { kind: 'pour', index: l.index }).map(f => (
        <FindingBlock key={f.number} finding={f} />
      ))}
    </li>
  )
}

// The key a pour says its depth by.
function depthKey(at: string): string {
  const pour = valueAt(piece.value?.document, at) as Json | undefined
  return ['depth', 'height', 'fill'].find(key => pour?.[key] !== undefined) ?? 'depth'
}

/** The name of an entry, which opens its fields. */
function EntryToggle({ at, name }: { readonly at: string; readonly name: string }) {
  const open = chosen.value === at
  return (
    <button
      type="button"
      class="entry"
      aria-expanded={open}
      onClick={() => (chosen.value = open ? null : at)}
    >
      {name}
    </button>
  )
}

/** What the entries of a list of the piece are. */
export const KIND_OF: Readonly<Record<string, 'timber' | 'cut' | 'hardware' | 'marking' | 'edge' | 'pour'>> =
  {
    timbers: 'timber',
    cuts: 'cut',
    hardware: 'hardware',
    markings: 'marking',
    edges: 'edge',
    pours: 'pour'
  }

function Steps({ v }: { readonly v: PlannedView }) {
  let day = ''
  // An entry is edited at the first of its steps.
  const first = new Map<string, number>()
  for (const s of v.steps) if (s.at !== '' && s.kind !== 'wait' && !first.has(s.at)) first.set(s.at, s.number)
  return (
    <section class="run" aria-labelledby="steps-head">
      <h2 id="steps-head">
        {w.card.steps} <span>{w.card.stepsSays}</span>
      </h2>
      <p class="f lead">{w.card.days}</p>
      <ol class="steps plain">
        {v.steps.map(s => {
          const head = s.day === day ? null : s.day
          day = s.day
          return (
            <>
              {head === null ? null : <li class="day">{head}</li>}
              <Step key={s.number} v={v} s={s} edits={first.get(s.at) === s.number} />
            </>
          )
        })}
      </ol>
      <AddEntry lists={['timbers', 'cuts', 'hardware', 'markings']} />
    </section>
  )
}

function Step({ v, s, edits }: { readonly v: PlannedView; readonly s: StepView; readonly edits: boolean }) {
  const kind = KIND_OF[s.at.split('/')[1] ?? '']
  const mould = s.kind === 'make mould'
  const open = chosen.value === (mould ? '/mould' : s.at) && (edits || mould)
  const name = v.entries.find(e => e.at === s.at)?.name ?? s.says
  const canEdit = (edits && kind !== undefined && kind !== 'pour') || mould
  return (
    <li class={`step${s.kind === 'wait' ? ' wait' : ''}${open ? ' open' : ''}`} id={`step-${s.number}`}>
      <span class="n">{s.number}</span>
      <div>
        <div class="r">
          <h3>{canEdit ? <EntryToggle at={mould ? '/mould' : s.at} name={s.says} /> : s.says}</h3>
          <p class="f">
            {s.facts.map(f => (
              <span key={f}>{f}</span>
            ))}
          </p>
        </div>
        {open && canEdit ? (
          <EntryEditor
            at={mould ? '/mould' : s.at}
            kind={mould ? 'mould' : kind!}
            name={mould ? w.card.mould : name}
          />
        ) : null}
        {findingsAt(v, { kind: 'step', number: s.number }).map(f => (
          <FindingBlock key={f.number} finding={f} />
        ))}
        {s.safety.length === 0 ? null : (
          <details class="safety">
            <summary>{w.card.safety}</summary>
            <ul class="plain">
              {s.safety.map(l => (
                <li key={l.line}>
                  {l.line} <span class="q">{w.card.goBefore(capital(l.defersTo.join('; ')))}</span>
                </li>
              ))}
            </ul>
          </details>
        )}
      </div>
    </li>
  )
}

// The facts of the whole piece: name, size, which face lies down, finish, where it will live.
function PieceFields() {
  if (piece.value === null) return null
  return (
    <section class="whole" aria-labelledby="whole-head">
      <h2 id="whole-head">{w.card.whole}</h2>
      <EntryEditor at="" kind="piece" name={w.card.whole} />
    </section>
  )
}

function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1)
}
