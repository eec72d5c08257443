import type { Work } from '../findings/work.ts'

/** What the maker calls what lies under a cut: "pour 1", "timber 0" or "void" of {@link LeastLeft}. */
export function overName({ entries }: Pick<Work, 'entries'>, key: string): string {
  if (key === 'void') return 'a hollow'
  const [kind, index] = key.split(' ')
  const lists = {
    pour: entries.pours,
    timber: entries.timbers,
    marking: entries.markings,
    former: entries.formers
  }
  return lists[kind as keyof typeof lists]?.[Number(index)]?.id ?? key
}
