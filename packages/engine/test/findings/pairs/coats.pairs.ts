import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

/** A casting of resin alone, polished without a film. */
const POLISHED: PieceDocument = {
  ...PLAIN,
  timbers: [],
  finish: {
    both: {
      coat: 'none',
      gloss: 'polished',
      grits: [80, 120, 180, 220, 320, 400, 600, 800, 1000, 1500, 2000, 2500]
    }
  }
}
const coated = (both: object) => ({ piece: { ...PLAIN, finish: { both: both as never } } })
const flooded = (more: object) => ({
  piece: {
    ...PLAIN,
    pours: [
      ...PLAIN.pours,
      { id: 'gloss', kind: 'flood', face: 'front', resin: 'thin', depth: 2, ...more } as never
    ],
    finish: { back: { coat: 'epoxy-seal' } }
  } satisfies PieceDocument
})

export const pairs: readonly Pair[] = [
  {
    id: 'grit-step-skipped',
    about: 'from 220 straight to 800 in resin that is to be polished',
    sound: { piece: POLISHED },
    edit: {
      op: 'replace',
      path: '/finish/both/grits',
      value: [80, 120, 150, 220, 800, 1000, 1500, 2000, 2500]
    },
    severity: 'caution'
  },
  {
    id: 'grit-step-skipped',
    about: 'from 80 to 180 under an oil',
    sound: coated({ coat: 'hardwax-oil', grits: [80, 120, 180] }),
    edit: { op: 'replace', path: '/finish/both/grits', value: [80, 180] },
    severity: 'note'
  },
  {
    id: 'grit-no-grade',
    about: 'grit 250',
    sound: coated({ coat: 'oil-varnish', grit: 240 }),
    edit: { op: 'replace', path: '/finish/both/grit', value: 250 },
    severity: 'note'
  },
  {
    id: 'scratch-shows',
    about: 'grit 120 under two thin coats that are to gloss',
    sound: coated({ coat: 'nitro-lacquer', gloss: 'gloss', film: 0.045, coats: 2, grit: 320 }),
    edit: { op: 'replace', path: '/finish/both/grit', value: 100 },
    severity: 'caution'
  },
  {
    id: 'scratch-shows',
    about: 'a film rubbed so thin that grit 220 may show',
    sound: coated({ coat: 'shellac', gloss: 'gloss', coats: 20, grit: 220 }),
    edit: { op: 'replace', path: '/finish/both/coats', value: 10 },
    severity: 'note'
  },
  {
    id: 'gloss-not-reached',
    about: 'an oil that is to be polished',
    sound: coated({ coat: 'hardwax-oil', gloss: 'satin' }),
    edit: { op: 'replace', path: '/finish/both/gloss', value: 'polished' },
    severity: 'caution'
  },
  {
    id: 'gloss-not-reached',
    about: 'resin polished from grit 800',
    sound: { piece: POLISHED },
    edit: {
      op: 'replace',
      path: '/finish/both/grits',
      value: [80, 120, 180, 220, 320, 400, 600, 800]
    },
    severity: 'caution'
  },
  {
    id: 'gloss-not-reached',
    about: 'a flood coat that is to be matt',
    sound: coated({ coat: 'flood-coat', gloss: 'polished' }),
    edit: { op: 'replace', path: '/finish/both/gloss', value: 'matt' },
    severity: 'caution'
  },
  {
    id: 'faces-unlike',
    about: 'six coats of varnish on the front, one on the back',
    sound: {
      piece: {
        ...PLAIN,
        finish: { front: { coat: 'oil-varnish', coats: 6 }, back: { coat: 'oil-varnish', coats: 6 } }
      }
    },
    edit: { op: 'replace', path: '/finish/back/coats', value: 1 },
    severity: 'note'
  },
  {
    id: 'flood-needs-dam',
    about: 'a flood of 5 mm without a dam',
    sound: flooded({ depth: 2.5 }),
    edit: { op: 'replace', path: '/pours/1/depth', value: 5 },
    severity: 'caution'
  },
  {
    id: 'flood-needs-dam',
    about: 'a flood coat of 4 mm on both faces',
    sound: coated({ coat: 'flood-coat', coats: 1, film: 2.4 }),
    edit: { op: 'replace', path: '/finish/both/film', value: 4 },
    severity: 'caution'
  },
  {
    id: 'coat-over-dam',
    about: 'a dam of 3 mm round a coat of 6',
    sound: flooded({ depth: 6, dam: 9 }),
    edit: { op: 'replace', path: '/pours/1/dam', value: 3 },
    severity: 'stop'
  },
  {
    id: 'coat-over-dam',
    about: 'a flood coat of the finish over its dam',
    sound: coated({ coat: 'flood-coat', coats: 1, film: 4.8, dam: '7 mm' }),
    edit: { op: 'replace', path: '/finish/both/dam', value: '2 mm' },
    severity: 'stop'
  },
  {
    id: 'flood-craters',
    about: 'a flood of half a millimetre',
    sound: flooded({ depth: 2 }),
    edit: { op: 'replace', path: '/pours/1/depth', value: 0.5 },
    severity: 'note'
  },
  {
    id: 'flood-craters',
    about: 'a flood coat of the finish as thin as a film',
    sound: coated({ coat: 'flood-coat', coats: 1, film: 2 }),
    edit: { op: 'replace', path: '/finish/both/film', value: 0.4 },
    severity: 'note'
  },
  {
    id: 'coat-runs',
    about: '0.3 mm of brushed epoxy in one coat',
    sound: coated({ coat: 'epoxy-seal', coats: 3, film: 0.3 }),
    edit: { op: 'replace', path: '/finish/both/coats', value: 1 },
    severity: 'caution'
  },
  {
    id: 'coat-runs',
    about: 'a varnish as thick as four coats in two',
    sound: coated({ coat: 'oil-varnish', coats: 4, film: 0.15 }),
    edit: { op: 'replace', path: '/finish/both/coats', value: 2 },
    severity: 'caution'
  }
]
