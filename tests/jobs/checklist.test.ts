import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { boxesOf, type ChecklistBox, type ChecklistPart } from '../../src/compose/checklist/box.js';
import { checklistParts } from '../../src/compose/checklist/parts.js';
import { type Delivery, delivery } from '../../src/core/model/delivery.js';
import { readAnswers } from '../../src/jobs/checklist/file.js';
import { checklistReadings } from '../../src/jobs/checklist/readings.js';
import { loadRuleSet } from '../../src/jobs/rule-set.js';
import { SAMPLE_FACTS } from '../compose/sample.js';
import { cases } from '../properties.js';

const facts: Delivery = delivery.parse(SAMPLE_FACTS);
const NOW = new Date('2026-07-17T16:00:00Z');
let parts: ChecklistPart[];
beforeAll(async () => {
  parts = checklistParts(facts, (await loadRuleSet('produce', '.')).ruleSet);
});

type Ask = ChecklistBox['question'];
const numberOf = (matches: (question: Ask) => boolean): number => {
  const box = boxesOf(parts).find(({ question }) => matches(question));
  if (box === undefined) throw new Error('the form has no such box');
  return box.number;
};
const event = (name: string, stop: string) =>
  numberOf((a) => a.is === 'event' && a.event === name && a.stop === stop);
const read = (answers: Record<number, string>) =>
  checklistReadings(parts, new Map(Object.entries(answers).map(([k, v]) => [Number(k), v])), facts, NOW);
const dayBox = () => numberOf((a) => a.is === 'day' && a.stop === 'load-1');
const base = () => ({ [dayBox()]: '2026-07-14', [event('loading-ended', 'load-1')]: '5:18' });

