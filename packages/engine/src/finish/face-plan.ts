import type { Ladder } from '../coat/ladder.ts'
import type { Coating } from './coating.ts'
import type { FaceFinish } from './faces.ts'
import type { Flood } from './flood.ts'
import type { FaceGloss } from './gloss.ts'

/** One grade of a ladder. */
export interface PlanGrade {
  readonly grit: number
  readonly grainUm: number
  readonly passes: number
  readonly minutes: number
  readonly discs: number
}

/** The finish of a face as plain data. */
export interface PlanFace {
  readonly face: 'front' | 'back'
  readonly coat: string | null
  readonly coats: number
  readonly grit: number | null
  readonly filmMm: readonly [number, number, number]
  readonly areaM2: number
  readonly needMl: number
  readonly sanding: {
    /** What the last tool left, and how deep its marks, µm. */
    readonly left: string
    readonly marksUm: number
    readonly grades: readonly PlanGrade[]
    readonly pastesUm: readonly number[]
    readonly minutes: number
    readonly offMm: number
  } | null
  readonly coating: Coating | null
  readonly floods: readonly (Omit<Flood, 'under' | 'face'> & {
    readonly under: readonly PlanGrade[] | null
  })[]
  readonly gloss: FaceGloss
  readonly food: boolean
}

/** The finish of a face for the plan. */
export function planFace(f: FaceFinish): PlanFace {
  const { sanding } = f
  return {
    face: f.face,
    coat: f.coat?.name ?? null,
    coats: f.coats,
    grit: f.grit,
    filmMm: f.filmMm,
    areaM2: f.areaM2,
    needMl: f.needMl,
    sanding:
      sanding === null
        ? null
        : {
            left: sanding.left,
            marksUm: sanding.marksUm,
            grades: gradesOf(sanding.ladder),
            pastesUm: sanding.pastesUm,
            minutes: sanding.ladder.minutes,
            offMm: sanding.ladder.offMm
          },
    coating: f.coating,
    floods: f.floods.map(({ under, face: _, ...flood }) => ({
      ...flood,
      under: under === null ? null : gradesOf(under.ladder)
    })),
    gloss: f.gloss,
    food: f.food
  }
}

function gradesOf({ steps }: Ladder): PlanGrade[] {
  return steps.map(s => ({
    grit: s.grade.grit,
    grainUm: s.grade.grainUm,
    passes: s.passes,
    minutes: s.minutes,
    discs: s.discs
  }))
}
