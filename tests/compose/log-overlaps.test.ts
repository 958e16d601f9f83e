import { describe, expect, it } from 'vitest';
import { prepareDossier } from '../../src/compose/compose.js';
import type { ComposeInput } from '../../src/compose/input.js';
import type { RowDisagreement } from '../../src/core/assess/logs/join.js';
import type { EvidenceId } from '../../src/core/model/evidence.js';
import { type Block, type Inline, wordsOf } from '../../src/core/words/blocks.js';
import { sampleInput } from './sample.js';
import { HOUR } from './sample-log.js';

const AT = Date.parse('2026-07-15T03:00:00Z');

async function sectionText(
  language: 'en' | 'es',
  change: (log: EvidenceId, other: EvidenceId) => ComposeInput['overlaps'],
) {
  const input = await sampleInput({ facts: { show: { temperature: '°F', language, paper: 'Letter' } } });
  const log = input.logs[0]?.evidence;
  const other = input.state.evidence.find(({ kind }) => kind === 'photo')?.evidence;
  if (log === undefined || other === undefined) throw new Error('the sample has no log');
  const overlaps = change(log, other);
  const { job } = await prepareDossier(overlaps === undefined ? input : { ...input, overlaps });
  const section = job.document.sections.find(({ id }) => id === 'temperatures');
  const number = (id: EvidenceId) => input.exhibits.find(({ evidence }) => evidence === id)?.exhibit;
  return { lines: (section?.blocks ?? []).flatMap(linesOf), log: number(log), other: number(other) };
}

function linesOf(block: Block): string[] {
  if (block.is === 'paragraph') return [wordsOf(block.of)];
  if (block.is === 'heading') return [block.text];
  if (block.is !== 'table') return [];
  return block.rows.map((row) =>
    row.map((one) => wordsOf(Array.isArray(one) ? one : (one.of as Inline[]))).join(' | '),
  );
}

const apart = (log: EvidenceId, other: EvidenceId, count: number): RowDisagreement[] =>
  Array.from({ length: count }, (_, i) => ({
    at: AT + i * HOUR,
    counts: { log, row: 40 + i },
    other: { log: other, row: 9 + i },
    differences: [
      { is: 'channel', channel: 'return-air', first: 2, second: 2 + (i + 1) / 1.8 },
      { is: 'state', state: 'mode', first: 'Cool', second: 'Defrost' },
    ],
  }));
const overlapping =
  (count: number, told = count) =>
  (log: EvidenceId, other: EvidenceId): ComposeInput['overlaps'] => ({
    overlaps: [
      {
        logs: [log, other],
        span: { from: AT, to: AT + 9 * HOUR },
        sharedRows: 540,
        agreeingRows: 540 - count,
        joined: true,
      },
    ],
    disagreements: apart(log, other, told),
    disagreementCount: count,
  });

describe('logs that cover the same time', () => {
  it('are said to be one log or two, with the rows that they share', async () => {
    const { lines, log, other } = await sectionText('en', overlapping(0));
    const at = lines.indexOf('Logs that cover the same time');
    expect(lines[at + 1]).toBe(
      `${[log, other].sort((a, b) => Number(a) - Number(b)).join(', ')} | Tue Jul 14, 2026, 8:00 PM MST | Wed Jul 15, 2026, 5:00 AM MST | 540 | 540 | downloads of one instrument, one log`,
    );
    expect(lines.join()).not.toContain('say different things');
  });

  it('say how many rows disagree, by how much at most, where, and which of them counts', async () => {
    const { lines, log, other } = await sectionText('en', overlapping(3));
    const at = lines.findIndex((line) => line.includes('say different things'));
    expect(lines[at]).toMatch(
      /^In 3 rows of the same moment.*by up to 3\.0\s°F \(1\.7\s°C\)\. .*came into the record first counts\.$/,
    );
    expect(lines[at + 1]?.replaceAll('\u00a0', ' ')).toBe(
      `Tue Jul 14, 2026, 8:00 PM MST | ${log}, row 40 | ${other}, row 9 | Return air: 35.6 °F (2.0 °C) / 36.6 °F (2.6 °C), apart by 1.0 °F (0.6 °C); mode: “Cool” / “Defrost”`,
    );
    expect(lines.slice(at + 1, at + 4).every((line) => line.includes('Return air'))).toBe(true);
  });

  it('count all rows that disagree, also those that are not shown', async () => {
    const { lines } = await sectionText('en', overlapping(2345, 1000));
    const at = lines.findIndex((line) => line.includes('say different things'));
    expect(lines[at]).toContain('In 2345 rows');
    expect(lines[at + 13]).toBe('2,333 more');
  });

  it('say so in Spanish', async () => {
    const { lines } = await sectionText('es', overlapping(1));
    const at = lines.indexOf('Registros que cubren el mismo tiempo');
    expect(lines[at + 1]).toContain('descargas de un mismo aparato, un solo registro');
    expect(lines[at + 2]).toMatch(/^En 1 fila del mismo momento/);
    expect(lines[at + 3]).toMatch(/, fila 40 \| .*Aire de retorno: .*modo: “Cool”/);
  });

  it('are not spoken of where there is one log', async () => {
    const { lines } = await sectionText('en', () => undefined);
    expect(lines).not.toContain('Logs that cover the same time');
  });
});
