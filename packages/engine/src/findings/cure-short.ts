import { decimals, formatC } from '../quantity/format.ts'
import { finalCure } from '../resin/final-cure.ts'
import { glassTransitionC } from '../resin/glass.ts'
import { LEAST_TG_C } from '../resin/limits.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** A room so cool that a pour is still soft after a week, and what warming would do. */
export const cureShort: Check = {
  id: 'cure-short',
  about: 'a cool room that stops the cure short',
  cases: ['C16'],
  run
}

/** Warming that is spoken of: as warm as a tent with a heater gets, a working day (practice). */
const WARMING = { atC: 45, hours: 8 } as const
const MORE_DAYS = 23

// Once for each resin, at the pour that is worst.
function run(work: Work): Found[] {
  const worst = new Map<
    string,
    { readonly index: number; readonly conversion: number; readonly tgC: number }
  >()
  work.casts.forEach((cast, index) => {
    const { kind } = work.piece.pours[index]!
    if (!cast || kind === 'seal') return
    const { id, record } = work.materials.resins[index]!
    const conversion = cast.curve.conversion[cast.curve.conversion.length - 1]!
    const tgC = glassTransitionC(record.model!.kinetics, conversion)
    if (tgC < (worst.get(id)?.tgC ?? LEAST_TG_C)) worst.set(id, { index, conversion, tgC })
  })
  return [...worst.values()].map(({ index, conversion, tgC }): Found => {
    const { at, id } = work.entries.pours[index]!
    const { kinetics } = work.materials.resins[index]!.record.model!
    const { night, day } = work.shop.climate
    const room = { nightC: night, dayC: day }
    const later = finalCure(kinetics, room, MORE_DAYS, { startConversion: conversion })
    const warmed = finalCure(kinetics, room, 1, { startConversion: conversion, warming: WARMING })
    return {
      severity: 'caution',
      at,
      says: `in this room ${id} is ${decimals(conversion * 100, 0)} % cured after 7 d and softens from about ${formatC(tgC)}; after 30 d from ${formatC(later.tgC)}. ${WARMING.hours} h at ${formatC(WARMING.atC)} after the week would bring that to ${formatC(warmed.tgC)}: a heat tent does in a day what the cold takes weeks for; more hardener never helps.`,
      value: tgC,
      unit: '°C',
      band: [tgC - DOUBT_K, tgC + DOUBT_K],
      limit: LEAST_TG_C,
      basis:
        'cure with diffusion limit and glass transition (DiBenedetto) of a generic class along the room’s day; 35 °C: judgement; warming no faster than 10 K an hour: practice',
      settledBy: 'a fingernail on an offcut warmed to 35 °C'
    }
  })
}

/** Times ±30 % move the glass transition after a week by about this, K (run at both ends). */
const DOUBT_K = 3
