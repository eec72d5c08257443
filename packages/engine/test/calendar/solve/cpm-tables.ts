import { gap, problem, task } from './problem.ts'

/**
 * Networks of activities worked by hand, forward and back, on paper for this test: name, minutes, what comes
 * before, early start, late start. The rules are those of any text on the critical path method (Kelley and Walker,
 * 1959; memory); the numbers are ours.
 */
export interface Worked {
  readonly name: string
  readonly rows: readonly (readonly [
    id: string,
    minutes: number,
    after: string,
    early: number,
    late: number
  ])[]
  readonly finish: number
  readonly chain: string
}

export const WORKED: readonly Worked[] = [
  {
    name: 'eight activities, one critical way',
    //  A 3; B 2 after A (3-5); C 5 after A (3-8); D 4 after B (5-9); E 2 after C (8-10); F 3 after D, E (10-13);
    //  G 6 after C (8-14); H 1 after F, G (14-15). Back: H 14, G 8, F 11, E 9, D 7, C 3, B 5, A 0.
    rows: [
      ['A', 3, '', 0, 0],
      ['B', 2, 'A', 3, 5],
      ['C', 5, 'A', 3, 3],
      ['D', 4, 'B', 5, 7],
      ['E', 2, 'C', 8, 9],
      ['F', 3, 'D E', 10, 11],
      ['G', 6, 'C', 8, 8],
      ['H', 1, 'F G', 14, 14]
    ],
    finish: 15,
    chain: 'A C G H'
  },
  {
    name: 'six activities, two starts',
    //  P 7 (0-7); Q 4 (0-4); R 5 after Q (4-9); S 3 after P, R (9-12); T 8 after Q (4-12); U 2 after S, T (12-14).
    //  Back: U 12, T 4, S 9, R 4, Q 0, P 2.
    rows: [
      ['P', 7, '', 0, 2],
      ['Q', 4, '', 0, 0],
      ['R', 5, 'Q', 4, 4],
      ['S', 3, 'P R', 9, 9],
      ['T', 8, 'Q', 4, 4],
      ['U', 2, 'S T', 12, 12]
    ],
    finish: 14,
    chain: 'Q R S U'
  }
]

export function workedProblem(w: Worked) {
  return problem(
    w.rows.map(([id, minutes]) => task(id, minutes)),
    w.rows.flatMap(([id, , after]) => (after === '' ? [] : after.split(' ').map(a => gap(a, id))))
  )
}