describe('what was written on the form becomes', () => {
  it('an event at its stop, by the clock of that stop', () => {
    const { readings, problems } = read(base());
    expect(problems).toEqual([]);
    expect(readings).toHaveLength(1);
    expect(readings[0]?.reading).toMatchObject({
      kind: 'event',
      event: 'loading-ended',
      place: { stop: 'load-1' },
      time: { is: 'known', instant: '2026-07-14T12:18:00.000Z', zone: 'America/Phoenix' },
    });
  });

  it('a pulp with line, position, stop and whose it is; the unit printed on the form where none is written', () => {
    const box = numberOf(
      (a) => a.is === 'pulp' && a.line === 'broccoli' && a.position === 'tail' && a.stop === 'load-1',
    );
    const at = numberOf((a) => a.is === 'pulp-at' && a.stop === 'load-1');
    const { readings } = read({ [dayBox()]: '2026-07-14', [at]: '4:10', [box]: '34.6' });
    expect(readings[0]?.reading).toMatchObject({
      kind: 'pulp',
      temperature: { value: 34.6, unit: '°F' },
      line: 'broccoli',
      place: { stop: 'load-1', position: 'tail' },
      from: 'driver',
      time: { instant: '2026-07-14T11:10:00.000Z', uncertaintySeconds: 60 },
    });
    expect(
      read({ [dayBox()]: '2026-07-14', [at]: '4:10', [box]: '1,5 C' }).readings[0]?.reading,
    ).toMatchObject({
      temperature: { value: 1.5, unit: '°C' },
    });
  });

  it('one reading for neighbouring rows that stand alike', () => {
    const row = (n: number) => numberOf((a) => a.is === 'row' && a.row === n);
    const { readings } = read({ ...base(), [row(1)]: '1A', [row(2)]: '1 a', [row(3)]: '3B', [row(5)]: '3B' });
    const patterns = readings.flatMap(({ reading }) =>
      reading.kind === 'pattern'
        ? [`${reading.pattern} ${reading.rows.from}-${reading.rows.to} ${reading.line}`]
        : [],
    );
    expect(patterns).toEqual(['straight 1-2 romaine', 'pinwheel 3-3 broccoli', 'pinwheel 5-5 broccoli']);
  });

  it('a reading whose time is another box’s says so, and is known less well', () => {
    const seal = numberOf((a) => a.is === 'seal' && a.state === 'applied');
    const { readings } = read({ ...base(), [seal]: '0044719' });
    const judged = readings.find(({ kind }) => kind === 'seal')?.reading;
    expect(judged).toMatchObject({ number: '0044719', state: 'applied', time: { uncertaintySeconds: 1800 } });
    expect(judged?.caption).toContain(`box ${event('loading-ended', 'load-1')}`);
  });

  it('what an inspection found of a lot, with its parts', () => {
    const of = (part: string) =>
      numberOf((a) => a.is === 'inspection' && a.part === part && a.stop === 'drop-1');
    const day = numberOf((a) => a.is === 'day' && a.stop === 'drop-1');
    const answers = {
      [day]: '2026-07-16',
      [of('lot')]: 'L-4471',
      [of('line')]: 'a',
      [of('at')]: '10:15',
      [of('inspector')]: 'A. Quill',
      [of('count')]: '480 cartons',
      [of('samples')]: '24',
      [of('low')]: '41',
      [of('high')]: '44',
      [of('requested-by')]: 'receiver',
      [of('requested-at')]: '8:20',
      [of('defects')]: 'tipburn 8% serious 3%; decay 2%',
    };
    const { readings, problems } = read(answers);
    expect(problems).toEqual([]);
    expect(readings.map(({ reading }) => reading)).toMatchObject([
      {
        kind: 'inspection',
        lot: 'L-4471',
        line: 'romaine',
        by: 'A. Quill',
        count: { amount: '480', unit: 'cartons' },
        samples: 24,
        pulps: { low: { value: 41, unit: '°F' }, high: { value: 44, unit: '°F' } },
        defects: [
          { name: 'tipburn', percent: 8, serious: 3 },
          { name: 'decay', percent: 2 },
        ],
        requestedAt: { instant: '2026-07-16T13:20:00.000Z' },
      },
    ]);
    expect(read({ ...base(), [of('samples')]: '24' }).problems[0]?.message).toContain('without the lot');
  });

  it('who said what became of the goods, to whom and how', () => {
    const said = (part: string) => numberOf((a) => a.is === 'outcome-said' && a.part === part);
    const refused = numberOf((a) => a.is === 'outcome' && a.part === 'refused' && a.line === 'romaine');
    const day = numberOf((a) => a.is === 'day' && a.stop === 'drop-1');
    const { readings } = read({
      [day]: '2026-07-16',
      [event('unloaded', 'drop-1')]: '8:15',
      [refused]: '4 pallets',
      [said('by')]: 'D. Haas',
      [said('told')]: '5',
      [said('told-name')]: 'P. Wren',
      [said('how')]: '2',
    });
    expect(readings.map(({ reading }) => reading).find(({ kind }) => kind === 'outcome')).toMatchObject({
      saidBy: 'D. Haas',
      told: 'consignor',
      toldName: 'P. Wren',
      how: 'call',
    });
    expect(read({ ...base(), [said('by')]: 'D. Haas' }).problems[0]?.message).toContain(
      'says nothing without',
    );
  });

  it('looks on the way that go past midnight', () => {
    const round = (count: number, part: string) =>
      numberOf((a) => a.is === 'unit-check' && a.count === count && a.part === part);
    const day = numberOf((a) => a.is === 'day' && a.stop === 'transit');
    const { readings } = read({
      [day]: '2026-07-14',
      [round(1, 'at')]: '21:30',
      [round(1, 'box-air')]: '36',
      [round(2, 'at')]: '1:15',
      [round(2, 'fuel')]: '3/4',
    });
    expect(readings.map(({ reading }) => reading.time)).toMatchObject([
      { instant: '2026-07-15T04:30:00.000Z' },
      { instant: '2026-07-15T08:15:00.000Z' },
    ]);
  });

  it('what was refused, taken and short of a line, with the reason', () => {
    const of = (part: string) =>
      numberOf((a) => a.is === 'outcome' && a.part === part && a.line === 'romaine' && a.stop === 'drop-1');
    const day = numberOf((a) => a.is === 'day' && a.stop === 'drop-1');
    const { readings, problems } = read({
      [day]: '2026-07-16',
      [event('unloaded', 'drop-1')]: '8:15',
      [of('accepted')]: 'all',
      [of('refused')]: '4 pallets',
      [of('short')]: '3 ctns',
      [of('why')]: '2',
    });
    expect(problems).toEqual([]);
    expect(readings.slice(1).map(({ reading }) => reading)).toMatchObject([
      { outcome: 'accepted', all: true, line: 'romaine', place: { stop: 'drop-1' } },
      { outcome: 'refused', quantity: { amount: '4', unit: 'pallets' }, reasons: ['decay'] },
      {
        outcome: 'accepted-with-exceptions',
        quantity: { amount: '3', unit: 'cartons' },
        reasons: ['shortage'],
      },
    ]);
  });

  it('an exception on the bill of lading, with its line and who signed it', () => {
    const of = (part: string) =>
      numberOf((a) => a.is === 'exception' && a.part === part && a.stop === 'load-1');
    const { readings, problems } = read({
      ...base(),
      [of('words')]: 'romaine pulped 41 F, shipper advised',
      [of('line')]: 'a',
      [of('signed')]: '3',
    });
    expect(problems).toEqual([]);
    expect(readings.slice(1).map(({ reading }) => reading)).toMatchObject([
      {
        kind: 'exception',
        words: 'romaine pulped 41 F, shipper advised',
        line: 'romaine',
        place: { stop: 'load-1' },
        signedBy: [{ party: 'shipper' }, { party: 'driver' }],
        document: 'bill of lading',
      },
    ]);
  });

  it('who loaded and counted, how many, the recorder and its place, and the thermometer in ice', () => {
    const on = (is: string, of: string, stop: string) =>
      numberOf(
        (a) =>
          a.is === is &&
          'stop' in a &&
          a.stop === stop &&
          (of === '' || ('of' in a && a.of === of) || ('part' in a && a.part === of)),
      );
    const { readings, problems } = read({
      ...base(),
      [on('particular', 'loaded-by', 'load-1')]: '1',
      [on('particular', 'count', 'load-1')]: '480 ctns',
      [on('particular', 'defrost', 'load-1')]: 'every 6 h',
      [on('recorder', 'number', 'load-1')]: '77120455',
      [on('recorder', 'where', 'load-1')]: 'pallet 3, top',
      [on('thermometer', '', 'load-1')]: 'P-7',
      [on('ice', '', 'load-1')]: '32.4',
    });
    expect(problems).toEqual([]);
    expect(readings.slice(1).map(({ reading }) => reading)).toMatchObject([
      { kind: 'instrument', name: 'P-7', type: 'thermometer', iceBefore: { value: 32.4, unit: '°F' } },
      { kind: 'particular', of: 'loaded-by', who: { party: 'shipper' } },
      { kind: 'particular', of: 'count', quantity: { amount: '480', unit: 'cartons' } },
      { kind: 'instrument', name: '77120455', type: 'recorder', where: 'pallet 3, top' },
      { kind: 'particular', of: 'defrost', words: 'every 6 h' },
    ]);
  });

  it('everything under the name of who wrote it', () => {
    const name = numberOf((a) => a.is === 'name');
    expect(read({ ...base(), [name]: 'M. Ortega' }).readings[0]?.reading.by).toBe('M. Ortega');
  });
});

