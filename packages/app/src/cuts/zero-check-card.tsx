import { useState } from 'preact/hooks'
import type { ZeroCheck } from '../../../engine/src/cuts/pins/zero-check.ts'
import { zeroCheck } from '../../../engine/src/cuts/pins/zero-check.ts'
import { lengthIn } from '../../../engine/src/quantity/shown-units.ts'
import { units } from '../state/preferences.ts'
import { cutsWords as c } from '../text/cuts.ts'
import type { SettingView } from '../worker/cuts-view.ts'

const AXES = ['X', 'Y', 'Z'] as const

/** At the machine, before the first cut: three places are touched, their readings typed, and it says go or do not. */
export function ZeroCheckCard({
  setting,
  errorMm,
  toleranceMm
}: {
  readonly setting: SettingView
  readonly errorMm: number
  readonly toleranceMm: number
}) {
  const { points, reachMm } = setting.touch
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({})
  const value = (p: number, axis: string) => readMm(typed[`${p} ${axis}`] ?? '')
  const all = points.every((_, p) => value(p, 'X') !== null && value(p, 'Y') !== null)
  let said: ZeroCheck | null = null
  if (all && points.length === 3) {
    const touched = points.map((p, i) => ({
      drawn: [p.x, p.y] as const,
      read: [value(i, 'X')!, value(i, 'Y')!] as const
    }))
    said = zeroCheck({
      centre: touched[0]!,
      marks: [touched[1]!, touched[2]!],
      heightMm: value(0, 'Z'),
      reachMm,
      machineErrorMm: errorMm,
      toleranceMm
    })
  }
  const mm = (v: number) => lengthIn(units.value, v, 2)
  return (
    <details class="zero-check">
      <summary>{c.check}</summary>
      <p class="f">{c.checkSays}</p>
      <div class="touches">
        {points.map((p, i) => [
          <span key={`${p.name} name`} class="what">
            {c.touch(p.name, mm(p.x), mm(p.y))}
          </span>,
          ...AXES.map(axis =>
            axis === 'Z' && p.z === null ? (
              <span key={`${p.name} none`} />
            ) : (
              <input
                key={`${p.name} ${axis}`}
                inputMode="decimal"
                placeholder={axis}
                aria-label={c.read(p.name, axis)}
                value={typed[`${i} ${axis}`] ?? ''}
                onInput={e => setTyped({ ...typed, [`${i} ${axis}`]: e.currentTarget.value })}
              />
            )
          )
        ])}
      </div>
      <p class="zero-says" role="status">
        {said === null ? null : (
          <>
            <b class={said.go ? 'go' : 'no'}>{said.go ? c.go : c.noGo}</b> {said.says}
          </>
        )}
      </p>
    </details>
  )
}

// A figure as the machine shows it, in the unit lengths are shown in; null while it is none.
function readMm(text: string): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-')
  if (!/^[+-]?([0-9]+\.?[0-9]*|\.[0-9]+)$/.test(plain)) return null
  const v = Number(plain)
  return units.value.length === 'mm' ? v : v * MM_PER_INCH
}

const MM_PER_INCH = 25.4
