import { useState } from 'preact/hooks'
import { piece } from '../state/desk.ts'
import { cutsWords as c } from '../text/cuts.ts'
import type { CutsView } from '../worker/cuts-view.ts'

/** The one main button: all programs in one archive; dashed, with the reason, while a stop stands. */
export function SaveRow({ view }: { readonly view: CutsView }) {
  const [busy, setBusy] = useState(false)
  const name = String(piece.value?.document['name'] ?? 'piece')
  const save = async () => {
    setBusy(true)
    try {
      const { strToU8, zipSync } = await import('fflate')
      const files = Object.fromEntries(view.files.map(([file, text]) => [file, strToU8(text)]))
      // One moment for all files: the same programs make the same archive.
      const bytes = zipSync(files, { level: 6, mtime: new Date('1980-01-01T00:00:00') })
      const href = URL.createObjectURL(new Blob([bytes.slice()], { type: 'application/zip' }))
      const link = document.createElement('a')
      link.href = href
      link.download = `${name.replace(/[^\p{L}\p{N}]+/gu, '-').toLowerCase()}-programs.zip`
      link.click()
      setTimeout(() => URL.revokeObjectURL(href), 10_000)
    } finally {
      setBusy(false)
    }
  }
  const can = view.files.length > 0
  return (
    <p class="save-row">
      <button
        type="button"
        class={`btn${can ? ' main' : ' not'}`}
        disabled={!can || busy}
        onClick={() => void save()}
      >
        {busy ? c.saving : c.save}
      </button>
      <span class="f">{can ? c.kept(view.files.length) : c.notSaved(view.stops.join(', '))}</span>
    </p>
  )
}
