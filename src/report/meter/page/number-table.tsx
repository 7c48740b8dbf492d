/** A table of numbers that scrolls sideways where it must. */
import type { ReactNode } from "react";

export type NumberTableProps = {
  readonly name: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly ReactNode[])[];
  /** columns of words, set to the left */
  readonly words?: readonly number[];
  /** a heading above it */
  readonly title?: string;
};

export function NumberTable({ name, head, rows, words = [], title }: NumberTableProps) {
  const columnClass = (j: number) => (words.includes(j) ? "words" : undefined);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable by keyboard
    <section className="scroll" aria-label={name} tabIndex={0}>
      {title !== undefined && <h3>{title}</h3>}
      <table className="numbers">
        <thead>
          <tr>
            {head.map((cell, j) => (
              <th scope="col" key={cell} className={j === 0 || words.includes(j) ? "first" : undefined}>
                {cell}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows never move, and two may be alike
            <tr key={i}>
              {row.map((cell, j) =>
                j === 0 ? (
                  <th scope="row" key={head[j]} className="first">
                    {cell}
                  </th>
                ) : (
                  <td key={head[j]} className={columnClass(j)}>
                    {cell}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
