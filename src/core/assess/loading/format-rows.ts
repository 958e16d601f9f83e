/** `1–6, 9`: row numbers as a person writes them. */
export function formatRows(rows: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const row of [...rows].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last !== undefined && row <= last[1] + 1) last[1] = row;
    else runs.push([row, row]);
  }
  return runs.map(([from, to]) => (from === to ? String(from) : `${from}–${to}`)).join(', ');
}
