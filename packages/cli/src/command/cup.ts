import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import type { CupReadings, CupUnit, Shop } from '@castwright/engine'
import { checkCupTest, decimals, fitCupTest, nearestWord, readCupTest, readShop } from '@castwright/engine'
import type { Given } from '../arguments.ts'
import { argumentsOf } from '../arguments.ts'
import { cupReport } from '../cup-report.ts'
import { Failure } from '../failure.ts'
import { replaceFile } from '../replace-file.ts'
import { withCupTest, withResin } from '../shop-text.ts'
import { MOST_DOCUMENT_BYTES, readText } from '../text-file.ts'
import type { Command } from './command.ts'

/** Largest file of readings, bytes: as many as the reader takes characters. */
const MOST_CUP_BYTES = 12_000_000
const CLASSES = ['deep', 'medium', 'thin']
const UNITS: Readonly<Record<string, CupUnit>> = { C: '°C', '°C': '°C', F: '°F', '°F': '°F', K: 'K' }

/** `castwright cup`: fits a resin of the shop to a cup of it that was watched. */
export const cupCommand: Command = {
  name: 'cup',
  about: 'fit a resin to a cup of it that was watched, and store the test in the shop',
  help: `castwright cup READINGS.csv --resin ID [--mass G] [--cup MM] [--room C] [more] [--shop FILE]

Mix a batch, leave it in its cup with a thermometer in the middle, write down time and temperature, and when a
stick began to pull strings and when nothing clung to it any more. From that the resin's speed and heat follow,
with their doubt, and every later plan goes by them. Watch the cup: a large one can grow hot enough to smoke.

READINGS.csv holds time and temperature in columns: minutes, h:mm or the clock; °C or °F by the header, "temp (F)";
commas, semicolons or tabs; lines with # are comments. "strings" and "gelled" may stand in a column of their own.

  --resin ID        a resin of the shop
  --mass G          mixed, A and B together: 200, "7 oz"; or a line "# mass: 200 g" in the file
  --cup MM          inner diameter of the cup: 80, "3 in"; or "# cup: 80 mm"
  --room C          air about it: 21, "70 °F"; or "# room: 21 °C", or a column of it
  --start C         the mix at the start; left out: the first reading
  --unit C|F        of the thermometer, where the file does not say
  --mixed HH:MM     when it was mixed, where times are of the clock and the first reading came later
  --strings MIN     minutes from mixing until a stick pulled strings
  --gelled MIN      minutes until nothing clung to it
  --day DATE        when, 2026-11-27
  --note "..."      a note
  --like CLASS      deep, medium or thin: adds the resin to the shop (and makes the shop's file) where it is not there
  --shop FILE       where to store it; left out: shop.json beside the readings
  --try             fits and shows, stores nothing
  --json            the fit as JSON
`,
  run: args => {
    const given = argumentsOf('cup', args, {
      flags: ['json', 'try'],
      texts: [
        'resin',
        'mass',
        'cup',
        'room',
        'start',
        'unit',
        'mixed',
        'strings',
        'gelled',
        'day',
        'note',
        'like',
        'shop'
      ],
      words: [1, 1, 'one file of readings']
    })
    if (given.flags.has('help')) return { out: cupCommand.help, code: 0 }
    const file = given.words[0]!
    const resin = given.texts.get('resin')
    if (resin === undefined)
      throw new Failure('castwright cup: found no --resin; allowed: --resin and a resin of the shop')
    const path = given.texts.get('shop') ?? join(dirname(file), 'shop.json')
    const before = shopText(path, given)
    const shop = readShop(before, path).value
    const place = placeOf(shop, resin, path, given)
    const mixed = given.texts.get('mixed')
    const unit = unitOf(given)
    const readings = readCupTest(readText(file, MOST_CUP_BYTES), {
      source: file,
      ...(unit === undefined ? {} : { unit }),
      ...(mixed === undefined ? {} : { mixed })
    })
    const { document, value } = checkCupTest(entryOf(readings, given), `castwright cup ${file}`)
    const after =
      place === null
        ? withResin(before, oneLine({ id: resin, like: given.texts.get('like'), cupTests: [document] }))
        : withCupTest(before, place, oneLine(document))
    // What is stored must read back; what cannot be fitted is not stored.
    const result = fitCupTest(value, resin, readShop(after, path).value, path)
    const tries = given.flags.has('try')
    const doubts = result.doubts.filter(d => !(d.kind === 'unit' && unit !== undefined))
    const barred = doubts.find(d => d.kind === 'cold') ?? (tries ? undefined : doubts[0])
    if (barred)
      throw new Failure(
        `castwright cup ${file}: found ${barred.found}; allowed: ${barred.allowed}${barred.kind === 'cold' ? '' : '. Nothing is stored; --try shows the fit'}`
      )
    const twin = twinOf(shop, place, value)
    if (!tries && twin === null) replaceFile(path, after)
    const says = readings.says.map(s => `${s}\n`).join('')
    const stored = tries
      ? 'nothing stored (--try)\n'
      : twin === null
        ? `stored in ${path}\n`
        : `these readings are already kept in ${path}, as test ${twin + 1} of ${resin}: nothing stored\n`
    return {
      out: given.flags.has('json') ? `${JSON.stringify(result, null, 2)}\n` : cupReport(resin, result),
      err: says + stored,
      code: 0
    }
  }
}

