/**
 * Scratch hardness, Mohs: above HARD no router bit keeps its edge, only diamond cuts; up to SOFT, as plant matter
 * and mica, it cuts like timber. Practice: minerals of 3 to 5 match hardwood.
 */
export const HARD_MOHS = 5
export const SOFT_MOHS = 2.5
