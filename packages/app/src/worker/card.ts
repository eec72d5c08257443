import { cardSaid } from '../../../engine/src/fits/card-words.ts'
import { InputProblem } from '../../../engine/src/piece/problem.ts'
import { checkShop } from '../../../engine/src/piece/read.ts'
import type { Json } from './document.ts'
import type { CardAsk } from './messages.ts'
import type { CardAnswer } from './views.ts'

/** Most lines of a card. */
const MOST_LINES = 40
const COLOUR = /^#[0-9a-f]{6}$/i

/**
 * Reads a hiding card that was typed, or one that the shop keeps; nothing is kept.
 * @throws InputProblem for steps, figures or a shop that cannot be used
 */
export function cardAnswer({ shop, kept, typed }: CardAsk): CardAnswer {
  const document = shop ?? { castwright: 1 }
  const cards = (document['cards'] as Json[] | undefined) ?? []
  if (kept !== null)
    return { document: cards[kept]!, ...cardSaid(checkShop(document, 'the shop').value, kept) }
  const card = typed === null ? {} : cardOf(typed)
  const checked = checkShop({ ...document, cards: [...cards, card] }, 'the shop').value
  return { document: card, ...cardSaid(checked, cards.length) }
}

function cardOf(typed: NonNullable<CardAsk['typed']>): Json {
  const { pigment, percent, resin, shows, hides, steps } = typed
  if (percent === undefined) throw wrong('share of the mix', 'none', 'a share of the mix, %', '2')
  const of: Json = { pigment, percent, ...(resin === '' ? {} : { resin }) }
  if (steps === null) {
    if (shows === undefined || hides === undefined)
      throw wrong(
        'depths',
        'one of them missing',
        'the deepest step that shows and the shallowest that hides',
        ''
      )
    return { ...of, wedge: { shows, hides } }
  }
  return { ...of, steps: stepsOf(steps) }
}

/** One step a line: depth, colour over black, colour over white. */
function stepsOf(text: string): Json[] {
  const lines = text.split(/\r?\n/).flatMap((line, i) => (line.trim() === '' ? [] : [[i + 1, line] as const]))
  if (lines.length > MOST_LINES)
    throw wrong('steps', `${lines.length} lines`, `at most ${MOST_LINES} steps`, '')
  return lines.map(([at, line]) => {
    const [depth, overBlack, overWhite, ...more] = line.trim().split(/[\s;,]+/)
    const mm = Number(depth)
    const sound =
      more.length === 0 && Number.isFinite(mm) && COLOUR.test(overBlack ?? '') && COLOUR.test(overWhite ?? '')
    if (!sound)
      throw wrong(
        `line ${at}`,
        `"${line.trim().slice(0, 60)}"`,
        'a depth in mm, the colour over black, the colour over white',
        '0.8 #c6c7c6 #e3e3e1'
      )
    return { depth: mm, overBlack, overWhite }
  })
}

function wrong(where: string, found: string, allowed: string, example: string): InputProblem {
  return new InputProblem('the card', [{ path: where, found, allowed, example }])
}
