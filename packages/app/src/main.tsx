import { render } from 'preact'
import '../../page/src/page.css'
import './look/fonts.css'
import './look/app.css'
import './photo/photo.css'
import './draw/draw.css'
import { openForPrint } from '../../page/src/print.ts'
import { App } from './look/app.tsx'
import { loadAhead } from './look/places.ts'
import { keepInStep } from './net/events.ts'
import { plan, send } from './state/desk.ts'
import { sendKept } from './state/pieces.ts'
import { applyPreferences } from './state/preferences.ts'
import { device, greet, paired, unreached, whenBack } from './state/reach.ts'
import { readShop, shop } from './state/shop.ts'

applyPreferences()
// Cautions and what findings rest on; menus and help stay folded.
openForPrint('.safety, .why')
render(<App />, document.getElementById('app')!)

let inStep = false
// Once the server is in reach: what was kept goes out, and this device keeps in step with the others.
async function begin(): Promise<void> {
  if (device.value === null) await greet()
  if (inStep || device.value === null) return
  inStep = true
  await readShop()
  if (shop.value !== null) plan()
  keepInStep()
  await send()
  await sendKept()
}

whenBack(() => void begin())
addEventListener('online', () => void greet())
addEventListener('offline', unreached)
void greet().then(async () => {
  if (!paired.value) return addEventListener('castwright-paired', () => location.reload())
  // Without a server the shop is the one this browser keeps.
  if (device.value === null) await readShop().then(plan)
  else await begin()
})

addEventListener('load', loadAhead)

if ('serviceWorker' in navigator && isSecureContext) {
  addEventListener('load', () => {
    navigator.serviceWorker.register('/service.js', { type: 'module' }).catch(() => undefined)
  })
}
