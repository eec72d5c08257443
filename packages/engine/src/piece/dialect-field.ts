import { z } from 'zod'
import { choice, length, number, whole, yesNo } from './field.ts'

/** Most lines of the maker's own, at the start or the end, and letters of each. */
const MOST_LINES = 20
const MOST_LETTERS = 200

/**
 * A line of the maker's own is written as typed: what the writer cannot vouch for is refused. Outside comments the
 * standard's characters (RS274/NGC, NISTIR 6556, 3.3); in them printable ASCII. M2 and M30 end a program: only the
 * writer ends it.
 */
function lineHolds(line: string, ctx: z.core.$RefinementCtx<string>): void {
  const wrong = wrongLine(line)
  if (wrong !== null)
    ctx.addIssue({
      code: 'custom',
      message: 'no line of a program',
      params: { meaning: true, allowed: wrong, example: '"G64"' }
    })
}

function wrongLine(line: string): string | null {
  const bare = line.replace(/\([^()]*\)/g, '')
  if (/[()]/.test(bare)) return 'comments in one pair of brackets, closed on the line'
  const odd = /[^A-Za-z0-9 .+\-*/#=[\],:%]/.exec(bare)
  if (odd !== null)
    return `characters of RS-274; ${JSON.stringify(odd[0])} stands in no program outside comments`
  const words = bare.replace(/ /g, '').toUpperCase()
  if (words.includes('%') && words !== '%') return '% alone on its line'
  if (/M0*(2|30)(?![0-9])/.test(words)) return 'no M2 and no M30: the program ends itself'
  return null
}

const ownLines = (description: string) =>
  z
    .array(
      z
        .string()
        .regex(new RegExp(`^[ -~]{1,${MOST_LETTERS}}$`))
        .superRefine(lineHolds)
        .meta({ description: `one line, at most ${MOST_LETTERS} characters of ASCII`, sample: ['G64'] })
    )
    .max(MOST_LINES)
    .default([])
    .meta({ description, sample: [['G64']] })

/** How the machine wants its programs written (RS-274). */
export const dialectField = z
  .strictObject({
    units: choice('what lengths are written in', ['mm', 'inch']).default('mm'),
    arcs: yesNo('arcs as arcs; else as short straight lines').default(true),
    cycles: yesNo('drilling as canned cycles (G81, G82, G83); else every move by itself').default(false),
    changes: choice('what happens where another cutter is wanted', [
      'one program a cutter',
      'in the program'
    ]).default('one program a cutter'),
    decimals: whole('decimals of lengths; left out: 3 in mm, 4 in inches', 2, 6).optional(),
    lineNumbers: yesNo('N words in front of lines').default(false),
    comments: yesNo('comments, and with them the header').default(true),
    startLines: ownLines('lines of your own, in front of everything'),
    endLines: ownLines('lines of your own, before the program ends; a lone % goes last'),
    spindleWait: number('seconds until the spindle runs at speed', 0, 120).default(4),
    air: choice('what blows at the cutter', ['none', 'M7', 'M8']).default('none'),
    lift: length('how high above the work the cutter crosses it', 1, 200).default(5),
    zero: choice('where heights are zero', ['worked face', 'bed']).default('worked face'),
    ending: z
      .string()
      .regex(/^[a-z0-9]{1,8}$/)
      .default('nc')
      .meta({ description: 'ending of the files (small letters and digits; at most 8)', sample: ['nc'] })
  })
  .superRefine(({ units, decimals }, ctx) => {
    if (units === 'inch' && decimals === 2)
      ctx.addIssue({
        code: 'custom',
        message: 'too coarse',
        path: ['decimals'],
        params: {
          meaning: true,
          allowed: '3 to 6 in inches: a hundredth of an inch is a quarter of a mm',
          example: '4'
        }
      })
  })
  .meta({ description: 'how the machine wants its programs', sample: [{ units: 'mm', decimals: 3 }] })

export type Dialect = z.output<typeof dialectField>

/** The dialect of a machine that nothing was said of. */
export function usualDialect(): Dialect {
  return dialectField.parse({})
}
