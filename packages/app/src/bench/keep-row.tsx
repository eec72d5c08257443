import { useState } from 'preact/hooks'
import { askRescue } from '../state/rescue.ts'
import { benchWords as b } from '../text/bench.ts'
import { keepNote, takePhoto } from './take-photo.ts'

/** What may be told of a step at any time: a photo from the camera of a phone, a note, that it went differently. */
export function KeepRow({ step }: { readonly step: string }) {
  const [writing, setWriting] = useState(false)
  const [says, setSays] = useState('')
  const pick = (e: Event & { currentTarget: HTMLInputElement }) => {
    const file = e.currentTarget.files?.[0]
    // The same file can be chosen again.
    e.currentTarget.value = ''
    if (file === undefined) return
    setSays(b.photoOpening)
    void takePhoto(step, file).then(ok => setSays(ok ? '' : b.photoNone))
  }
  if (writing)
    return (
      <NoteField
        onClose={() => setWriting(false)}
        onKeep={text => {
          setWriting(false)
          keepNote(step, text)
        }}
      />
    )
  return (
    <section class="bench-keep" aria-label={b.keepRegion}>
      <label class="link file">
        {b.photo}
        <input type="file" accept="image/*" capture="environment" onChange={pick} />
      </label>
      <button type="button" class="link" onClick={() => setWriting(true)}>
        {b.note}
      </button>
      <button type="button" class="link" onClick={() => void askRescue(undefined, null)}>
        {b.different}
      </button>
      <p class="f" role="status">
        {says}
      </p>
    </section>
  )
}

/** Longest note, characters: as the record of a reading takes it. */
const MOST_NOTE = 300

function NoteField({
  onKeep,
  onClose
}: {
  readonly onKeep: (text: string) => void
  readonly onClose: () => void
}) {
  const [text, setText] = useState('')
  const words = text.replace(/\s+/g, ' ').trim()
  return (
    <form
      class="bench-note"
      onSubmit={e => {
        e.preventDefault()
        if (words !== '') onKeep(words)
      }}
    >
      <label>
        {b.note}
        <textarea
          autofocus
          rows={3}
          maxLength={MOST_NOTE}
          value={text}
          onInput={e => setText(e.currentTarget.value)}
          onKeyDown={e => {
            if (e.key === 'Escape') onClose()
          }}
        />
      </label>
      <div class="pad-foot">
        <button type="button" class="btn" onClick={onClose}>
          {b.close}
        </button>
        <button type="submit" class="btn main" disabled={words === ''}>
          {b.keep}
        </button>
      </div>
    </form>
  )
}
