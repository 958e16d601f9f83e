// node run.worker.js FILE: runs one bench and prints its figures against its reference: ratios travel between machines,
// seconds do not. A bench is a module that exports `name`, `reference` and `run`.
import { pathToFileURL } from 'node:url';

/**
 * One figure of a bench and the same figure of its reference, measured in the same run.
 * @typedef {{ what: string, unit: string, own: number, reference: number }} Figure
 * @typedef {{ name: string, reference: string, run: () => Promise<Figure[]> }} Bench
 */

/** @param {number} value */
const short = (value) => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));

/** @type {Bench} */
const bench = await import(new URL(process.argv[2] ?? '', pathToFileURL(`${import.meta.dirname}/`)).href);
console.log(`${bench.name}, against ${bench.reference}`);
const rows = (await bench.run()).map(({ what, unit, own, reference }) => [
  what,
  `${short(own)} ${unit}`,
  `${short(reference)} ${unit}`,
  `${(own / reference).toFixed(2)} ×`,
]);
const table = [['', 'own', 'reference', 'ratio'], ...rows];
const widths = [0, 1, 2, 3].map((i) => Math.max(...table.map((row) => (row[i] ?? '').length)));
for (const row of table)
  console.log(`  ${row.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join('  ')}`.trimEnd());
console.log();
