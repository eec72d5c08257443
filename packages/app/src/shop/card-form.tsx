import { useEffect, useState } from 'preact/hooks'
import { Choice } from '../look/choice.tsx'
import { QuantityField } from '../look/field.tsx'
import { card, cardBusy, cardWrong, readCard } from '../state/card.ts'
import { fields } from '../state/fields.ts'
import { editShop, shop, shopSays } from '../state/shop.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import { CardSays } from './card-says.tsx'
import { ClassResins, KeepOrLeave, OwnResins, ReadingLines } from './form-parts.tsx'

/** How long the hand rests before a card is read, ms. */
const REST_MS = 350

/** A form for a hiding card: colours read at its steps, or only which step shows and which hides. */
export function CardForm({ onClose }: { readonly onClose: () => void }) {
  const pigments = fields.value?.tint ?? []
  const own = (shop.value?.document['resins'] as Json[] | undefined) ?? []
  const [picked, setPigment] = useState('')
  // The catalogue's names may come after the form is there.
  const pigment = picked === '' ? (pigments[0]?.[0] ?? '') : picked
  const [percent, setPercent] = useState<number | undefined>(undefined)
  const [resin, setResin] = useState('')
  const [way, setWay] = useState<'looked' | 'read'>('looked')
  const [shows, setShows] = useState<number | string | undefined>(undefined)
  const [hides, setHides] = useState<number | string | undefined>(undefined)
  const [steps, setSteps] = useState('')
  const whole =
    percent !== undefined &&
    (way === 'read' ? steps.trim() !== '' : shows !== undefined && hides !== undefined)
  useEffect(() => {
    if (!whole) return
    // What is shown precedes what was just typed: it is not kept.
    cardBusy.value = true
    const typed = { pigment, percent, resin, shows, hides, steps: way === 'read' ? steps : null }
    const rest = setTimeout(() => readCard({ kept: null, typed }), REST_MS)
    return () => clearTimeout(rest)
  }, [pigment, percent, resin, way, shows, hides, steps])
  const keep = async () => {
    const document = card.value?.document
    if (document === undefined) return
    const path = shop.value?.document['cards'] === undefined ? '/cards' : '/cards/-'
    await editShop([{ op: 'add', path, value: path === '/cards' ? [document] : document }])
    if (shopSays.value === '') onClose()
  }
  const depth = (label: string, value: number | string | undefined, put: typeof setShows) => (
    <label>
      <span>{label}</span>
      <QuantityField
        label={label}
        value={value}
        dimension="length"
        min={0.01}
        max={500}
        placeholder={w.card.leave}
        onChange={put}
      />
    </label>
  )
  return (
    <div class="cup-form" role="group" aria-label={w.hidingCard.begin}>
      <div class="asks">
        <label>
          <span>{w.hidingCard.pigment}</span>
          <select value={pigment} onChange={e => setPigment(e.currentTarget.value)}>
            {pigments.map(([id, name]) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>{w.hidingCard.percent}</span>
          <QuantityField
            label={w.hidingCard.percent}
            value={percent}
            dimension="percent"
            min={0.0001}
            max={30}
            placeholder={w.card.leave}
            onChange={v => setPercent(typeof v === 'number' ? v : undefined)}
          />
        </label>
        <label>
          <span>{w.hidingCard.resin}</span>
          <select value={resin} onChange={e => setResin(e.currentTarget.value)}>
            <option value="">{w.hidingCard.anyResin}</option>
            <OwnResins resins={own} />
            <ClassResins />
          </select>
        </label>
      </div>
      <Choice
        words={w.hidingCard.way}
        options={[
          ['looked', w.hidingCard.looked],
          ['read', w.hidingCard.read]
        ]}
        value={way}
        onPick={setWay}
      />
      {way === 'looked' ? (
        <div class="asks">
          {depth(w.hidingCard.shows, shows, setShows)}
          {depth(w.hidingCard.hides, hides, setHides)}
        </div>
      ) : (
        <ReadingLines
          words={w.hidingCard.steps}
          example={w.hidingCard.example}
          how={w.hidingCard.how}
          rows={5}
          value={steps}
          onText={setSteps}
        />
      )}
      {cardWrong.value === null || !whole ? null : (
        <p class="cup-wrong" role="alert">
          {w.cup.wrong} {cardWrong.value}
        </p>
      )}
      {whole ? <CardSays /> : null}
      <KeepOrLeave
        keep={w.hidingCard.keep}
        ready={whole && card.value !== null && !cardBusy.value}
        onKeep={() => void keep()}
        onLeave={onClose}
      />
    </div>
  )
}
