/**
 * A name of the catalogue in a sentence, without what it says in brackets or after a comma: "oil varnish" of "oil varnish
 * (oil-modified polyurethane), brushed". For what is already told apart, never for timbers, whose kind comes after the comma.
 */
export function shortName(name: string): string {
  return name.split(/,| \(/, 1)[0]!
}
