/** What the form of a kind begins with: the usual size of the engine's own kind (a test holds them equal). */
export const KIND_START: Readonly<
  Record<
    string,
    {
      readonly sizeMm: readonly [number, number, number]
      readonly species: string
      readonly resin: string
      readonly round: boolean
    }
  >
> = {
  panel: { sizeMm: [300, 200, 18], species: 'ash-white', resin: 'deep', round: false },
  tray: { sizeMm: [380, 240, 26], species: 'ash-white', resin: 'deep', round: false },
  tabletop: { sizeMm: [700, 420, 32], species: 'walnut-black', resin: 'deep', round: false },
  dial: { sizeMm: [280, 280, 22], species: 'walnut-black', resin: 'deep', round: true },
  boards: { sizeMm: [360, 170, 21], species: 'maple-sugar', resin: 'deep', round: false },
  lamp: { sizeMm: [160, 90, 34], species: 'ash-white', resin: 'deep', round: false }
}
