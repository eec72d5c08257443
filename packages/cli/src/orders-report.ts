import type { OrderFigures, Orders } from '@castwright/engine'
import { formatMinutes, localMoment, ORDER_RULE } from '@castwright/engine'
import { lineWidth, paint, plain, wrap } from './paint.ts'

/** Other orders of the steps as a terminal shows them: the given one, what else there is, what is refused and why. */
export function ordersReport(name: string, orders: Orders, timeZone: string): string {
  const lines = [paint.strong(`${plain(name)}: the order of the steps`), '']
  lines.push(...wrap(`As it stands: ${figures(orders.given, timeZone)}.`, lineWidth()))
  const better = orders.ways.filter(w => w.better)
  lines.push('')
  if (better.length === 0)
    lines.push(
      ...wrap(
        orders.looked === 0
          ? 'Nothing is left that could stand elsewhere.'
          : `The order as it stands is the best of ${orders.looked + 1} that were planned.`,
        lineWidth()
      )
    )
  else lines.push(paint.strong('Better'))
  orders.ways.forEach((w, i) => {
    if (i === better.length) lines.push('', paint.strong('No better'))
    lines.push(...hanging(`${i + 1}. ${w.does}: ${w.gains}.`))
    lines.push(...hanging(`${figures(w.figures, timeZone)}.`, 4))
    for (const g of w.gives) lines.push(...hanging(`But ${g}.`, 4))
    for (const f of w.worse) lines.push(...hanging(`New: ${f.says}`, 4))
    for (const f of w.rid) lines.push(...hanging(`Gone: ${f.says}`, 4))
  })
  if (orders.refused.length > 0) lines.push('', paint.strong('Not to be done'))
  for (const r of orders.refused) lines.push(...hanging(`${r.does}: ${r.why} (${r.basis}).`))
  lines.push('')
  if (!orders.whole)
    lines.push(
      ...wrap(
        `${orders.looked} orders were planned, those nearest to the one that stands; there are more.`,
        lineWidth()
      )
    )
  lines.push(...wrap(`What is better: ${ORDER_RULE}.`, lineWidth()))
  return `${lines.join('\n')}\n`
}

function figures(f: OrderFigures, timeZone: string): string {
  const ready =
    f.readyMs === null
      ? 'no calendar'
      : `ready ${localMoment(f.readyMs, timeZone).slice(0, 16).replace('T', ' ')}`
  const warned = [count(f.stops, 'stop'), count(f.cautions, 'caution')].filter(s => s !== null).join(', ')
  return `${ready}, ${formatMinutes(f.handsMin)} of hands-on work, ${f.visits} times at the bench${warned === '' ? '' : `, ${warned}`}`
}

function count(n: number, word: string): string | null {
  return n === 0 ? null : `${n} ${word}${n === 1 ? '' : 's'}`
}

function hanging(says: string, indent = 2): string[] {
  const [first = '', ...rest] = wrap(says, lineWidth() - indent)
  const pad = ' '.repeat(indent)
  return [`${pad}${first}`, ...rest.map(r => `${pad}${r}`)]
}
