import { changedElsewhere } from '../state/clash.ts'
import { measured, piece, plan, send } from '../state/desk.ts'
import { listChanged, sendKept } from '../state/pieces.ts'
import { greet, reached, unreached, whenBack } from '../state/reach.ts'
import { readShop } from '../state/shop.ts'

let source: EventSource | null = null

/** Keeps this device in step with the others: what they save is laid on the desk here. */
export function keepInStep(): void {
  whenBack(() => void send().then(sendKept).then(readShop))
  listen()
}

function listen(): void {
  source?.close()
  source = new EventSource('/api/events')
  source.addEventListener('open', reached)
  source.addEventListener('error', () => {
    if (!navigator.onLine) unreached()
    else void greet()
  })
  source.addEventListener('piece', event => {
    const { id, revision } = JSON.parse((event as MessageEvent<string>).data) as {
      id: string
      revision: number
    }
    void changedElsewhere(id, revision)
    listChanged()
  })
  source.addEventListener('reading', event => {
    void measured((JSON.parse((event as MessageEvent<string>).data) as { piece: string }).piece)
  })
  source.addEventListener('piece-away', listChanged)
  source.addEventListener('shop', () => void readShop().then(plan))
  source.addEventListener('devices', () => dispatchEvent(new Event('castwright-devices')))
  source.addEventListener('start-over', () => {
    listChanged()
    const at = piece.value
    if (at !== null) void changedElsewhere(at.id, Number.POSITIVE_INFINITY)
  })
}
