/** One of a few words, all of them in sight; the one that holds is pressed. */
export function Choice<T extends string>(p: {
  /** What is chosen, for those who listen. */
  readonly words: string
  readonly options: readonly (readonly [T, string])[]
  readonly value: T
  readonly onPick: (value: T) => void
}) {
  return (
    <div class="choice" role="group" aria-label={p.words}>
      {p.options.map(([value, words]) => (
        <button
          key={value}
          type="button"
          value={value}
          aria-pressed={value === p.value}
          onClick={() => p.onPick(value)}
        >
          {words}
        </button>
      ))}
    </div>
  )
}
