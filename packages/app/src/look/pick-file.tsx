import { w } from '../text/words.ts'

/** A link that asks for a file and reads it as text, up to a size. What is wrong is said by `onProblem`, in words. */
export function PickFile(p: {
  readonly words: string
  readonly accept: string
  readonly mostBytes: number
  readonly onProblem: (says: string) => void
  readonly onText: (name: string, text: string) => Promise<void>
}) {
  const read = async (input: HTMLInputElement) => {
    const file = input.files?.[0]
    // Let go of, so that the same file can be taken once more after it was mended.
    input.value = ''
    if (file === undefined) return
    try {
      if (file.size > p.mostBytes)
        throw new Error(w.file.tooLarge(Math.round(file.size / 1000), p.mostBytes / 1000))
      await p.onText(file.name, await file.text())
    } catch (e) {
      p.onProblem(`${file.name}: ${e instanceof Error ? e.message : String(e)}`)
    }
  }
  return (
    <label class="link file">
      {p.words}
      <input type="file" accept={p.accept} onChange={e => void read(e.currentTarget)} />
    </label>
  )
}
