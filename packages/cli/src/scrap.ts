import type { fittedTests } from '@castwright/engine'
import { decimals, parseQuantity } from '@castwright/engine'
import { Failure } from './failure.ts'

type Fitted = ReturnType<typeof fittedTests>
type Scrap = Parameters<typeof fittedTests>[1]

/** Longest and thickest board that is taken for a scrap, mm. */
const MOST_MM = 5000

/** A board as it is typed: length, width and thickness with an x between; in mm, or each with its unit. */
export function scrapOf(text: string | undefined): Scrap | null {
  if (text === undefined) return null
  const parts = text.split(/[x×]/).map(s => s.trim())
  const [x, y, thickness] = parts.map(p =>
    /^[0-9.]{1,12}$/.test(p) ? Number(p) : (parseQuantity(p, 'length')?.value ?? Number.NaN)
  )
  // A unit with one length alone may be meant for all of them, or not.
  const units = new Set(parts.map(p => /[^0-9. /]/.test(p)))
  const whole = parts.length === 3 && units.size === 1
  for (const mm of [x, y, thickness])
    if (!(whole && mm !== undefined && mm > 0 && mm <= MOST_MM))
      throw new Failure(
        `castwright cuts: found --scrap ${text.slice(0, 60)}; allowed: length x width x thickness up to ${MOST_MM} mm, as "200 x 120 x 12" in mm or "8 in x 5 in x 1/2 in"`
      )
  return { x: x!, y: y!, thickness: thickness! }
}

/** What a scrap has no room for. */
export function shortWords({ file, needs, leftOut, all }: Fitted['short'][number]): string {
  const board = `a board of ${[needs.x, needs.y, needs.thickness].map(v => decimals(v, 0)).join(' x ')} mm takes all of it`
  return all
    ? `no test cut of ${file}: none of it goes on the scrap; ${board}`
    : `the test cut of ${file} leaves out ${leftOut} ${leftOut === 1 ? 'pass' : 'passes'} that the scrap has no room for; ${board}`
}
