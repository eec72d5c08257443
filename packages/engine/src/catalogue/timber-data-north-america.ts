import { type TimberPart, type TimberRow, timberRecords } from './timber-record.ts'

/**
 * Timbers of North America: 40 hardwoods, 26 softwoods.
 *
 * Source: USDA Forest Products Laboratory, Wood Handbook, FPL-GTR-190 (2010) and FPL-GTR-282 (2021), a work of
 * the US government: Table 4-3 (shrinkage), Table 13-5 (coefficients), Table 5-3a (gravity, modulus). Each
 * row says which of the three were read and which are from memory. Density at 12 % is 1120 times the gravity
 * at 12 %, and modulus is the tabulated million psi times 6895.
 *
 * Columns: see {@link TimberRow}.
 */
const NORTH_AMERICA: TimberPart = {
  region: 'North America',
  basis: 'green to ovendry',
  source: 'Wood Handbook FPL-GTR-190/282 T4-3, T13-5, T5-3a'
}

const HARDWOODS: readonly TimberRow[] = [
  [
    ['walnut-black', 'walnut, black', 'Juglans nigra'],
    [5.5, 7.8, 12.8, 0.0019, 0.00274, 30, 0.51, 0.55, 616, 11600],
    ['semi-ring', true],
    ['read', 'read', 'memory']
  ],
  [
    ['maple-sugar', 'maple, sugar (hard maple)', 'Acer saccharum'],
    [4.8, 9.9, 14.7, 0.00165, 0.00353, 30, 0.56, 0.63, 706, 12600],
    ['diffuse', false],
    ['memory', 'read', 'read'],
    { note: 'shrinkage also seen in a second read table (4.8/9.9/14.7)' }
  ],
  [
    ['maple-black', 'maple, black (hard maple)', 'Acer nigrum'],
    [4.8, 9.3, 14, 0.00165, 0.00353, 30, 0.52, 0.57, 638, 11200],
    ['diffuse', false],
    ['memory', 'read', 'read'],
    { note: 'table gives sugar-maple C values for black maple too' }
  ],
  [
    ['maple-red', 'maple, red (soft maple)', 'Acer rubrum'],
    [4, 8.2, 12.6, 0.00137, 0.00289, 30, 0.49, 0.54, 605, 11300],
    ['diffuse', false],
    ['memory', 'read', 'read']
  ],
  [
    ['maple-silver', 'maple, silver', 'Acer saccharinum'],
    [3, 7.2, 12, 0.00102, 0.00252, 30, 0.44, 0.47, 526, 7900],
    ['diffuse', false],
    ['memory', 'read', 'memory']
  ],
  [
    ['maple-bigleaf', 'maple, bigleaf', 'Acer macrophyllum'],
    [3.7, 7.1, 11.6, 0.00126, 0.00248, 30, 0.44, 0.48, 538, 10000],
    ['diffuse', false],
    ['memory', 'read', 'read']
  ],
  [
    ['oak-white', 'oak, white (species)', 'Quercus alba'],
    [5.6, 10.5, 16.3, 0.0018, 0.00365, 30, 0.6, 0.68, 762, 12300],
    ['ring', true],
    ['read', 'read', 'memory'],
    {
      note: 'C is the commercial white-oak group value; eq 13-3 on 5.6/10.5 gives 0.00194/0.00376; earlywood pores blocked by tyloses'
    }
  ],
  [
    ['oak-bur', 'oak, bur (white group)', 'Quercus macrocarpa'],
    [4.4, 8.8, 12.7, 0.0018, 0.00365, 30, 0.58, 0.64, 717, 7100],
    ['ring', true],
    ['memory', 'read', 'memory'],
    { note: 'group C value' }
  ],
  [
    ['oak-northern-red', 'oak, northern red', 'Quercus rubra'],
    [4, 8.6, 13.7, 0.00158, 0.00369, 30, 0.56, 0.63, 706, 12500],
    ['ring', true],
    ['memory', 'read', 'memory'],
    {
      note: 'C is the commercial red-oak group value; eq 13-3 on 4.0/8.6 gives 0.00137/0.00304; open vessels'
    }
  ],
  [
    ['oak-southern-red', 'oak, southern red', 'Quercus falcata'],
    [4.7, 11.3, 16.1, 0.00158, 0.00369, 30, 0.52, 0.59, 661, 10300],
    ['ring', true],
    ['memory', 'read', 'memory'],
    { note: 'group C value' }
  ],
  [
    ['cherry-black', 'cherry, black', 'Prunus serotina'],
    [3.7, 7.1, 11.5, 0.00126, 0.00248, 30, 0.47, 0.5, 560, 10300],
    ['diffuse (fine)', false],
    ['read', 'read', 'read']
  ],
  [
    ['ash-white', 'ash, white', 'Fraxinus americana'],
    [4.9, 7.8, 13.3, 0.00169, 0.00274, 30, 0.55, 0.6, 672, 12000],
    ['ring', true],
    ['read', 'read', 'read']
  ],
  [
    ['ash-black', 'ash, black', 'Fraxinus nigra'],
    [5, 7.8, 15.2, 0.00172, 0.00274, 30, 0.45, 0.49, 549, 11000],
    ['ring', true],
    ['read', 'read', 'read']
  ],
  [
    ['ash-green', 'ash, green', 'Fraxinus pennsylvanica'],
    [4.6, 7.1, 12.5, 0.00169, 0.00274, 30, 0.53, 0.56, 627, 11400],
    ['ring', true],
    ['read', 'read', 'read'],
    { note: 'table gives white-ash C' }
  ],
  [
    ['beech-american', 'beech, American', 'Fagus grandifolia'],
    [5.5, 11.9, 17.2, 0.0019, 0.00431, 30, 0.56, 0.64, 717, 11900],
    ['diffuse (fine)', false],
    ['read', 'read', 'read']
  ],
  [
    ['birch-yellow', 'birch, yellow', 'Betula alleghaniensis'],
    [7.3, 9.5, 16.8, 0.00256, 0.00338, 30, 0.55, 0.62, 694, 13900],
    ['diffuse', false],
    ['read', 'read', 'read']
  ],
  [
    ['birch-sweet', 'birch, sweet', 'Betula lenta'],
    [6.5, 9, 15.6, 0.00256, 0.00338, 30, 0.6, 0.65, 728, 15000],
    ['diffuse', false],
    ['read', 'read', 'read'],
    { note: 'table gives yellow-birch C' }
  ],
  [
    ['birch-paper', 'birch, paper', 'Betula papyrifera'],
    [6.3, 8.6, 16.2, 0.00219, 0.00304, 30, 0.48, 0.55, 616, 11000],
    ['diffuse', false],
    ['read', 'read', 'read']
  ],
  [
    ['elm-american', 'elm, American', 'Ulmus americana'],
    [4.2, 9.5, 14.6, 0.00144, 0.00338, 30, 0.46, 0.5, 560, 9200],
    ['ring', true],
    ['read', 'read', 'read']
  ],
  [
    ['elm-rock', 'elm, rock', 'Ulmus thomasii'],
    [4.8, 8.1, 14.9, 0.00165, 0.00285, 30, 0.57, 0.63, 706, 10600],
    ['ring', true],
    ['read', 'read', 'read']
  ],
  [
    ['elm-slippery', 'elm, slippery (red elm)', 'Ulmus rubra'],
    [4.9, 8.9, 13.8, 0.00169, 0.00315, 30, 0.48, 0.53, 594, 10300],
    ['ring', true],
    ['read', 'read', 'read']
  ],
  [
    ['sycamore-american', 'sycamore, American', 'Platanus occidentalis'],
    [5, 8.4, 14.1, 0.00172, 0.00296, 30, 0.46, 0.49, 549, 9800],
    ['diffuse (wide rays)', false],
    ['read', 'read', 'memory']
  ],
  [
    ['alder-red', 'alder, red', 'Alnus rubra'],
    [4.4, 7.3, 12.6, 0.00151, 0.00256, 30, 0.37, 0.41, 459, 9500],
    ['diffuse', false],
    ['read', 'read', 'read']
  ],
  [
    ['aspen-quaking', 'aspen, quaking', 'Populus tremuloides'],
    [3.5, 6.7, 11.5, 0.00119, 0.00234, 30, 0.35, 0.38, 426, 8100],
    ['diffuse', false],
    ['read', 'read', 'read']
  ],
  [
    ['basswood-american', 'basswood, American', 'Tilia americana'],
    [6.6, 9.3, 15.8, 0.0023, 0.0033, 30, 0.32, 0.37, 414, 10100],
    ['diffuse', false],
    ['read', 'read', 'read']
  ],
  [
    ['buckeye-yellow', 'buckeye, yellow', 'Aesculus flava'],
    [3.6, 8.1, 12.5, 0.00123, 0.00285, 30, 0.33, 0.36, 403, 8100],
    ['diffuse', false],
    ['read', 'read', 'memory']
  ],
  [
    ['butternut', 'butternut', 'Juglans cinerea'],
    [3.4, 6.4, 10.6, 0.00116, 0.00223, 30, 0.36, 0.38, 426, 8100],
    ['semi-ring', true],
    ['read', 'read', 'read']
  ],
  [
    ['chestnut-american', 'chestnut, American', 'Castanea dentata'],
    [3.4, 6.7, 11.6, 0.00116, 0.00234, 30, 0.4, 0.43, 482, 8500],
    ['ring', true],
    ['read', 'read', 'read']
  ],
  [
    ['cottonwood-eastern', 'cottonwood, eastern', 'Populus deltoides'],
    [3.9, 9.2, 13.9, 0.00133, 0.00327, 30, 0.37, 0.4, 448, 9400],
    ['diffuse', false],
    ['read', 'read', 'read']
  ],
  [
    ['hackberry', 'hackberry', 'Celtis occidentalis'],
    [4.8, 8.9, 13.8, 0.00165, 0.00315, 30, 0.49, 0.53, 594, 8200],
    ['ring', true],
    ['read', 'read', 'read']
  ],
  [
    ['hickory-pecan', 'hickory, pecan', 'Carya illinoinensis'],
    [4.9, 8.9, 13.6, 0.00169, 0.00315, 30, 0.6, 0.66, 739, 11900],
    ['semi-ring', true],
    ['read', 'read', 'read']
  ],
  [
    ['hickory-shagbark', 'hickory, shagbark', 'Carya ovata'],
    [7, 10.5, 16.7, 0.00259, 0.00411, 30, 0.64, 0.72, 806, 14900],
    ['ring', true],
    ['memory', 'memory', 'read'],
    { note: 'C = true-hickory group (T value also seen in two read secondary tables, 0.00411)' }
  ],
  [
    ['honeylocust', 'honeylocust', 'Gleditsia triacanthos'],
    [4.2, 6.6, 10.8, 0.00144, 0.0023, 30, 0.6, null, null, 11200],
    ['ring', true],
    ['memory', 'read', 'memory']
  ],
  [
    ['locust-black', 'locust, black (robinia)', 'Robinia pseudoacacia'],
    [4.6, 7.2, 10.2, 0.00158, 0.00252, 30, 0.66, 0.69, 773, 14100],
    ['ring (tylosed)', true],
    ['memory', 'read', 'read']
  ],
  [
    ['persimmon-common', 'persimmon, common', 'Diospyros virginiana'],
    [7.9, 11.2, 19.1, 0.00278, 0.00403, 30, 0.64, 0.79, 885, 13900],
    ['semi-ring', false],
    ['read', 'read', 'memory'],
    { note: 'SG low confidence' }
  ],
  [
    ['sassafras', 'sassafras', 'Sassafras albidum'],
    [4, 6.2, 10.3, 0.00137, 0.00216, 30, 0.42, 0.46, 515, 7700],
    ['ring', true],
    ['read', 'read', 'memory']
  ],
  [
    ['sweetgum', 'sweetgum', 'Liquidambar styraciflua'],
    [5.3, 10.2, 15.8, 0.00183, 0.00365, 30, 0.46, 0.52, 582, 11300],
    ['diffuse', false],
    ['read', 'read', 'memory']
  ],
  [
    ['tupelo-black', 'tupelo, black', 'Nyssa sylvatica'],
    [5.1, 8.7, 14.4, 0.00176, 0.00308, 30, 0.46, 0.5, 560, 8300],
    ['diffuse', false],
    ['read', 'read', 'memory']
  ],
  [
    ['willow-black', 'willow, black', 'Salix nigra'],
    [3.3, 8.7, 13.9, 0.00112, 0.00308, 30, 0.36, 0.39, 437, 7000],
    ['semi-diffuse', false],
    ['read', 'memory', 'memory'],
    { note: 'C_R read (0.00112), C_T cut off in the read page; eq 13-3 gives 0.00308' }
  ],
  [
    ['yellow-poplar', 'yellow-poplar (tulipwood)', 'Liriodendron tulipifera'],
    [4.6, 8.2, 12.7, 0.00158, 0.00289, 30, 0.4, 0.42, 470, 10900],
    ['diffuse', false],
    ['read', 'memory', 'memory']
  ]
]