/** The stored test of the same cup and readings; null for none. */
function twinOf(
  shop: Shop,
  place: number | null,
  test: Shop['resins'][number]['cupTests'][number]
): number | null {
  if (place === null) return null
  const key = (t: typeof test): string =>
    JSON.stringify([t.mass, t.diameter, t.room, t.start, t.unit, t.readings, t.strings, t.gelled])
  const at = shop.resins[place]!.cupTests.findIndex(t => key(t) === key(test))
  return at < 0 ? null : at
}

// No string of JSON holds a line's end: what is folded stands between values.
function oneLine(value: unknown): string {
  return JSON.stringify(value, null, 1).replace(/\n\s*/g, ' ')
}

function shopText(path: string, given: Given): string {
  if (existsSync(path)) return readText(path, MOST_DOCUMENT_BYTES)
  if (given.texts.has('like')) return '{\n  "castwright": 1,\n  "resins": []\n}\n'
  throw new Failure(
    `${path}: found no such file; allowed: a shop that is there, or --like deep, medium or thin to make it`
  )
}

/** Index of the resin in the shop; null: it is to be added. */
function placeOf(shop: Shop, resin: string, path: string, given: Given): number | null {
  const like = given.texts.get('like')
  if (like !== undefined && !CLASSES.includes(like))
    throw new Failure(`castwright cup: found --like ${like}; allowed: ${CLASSES.join(', ')}`)
  const index = shop.resins.findIndex(r => r.id === resin)
  if (index >= 0) {
    const known = shop.resins[index]!.like
    if (like !== undefined && known !== undefined && known !== like)
      throw new Failure(`castwright cup: found --like ${like}; allowed: ${known}, as ${path} has it`)
    return index
  }
  if (like !== undefined) return null
  const ids = shop.resins.map(r => r.id)
  const near = nearestWord(resin, ids)
  throw new Failure(
    `${path}: found no resin "${resin}"; allowed: ${ids.length === 0 ? 'a resin of the shop; it has none' : ids.join(', ')}${near === null ? '' : `; the nearest is "${near}"`}. With --like deep, medium or thin it is added`
  )
}

function unitOf(given: Given): CupUnit | undefined {
  const word = given.texts.get('unit')
  if (word === undefined) return undefined
  const unit = UNITS[word.toUpperCase()]
  if (unit === undefined) throw new Failure(`castwright cup: found --unit ${word}; allowed: C or F`)
  return unit
}

/** The test as the shop keeps it: what was typed on the command line as typed, else what the file tells. */
function entryOf(readings: CupReadings, given: Given): object {
  const { told } = readings
  const typed = (name: string): string | number | undefined => {
    const text = given.texts.get(name)
    return text !== undefined && /^-?[0-9]+(\.[0-9]+)?$/.test(text) ? Number(text) : text
  }
  const rounded = (x: number | null): number | undefined => (x === null ? undefined : Number(decimals(x, 2)))
  const entry = {
    day: given.texts.get('day'),
    mass: typed('mass') ?? rounded(told.massG),
    diameter: typed('cup') ?? rounded(told.diameterMm),
    room: typed('room') ?? rounded(told.roomC ?? readings.roomC),
    start: typed('start') ?? rounded(told.startC),
    unit: readings.unit,
    readings: readings.readings,
    strings: typed('strings') ?? rounded(readings.stringsMin),
    gelled: typed('gelled') ?? rounded(readings.gelledMin),
    note: given.texts.get('note')
  }
  for (const [key, option, word] of [
    ['mass', '--mass', 'mass'],
    ['diameter', '--cup', 'cup'],
    ['room', '--room', 'room']
  ] as const)
    if (entry[key] === undefined)
      throw new Failure(
        `castwright cup: found no ${word}; allowed: ${option} and its value, or a line "# ${word}: ${{ mass: '200 g', diameter: '80 mm', room: '21 °C' }[key]}" in the file`
      )
  return Object.fromEntries(Object.entries(entry).filter(([, v]) => v !== undefined))
}
