import { z } from 'zod'
import { atMostOne, choice, length, words } from './field.ts'

// Grades go from coarse to fine: each takes off what the one before left.
function rising(grits: readonly number[], ctx: z.core.$RefinementCtx<unknown>): void {
  const k = grits.findIndex((g, i) => i > 0 && g <= grits[i - 1]!)
  if (k < 0) return
  ctx.addIssue({
    code: 'custom',
    message: 'not rising',
    path: [k],
    params: {
      meaning: true,
      allowed: `grades from coarse to fine: after ${grits[k - 1]} a larger number`,
      example: '[80, 120, 180, 240]'
    }
  })
}

const coatField = atMostOne(
  z.strictObject({
    coat: words('a coat of the catalogue, by id or name; "none" for none', 80),
    coats: z
      .int()
      .min(1)
      .max(40)
      .optional()
      .meta({ description: 'number of coats; left out: as that coat usually takes', sample: [2] }),
    grit: z
      .int()
      .min(24)
      .max(5000)
      .optional()
      .meta({ description: 'last grit before the coat, FEPA P', sample: [220] }),
    grits: z
      .array(z.int().min(24).max(5000))
      .min(1)
      .max(20)
      .superRefine(rising)
      .optional()
      .meta({
        description: 'all grits, coarse to fine, FEPA P; left out: the quickest ladder that leaves no marks',
        sample: [[80, 120, 180, 240]]
      }),
    from: choice('what the last tool left; left out: what flattens the face', [
      'machined',
      'sled',
      'planed',
      'sawn',
      'sanded to 80'
    ]).optional(),
    film: length('dry film of all coats together; left out: as that coat builds', 0, 5).optional(),
    gloss: choice('how it is to shine', ['matt', 'satin', 'gloss', 'polished']).optional(),
    dam: length('height of the dam round a flood coat, over the face', 0, 200).optional()
  }),
  ['grit', 'grits']
).meta({ description: 'what finishes a face', sample: [{ coat: 'hardwax-oil', coats: 2, grit: 240 }] })

export const finishField = z
  .strictObject({ front: coatField.optional(), back: coatField.optional(), both: coatField.optional() })
  .meta({
    description: 'the finish of each face: front and back, or both',
    sample: [{ both: { coat: 'hardwax-oil' } }]
  })
