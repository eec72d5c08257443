/**
 * Days of the calendar: what a date's form cannot say.
 *
 * Gregorian rule, ISO 8601: every fourth year is a leap year, every hundredth is not, every four-hundredth is.
 * Month 1 to 12, year 0 to 9999.
 */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31
}

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December'
]

/**
 * What is wrong with the day that `text` begins with (`YYYY-MM-DD`): what is allowed, in words, and the same
 * text at the last day of that month. null when it is a day of the calendar, or has not the form of one.
 */
export function noSuchDay(text: string): { readonly allowed: string; readonly last: string } | null {
  if (!/^[0-9]{4}-(0[1-9]|1[0-2])-[0-9]{2}/.test(text)) return null
  const year = Number(text.slice(0, 4))
  const month = Number(text.slice(5, 7))
  const most = daysInMonth(year, month)
  if (Number(text.slice(8, 10)) <= most) return null
  return {
    allowed: `a day of the calendar: ${MONTHS[month - 1]} ${year} has ${most} days`,
    last: `${text.slice(0, 8)}${most}${text.slice(10)}`
  }
}

/** The day, `YYYY-MM-DD`, that lies so many days after a moment (ISO 8601 with offset), in the moment's own zone. */
export function dayAfter(moment: string, days: number): string {
  const sign = /([+-])(\d\d):(\d\d)$/.exec(moment)
  const offsetMin = sign === null ? 0 : (sign[1] === '-' ? -1 : 1) * (Number(sign[2]) * 60 + Number(sign[3]))
  return new Date(Date.parse(moment) + (offsetMin + days * 1440) * 60_000).toISOString().slice(0, 10)
}

/** A day of a clock as `YYYY-MM-DD`. */
export function dayText(d: { readonly year: number; readonly month: number; readonly day: number }): string {
  const two = (x: number) => String(x).padStart(2, '0')
  return `${d.year}-${two(d.month)}-${two(d.day)}`
}

/** A day `YYYY-MM-DD` in words: "12 Feb 2027". */
export function dayWords(day: string): string {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number]
  return `${date} ${MONTHS[month - 1]!.slice(0, 3)} ${year}`
}
