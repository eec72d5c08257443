import type { Patch } from '../../../engine/src/piece/patch.ts'
import type { Json } from '../worker/document.ts'
import type { CupAsk } from '../worker/messages.ts'

/** The edit of the shop that keeps a cup test with its resin, which is added where the shop has none of that name. */
export function keepPatch(shop: Json, resin: CupAsk['resin'], test: Json): Patch {
  const resins = shop['resins'] as Json[] | undefined
  const index = resins?.findIndex(r => r['id'] === resin.id) ?? -1
  if (index < 0) {
    const entry = { id: resin.id, ...(resin.like === null ? {} : { like: resin.like }), cupTests: [test] }
    return resins === undefined
      ? [{ op: 'add', path: '/resins', value: [entry] }]
      : [{ op: 'add', path: '/resins/-', value: entry }]
  }
  const tests = resins![index]!['cupTests']
  return tests === undefined
    ? [{ op: 'add', path: `/resins/${index}/cupTests`, value: [test] }]
    : [{ op: 'add', path: `/resins/${index}/cupTests/-`, value: test }]
}
