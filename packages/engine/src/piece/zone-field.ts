import { isZone } from '../quantity/zone-clock.ts'
import { words } from './field.ts'
import { nearest } from './nearest.ts'

/** A time zone by its IANA name. One that is misspelt would set every hour of the calendar wrong: it is refused. */
export const zoneField = words('IANA time zone', 60)
  .superRefine((name, ctx) => {
    if (isZone(name)) return
    const near = nearest(name, Intl.supportedValuesOf('timeZone'))
    ctx.addIssue({
      code: 'custom',
      message: `no time zone is called "${name}"`,
      params: {
        meaning: true,
        allowed: 'the IANA name of a time zone',
        example: JSON.stringify(near ?? 'Europe/Berlin')
      }
    })
  })
  .meta({ description: 'IANA time zone', sample: ['Europe/Berlin'] })
  .default('UTC')
