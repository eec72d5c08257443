import type { RoundModel } from '../../../engine/src/round/round-model.ts'
import type { RoundOptions, RoundView } from '../../src/round/main.ts'
import { mountRound } from '../../src/round/main.ts'
import type { Wire } from './wire.ts'
import { fromWire } from './wire.ts'

/** A page with nothing but the view: tests hand it a model and look. */
function show(model: Wire, options: RoundOptions): RoundView {
  document.documentElement.dataset['theme'] = options.dim ? 'dim' : 'light'
  const host = document.querySelector<HTMLElement>('#host')!
  host.replaceChildren()
  return mountRound(host, fromWire(model) as RoundModel, options)
}

Object.assign(window, { show })
