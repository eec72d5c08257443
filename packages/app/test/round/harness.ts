import '../../../page/src/page.css'
import '../../src/look/app.css'
import { checkPiece, usualShop } from '../../../engine/src/piece/read.ts'
import { roundModel } from '../../../engine/src/round/round-model.ts'
import { coreModelOf } from '../../../engine/src/sheets/model.ts'
import { workOf } from '../../../engine/src/work.ts'
import type { RoundOptions, RoundView } from '../../src/round/main.ts'
import { mountRound } from '../../src/round/main.ts'

/** A page with nothing but the view: tests hand it a document and look. */
function show(document_: unknown, files: Record<string, string>, options: RoundOptions): RoundView {
  document.documentElement.dataset['theme'] = options.dim ? 'dim' : 'light'
  const work = workOf({
    piece: checkPiece(document_, 'the piece'),
    shop: usualShop(),
    files,
    effort: 'preview'
  })
  const host = document.querySelector<HTMLElement>('#host')!
  host.replaceChildren()
  return mountRound(host, roundModel(work, coreModelOf(work)), options)
}

Object.assign(window, { show })
