import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const SRC = resolve(import.meta.dirname, '../../src');
const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => ({ name, text: readFileSync(join(SRC, name), 'utf8') }));
/** What luxon is asked to put into a zone. */
const ZONED = /DateTime\.from\w+\([^;]*?\{[^}]*zone[^}]*\}|\.setZone\([^;]*?;/g;

describe('luxon gets a zone only', () => {
  const zoned = files.flatMap(({ name, text }) =>
    [...text.matchAll(ZONED)].map(([call]) => ({ name, call: call.replace(/\s+/g, ' ') })),
  );

  it('where it is looked for', () => {
    expect(zoned.length).toBeGreaterThan(10);
  });

  it('with its rules, or UTC, so that one without rules is refused', () => {
    expect(zoned.filter(({ call }) => !/zoneRules\(|'utc'/.test(call))).toEqual([]);
  });

  it('from one place', () => {
    const asking = files.filter(({ text }) => /IANAZone\.create|supportedValuesOf/.test(text));
    expect(asking.map(({ name }) => name)).toEqual([join('core', 'model', 'zone-rules.ts')]);
  });
});
