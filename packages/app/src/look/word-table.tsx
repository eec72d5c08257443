import { figureColumns } from '../../../engine/src/sheets/run-part.ts'

/**
 * A table of words and figures; the first cell of a row names it. Columns of figures stand at the right, under their
 * heads. Wider than its place, it is moved by hand or key.
 */
export function WordTable({
  head,
  rows,
  caption
}: {
  readonly head: readonly string[]
  readonly rows: readonly (readonly string[])[]
  readonly caption?: string
}) {
  const of = figureColumns({ head, rows }).map(figures => (figures ? 'figures' : 'words'))
  return (
    <div class="scroll" tabindex={0} role="group" aria-label={caption ?? head.join(', ')}>
      <table>
        {caption === undefined ? null : <caption>{caption}</caption>}
        <thead>
          <tr>
            {head.map((h, i) => (
              <th key={h} scope="col" class={of[i]}>
                {h}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, k) => (
            <tr key={k}>
              {row.map((cell, i) =>
                i === 0 ? (
                  <th key={head[i]} scope="row">
                    {cell}
                  </th>
                ) : (
                  <td key={head[i]} class={of[i]}>
                    {cell}
                  </td>
                )
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
