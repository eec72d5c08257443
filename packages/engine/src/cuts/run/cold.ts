/** Below this, at its warmest, the shop is cold: cast resin is brittle, °C (case C85, makers' reports). */
export const COLD_C = 15
