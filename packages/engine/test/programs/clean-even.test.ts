import { provesClean } from './clean.ts'

provesClean(2)
