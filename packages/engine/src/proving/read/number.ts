/** So near a whole number counts as it (NISTIR 6556, 3.3.2.1). */
export const WHOLE_WITHIN = 0.0001
