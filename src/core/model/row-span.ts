/**
 * Parses `1-13`, `4` or `4 to 9` as rows counted from the nose; undefined for other text. The schema checks the
 * bounds.
 */
export function parseRowSpan(text: string): { from: number; to: number } | undefined {
  const [, first, last] = /^\s*(\d{1,3})\s*(?:(?:-|–|to)\s*(\d{1,3}))?\s*$/i.exec(text) ?? [];
  if (first === undefined) return undefined;
  return { from: Number(first), to: Number(last ?? first) };
}
