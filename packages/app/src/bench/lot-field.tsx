import type { BenchAsk } from '../../../engine/src/sheets/bench-ask.ts'
import { benchWords as b } from '../text/bench.ts'

/** The lot that is mixed from: written, or pressed from what stands on the shelf; one of each part may be pressed. */
export function LotField({
  asked,
  lot,
  onLot
}: {
  readonly asked: NonNullable<BenchAsk['words']>
  readonly lot: string
  readonly onLot: (lot: string) => void
}) {
  const parts = lot
    .split(',')
    .map(p => p.trim())
    .filter(p => p !== '')
  const press = (offer: string) => {
    const left = parts.filter(p => p !== offer)
    const now = (left.length < parts.length ? left : [...parts, offer]).join(', ')
    if (now.length <= asked.most) onLot(now)
  }
  return (
    <div class="pad-lot">
      <label>
        {asked.says}
        <input
          class="lot"
          value={lot}
          maxLength={asked.most}
          autocomplete="off"
          autocapitalize="characters"
          onInput={e => onLot(e.currentTarget.value)}
        />
      </label>
      {asked.offered.length === 0 ? null : (
        <fieldset>
          <legend>{b.lotOnShelf}</legend>
          {asked.offered.map(o => (
            <button key={o} type="button" aria-pressed={parts.includes(o)} onClick={() => press(o)}>
              {o}
            </button>
          ))}
        </fieldset>
      )}
    </div>
  )
}
