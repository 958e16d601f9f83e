import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import * as conformance from '../../src/conformance.js';
import { evidenceId } from '../../src/core/model/evidence.js';
import * as library from '../../src/index.js';

const ROOT = resolve(import.meta.dirname, '../..');
const page = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');
const section = page.split('## As a library')[1]?.split('\n## ')[0] ?? '';
/** Names in the last column of the table of parts. */
const named = section
  .split('\n')
  .filter((row) => row.startsWith('| `load-dossier'))
  .flatMap((row) => [...(row.split('|').at(-2) ?? '').matchAll(/`(\w+)`/g)].map(([, name = '']) => name));
const given = new Map<string, unknown>(Object.entries({ ...library, ...conformance }));

describe('the library, as DEVELOPERS.md tells of it', () => {
  it('has every name in the table', () => {
    expect(named.length).toBeGreaterThan(30);
    expect(named.filter((name) => given.get(name) === undefined)).toEqual([]);
  });

  it('does what every command does', () => {
    const program = readFileSync(join(ROOT, 'src/cli/program.ts'), 'utf8');
    const commands = [...program.matchAll(/'\.\/commands\/([a-z]+)\.js'/g)].map(([, name = '']) => name);
    const under: Record<string, string> = {
      new: 'newDelivery',
      record: 'recordReading',
      gaps: 'deliveryGaps',
      temps: 'temperatures',
      checklist: 'writeChecklist',
      identity: 'makeNewIdentity',
      published: 'quotePublished',
    };
    expect(commands.length).toBeGreaterThan(10);
    expect(commands.filter((name) => !given.has(under[name] ?? name))).toEqual([]);
  });

  it('answers to the names of version 0.1, and says the new ones', async () => {
    const warned: string[] = [];
    const onWarning = ({ message }: Error) => warned.push(message);
    process.on('warning', onWarning);
    expect(library.lifeOf([], evidenceId.parse('e1'))).toEqual(
      library.evidenceHistory([], evidenceId.parse('e1')),
    );
    await new Promise(setImmediate);
    process.off('warning', onWarning);
    expect(warned).toEqual(['lifeOf is now evidenceHistory']);
  });

  it('computes without a delivery', () => {
    // 41 °F is 5 °C; half of the difference to the air is left after one half-cooling time, by its definition.
    expect(library.celsius(library.parseTemperature('41 °F') ?? { value: 0, unit: '°C' })).toBeCloseTo(5, 12);
    const tau = library.timeConstant(7200);
    expect(library.productAfter(20, 0, 0, 7200, tau, 0)).toBeCloseTo(10, 12);
    const hour = 3_600_000;
    const held = library.summarise(
      'return-air',
      Float64Array.of(0, hour, 2 * hour),
      Float64Array.of(0, 4, 4),
      { from: 0, to: 2 * hour },
      3600,
      undefined,
    );
    // One hour from 0 to 4 °C in a straight line, one at 4 °C.
    expect(held.mean).toBeCloseTo(3, 12);
  });
});
