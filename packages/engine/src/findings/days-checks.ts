/** What the calendar can say of a piece, beside what its checks say. */
export const DAYS_CHECKS = {
  late: { id: 'days-late', about: 'days that end after the date the piece is wanted' },
  order: { id: 'order-late', about: 'material that had to be ordered before today' },
  never: { id: 'hours-never', about: 'hours at the bench that never occur' },
  clash: { id: 'days-clash', about: 'windows and hours that no calendar keeps' },
  unsettled: { id: 'days-unsettled', about: 'windows that move with the hour of the pour' }
} as const
