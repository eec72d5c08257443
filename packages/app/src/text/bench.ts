/** Words of the Bench (English). */
export const benchWords = {
  region: 'Bench',
  step: (n: number) => `Step ${n}`,
  of: (count: number) => `of ${count}`,
  sent: 'sent',
  keptHere: 'no network, kept here',
  sending: 'being sent',
  now: (time: string) => `now ${time}`,
  left: 'left of the best time',
  leftUntil: 'left',
  opens: 'until it opens',
  waits: 'still to wait',
  over: 'the wait is over',
  past: 'past the best time',
  due: 'until it is due',
  open: (from: string, to: string | null) => (to === null ? `from ${from}` : `${from} to ${to}`),
  units: {
    hours: ['hour', 'hours'],
    minutes: ['minute', 'minutes'],
    days: ['day', 'days']
  },
  others: 'More times of this step',
  batch: (n: number, blanks: number) => {
    const together = blanks > 1 ? ` for ${blanks} blanks together` : ''
    return n === 1 ? `One batch${together}` : `${n} batches${together}, each`
  },
  total: 'Total',
  vessel: (v: string) => `In a ${v}.`,
  safety: 'Safety',
  yields: (to: string) => `Gives way to ${to}.`,
  reading: 'Enter a reading',
  readings: 'What was measured?',
  asks: 'What do you see?',
  close: 'Close',
  enter: (unit: string) => (unit === '' ? 'Enter' : `Enter, ${unit}`),
  plan: (figure: string) => `plan ${figure}`,
  del: 'Delete',
  begin: 'I begin now',
  begun: (time: string, minutes: number) =>
    minutes < 1 ? `Begun at ${time}` : `Begun at ${time}, ${minutes} min ago`,
  begunSays: 'begun',
  keepRegion: 'Photo or note of this step',
  keptRegion: 'Photos and notes of this step',
  photo: 'Take a photo',
  photoOf: (time: string) => `Photo taken at ${time}`,
  photoOpening: 'Making it small',
  photoNone: 'That is no picture this device can open: take a JPEG or PNG.',
  photoKept: 'Photo',
  lot: (lot: string) => `lot ${lot}`,
  lotOnShelf: 'On the shelf',
  note: 'Write a note',
  noteKept: 'Note',
  keep: 'Keep it',
  done: 'Done',
  hold: 'hold 2 s; can be undone',
  holdKeys: 'Press and hold for two seconds, or hold Enter',
  doneBefore: 'Done: what comes after it is begun',
  changed: 'Otherwise than planned',
  odd: 'Readings that do not go together',
  doneAt: (time: string) => `Done at ${time}`,
  recorded: (says: string, time: string) => `${says}, recorded ${time}.`,
  undo: 'Take it back',
  earlier: 'Step before',
  later: 'Step after',
  toDue: 'To the step that is to be done',
  allDone: 'All steps are done.',
  allDoneSays: 'The piece can go out. What was recorded stays with it.',
  stop: 'Not while a stop stands',
  stopSays: 'Steps already begun are shown, with what makes them safe.',
  stopNone: 'Nothing was begun: no step is shown until the stop is cleared.',
  toSheet: 'To the sheet',
  alert: (says: string, time: string) => `${says}: ${time}.`,
  different: 'It went differently',
  whatHappened: 'What do you see?',
  looking: 'Planning the ways on',
  none: 'The readings show nothing that breaks the plan.',
  back: 'Back to the step',
  answerMm: 'in mm',
  answer: 'Enter',
  time: 'time',
  money: 'money',
  risk: 'risk',
  how: 'How it is done',
  daysMore: (days: number | null) => {
    if (days === null) return 'no day found for it'
    const sign = days > 0 ? '+ ' : '− '
    const hours = Math.round(Math.abs(days) * 24)
    if (hours === 0) return 'none'
    if (hours < 24) return `${sign}${hours} h`
    const tenths = Math.round(Math.abs(days) * 10) / 10
    return `${sign}${tenths} day${tenths === 1 ? '' : 's'}`
  },
  moneyMore: (money: number, currency: string, atLeast: boolean) => {
    if (Math.abs(money) < 0.005) return atLeast ? 'no price known' : 'none'
    return `${atLeast ? 'at least ' : ''}${money > 0 ? '+ ' : '− '}${Math.abs(money).toFixed(2)} ${currency}`
  },
  take: 'Take this',
  gives: (list: readonly string[]) =>
    list.length === 0 ? 'Gives up nothing that shows.' : `Gives up: ${list.join('; ')}.`,
  besides: 'Besides:',
  brings: 'Brings:',
  closed: 'Not open, and why',
  ranked: (rule: string) => `In this order: ${rule}.`,
  lost: 'The piece is given up.'
}
