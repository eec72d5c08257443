import { useEffect, useState } from 'preact/hooks'
import type { Dimension } from '../../../engine/src/quantity/unit.ts'
import { Choice } from '../look/choice.tsx'
import { QuantityField } from '../look/field.tsx'
import { PickFile } from '../look/pick-file.tsx'
import { cup, cupBusy, cupWrong, readCup } from '../state/cup.ts'
import { units } from '../state/preferences.ts'
import { width } from '../state/screen.ts'
import { editShop, shop, shopSays } from '../state/shop.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import type { CupAsk } from '../worker/messages.ts'
import { keepPatch } from './cup-patch.ts'
import { CupResult } from './cup-result.tsx'
import { type CLASSES, ClassResins, KeepOrLeave, OwnResins, ReadingLines } from './form-parts.tsx'

/** How long the hand rests before readings are fitted, ms. */
const REST_MS = 350
/** Largest file of readings, bytes: as many as the reader takes characters. */
const MOST_BYTES = 4_000_000
/** Stands for a resin that is not in the shop yet; no name is empty. */
const NEW = ''

type Given = CupAsk['given']
type Key = 'mass' | 'diameter' | 'room' | 'start' | 'strings' | 'gelled'
const FIGURES: readonly (readonly [Key, Dimension, number, number])[] = [
  ['mass', 'mass', 5, 50_000],
  ['diameter', 'length', 20, 1000],
  ['room', 'temperature', 0, 45],
  ['start', 'temperature', 5, 60],
  ['strings', 'time', 1, 43_200],
  ['gelled', 'time', 1, 43_200]
]

/** A form for a cup that was watched: readings pasted, typed or from a file; fitted as they come, kept by one press. */
export function CupForm({ onClose }: { readonly onClose: () => void }) {
  const resins = ((shop.value?.document['resins'] as Json[] | undefined) ?? []).filter(
    r => (r['family'] ?? 'epoxy') === 'epoxy'
  )
  const [resin, setResin] = useState(resins.length === 0 ? NEW : String(resins[0]!['id']))
  const [name, setName] = useState('')
  const [like, setLike] = useState<(typeof CLASSES)[number]>('medium')
  const [text, setText] = useState('')
  const [given, setGiven] = useState<Given>({})
  const [file, setFile] = useState('')
  const of = { id: resin === NEW ? name.trim() : resin, like: resin === NEW ? like : null }
  const put = (key: keyof Given, value: unknown) => setGiven({ ...given, [key]: value })
  // Fitted once the hand rests; a form without readings says nothing yet.
  useEffect(() => {
    if (text.trim() === '' || of.id === '') return
    // What is shown precedes what was just typed: it is not kept.
    cupBusy.value = true
    const rest = setTimeout(() => readCup({ resin: of, text, given, kept: null }), REST_MS)
    return () => clearTimeout(rest)
  }, [text, given, of.id, of.like, units.value, width.value])
  const told = cup.value?.document
  const wrong = cupWrong.value
  const keep = async () => {
    const test = cup.value?.document
    if (test === undefined) return
    await editShop(keepPatch(shop.value?.document ?? { castwright: 1 }, of, test))
    if (shopSays.value === '') onClose()
  }
  return (
    <div class="cup-form" role="group" aria-label={w.cup.begin}>
      <div class="asks">
        <label>
          <span>{w.cup.resin}</span>
          <select value={resin} onChange={e => setResin(e.currentTarget.value)}>
            <OwnResins resins={resins} />
            <option value={NEW}>{w.cup.newResin}</option>
          </select>
        </label>
        {resin === NEW ? (
          <>
            <label>
              <span>{w.cup.name}</span>
              <input type="text" maxLength={60} value={name} onInput={e => setName(e.currentTarget.value)} />
            </label>
            <label>
              <span>{w.cup.like}</span>
              <select value={like} onChange={e => setLike(e.currentTarget.value as typeof like)}>
                <ClassResins />
              </select>
            </label>
          </>
        ) : null}
        {FIGURES.map(([key, dimension, min, max]) => (
          <label key={key}>
            <span>{w.cup.figures[key]}</span>
            <QuantityField
              label={w.cup.figures[key]}
              value={given[key] ?? (told?.[key] as number | undefined)}
              usual={given[key] === undefined}
              dimension={dimension}
              min={min}
              max={max}
              placeholder={w.card.leave}
              onChange={v => put(key, v)}
            />
          </label>
        ))}
        <label>
          <span>{w.cup.mixed}</span>
          <input
            type="time"
            value={given.mixed ?? ''}
            onChange={e => put('mixed', e.currentTarget.value || undefined)}
          />
        </label>
        <label>
          <span>{w.cup.day}</span>
          <input
            type="date"
            value={given.day ?? ''}
            onChange={e => put('day', e.currentTarget.value || undefined)}
          />
        </label>
      </div>
      <ReadingLines
        words={w.cup.readings}
        example={w.cup.example}
        how={w.cup.how}
        rows={9}
        value={text}
        onText={read => {
          setFile('')
          setText(read)
        }}
      />
      <p class="ways">
        <PickFile
          words={w.cup.file}
          accept=".csv,.txt,.tsv,text/csv,text/plain"
          mostBytes={MOST_BYTES}
          onProblem={says => {
            cup.value = null
            cupWrong.value = { says, asksUnit: false }
          }}
          onText={async (called, read) => {
            setFile(called)
            setText(read)
          }}
        />
        <span class="f">{file}</span>
        <Choice
          words={w.cup.unit}
          options={[
            ['', w.cup.asWritten],
            ['°C', '°C'],
            ['°F', '°F']
          ]}
          value={given.unit ?? ''}
          onPick={u => put('unit', u === '' ? undefined : u)}
        />
      </p>
      {wrong === null ? null : (
        <div class="cup-wrong" role="alert">
          <p>
            {w.cup.wrong} {wrong.says}
          </p>
          {wrong.asksUnit ? (
            <p class="ways">
              <span>{w.cup.which}</span>
              {(['°C', '°F'] as const).map(u => (
                <button key={u} type="button" class="btn" onClick={() => put('unit', u)}>
                  {w.cup.these(u)}
                </button>
              ))}
            </p>
          ) : null}
        </div>
      )}
      {text.trim() === '' || of.id === '' ? null : <CupResult />}
      <KeepOrLeave
        keep={w.cup.keep}
        ready={cup.value?.believed === true && !cupBusy.value && text.trim() !== '' && of.id !== ''}
        onKeep={() => void keep()}
        onLeave={onClose}
      />
    </div>
  )
}
