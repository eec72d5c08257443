import type { Point } from '../../../engine/src/draw/perspective.ts'
import { parseQuantity } from '../../../engine/src/quantity/parse.ts'
import { Choice } from '../look/choice.tsx'
import { QuantityField } from '../look/field.tsx'
import { TypedInput } from '../look/typed-input.tsx'
import { w } from '../text/words.ts'
import { layPhoto } from './desk-photo.ts'
import type { Laid, Way } from './laying.ts'
import { A4_MM, mapOf, marksOf } from './laying.ts'

/** Sheets of paper a rectangle may be, mm: ISO 216; ANSI/ASME Y14.1 (memory). */
const SHEETS = [
  ['A4', A4_MM],
  ['A3', [297, 420]],
  ['A5', [148, 210]],
  ['Letter', [215.9, 279.4]]
] as const

/** Beside the photo as it was taken: what is known of it, and what the marks say. */
export function LayFields({ laid, onFlat }: { readonly laid: Laid; readonly onFlat: () => void }) {
  const needs = marksOf(laid.way)
  const all = laid.marks.length === needs
  const map = all ? mapOf(laid) : null
  const problem = map !== null && 'problem' in map ? map.problem : null
  const [wide, high] = laid.sidesMm
  const sheet = SHEETS.find(([, [a, b]]) => (a === wide && b === high) || (a === high && b === wide))
  return (
    <>
      <div class="cap">
        <h2>{w.photo.ways}</h2>
        <Choice<Way>
          words={w.photo.ways}
          options={[
            ['rectangle', w.photo.rectangle],
            ['distance', w.photo.distance]
          ]}
          value={laid.way}
          onPick={way => {
            if (way !== laid.way) layPhoto({ way, marks: [] })
          }}
        />
      </div>
      <p class="next" role="status">
        {all
          ? problem === null
            ? w.photo.marked
            : ''
          : w.photo.markNext(
              laid.marks.length + 1,
              needs,
              laid.way === 'rectangle' ? w.photo.corner : w.photo.point
            )}
      </p>
      {problem === null ? null : (
        <p class="says-bad" role="alert">
          {w.photo.cannot(problem)}
        </p>
      )}
      <dl class="fields">
        {laid.way === 'rectangle' ? (
          <>
            <div class="field">
              <dt>{w.photo.sheets}</dt>
              <dd class="ways">
                {SHEETS.map(([name, sides]) => (
                  <button
                    key={name}
                    type="button"
                    class="link"
                    aria-pressed={name === sheet?.[0]}
                    onClick={() => layPhoto({ sidesMm: wide > high ? [sides[1], sides[0]] : sides })}
                  >
                    {name}
                  </button>
                ))}
              </dd>
            </div>
            <Length
              label={w.photo.wideSide}
              value={wide}
              least={1}
              onChange={v => layPhoto({ sidesMm: [v, high] })}
            />
            <Length
              label={w.photo.highSide}
              value={high}
              least={1}
              onChange={v => layPhoto({ sidesMm: [wide, v] })}
            />
          </>
        ) : (
          <Length
            label={w.photo.length}
            value={laid.distanceMm}
            least={1}
            onChange={distanceMm => layPhoto({ distanceMm })}
          />
        )}
      </dl>
      <p class="ways">
        {laid.way === 'rectangle' ? (
          <button type="button" class="link" onClick={() => layPhoto({ sidesMm: [high, wide] })}>
            {w.photo.swap}
          </button>
        ) : null}
        <button
          type="button"
          class="link"
          disabled={laid.marks.length === 0}
          onClick={() => layPhoto({ marks: [] })}
        >
          {w.photo.marksAgain}
        </button>
      </p>
      <p class="f">{laid.way === 'rectangle' ? w.photo.errorSays : w.photo.squarely}</p>
      <button type="button" class="btn main" disabled={!all || problem !== null} onClick={onFlat}>
        {w.photo.toTrace}
      </button>
    </>
  )
}

/** A length in the units shown, kept in mm. */
function Length(p: {
  readonly label: string
  readonly value: number
  readonly least: number
  readonly onChange: (mm: number) => void
}) {
  return (
    <div class="field">
      <dt>{p.label}</dt>
      <dd>
        <QuantityField
          label={p.label}
          value={p.value}
          dimension="length"
          min={p.least}
          max={10_000}
          onChange={v => {
            const mm = millimetres(v)
            if (mm !== null) p.onChange(mm)
          }}
        />
      </dd>
    </div>
  )
}

/** Where the first mark lies on the plan, and how the photo is turned about it. */
export function PlaceFields({ laid }: { readonly laid: Laid }) {
  const [x, y] = laid.at ?? [0, 0]
  const place = (at: Point) => layPhoto({ at })
  return (
    <dl class="fields">
      <div class="field">
        <dt>{w.photo.lies}</dt>
        <dd>
          {(
            [
              ['x', w.photo.x, x, (v: number) => place([v, y])],
              ['y', w.photo.y, y, (v: number) => place([x, v])]
            ] as const
          ).map(([axis, label, value, onChange]) => (
            <span key={label} class="pair">
              <i>{axis}</i>
              <QuantityField
                label={label}
                value={value}
                dimension="length"
                min={-20_000}
                max={20_000}
                onChange={v => {
                  const mm = millimetres(v)
                  if (mm !== null) onChange(mm)
                }}
              />
            </span>
          ))}
        </dd>
      </div>
      <div class="field">
        <dt>{w.photo.turned}</dt>
        <dd>
          <span class="pair">
            <TypedInput
              type="number"
              look="number"
              label={w.photo.turnedBy}
              shown={String(laid.turnDeg)}
              min={-360}
              max={360}
              onCommit={text => {
                const v = Number(text)
                if (text !== '' && v >= -360 && v <= 360) layPhoto({ turnDeg: v })
                return undefined
              }}
            />
            <u>°</u>
          </span>
        </dd>
      </div>
    </dl>
  )
}

function millimetres(v: number | string | undefined): number | null {
  if (v === undefined) return null
  return typeof v === 'number' ? v : (parseQuantity(v, 'length')?.value ?? null)
}
