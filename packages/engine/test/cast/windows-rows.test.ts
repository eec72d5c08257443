import { checkRows } from '../resin/rows.ts'
import { rows } from './windows.evidence.ts'

checkRows(rows)
