/** What is asked first, and under what heading. Cup tests and hiding cards have places of their own. */
export const GROUPS = [
  ['room', ['name', 'climate', 'storage']],
  [
    'bench',
    [
      'vessels',
      'scale',
      'machine',
      'cutters',
      'byHand',
      'hand',
      'sander',
      'secondPair',
      'hours',
      'away',
      'alarm',
      'minutes',
      'timeZone',
      'units'
    ]
  ],
  ['resins', ['resins', 'leftover', 'spare']],
  ['money', ['currency', 'rates', 'prices', 'suppliers', 'sentOut', 'note']]
] as const
