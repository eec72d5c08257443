interface Milp {
  solve(lp: string): { readonly Status: string; readonly ObjectiveValue: number }
}

/** HiGHS 1.15, an exact solver of linear and integer programmes. */
export async function exactSolver(): Promise<Milp> {
  const load = (await import('highs')).default as unknown as () => Promise<Milp>
  return load()
}

/** Whole numbers below `n`, from a seed: the minimal standard generator (Park and Miller 1988). */
export function drawn(seed: number): (n: number) => number {
  let state = seed
  return n => {
    state = (state * 48_271) % 2_147_483_647
    return state % n
  }
}
