import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Work } from '../../src/findings/work.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import { readingSchema } from '../../src/piece/reading-schema.ts'
import type { PlanInput } from '../../src/work.ts'
import { workOf } from '../../src/work.ts'

const folder = join(import.meta.dirname, '../../../../examples')
const read = (name: string) => readFileSync(join(folder, name), 'utf8')

export const EXAMPLES = readdirSync(folder)
  .filter(n => /^[a-z-]+\.piece\.json$/.test(n))
  .map(n => n.replace('.piece.json', ''))

/** An example as a plan takes it; `more` is laid over the piece and the shop. */
export function exampleInput(
  name: string,
  more: { piece?: object; shop?: object; readings?: readonly unknown[] } = {}
): PlanInput {
  const document = { ...JSON.parse(read(`${name}.piece.json`)), ...more.piece }
  const shop = { ...JSON.parse(read('workshop.shop.json')), ...more.shop }
  const files = Object.fromEntries(
    readdirSync(folder)
      .filter(n => n.endsWith('.svg'))
      .map(n => [n, read(n)])
  )
  return {
    piece: checkPiece(document, name),
    shop: checkShop(shop, 'shop').value,
    readings: (more.readings ?? []).map(r => readingSchema.parse(r)),
    files,
    effort: 'preview'
  }
}

export function exampleWork(...given: Parameters<typeof exampleInput>): Work {
  return workOf(exampleInput(...given))
}
