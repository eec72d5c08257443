/**
 * What a finish is thinned with, and so what it can dissolve in the surface below: a colour that gives way
 * to the carrier of its finish bleeds into it.
 */
export type Carrier = 'water' | 'alcohol' | 'mineral spirit' | 'lacquer thinner' | 'none'