describe('an answer that cannot be understood', () => {
  it.each<[string, (a: Ask) => boolean, string]>([
    ['a choice that is not printed', (a) => a.is === 'bracing' && a.part === 'device', '9'],
    ['a temperature no air can have', (a) => a.is === 'set-point' && a.shownBy === 'display', '360'],
    ['a row without its pattern', (a) => a.is === 'row' && a.row === 2, 'A'],
    ['a reason without a refusal', (a) => a.is === 'outcome' && a.part === 'why', '1'],
    [
      'a signature without the words of an exception',
      (a) => a.is === 'exception' && a.part === 'signed',
      '1',
    ],
    ['a run mode without the set point', (a) => a.is === 'run', '1'],
    ['a note of bracing without a device', (a) => a.is === 'bracing' && a.part === 'note', 'two bars'],
  ])('%s is a problem that names its box', (_, matches, answer) => {
    const box = numberOf(matches);
    const { problems, readings } = read({ ...base(), [box]: answer });
    expect(problems.map(({ where }) => where.field)).toEqual([`box ${box}`]);
    expect(readings).toHaveLength(1);
  });

  it('never stops the reading of the others, whatever is written', () => {
    const boxes = boxesOf(parts).map(({ number }) => number);
    fc.assert(
      fc.property(
        fc.dictionary(fc.constantFrom(...boxes.map(String)), fc.string({ maxLength: 12 })),
        (answers) => {
          const { readings, problems } = read({ ...answers });
          for (const { boxes: used } of readings) expect(used.length).toBeGreaterThan(0);
          for (const { where } of problems) expect(where.field).toMatch(/^box \d+$/);
        },
      ),
      { numRuns: cases(60) },
    );
  });
});

describe('a typed sheet', () => {
  it.each([
    ['lines with numbers', 'a.txt', '1: M. Ortega\n4. 4:10\n\n6) 36', { 1: 'M. Ortega', 4: '4:10', 6: '36' }],
    [
      'one answer a line, empty for an empty box',
      'a.txt',
      'M. Ortega\n\n\n4:10\n',
      { 1: 'M. Ortega', 4: '4:10' },
    ],
    [
      'YAML',
      'a.yaml',
      '1: M. Ortega\n4: 4:10\n9: 0044719\n10:\n',
      { 1: 'M. Ortega', 4: '4:10', 9: '0044719' },
    ],
  ])('%s', (_, file, text, answers) => {
    expect(Object.fromEntries(readAnswers(text, 12, file))).toEqual(answers);
  });

  it.each([
    ['a number the form lacks', '13: x'],
    ['a box answered twice', '1: x\n1: y'],
  ])('%s is refused', (_, text) => {
    expect(() => readAnswers(text, 12, 'a.txt')).toThrow(/box (13|1)\b/);
  });

  it.each([
    ['that is broken', '1: x\n2: [a\n'],
    ['with a box answered twice', '1: x\n1: y\n'],
    ['with a list for an answer', '1: [x, y]\n'],
    ['that is no map', '- x\n'],
    ['with an alias of nothing', '1: *x\n'],
    ['with aliases of aliases', '1: &a [x, x]\n2: &b [*a, *a]\n3: [*b, *b]\n'],
    ['that is nested without end', `1: ${'['.repeat(100_000)}`],
  ])('YAML %s is refused with the name of the file', (_, text) => {
    expect(() => readAnswers(text, 12, 'a.yaml')).toThrow(
      expect.objectContaining({ code: 'bad-value', where: expect.objectContaining({ file: 'a.yaml' }) }),
    );
  });
});
