import { useState } from 'preact/hooks'
import type { BenchAsk } from '../../../engine/src/sheets/bench-ask.ts'
import { take } from '../state/bench.ts'
import { benchWords as b } from '../text/bench.ts'
import { LotField } from './lot-field.tsx'
import { NumberPad } from './number-pad.tsx'

/** What may be read at a step: the telling ones as large buttons, the others behind one. */
export function AskRow({ asks }: { readonly asks: readonly BenchAsk[] }) {
  const [pad, setPad] = useState<BenchAsk | null>(null)
  const [all, setAll] = useState(false)
  const [written, setWritten] = useState<string | null>(null)
  const press = (ask: BenchAsk) => {
    setWritten(null)
    if (ask.number === null) take({ ...ask.record }, ask.says)
    else setPad(ask)
  }
  if (pad !== null && pad.number !== null) {
    const { field, unit, planned } = pad.number
    // What the one before says may come in while the pad is open.
    const asked = (asks.find(a => a.says === pad.says) ?? pad).words
    const lot = written ?? asked?.before ?? ''
    const said = lot.replace(/\s+/g, ' ').trim()
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
          const more = asked === null || said === '' ? {} : { [asked.field]: said }
          take(
            { ...pad.record, [field]: value, ...more },
            `${pad.says} ${value} ${unit}${said === '' ? '' : `, ${b.lot(said)}`}`
          )
        }}
      >
        {asked === null ? null : <LotField asked={asked} lot={lot} onLot={setWritten} />}
      </NumberPad>
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
