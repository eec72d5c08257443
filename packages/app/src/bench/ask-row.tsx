import { useState } from 'preact/hooks'
import type { BenchAsk } from '../../../engine/src/sheets/bench-ask.ts'
import { take } from '../state/bench.ts'
import { benchWords as b } from '../text/bench.ts'
import { NumberPad } from './number-pad.tsx'

/** What may be read at a step: the telling ones as large buttons, the others behind one. */
export function AskRow({ asks }: { readonly asks: readonly BenchAsk[] }) {
  const [pad, setPad] = useState<BenchAsk | null>(null)
  const [all, setAll] = useState(false)
  const press = (ask: BenchAsk) => {
    if (ask.number === null) take({ ...ask.record }, ask.says)
    else setPad(ask)
  }
  if (pad !== null && pad.number !== null) {
    const { field, unit, planned } = pad.number
    return (
      <NumberPad
        key={pad.says}
        says={pad.says}
        unit={unit}
        planned={planned}
        onClose={() => setPad(null)}
        onEnter={value => {
          setPad(null)
          setAll(false)
          take({ ...pad.record, [field]: value }, `${pad.says} ${value} ${unit}`)
        }}
      />
    )
  }
  const large = asks.filter(a => a.large)
  const rest = asks.filter(a => !a.large)
  return (
    <section class="bench-asks" aria-label={b.asks}>
      <div class="asks-head">
        <h3>{large.length > 0 ? b.asks : b.readings}</h3>
        {rest.length === 0 ? null : (
          <button type="button" class="link" aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? b.close : b.reading}
          </button>
        )}
      </div>
      <div class="large">
        {large.map(a => (
          <button key={a.says} type="button" class="btn" onClick={() => press(a)}>
            {a.says}
          </button>
        ))}
      </div>
      {all ? (
        <div class="rest">
          {rest.map(a => (
            <button key={a.says} type="button" class="btn" onClick={() => press(a)}>
              {a.says}
            </button>
          ))}
        </div>
      ) : null}
    </section>
  )
}
