import type { Machining } from '../cuts/operation/machining.ts'
import { linesToProgram } from '../cuts/pins/frame.ts'
import type { ProgramFile, ProgramSet } from './program-set.ts'
