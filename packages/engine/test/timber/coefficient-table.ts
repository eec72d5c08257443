/**
 * Total shrinkage green to oven-dry (Wood Handbook Tables 4-3 and 4-4) beside the coefficients of dimensional
 * change (Table 13-5) of the same species: name, S_R, S_T in %, C_R, C_T per %, moisture at which shrinkage
 * starts, and whether both columns were read in the source or a transcription (`read`) or at least one is
 * from memory.
 *
 * Left out, because their coefficients do not belong to their own shrinkage: species listed with a group's
 * coefficients (black maple, the oaks, green ash, sweet birch, shagbark hickory) and imported timbers whose
 * two tables stem from different data (teak, mahogany, khaya, iroko, okoume, obeche, limba, afrormosia,
 * Spanish-cedar).
 */
export type Row = readonly [
  name: string,
  radialPct: number,
  tangentialPct: number,
  radialPerPct: number,
  tangentialPerPct: number,
  startPct: number,
  known: 'read' | 'memory'
]

export const COEFFICIENT_TABLE: readonly Row[] = [
  ['walnut, black', 5.5, 7.8, 0.0019, 0.00274, 30, 'read'],
  ['maple, sugar (hard maple)', 4.8, 9.9, 0.00165, 0.00353, 30, 'memory'],
  ['maple, red (soft maple)', 4, 8.2, 0.00137, 0.00289, 30, 'memory'],
  ['maple, silver', 3, 7.2, 0.00102, 0.00252, 30, 'memory'],
  ['maple, bigleaf', 3.7, 7.1, 0.00126, 0.00248, 30, 'memory'],
  ['cherry, black', 3.7, 7.1, 0.00126, 0.00248, 30, 'read'],
  ['ash, white', 4.9, 7.8, 0.00169, 0.00274, 30, 'read'],
  ['ash, black', 5, 7.8, 0.00172, 0.00274, 30, 'read'],
  ['beech, American', 5.5, 11.9, 0.0019, 0.00431, 30, 'read'],
  ['birch, yellow', 7.3, 9.5, 0.00256, 0.00338, 30, 'read'],
  ['birch, paper', 6.3, 8.6, 0.00219, 0.00304, 30, 'read'],
  ['elm, American', 4.2, 9.5, 0.00144, 0.00338, 30, 'read'],
  ['elm, rock', 4.8, 8.1, 0.00165, 0.00285, 30, 'read'],
  ['elm, slippery (red elm)', 4.9, 8.9, 0.00169, 0.00315, 30, 'read'],
  ['sycamore, American', 5, 8.4, 0.00172, 0.00296, 30, 'read'],
  ['alder, red', 4.4, 7.3, 0.00151, 0.00256, 30, 'read'],
  ['aspen, quaking', 3.5, 6.7, 0.00119, 0.00234, 30, 'read'],
  ['basswood, American', 6.6, 9.3, 0.0023, 0.0033, 30, 'read'],
  ['buckeye, yellow', 3.6, 8.1, 0.00123, 0.00285, 30, 'read'],
  ['butternut', 3.4, 6.4, 0.00116, 0.00223, 30, 'read'],
  ['chestnut, American', 3.4, 6.7, 0.00116, 0.00234, 30, 'read'],
  ['cottonwood, eastern', 3.9, 9.2, 0.00133, 0.00327, 30, 'read'],
  ['hackberry', 4.8, 8.9, 0.00165, 0.00315, 30, 'read'],
  ['hickory, pecan', 4.9, 8.9, 0.00169, 0.00315, 30, 'read'],
  ['honeylocust', 4.2, 6.6, 0.00144, 0.0023, 30, 'memory'],
  ['locust, black (robinia)', 4.6, 7.2, 0.00158, 0.00252, 30, 'memory'],
  ['persimmon, common', 7.9, 11.2, 0.00278, 0.00403, 30, 'read'],
  ['sassafras', 4, 6.2, 0.00137, 0.00216, 30, 'read'],
  ['sweetgum', 5.3, 10.2, 0.00183, 0.00365, 30, 'read'],
  ['tupelo, black', 5.1, 8.7, 0.00176, 0.00308, 30, 'read'],
  ['willow, black', 3.3, 8.7, 0.00112, 0.00308, 30, 'memory'],
  ['yellow-poplar (tulipwood)', 4.6, 8.2, 0.00158, 0.00289, 30, 'memory'],
  ['Douglas-fir, coast', 4.8, 7.6, 0.00165, 0.00267, 30, 'memory'],
  ['Douglas-fir, interior north', 3.8, 6.9, 0.0013, 0.00241, 30, 'memory'],
  ['pine, eastern white', 2.1, 6.1, 0.00071, 0.00212, 30, 'memory'],
  ['pine, western white', 4.1, 7.4, 0.00141, 0.00259, 30, 'memory'],
  ['pine, ponderosa', 3.9, 6.2, 0.00133, 0.00216, 30, 'memory'],
  ['pine, sugar', 2.9, 5.6, 0.00099, 0.00194, 30, 'memory'],
  ['pine, lodgepole', 4.3, 6.7, 0.00148, 0.00234, 30, 'memory'],
  ['pine, loblolly (southern yellow)', 4.8, 7.4, 0.00165, 0.00259, 30, 'memory'],
  ['pine, longleaf (southern yellow)', 5.1, 7.5, 0.00176, 0.00263, 30, 'memory'],
  ['pine, shortleaf', 4.6, 7.7, 0.00158, 0.00271, 30, 'memory'],
  ['pine, slash', 5.4, 7.6, 0.00187, 0.00267, 30, 'memory'],
  ['pine, red', 3.8, 7.2, 0.0013, 0.00252, 30, 'memory'],
  ['spruce, Sitka', 4.3, 7.5, 0.00148, 0.00263, 30, 'memory'],
  ['spruce, Engelmann', 3.8, 7.1, 0.0013, 0.00248, 30, 'memory'],
  ['spruce, red', 3.8, 7.8, 0.0013, 0.00274, 30, 'memory'],
  ['redcedar, western', 2.4, 5, 0.00111, 0.00234, 22, 'memory'],
  ['white-cedar, northern', 2.2, 4.9, 0.00101, 0.00229, 22, 'memory'],
  ['redcedar, eastern', 3.1, 4.7, 0.00106, 0.00162, 30, 'memory'],
  ['incense-cedar', 3.3, 5.2, 0.00112, 0.0018, 30, 'memory'],
  ['Port-Orford-cedar', 4.6, 6.9, 0.00158, 0.00241, 30, 'memory'],
  ['yellow-cedar', 2.8, 6, 0.00095, 0.00208, 30, 'memory'],
  ['redwood, old-growth', 2.6, 4.4, 0.0012, 0.00205, 22, 'memory'],
  ['baldcypress', 3.8, 6.2, 0.0013, 0.00216, 30, 'memory'],
  ['hemlock, western', 4.2, 7.8, 0.00144, 0.00274, 30, 'memory'],
  ['larch, western', 4.5, 9.1, 0.00155, 0.00323, 30, 'memory'],
  ['fir, white', 3.3, 7, 0.00112, 0.00245, 30, 'memory'],
  ['balsa', 3, 7.6, 0.00102, 0.00267, 30, 'memory']
]
