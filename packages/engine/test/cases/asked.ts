import type { Finding } from '../../src/findings/finding.ts'
import type { Work } from '../../src/findings/work.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import { readingSchema } from '../../src/piece/reading-schema.ts'
import { workOf } from '../../src/work.ts'
import type { Given } from '../findings/harness.ts'
import { findings } from '../findings/harness.ts'

/** The findings of one check. */
export function asked(given: Given, id: string): Finding[] {
  return findings(given).filter(f => f.id === id)
}

/** The one finding of a check; fails when there is none or more than one. */
export function theOne(given: Given, id: string): Finding {
  const all = findings(given)
  const found = all.filter(f => f.id === id)
  if (found.length !== 1)
    throw new Error(
      `${found.length} findings "${id}"; there are ${all.map(f => `${f.id} ${f.at}`).join(', ')}`
    )
  return found[0]!
}

/** What every stage found, for the arithmetic of a case. */
export function worked(given: Given): Work {
  return workOf({
    piece: checkPiece(given.piece, 'piece'),
    shop: checkShop(given.shop ?? { castwright: 1 }, 'shop').value,
    readings: (given.readings ?? []).map(r => readingSchema.parse(r)),
    files: given.files ?? {},
    effort: 'preview'
  })
}
