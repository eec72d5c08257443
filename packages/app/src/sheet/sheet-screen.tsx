import { useEffect } from 'preact/hooks'
import { JobCard, KIND_OF } from '../card/job-card.tsx'
import { EntryEditor } from '../card/late-editor.ts'
import { benchPlace, buyPlace, cutsPlace, daysPlace, photoPlace, printPlace } from '../look/places.ts'
import { canUndo, failure, missing, openPiece, piece, problems, shut, undo, view } from '../state/desk.ts'
import type { Route } from '../state/route.ts'
import { follow } from '../state/route.ts'
import { w } from '../text/words.ts'
import { DrawingSheet } from './drawing-sheet.tsx'
import { VerdictBar } from './verdict-bar.tsx'

type SheetPart = Extract<Route, { at: 'sheet' }>['part']

/** The sheet and the job card of one piece; or the tracing over a photo, or its cuts, in their place. */
export function SheetScreen({ id, part }: { readonly id: string; readonly part: SheetPart }) {
  useEffect(() => {
    void openPiece(id)
    return shut
  }, [id])
  if (missing.value === id)
    return (
      <main class="alone" id="main">
        <section class="paper">
          <h2>{w.state.noPiece}</h2>
          <p class="f">
            <a href="/" onClick={follow}>
              {w.state.toPieces}
            </a>
          </p>
        </section>
      </main>
    )
  if (piece.value === null || (view.value === null && problems.value.length === 0 && failure.value === null))
    return (
      <main class="alone" id="main">
        <section class="sheet waits" aria-busy="true">
          <p class="f">{w.state.loading}</p>
        </section>
      </main>
    )
  if (part === 'photo') return <photoPlace.Place id={id} />
  if (part === 'bench') return <benchPlace.Place />
  if (part === 'days')
    return (
      <>
        <VerdictBar plain />
        <daysPlace.Place />
      </>
    )
  if (part === 'buy')
    return (
      <>
        <VerdictBar plain />
        <buyPlace.Place />
      </>
    )
  if (part === 'print')
    return (
      <>
        <VerdictBar plain />
        <printPlace.Place />
      </>
    )
  if (part === 'cuts')
    return (
      <>
        <VerdictBar plain />
        <cutsPlace.Place />
      </>
    )
  return (
    <>
      <VerdictBar />
      <main>
        {problems.value.length > 0 ? <Refused /> : null}
        {failure.value === null ? null : (
          <section class="trouble" role="alert">
            <h2>{w.state.failed}</h2>
            <p>{failure.value}</p>
            <p class="f">{view.value === null ? w.state.saved : w.state.safe}</p>
          </section>
        )}
        {view.value === null ? null : <DrawingSheet view={view.value} />}
        <JobCard />
      </main>
    </>
  )
}

// What cannot be planned: where, what was found, what is allowed, an example; and the way back.
function Refused() {
  return (
    <section class="trouble" role="alert">
      <h2>{w.state.refused}</h2>
      {problems.value.slice(0, 5).map(p => (
        <p key={p.path}>
          <b>{readable(p.path)}</b> {w.state.reads(p.found, p.allowed, p.example)}
        </p>
      ))}
      <p class="f">{view.value === null ? w.state.saved : w.state.safe}</p>
      {canUndo.value ? (
        <button type="button" class="btn" onClick={undo}>
          {w.state.undo}
        </button>
      ) : null}
      {view.value === null ? <Named /> : null}
    </section>
  )
}

// Without a plan there is no card to open them on: the entries that are named can be changed here.
function Named() {
  const entries = new Set(problems.value.map(p => p.path.split('/').slice(0, 3).join('/')))
  return (
    <>
      {[...entries].map(at => {
        const kind = KIND_OF[at.split('/')[1] ?? '']
        return kind === undefined ? null : <EntryEditor key={at} at={at} kind={kind} name={readable(at)} />
      })}
    </>
  )
}

function readable(pointer: string): string {
  const [, list, index, ...rest] = pointer.split('/')
  if (list === undefined || list === '') return w.state.whole
  const entry = (piece.value?.document[list] as { id?: string }[] | undefined)?.[Number(index)]
  const name = entry?.id ?? (index === undefined ? list : `${list.replace(/s$/, '')} ${Number(index) + 1}`)
  return [name.slice(0, 1).toUpperCase() + name.slice(1), ...rest].join(', ')
}
