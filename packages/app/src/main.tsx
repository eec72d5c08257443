import { render } from 'preact'
import '../../page/src/page.css'
import './look/fonts.css'
import './look/app.css'
import { App } from './look/app.tsx'
import { keepInStep } from './net/events.ts'
import { applyPreferences } from './state/preferences.ts'
import { device, greet } from './state/reach.ts'
import { readShop } from './state/shop.ts'

applyPreferences()
render(<App />, document.getElementById('app')!)

void greet().then(async () => {
  if (device.value !== null) {
    await readShop()
    keepInStep()
  } else addEventListener('castwright-paired', () => location.reload())
})

if ('serviceWorker' in navigator && isSecureContext) {
  addEventListener('load', () => {
    navigator.serviceWorker.register('/service.js', { type: 'module' }).catch(() => undefined)
  })
}
