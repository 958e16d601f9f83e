import { describe, expect, it, vi } from 'vitest';
import { askAndRetry, askUntilValid } from '../../src/cli/ask-and-retry.js';
import type { Output } from '../../src/cli/output.js';
import { matchChoice } from '../../src/cli/prompts.js';
import { DossierError } from '../../src/core/model/error.js';
import { type MinimalFacts, requireAnswer } from '../../src/jobs/new-delivery.js';

const output: Output = {
  line: () => undefined,
  note: () => undefined,
  progress: () => undefined,
  json: () => undefined,
  jsonList: () => ({ item: () => undefined, end: () => undefined }),
  document: () => undefined,
  style: (_, text) => text,
  width: 80,
};

const unsure = (field: string, choices: string[]) =>
  new DossierError('bad-value', 'it can be meant in two ways', { where: { field }, choices });

describe('the choice that an answer means', () => {
  const choices = ['seal', 'scale-ticket', 'drains', 'Load-1'];
  it.each([
    ['seal', 'seal'],
    [' Scale Ticket ', 'scale-ticket'],
    ['dr', 'drains'],
    ['load-1', 'Load-1'],
    ['3', 'drains'],
    ['s', undefined],
    ['9', undefined],
    ['', undefined],
    ['x', undefined],
  ])('"%s"', (answer, choice) => expect(matchChoice(answer, choices)).toBe(choice));
});

describe('asking, and doing the work again with the answer', () => {
  it('puts the answer where the doubtful word stood, one question after the other', async () => {
    const ask = vi.fn(async (_question: string, choices: readonly string[]) => choices[1] ?? '');
    const said = await askAndRetry(
      output,
      { word: '34', fields: { shownBy: 'x', at: '04:10' } },
      async (typed) => {
        if (typed.word === '34') throw unsure('temperature', ['34F', '34C']);
        if (typed.fields.shownBy === 'x') throw unsure('--shown-by', ['bill', 'display']);
        return typed;
      },
      ask,
    );
    expect(said).toEqual({ word: '34C', fields: { shownBy: 'display', at: '04:10' } });
    expect(ask).toHaveBeenCalledTimes(2);
  });

  it('passes the error on where nobody can be asked, or there is no choice', async () => {
    const refuse = (error: Error) => async () => Promise.reject(error);
    const typed = { word: undefined, fields: {} };
    await expect(askAndRetry(output, typed, refuse(unsure('x', ['a', 'b'])), undefined)).rejects.toThrow(
      'two ways',
    );
    const plain = new DossierError('bad-value', 'no choice');
    await expect(askAndRetry(output, typed, refuse(plain), async () => 'a')).rejects.toThrow('no choice');
  });

  it('does not ask for ever', async () => {
    const ask = vi.fn(async () => 'a');
    const never = async () => Promise.reject(unsure('word', ['a', 'b']));
    await expect(askAndRetry(output, { word: 'a', fields: {} }, never, ask)).rejects.toThrow('two ways');
    expect(ask.mock.calls.length).toBeLessThan(10);
  });
});

describe('asking until the answer can be right', () => {
  const asked = async (answers: string[], check: (answer: string) => void) => {
    const notes: string[] = [];
    const answer = await askUntilValid(
      { ...output, note: (text) => notes.push(text) },
      async () => answers.shift() ?? 'the last',
      check,
    );
    return { answer, notes, left: answers };
  };

  it.each<[Exclude<keyof MinimalFacts, 'stops' | 'goods'>, string, string, RegExp]>([
    ['number', '', '4711', /--number/],
    ['trailer', '', 'T-7', /trailer/],
  ])('for %s "%s" asks again, and only for that', async (key, slip, right, said) => {
    const found = await asked([slip, right, 'not asked for'], (answer) => requireAnswer({ [key]: answer }));
    expect(found).toMatchObject({ answer: right, left: ['not asked for'] });
    expect(found.notes.join('\n')).toMatch(said);
  });

  it('a stop without its zone', async () => {
    const right = 'Yuma AZ; America/Phoenix';
    const found = await asked(['Yuma', right], (at) =>
      requireAnswer({
        stops: [
          { does: 'load', at },
          { does: 'unload', at: 'Omaha NE; America/Chicago' },
        ],
      }),
    );
    expect(found.answer).toBe(right);
    expect(found.notes.join('\n')).toMatch(/--load: .*time zone|--load[\s\S]*zone/);
  });

  it('a line of the bill without the unit of its set point', async () => {
    const right = 'romaine; 36 °F; 2 °F; 12';
    const found = await asked(['romaine; 36', right], (answer) => requireAnswer({ goods: [answer] }));
    expect(found.answer).toBe(right);
    expect(found.notes.join('\n')).toMatch(/--goods: setPoint: "36" is not a temperature/);
  });

  it('what is no slip of the person goes on', async () => {
    await expect(
      asked(['x'], () => {
        throw new TypeError('a bug');
      }),
    ).rejects.toThrow('a bug');
  });
});
