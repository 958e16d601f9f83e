/**
 * Headings that stand over the cells of the rows below them. A comma within a heading that is not quoted cuts it in
 * two: `Date Time, GMT-05:00,Temp, °C` over rows of two cells. Where rows have a number in front that has no heading,
 * one is put before the others. Headings that fit, or that nothing makes fit, are left as they are.
 */
export function fittedHeadings(
  cells: readonly string[],
  below: readonly (readonly string[])[],
): readonly string[] {
  const width = usualWidth(below);
  if (width === 0 || cells.length === width) return cells;
  if (cells.length > width) {
    const joined = joinedAgain(cells);
    const spare = below.every((row) => row.length <= joined.length);
    return joined.length < cells.length && spare && joined.length <= width + trailingEmpty(joined)
      ? joined
      : cells;
  }
  const numbered =
    cells.length === width - 1 &&
    below.slice(0, 20).every((row, i, rows) => {
      const number = Number(row[0]);
      return Number.isInteger(number) && (i === 0 || number === Number(rows[i - 1]?.[0]) + 1);
    });
  return numbered && cells[0]?.trim() !== '' && !isClock(cells[0] ?? '') ? ['', ...cells] : cells;
}

/** A number that counts up can be the first column itself. */
function isClock(heading: string): boolean {
  return /^(?:#|no\.?|nr\.?|id|index|record|row)$/i.test(heading.trim());
}

function usualWidth(below: readonly (readonly string[])[]): number {
  const counts = new Map<number, number>();
  for (const row of below) counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
  const [most] = [...counts].sort((a, b) => b[1] - a[1]);
  return most?.[0] ?? 0;
}

/** A cell that goes on in the next one: a bracket that is open, or a blank after the comma. */
function joinedAgain(cells: readonly string[]): string[] {
  const joined: string[] = [];
  for (const cell of cells) {
    const before = joined.at(-1);
    if (before !== undefined && (/^\s+\S/.test(cell) || opens(before) > 0))
      joined[joined.length - 1] = `${before},${cell}`;
    else joined.push(cell);
  }
  return joined;
}

function opens(text: string): number {
  return (text.match(/[([]/g)?.length ?? 0) - (text.match(/[)\]]/g)?.length ?? 0);
}

function trailingEmpty(cells: readonly string[]): number {
  let count = 0;
  while (count < cells.length && cells.at(-1 - count)?.trim() === '') count += 1;
  return count;
}
