import { readdirSync, readFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { claimNote } from '../../src/core/model/claim.js';
import { delivery } from '../../src/core/model/delivery.js';
import { entry } from '../../src/core/model/entry.js';
import { reading, receivedEvidence } from '../../src/core/model/evidence.js';
import { manifest } from '../../src/core/model/manifest.js';
import { zone } from '../../src/core/model/time.js';
import { verificationReport } from '../../src/core/model/verification.js';
import { AMOUNT_COLUMNS } from '../../src/jobs/claim-amounts.js';
import { trailCsv } from '../../src/jobs/trail.js';
import { fieldTable, kindTable } from './field-tables.js';

const DOCS = join(resolve(import.meta.dirname, '../..'), 'docs');
const FOLDER = join(DOCS, 'formats');
const pages = readdirSync(FOLDER).map((name) => ({ name, text: readFileSync(join(FOLDER, name), 'utf8') }));
const all = pages.map(({ text }) => text).join('\n');

/** Names in the first cells of the table under a heading. */
function named(heading: string): string[] {
  const section = all.split(`## ${heading}\n`)[1]?.split('\n## ')[0] ?? '';
  const cells = [...section.matchAll(/^\| (`.*?) \|/gm)].map(([, cell = '']) => cell);
  return cells.flatMap((cell) => [...cell.matchAll(/`([\w-]+)`/g)].map(([, name = '']) => name)).sort();
}

describe('docs/formats have', () => {
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

  it('every section in the list of contents, and no other', () => {
    const contents = readFileSync(join(DOCS, 'formats.md'), 'utf8');
    const listed = [...contents.matchAll(/\[([^\]]+)\]\((formats\/[^)#]+)#[^)]+\)/g)].map(
      ([, section = '', page = '']) => `${basename(page)}: ${section}`,
    );
    const there = pages.flatMap(({ name, text }) =>
      [...text.matchAll(/^## (.+)$/gm)].map(([, section = '']) => `${name}: ${section}`),
    );
    expect(listed.sort()).toEqual(there.sort());
  });
});

describe('the generated tables of docs/formats are those of the schemas:', () => {
  const TABLES: Record<string, string> = {
    'delivery.yaml': fieldTable(delivery),
    entries: kindTable(entry, 'type'),
    files: kindTable(receivedEvidence, 'kind'),
    readings: kindTable(reading, 'kind'),
    manifest: fieldTable(manifest),
    verification: fieldTable(verificationReport),
  };
  const REGION = /<!-- generated: (.+?) -->\n[\s\S]*?<!-- end -->/g;

  /** `npx vitest run tests/house/formats.test.ts -u` writes them anew. */
  it.each(pages)('$name', async ({ name, text }) => {
    const anew = text.replace(
      REGION,
      (_, table: string) => `<!-- generated: ${table} -->\n${TABLES[table] ?? 'no such table'}\n<!-- end -->`,
    );
    await expect(anew).toMatchFileSnapshot(join(FOLDER, name));
  });

  it('every one is on a page', () => {
    const shown = [...all.matchAll(REGION)].map(([, table = '']) => table);
    expect(shown.sort()).toEqual(Object.keys(TABLES).sort());
  });

  it('every field says what it is, or what it is a part of does', () => {
    const silent = Object.entries(TABLES).flatMap(([table, text]) => {
      const rows = [...text.matchAll(/^\|(?: {2}\|)? `([^`]+)` \| (\S.*?) \| (.*) \|$/gm)];
      const says = new Set(
        rows.flatMap(([, field = '', , words = '']) => (words.trim() === '' ? [] : [field])),
      );
      const partOf = (field: string) => field.replace(/(?:\[\])?\.[^.]+$/, '');
      return rows
        .map(([, field = '']) => field)
        .filter((field) => field !== 'body' && !says.has(field) && !says.has(partOf(field)))
        .map((field) => `${table}: ${field}`);
    });
    expect(silent).toEqual([]);
  });
});
