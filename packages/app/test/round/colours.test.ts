import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { coloursOf, linear } from '../../src/round/colours.ts'

const css = readFileSync(join(import.meta.dirname, '../../../page/src/page.css'), 'utf8')

/** The values a custom property takes in the page's style: by light, dim when asked for, dim by the system, in print. */
function valuesOf(property: string): string[] {
  return [...css.matchAll(new RegExp(`--${property}: (#[0-9a-f]+);`, 'g'))].map(m => m[1]!)
}

test('bodies lie on the paper of the page, drawn in its ink', () => {
  const [light, dim] = [coloursOf(false), coloursOf(true)]
  expect(valuesOf('paper').slice(0, 3)).toEqual([light.paper, dim.paper, dim.paper])
  expect(valuesOf('ink')[0]).toBe(light.ink)
})

// IEC 61966-2-1 (memory): below 0.04045 a straight line of 1/12.92, above ((c + 0.055)/1.055)^2.4; #0a = 10/255.
test('light of a colour is linear, band by band', () => {
  const [dark, middle, full] = linear('#0a80ff')
  expect(dark).toBeCloseTo(10 / 255 / 12.92, 12)
  expect(middle).toBeCloseTo(0.21586, 5)
  expect(full).toBe(1)
})
