import { modelFrom, type PageData } from '../../engine/src/sheets/page-data.ts'
import { pressChoices } from './choice.ts'
import { movePointer } from './pointer.ts'
import { openForPrint } from './print.ts'
import { offerThemes } from './theme.ts'
import { walkFindings } from './walk.ts'

// The page works without any of this: what stands in it was drawn by the plan.
const data = JSON.parse(document.getElementById('piece-data')?.textContent ?? 'null') as PageData
offerThemes()
walkFindings()
openForPrint()
const pointer = movePointer(modelFrom(data.model), data)
pressChoices((what, value) => {
  if (what === 'levels' && (value === 'finished' || value === 'as cast')) pointer.count(value)
})
