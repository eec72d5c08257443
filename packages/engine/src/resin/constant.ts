/** R, J/(mol·K): molar gas constant. Exact since the SI of 2019: k_B·N_A (SI brochure, 9th edition, section 2.3.1). */
export const GAS_CONSTANT = 1.380649e-23 * 6.02214076e23

/** 0 °C in kelvin. Exact by definition of the Celsius scale (SI brochure). */
export const ZERO_CELSIUS_K = 273.15

/** Temperature at which rate constants and viscosities are given, K: 25 °C, by convention of the catalogue. */
export const REFERENCE_K = 25 + ZERO_CELSIUS_K

/** Room that the times of labels are given for, °C: standard atmosphere 23/50 of ISO 291 (memory). */
export const LABEL_ROOM_C = 23
