/** Reads `11 ms`, `0.4s`, `1,5 s`, and a bare number as milliseconds; undefined for anything else. */
export function parseMilliseconds(text: string): number | undefined {
  const [, digits = '', unit = ''] = /^\s*(\d+(?:[.,]\d+)?)\s*(ms|msec|s|sec)?\.?\s*$/i.exec(text) ?? [];
  const value = Number(digits.replace(',', '.'));
  if (digits === '' || value === 0) return undefined;
  return /^s/i.test(unit) ? value * 1000 : value;
}
