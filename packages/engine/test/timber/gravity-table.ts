/**
 * Specific gravity, green and at 12 % moisture, of the same species (Wood Handbook Tables 5-3a and 5-3b);
 * read in the source or in a second-hand copy of it.
 */
export const TABULATED_GRAVITY: readonly (readonly [name: string, green: number, at12: number])[] = [
  ['maple, sugar (hard maple)', 0.56, 0.63],
  ['maple, black (hard maple)', 0.52, 0.57],
  ['maple, red (soft maple)', 0.49, 0.54],
  ['maple, bigleaf', 0.44, 0.48],
  ['cherry, black', 0.47, 0.5],
  ['ash, white', 0.55, 0.6],
  ['ash, black', 0.45, 0.49],
  ['ash, green', 0.53, 0.56],
  ['beech, American', 0.56, 0.64],
  ['birch, yellow', 0.55, 0.62],
  ['birch, sweet', 0.6, 0.65],
  ['birch, paper', 0.48, 0.55],
  ['elm, American', 0.46, 0.5],
  ['elm, rock', 0.57, 0.63],
  ['elm, slippery (red elm)', 0.48, 0.53],
  ['alder, red', 0.37, 0.41],
  ['aspen, quaking', 0.35, 0.38],
  ['basswood, American', 0.32, 0.37],
  ['butternut', 0.36, 0.38],
  ['chestnut, American', 0.4, 0.43],
  ['cottonwood, eastern', 0.37, 0.4],
  ['hackberry', 0.49, 0.53],
  ['hickory, pecan', 0.6, 0.66],
  ['hickory, shagbark', 0.64, 0.72],
  ['locust, black (robinia)', 0.66, 0.69],
  ['pine, western white', 0.36, 0.35],
  ['pine, ponderosa', 0.38, 0.4],
  ['pine, sugar', 0.34, 0.36],
  ['pine, shortleaf', 0.47, 0.51],
  ['pine, slash', 0.54, 0.59],
  ['pine, red', 0.41, 0.46],
  ['redwood, old-growth', 0.38, 0.4]
]
