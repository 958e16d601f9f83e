import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EXIT } from '../../src/cli/exit.js';
import type { Output } from '../../src/cli/output.js';
import { runCli } from '../../src/cli/program.js';
import { DELIVERY_YAML } from '../intake/a-delivery.js';

let root: string;
const at = (name: string) => join(root, name);

async function run(
  args: string[],
  width = 80,
): Promise<{ code: number; out: string; err: string; json: unknown }> {
  const lines: string[] = [];
  const notes: string[] = [];
  let json: unknown;
  const output: Output = {
    line: (text = '') => lines.push(text),
    note: (text) => notes.push(text),
    progress: () => undefined,
    document: (text) => lines.push(text),
    json: (value) => {
      json = value;
    },
    jsonList: () => {
      const items: unknown[] = [];
      json = items;
      return { item: (value) => items.push(value), end: () => undefined };
    },
    style: (_, text) => text,
    width,
  };
  const code = await runCli(args, output, () => new Date('2026-07-14T10:00:00Z'));
  return { code, out: lines.join('\n'), err: notes.join('\n'), json };
}

beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), 'gaps-'));
  process.env.DOSSIER_BY = 'R. Quill';
  writeFileSync(at('facts.yaml'), DELIVERY_YAML);
  for (const name of ['one', 'two'])
    expect((await run(['new', at(name), '--file', at('facts.yaml')])).code).toBe(0);
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

describe('dossier gaps', () => {
  it('says what, until when and how, in order of urgency, and ends with 1', async () => {
    const { code, out } = await run(['gaps', at('one')]);
    expect(code).toBe(EXIT.no);
    expect(out).toContain(
      'Before loading\n  MISSING Trailer swept or washed\n    one of these: no photo of the inside of the trailer; or no washout receipt\n    Obtainable until: loading began\n    How: Before the first pallet',
    );
    expect(out.indexOf('Obtainable until: loading began')).toBeLessThan(
      out.indexOf('Obtainable until: departed'),
    );
    expect(out).not.toContain('Why:');
    expect(out).toMatch(/\d+ open, \d+ met, \d+ not yet due\.$/);
  });

  it('says why when asked', async () => {
    const { out } = await run(['gaps', at('one'), '--why']);
    expect(out).toContain('Why: Dirt and wet floors');
    expect(out).toContain('Helps to show: care in transit');
    expect(out).toContain('[trailer-clean]');
  });

  it.each([40, 60])('stays within %i columns', async (width) => {
    const { out } = await run(['gaps', at('one'), '--why'], width);
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(width);
  });

  it('of one stage', async () => {
    const { out } = await run(['gaps', at('one'), '--stage', 'before-loading']);
    expect(out).toContain('Before loading');
    expect(out).not.toContain('\nLoading\n');
    const wrong = await run(['gaps', at('one'), '--stage', 'lunch']);
    expect([wrong.code, wrong.err]).toEqual([EXIT.badInput, expect.stringContaining('before-loading')]);
  });

  it('says it in the words of a templates folder of your own', async () => {
    mkdirSync(at('ours/words/en/lacking'), { recursive: true });
    writeFileSync(at('ours/words/en/lacking/none.md'), 'nobody sent {{word thing}}');
    const { out } = await run(['gaps', at('one'), '--templates', at('ours')]);
    expect(out).toContain('nobody sent');
    expect(out).not.toContain('no pre-trip');
    const wrong = await run(['gaps', at('one'), '--templates', at('not-there')]);
    expect([wrong.code, wrong.err]).toEqual([EXIT.badInput, expect.stringContaining('not-there')]);
  });

  it('gives data as JSON, with ids and facts and no sentences', async () => {
    const { json } = await run(['gaps', at('one'), '--json']);
    expect(json).toMatchObject({
      delivery: expect.any(String),
      at: '2026-07-14T10:00:00.000Z',
      ruleSet: { name: 'produce', origin: { files: [{ name: 'produce.yaml' }], off: [] } },
      gaps: expect.arrayContaining([
        expect.objectContaining({
          rule: 'unit-pre-trip',
          outcome: 'missing',
          lacking: [{ is: 'none', facts: { thing: 'pre-trip-report', need: 1 } }],
          closable: { is: 'until', moment: 'doors-closed', stop: 'load-1' },
        }),
      ]),
    });
  });

  it('of several deliveries is a table, which one bad delivery does not stop', async () => {
    const { code, out, err } = await run(['gaps', at('one'), at('nowhere'), at('two')]);
    expect(code).toBe(EXIT.badInput);
    expect(out.split('\n')[0]).toMatch(/^delivery +open +lost +met +closes next$/);
    expect(out).toContain('could not be read');
    expect(out.match(/Trailer swept/g)?.length).toBe(2);
    expect(err).toContain('no delivery.yaml');
    const { json } = await run(['gaps', at('one'), at('nowhere'), '--json']);
    expect(json).toEqual([
      expect.objectContaining({ gaps: expect.any(Array) }),
      expect.objectContaining({ problem: expect.objectContaining({ code: 'bad-usage' }) }),
    ]);
  });

  it('begins with what a dispute turns on, at most a dozen, and says the others by stage', async () => {
    for (const [event, time] of [
      ['doors-closed', '02:00'],
      ['departed', '02:30'],
    ])
      await run([
        'record',
        'event',
        event ?? '',
        '--stop',
        'load-1',
        '--at',
        `2026-07-14T${time}`,
        '-d',
        at('one'),
      ]);
    const { out } = await run(['gaps', at('one'), '--why']);
    expect(out.startsWith('What a dispute turns on\n')).toBe(true);
    const [first = '', ...others] = out.split(/\n\n/);
    const said = first.match(/Weight: .*/g) ?? [];
    expect([said.length > 3, said.length <= 12]).toEqual([true, true]);
    expect(said.every((line) => line.startsWith('Weight: decisive: a dispute turns on it. '))).toBe(true);
    expect(others.join('\n')).toContain('Before loading\n');
    expect(others.join('\n')).not.toContain('Weight: decisive');
  });

  it('takes what is recorded into account', async () => {
    const rule = async () =>
      (
        (await run(['gaps', at('two'), '--json'])).json as { gaps: { rule: string; outcome: string }[] }
      ).gaps.find((gap) => gap.rule === 'unit-fuel')?.outcome;
    expect(await rule()).toBe('missing');
    const noted = await run([
      'record',
      'check',
      '36F',
      '--fuel',
      '1/4',
      '--stop',
      'load-1',
      '--at',
      '2026-07-14T02:30',
      '-d',
      at('two'),
    ]);
    expect([noted.code, noted.err]).toEqual([0, '']);
    expect(await rule()).toBe('contradicted');
  });
});