const SOFTWOODS: readonly TimberRow[] = [
  [
    ['douglas-fir-coast', 'Douglas-fir, coast', 'Pseudotsuga menziesii'],
    [4.8, 7.6, 12.4, 0.00165, 0.00267, 30, 0.45, 0.48, 538, 13400],
    ['tracheid (resin canals)', false],
    ['read', 'memory', 'memory'],
    { note: 'C_T 0.00267 also in read secondary tables' }
  ],
  [
    ['douglas-fir-interior-north', 'Douglas-fir, interior north', 'Pseudotsuga menziesii'],
    [3.8, 6.9, 10.7, 0.0013, 0.00241, 30, 0.45, 0.48, 538, 12300],
    ['tracheid', false],
    ['read', 'memory', 'memory']
  ],
  [
    ['pine-eastern-white', 'pine, eastern white', 'Pinus strobus'],
    [2.1, 6.1, 8.2, 0.00071, 0.00212, 30, 0.34, 0.35, 392, 8500],
    ['tracheid', false],
    ['memory', 'memory', 'memory']
  ],
  [
    ['pine-western-white', 'pine, western white', 'Pinus monticola'],
    [4.1, 7.4, 11.8, 0.00141, 0.00259, 30, 0.36, 0.35, 392, 10100],
    ['tracheid', false],
    ['memory', 'memory', 'read'],
    { note: 'SG as printed in the read table (0.36 green, 0.35 dry)' }
  ],
  [
    ['pine-ponderosa', 'pine, ponderosa', 'Pinus ponderosa'],
    [3.9, 6.2, 9.7, 0.00133, 0.00216, 30, 0.38, 0.4, 448, 8900],
    ['tracheid', false],
    ['memory', 'memory', 'read']
  ],
  [
    ['pine-sugar', 'pine, sugar', 'Pinus lambertiana'],
    [2.9, 5.6, 7.9, 0.00099, 0.00194, 30, 0.34, 0.36, 403, 8200],
    ['tracheid', false],
    ['memory', 'memory', 'read']
  ],
  [
    ['pine-lodgepole', 'pine, lodgepole', 'Pinus contorta'],
    [4.3, 6.7, 11.1, 0.00148, 0.00234, 30, 0.38, 0.41, 459, 9200],
    ['tracheid', false],
    ['memory', 'memory', 'memory']
  ],
  [
    ['pine-loblolly', 'pine, loblolly (southern yellow)', 'Pinus taeda'],
    [4.8, 7.4, 12.3, 0.00165, 0.00259, 30, 0.47, 0.51, 571, 12300],
    ['tracheid', false],
    ['memory', 'memory', 'memory']
  ],
  [
    ['pine-longleaf', 'pine, longleaf (southern yellow)', 'Pinus palustris'],
    [5.1, 7.5, 12.2, 0.00176, 0.00263, 30, 0.55, 0.59, 661, 13700],
    ['tracheid', false],
    ['memory', 'memory', 'memory']
  ],
  [
    ['pine-shortleaf', 'pine, shortleaf', 'Pinus echinata'],
    [4.6, 7.7, 12.3, 0.00158, 0.00271, 30, 0.47, 0.51, 571, 12100],
    ['tracheid', false],
    ['memory', 'memory', 'read']
  ],
  [
    ['pine-slash', 'pine, slash', 'Pinus elliottii'],
    [5.4, 7.6, 12.1, 0.00187, 0.00267, 30, 0.54, 0.59, 661, 13700],
    ['tracheid', false],
    ['memory', 'memory', 'read']
  ],
  [
    ['pine-red', 'pine, red', 'Pinus resinosa'],
    [3.8, 7.2, 11.3, 0.0013, 0.00252, 30, 0.41, 0.46, 515, 11200],
    ['tracheid', false],
    ['memory', 'memory', 'read']
  ],
  [
    ['spruce-sitka', 'spruce, Sitka', 'Picea sitchensis'],
    [4.3, 7.5, 11.5, 0.00148, 0.00263, 30, 0.37, 0.4, 448, 10800],
    ['tracheid', false],
    ['memory', 'memory', 'memory'],
    { note: 'SG/E per the 1999 edition' }
  ],
  [
    ['spruce-engelmann', 'spruce, Engelmann', 'Picea engelmannii'],
    [3.8, 7.1, 11, 0.0013, 0.00248, 30, 0.33, 0.35, 392, 8900],
    ['tracheid', false],
    ['memory', 'memory', 'memory']
  ],
  [
    ['spruce-red', 'spruce, red', 'Picea rubens'],
    [3.8, 7.8, 11.8, 0.0013, 0.00274, 30, 0.37, 0.4, 448, 11100],
    ['tracheid', false],
    ['memory', 'memory', 'memory']
  ],
  [
    ['redcedar-western', 'redcedar, western', 'Thuja plicata'],
    [2.4, 5, 6.8, 0.00111, 0.00234, 22, 0.31, 0.32, 358, 7700],
    ['tracheid', false],
    ['read', 'memory', 'memory'],
    { note: 'C assumes shrinkage starts at 22 % MC (table footnote)' }
  ],
  [
    ['white-cedar-northern', 'white-cedar, northern', 'Thuja occidentalis'],
    [2.2, 4.9, 7.2, 0.00101, 0.00229, 22, 0.29, 0.31, 347, 5500],
    ['tracheid', false],
    ['read', 'memory', 'memory'],
    { note: '22 % footnote' }
  ],
  [
    ['redcedar-eastern', 'redcedar, eastern', 'Juniperus virginiana'],
    [3.1, 4.7, 7.8, 0.00106, 0.00162, 30, 0.44, 0.47, 526, 6100],
    ['tracheid', false],
    ['read', 'memory', 'memory']
  ],
  [
    ['incense-cedar', 'incense-cedar', 'Calocedrus decurrens'],
    [3.3, 5.2, 7.7, 0.00112, 0.0018, 30, 0.35, 0.37, 414, 7200],
    ['tracheid', false],
    ['read', 'memory', 'memory']
  ],
  [
    ['port-orford-cedar', 'Port-Orford-cedar', 'Chamaecyparis lawsoniana'],
    [4.6, 6.9, 10.1, 0.00158, 0.00241, 30, 0.39, 0.43, 482, 11700],
    ['tracheid', false],
    ['read', 'memory', 'memory']
  ],
  [
    ['yellow-cedar', 'yellow-cedar', 'Callitropsis nootkatensis'],
    [2.8, 6, 9.2, 0.00095, 0.00208, 30, 0.42, 0.44, 493, 9800],
    ['tracheid', false],
    ['read', 'memory', 'memory']
  ],
  [
    ['redwood-old-growth', 'redwood, old-growth', 'Sequoia sempervirens'],
    [2.6, 4.4, 6.8, 0.0012, 0.00205, 22, 0.38, 0.4, 448, 9200],
    ['tracheid', false],
    ['memory', 'memory', 'read'],
    { note: '22 % footnote' }
  ],
  [
    ['baldcypress', 'baldcypress', 'Taxodium distichum'],
    [3.8, 6.2, 10.5, 0.0013, 0.00216, 30, 0.42, 0.46, 515, 9900],
    ['tracheid', false],
    ['memory', 'memory', 'memory']
  ],
  [
    ['hemlock-western', 'hemlock, western', 'Tsuga heterophylla'],
    [4.2, 7.8, 12.4, 0.00144, 0.00274, 30, 0.42, 0.45, 504, 11300],
    ['tracheid', false],
    ['memory', 'memory', 'memory']
  ],
  [
    ['larch-western', 'larch, western', 'Larix occidentalis'],
    [4.5, 9.1, 14, 0.00155, 0.00323, 30, 0.48, 0.52, 582, 12900],
    ['tracheid', false],
    ['memory', 'memory', 'memory']
  ],
  [
    ['fir-white', 'fir, white', 'Abies concolor'],
    [3.3, 7, 9.8, 0.00112, 0.00245, 30, 0.37, 0.39, 437, 10300],
    ['tracheid', false],
    ['read', 'memory', 'memory']
  ]
]

export const TIMBERS_NORTH_AMERICA = timberRecords(NORTH_AMERICA, [...HARDWOODS, ...SOFTWOODS])
