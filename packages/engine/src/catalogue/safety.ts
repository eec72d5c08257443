import type { CatalogueRecord } from './record.ts'

/**
 * A hazard, the lines that stand at the step where it bites, and who knows better than we do.
 *
 * `confidence` is that of the weakest line; `source` tags what is better known.
 *
 * Limits: general cautions in plain words, not a risk assessment. They never say that anything is without
 * danger; the documents and trades in `defersTo` go before every line.
 */
export interface HazardRecord extends CatalogueRecord {
  readonly lines: readonly string[]
  /** Documents, rules and trades that decide. */
  readonly defersTo: readonly string[]
}

const RESIN_SHEET = 'the safety data sheets of the resin and its hardener'
const MANUAL = 'the manual of the machine'
const RULES = 'the rules for workshops where you live'
const PRACTICE = 'common workshop practice'

export const HAZARDS: readonly HazardRecord[] = [
  {
    id: 'mixing-resin',
    name: 'mixing resin',
    source:
      'UK HSE research report RR79 and dermatitis pages: resin, hardener and diluents sensitise skin, alone or together; nitrile for solvent-based, butyl for water-based systems (read); EU-OSHA: airways and eyes too (read)',
    confidence: 'practice',
    lines: [
      'Nitrile gloves, sleeves and eye protection before a bottle is opened; change gloves once they are wetted.',
      'Open the windows or draw the air away from your face. A dust mask does not stop vapour.',
      'An allergy to resin is for life: at the first rash or tight chest stop, and see a doctor.',
      'Wipe skin with soap and water, not with solvent.'
    ],
    defersTo: [RESIN_SHEET]
  },
  {
    id: 'pouring',
    name: 'pouring resin',
    source: `${PRACTICE}; heat of cure about 350-550 kJ/kg (memory)`,
    confidence: 'practice',
    lines: [
      'Keep to the depth on the label: a deep pour can heat itself until it smokes.',
      'Stay by it for the first two hours: leaks, lifting timber, heat.',
      'If it smokes, leave and let the fumes clear. Put no water on burning resin.'
    ],
    defersTo: [RESIN_SHEET]
  },
  {
    id: 'leftover-in-cup',
    name: 'leftover resin in the cup',
    source: `${PRACTICE}; makers report 100 g in a pot beyond 200 °C`,
    confidence: 'practice',
    lines: [
      'Spread what is left to under 10 mm deep in a metal tray, outdoors on something that cannot burn.',
      'Watch it until it is cold. Never bin it warm.',
      'Never soak hardener up with sawdust: it can set itself alight.'
    ],
    defersTo: [RESIN_SHEET]
  },
  {
    id: 'hot-piece',
    name: 'hot casting',
    source: PRACTICE,
    confidence: 'practice',
    lines: [
      'The casting or its mould may be hot enough to burn skin: feel for heat with the back of a gloved hand.',
      'Hot resin fumes more: keep the air moving, keep children and animals out.'
    ],
    defersTo: [RESIN_SHEET]
  },
  {
    id: 'peroxide-catalyst',
    name: 'peroxide catalyst of polyester',
    source: 'general rule for peroxides and metal-salt promoters (memory)',
    confidence: 'memory',
    lines: [
      'Never let the catalyst touch the promoter by itself: the two can explode. Stir one into the resin first.',
      'Catalyst in an eye can blind within seconds: goggles, and water for rinsing within reach.',
      'Styrene vapour burns and numbs: no flame, no spark, strong draught.'
    ],
    defersTo: ['the safety data sheets of the resin, the catalyst and the promoter']
  },
  {
    id: 'isocyanate',
    name: 'isocyanates of polyurethane',
    source: 'UK HSE on isocyanates: leading cause of occupational asthma (memory)',
    confidence: 'memory',
    lines: [
      'The hardener of polyurethane holds isocyanates: breathed or on skin they can bring on asthma for life.',
      'Draw the air away, gloves and sleeves on; nobody with asthma in the room. Do not warm or spray it.'
    ],
    defersTo: ['the safety data sheets of both parts', 'a doctor at the first tight chest']
  },
  {
    id: 'sanding-cured-resin',
    name: 'sanding or grinding cured resin',
    source: `NIOSH: P100 for such dust (memory); dust of half-cured resin still reacts (practice)`,
    confidence: 'practice',
    lines: [
      'Not before full cure: half-cured dust still sensitises.',
      'Extraction at the tool, then a P100 or FFP3 mask; wet sanding keeps the dust down.',
      'Wash hands and arms before you eat or rub your eyes.'
    ],
    defersTo: [RESIN_SHEET, RULES]
  },
  {
    id: 'sanding-timber',
    name: 'dust of timber',
    source:
      'OSHA wood dust page (read): NIOSH and ACGIH 1 mg/m³, western redcedar 0.5; UK EH40 hardwood 3, softwood 5 mg/m³, hardwood dust a carcinogen, softwood a sensitiser (read at second hand); IARC group 1 (memory)',
    confidence: 'practice',
    lines: [
      'Extraction at the tool, then a mask of at least N95 or FFP2, FFP3 for dusty work.',
      'Dust of hardwoods can cause cancer, that of many timbers allergy: look your timber up.',
      'Fine dust in the air can explode: no sparks, earth the hose, empty the bag.'
    ],
    defersTo: [RULES, 'the lists of harmful timbers of your labour inspectorate']
  },
  {
    id: 'wet-sanding',
    name: 'sanding wet',
    source: PRACTICE,
    confidence: 'practice',
    lines: [
      'No mains tool near the water: by hand, or with an air sander.',
      'Slurry is dust again once dry: wipe it up wet, let it settle, keep it out of the drain.'
    ],
    defersTo: [MANUAL, 'the safety data sheet of the resin or finish']
  },
  {
    id: 'sanding-finish',
    name: 'sanding between coats',
    source: PRACTICE,
    confidence: 'practice',
    lines: [
      'Not before the coat has dried through: until then its dust reacts, and clogs the paper.',
      'Extraction at the tool and a mask as its sheet names it, most of all for two-part coats.'
    ],
    defersTo: ['the safety data sheet of the finish', RULES]
  },
  {
    id: 'spray',
    name: 'spraying a finish',
    source: `29 CFR 1910.134 (respirators) and maker's sheets in general (memory)`,
    confidence: 'memory',
    lines: [
      'Spray mist burns like gas: no flame, no switch, no heater; draw the mist out of the room.',
      'A cartridge mask fitted to your face, its cartridges as the sheet of the finish names them.',
      'Two-part polyurethane holds isocyanates: many sheets forbid spraying it without supplied air.'
    ],
    defersTo: ['the safety data sheet of the finish', 'local rules on spraying and fire']
  },
  {
    id: 'finish-vapour',
    name: 'vapour of a finish with solvent',
    source: PRACTICE,
    confidence: 'practice',
    lines: [
      'Solvent in the finish burns and numbs, wet and while it dries: no flame, no spark, no heater near it.',
      'Open the windows and draw the air away; gloves as its sheet names them. A dust mask does not stop vapour.'
    ],
    defersTo: ['the safety data sheet of the finish', 'the tin']
  },
  {
    id: 'oily-rags',
    name: 'rags with drying oil',
    source: 'NFPA and US CPSC advice (memory)',
    confidence: 'memory',
    lines: [
      'Rags with drying oil set themselves alight: hang them out singly in the open until stiff, or drown them in a closed metal can of water.',
      'Never in a heap, a pocket or a bin.'
    ],
    defersTo: ['the tin of the oil', 'your local fire service']
  },
  {
    id: 'charring',
    name: 'charring with a flame',
    source: PRACTICE,
    confidence: 'practice',
    lines: [
      'Outdoors, on bare ground, water at hand; nothing of resin, solvent or dust within reach of the flame.',
      'Never char resin: its smoke is poisonous.',
      'Embers hide in cracks: wet it, watch it for an hour.'
    ],
    defersTo: ['the manual of the burner', 'local rules on open fire']
  },
  {
    id: 'machine-cutting',
    name: 'cutting on the machine',
    source:
      '29 CFR 1910.212, .213, .147; EN ISO 19085-3 for boring and routing machines; EN 847-1 for the speed marked on tools (all memory)',
    confidence: 'memory',
    lines: [
      'Run the path in air first. Check zero, cutter, clamps, and that nothing stands in its way.',
      'Eye and ear protection; hair, sleeves and gloves away from the spindle; never reach in while it turns.',
      'Power off at the switch before a cutter is changed. Never above the speed marked on the cutter.',
      'Stay in the room with a hand near the stop: a dull or loose cutter starts fires.'
    ],
    defersTo: [MANUAL, RULES]
  },
  {
    id: 'router-by-hand',
    name: 'router by hand',
    source: PRACTICE,
    confidence: 'practice',
    lines: [
      'Eye and ear protection, dust extraction; unplug it before you touch the bit.',
      'Shank well into the collet, then back off about 3 mm; nip it tight; try it on scrap.',
      'Work clamped, both hands on the router, against the turn of the bit, 3 mm deep a pass.'
    ],
    defersTo: [MANUAL]
  },
  {
    id: 'sawing',
    name: 'sawing',
    source: `29 CFR 1910.213 (memory); ${PRACTICE}`,
    confidence: 'practice',
    lines: [
      'Guard and riving knife on, push stick at hand, stand out of the line of the blade.',
      'Cast resin can pinch a blade or shatter: full cure, sharp blade, slow feed, support both sides.',
      'A live edge rocks: screw it to a straight board first.'
    ],
    defersTo: [MANUAL]
  },
  {
    id: 'drilling',
    name: 'drilling',
    source: PRACTICE,
    confidence: 'practice',
    lines: [
      'Clamp the piece: a bit that grabs in resin spins it.',
      'No gloves, no loose sleeves at a drill; eye protection.',
      'Lift often, slow near the far side, scrap beneath.'
    ],
    defersTo: [MANUAL]
  },
  {
    id: 'heavy-lift',
    name: 'lifting a heavy piece',
    source:
      'UK HSE guidance: 25 kg at waist height for a man, 16 kg for a woman, less when reaching (memory)',
    confidence: 'memory',
    lines: [
      'Weigh it on paper before you lift it: beyond about 25 kg two people, or a trolley.',
      'Clear the way first, agree the words, keep fingers from under it.',
      'A mould full of liquid is not to be carried.'
    ],
    defersTo: [RULES]
  },
  {
    id: 'mains-wiring',
    name: 'mains wiring',
    source: 'national wiring rules in general; IEC 60598 for luminaires (memory)',
    confidence: 'memory',
    lines: [
      'Mains parts are chosen, wired and tested by a licensed electrician after the codes where you live.',
      'Leave room, a way in and a relief for the cable; cast no mains part into resin.'
    ],
    defersTo: ['a licensed electrician', 'local electrical codes']
  },
  {
    id: 'magnets-swallow',
    name: 'small strong magnets and coin cells',
    source: 'US CPSC advice on magnets; EN 71-1 for toys (memory)',
    confidence: 'memory',
    lines: [
      'Two swallowed magnets, or a coin cell, can kill a child: enclose them so that nothing short of breaking the piece sets them free.',
      'Keep strong magnets from pacemakers. They snap together and splinter: eye protection.'
    ],
    defersTo: [
      'product safety rules where the piece is sold',
      'a doctor at once if one may have been swallowed'
    ]
  },
  {
    id: 'food-side',
    name: 'a face that meets food',
    source:
      '21 CFR 175.300 (read in part); Regulations (EC) 1935/2004, (EU) 10/2011, (EC) 1895/2005, (EU) 2024/3190; FDA Food Code 4-101.17 (all memory)',
    confidence: 'memory',
    lines: [
      'Needs written compliance for the exact product, in the mix and cure used, as a continuous film.',
      'Knife cuts break the film. Not for hot food or drink above the temperature at which the resin softens.',
      'We make no claim about food: the maker of the resin and the authority where it is sold decide.'
    ],
    defersTo: [
      'the written declaration of the resin’s or finish’s maker',
      'the food authority where it is sold'
    ]
  },
  {
    id: 'glass-mould',
    name: 'mould or plate of glass',
    source: PRACTICE,
    confidence: 'practice',
    lines: [
      'Resin tears chips out of glass at demoulding: goggles, gloves and sleeves.',
      'Glass under one-sided heat or on a hard point breaks without warning: lay it full, keep it level.'
    ],
    defersTo: [RESIN_SHEET]
  },
  {
    id: 'pressure-pot',
    name: 'pressure pot',
    source: `rules on pressure vessels in general (memory); 50-60 psi (3.4-4.1 bar) common among makers`,
    confidence: 'practice',
    lines: [
      'Only a vessel built and marked for air at that pressure, with its relief valve working; never a paint pot altered.',
      'Close every clamp before the air, open none until the gauge reads nothing; stand aside of the lid.',
      'Resin that runs away inside a closed pot adds heat and pressure: small batches, slow resin.'
    ],
    defersTo: ['the manual and test mark of the vessel', 'local rules on pressure vessels']
  }
]
