import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { claimNote } from '../../src/core/model/claim.js';
import { entry } from '../../src/core/model/entry.js';
import { zone } from '../../src/core/model/time.js';
import { AMOUNT_COLUMNS } from '../../src/jobs/claim-amounts.js';
import { trailCsv } from '../../src/jobs/trail.js';

const page = readFileSync(join(resolve(import.meta.dirname, '../..'), 'docs/formats.md'), 'utf8');
/** Names in the first cells of the table under a heading. */
function named(heading: string): string[] {
  const section = page.split(`## ${heading}\n`)[1]?.split('\n## ')[0] ?? '';
  const cells = [...section.matchAll(/^\| (`.*?) \|/gm)].map(([, cell = '']) => cell);
  return cells.flatMap((cell) => [...cell.matchAll(/`([\w-]+)`/g)].map(([, name = '']) => name)).sort();
}

describe('docs/formats.md has', () => {
  it('every type of entry', () => {
    expect(named('The ledger')).toEqual(entry.options.map(({ shape }) => shape.type.value).sort());
  });

  it('everything that can be said of a claim', () => {
    expect(named('What is said of a claim')).toEqual(
      claimNote.options.map(({ shape }) => shape.is.value).sort(),
    );
  });

  it('every column of a worksheet of amounts', () => {
    expect(named('Worksheet of amounts')).toEqual([...AMOUNT_COLUMNS].sort());
  });

  it('every column of the trail', () => {
    const [header = ''] = trailCsv({ rows: [], zone: zone.parse('UTC') }).split('\r\n');
    expect(named('Audit trail')).toEqual(header.split(',').sort());
  });
});
