import { provesClean } from './clean.ts'

provesClean(1)
