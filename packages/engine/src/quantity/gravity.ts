/** g, m/s²: standard acceleration of free fall. Exact by convention (3rd CGPM, 1901). */
export const GRAVITY_M_PER_S2 = 9.80665
