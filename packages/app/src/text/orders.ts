import type { OrderFiguresView, OrdersView } from '../worker/orders-view.ts'

const times = (n: number, word: string) => `${n} ${word}${n === 1 ? '' : 's'}`

/** Words of the order of the steps (English). */
export const orderWords = {
  head: 'Order of the steps',
  about: 'Coats, fillings, cuts and faces in another order: sooner, less work, less risk?',
  ask: 'Look for a better order',
  looking: (share: number) => `Planning other orders: ${Math.round(100 * share)} %`,
  found: (v: OrdersView) => {
    const better = v.ways.filter(w => w.better).length
    const of = `${times(v.looked, 'other order')} planned${v.whole ? '' : ', those nearest to yours'}`
    if (v.looked === 0) return 'Nothing is left that could stand elsewhere.'
    return better === 0 ? `Your order is the best: ${of}.` : `${times(better, 'better order')}: ${of}.`
  },
  gains: (says: string) => `${says.charAt(0).toUpperCase()}${says.slice(1)}.`,
  figures: (f: OrderFiguresView) =>
    [
      f.ready === '' ? 'No calendar' : `Ready ${f.ready}`,
      `${f.handsOn} at the bench in ${times(f.visits, 'visit')}`,
      ...(f.stops > 0 ? [times(f.stops, 'stop')] : []),
      ...(f.cautions > 0 ? [times(f.cautions, 'caution')] : [])
    ].join(', '),
  gives: (says: string) => `But ${says}.`,
  rid: (says: string) => `Gone: ${says}`,
  others: (n: number) => `${times(n, 'other order')}, no better`,
  refused: (n: number) => `${times(n, 'order')} not to be done, and why`,
  rule: (says: string) => `Better means: ${says}.`,
  take: 'Take this order'
} as const
