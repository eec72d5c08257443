import { later } from './later.tsx'

/** Places that a first look at a piece does without. */
export const shopPlace = later(async () => (await import('../shop/shop-screen.tsx')).ShopScreen)
export const devicesPlace = later(async () => (await import('../shop/devices-screen.tsx')).DevicesScreen)
export const cutsPlace = later(async () => (await import('../cuts/cuts-screen.tsx')).CutsScreen)
export const daysPlace = later(async () => (await import('../days/days-screen.tsx')).DaysScreen)
export const buyPlace = later(async () => (await import('../buy/buy-screen.tsx')).BuyScreen)
export const benchPlace = later(async () => (await import('../bench/bench-screen.tsx')).BenchScreen)
export const printPlace = later(async () => (await import('../print/print-screen.tsx')).PrintScreen)
export const photoPlace = later(async () => (await import('../photo/photo-screen.tsx')).PhotoScreen)

/**
 * Loads them ahead where no service worker keeps them (plain http on the local network): the page that is open goes
 * on without network.
 */
export function loadAhead(): void {
  if ('serviceWorker' in navigator && isSecureContext) return
  // Out of reach now: each is tried again when it is gone to.
  for (const { load } of [
    shopPlace,
    devicesPlace,
    photoPlace,
    cutsPlace,
    daysPlace,
    benchPlace,
    buyPlace,
    printPlace
  ])
    void load().catch(() => undefined)
}
