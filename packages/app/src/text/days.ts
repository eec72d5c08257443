/** Words of Days (English). */
export const daysWords = {
  region: 'Days',
  calendar: 'Calendar',
  list: 'Day by day',
  making: 'making the calendar',
  ready: (when: string) => `Piece ready on ${when}`,
  cost: (hands: string, days: number, visits: number) =>
    `${hands} at the bench in ${visits} ${visits === 1 ? 'visit' : 'visits'}, ${days.toFixed(1).replace(/\.0$/, '')} days on the calendar.`,
  late: (by: string) => `${by} later than wanted.`,
  unsettled: 'Windows and hours did not come to rest: look at the windows of each pour.',
  tightest: (says: string, slack: string) => `Tightest: ${says}, ${slack} to spare.`,
  clash: 'No calendar holds all of this',
  clashing: 'These do not go together',
  ways: 'Ways out',
  wayReady: (when: string) => `Ready ${when}.`,
  risk: (says: string) => `Risk: ${says}.`,
  takeWay: 'Do this',
  byHand: 'Nothing to change in the plan: it is done at the bench.',
  waySays: 'a way out of the clash',
  order: 'Order by',
  orderDays: (d: number) => `${Math.round(d)} ${Math.round(d) === 1 ? 'day' : 'days'} on the way`,
  file: 'Calendar file',
  undo: 'Undo the move',
  putSays: (says: string) => `put ${says}`,
  letGo: 'Let it go where it fits',
  letGoSays: 'a task goes where it fits',
  best: (from: string, to: string) => `best ${from} to ${to}`,
  bestKey: 'best time; soft ends are doubt',
  moved: (says: string) => `Put at ${says}`,
  movedTo: 'Moved',
  outside: 'It lies outside your hours at the bench there.',
  later: (min: string) => `Ready ${min} later.`,
  sooner: (min: string) => `Ready ${min} sooner.`,
  same: 'Ready at the same time.',
  none: 'Nothing else at the bench moves.',
  notHere: 'It cannot be there',
  stays: 'The calendar stays as it was.',
  takes: (min: string) => `Takes ${min}`,
  slack: (min: string) => `May begin up to ${min} later.`,
  given: 'Its moment is given.',
  earlier: '15 min earlier',
  afterwards: '15 min later',
  howTo: 'Drag a bar, or press the arrow keys on it: a quarter of an hour each. The rest moves with it.',
  visit: (from: string, to: string, tasks: number) => `${from} to ${to}, ${tasks} tasks`,
  more: (n: number) => `and ${n} more`,
  legend: 'What is drawn',
  lanes: {
    hands: 'your hands',
    stay: 'stay by it',
    machine: 'machine, you within reach',
    alone: 'left alone'
  },
  night: 'night',
  away: 'away from the bench, drawn narrow',
  span: (min: number) => {
    const m = Math.abs(Math.round(min))
    return m < 120
      ? `${m} min`
      : m < 2880
        ? `${Math.round(m / 60)} h`
        : `${(m / 1440).toFixed(1).replace(/\.0$/, '')} days`
  }
} as const
