/** A slider for trying: where the plan stands is a stroke under it, where the limit lies a mark, both said in words. */
export function TrySlider(p: {
  readonly label: string
  /** The value in words. */
  readonly says: string
  /** What it belongs to. */
  readonly of: string
  readonly value: number
  readonly least: number
  readonly most: number
  readonly step: number
  /** Where the plan stands; null: nothing is to be marked. */
  readonly at: number | null
  /** Where the limit lies; null: nowhere. */
  readonly edge: number | null
  readonly edgeSays: string
  readonly onTry: (value: number) => void
}) {
  const id = `try-${p.of}-${p.label}`.replace(/\W+/g, '-')
  const share = (value: number) => String((value - p.least) / (p.most - p.least))
  const within = p.edge !== null && p.edge >= p.least && p.edge <= p.most
  return (
    <div class="try">
      <label for={id}>{p.label}</label>
      <output for={id}>{p.says}</output>
      <span class="track">
        <input
          id={id}
          type="range"
          min={p.least}
          max={p.most}
          step={p.step}
          value={p.value}
          aria-label={`${p.of}: ${p.label}`}
          aria-valuetext={p.says}
          aria-describedby={p.edgeSays === '' ? undefined : `${id}-edge`}
          onInput={e => p.onTry(Number(e.currentTarget.value))}
        />
        {p.at === null ? null : <i class="stands" style={{ '--share': share(p.at) }} aria-hidden="true" />}
        {within ? (
          <>
            <i class="beyond" style={{ '--share': share(p.edge!) }} aria-hidden="true" />
            <i class="edge" style={{ '--share': share(p.edge!) }} aria-hidden="true" />
          </>
        ) : null}
      </span>
      {p.edgeSays === '' ? null : (
        <p class="f" id={`${id}-edge`}>
          {p.edgeSays}
        </p>
      )}
    </div>
  )
}
