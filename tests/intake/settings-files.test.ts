import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DossierError } from '../../src/core/model/error.js';
import { parseDeliveryFile } from '../../src/intake/delivery-file.js';
import { resolveRuleSet } from '../../src/intake/rule-set/resolve.js';
import { readRuleSetFile } from '../../src/intake/rule-set-file.js';
import { deliverySchema, ruleSetSchema } from '../../src/intake/schemas.js';
import { readYaml } from '../../src/intake/yaml.js';
import { cases } from '../properties.js';
import { DELIVERY_YAML } from './a-delivery.js';

function failure(read: () => unknown): DossierError {
  try {
    read();
  } catch (error) {
    if (error instanceof DossierError) return error;
    throw error;
  }
  throw new Error('it was accepted');
}
const refused = (text: string) => failure(() => parseDeliveryFile(text, 'delivery.yaml'));

describe('delivery.yaml', () => {
  it('gives the facts, the words as written, and the hash of the text', () => {
    const { facts, written, sha256 } = parseDeliveryFile(DELIVERY_YAML, 'delivery.yaml');
    expect(facts.lines[0]?.instruction?.setPoint).toEqual({ value: 36, unit: '°F' });
    expect(facts.show.paper).toBe('Letter');
    expect(written.lines[0]?.instruction?.setPoint).toBe('36 °F');
    expect('show' in written).toBe(false);
    expect(sha256).toMatch(/^[0-9a-f]{64}$/);
  });

  it.each([
    ['America/Phoenix', 'America/Phenix', 5, 'stops[0].zone', 'did you mean America/Phoenix?'],
    ['America/Phoenix', 'Phoenix', 5, 'stops[0].zone', 'did you mean America/Phoenix?'],
    ['America/Chicago', 'Central', 6, 'stops[1].zone', 'did you mean America/Chicago?'],
    ['number: "118"', 'number: 118', 3, 'equipment.trailer.number', 'put it in quotes: "118"'],
    ['to: drop-1', 'to: drop-9', 8, 'lines[0].to', undefined],
    ['36 °F', '36', 8, 'lines[0].instruction.setPoint', undefined],
    ['does: load,', 'does: laod,', 5, 'stops[0].does', 'did you mean load?'],
    ['goods:', 'good:', 8, 'lines[0].goods', undefined],
  ])('names line and field when %s is %s', (right, wrong, row, field, fix) => {
    const error = refused(DELIVERY_YAML.replace(right, wrong));
    expect(error.code).toBe('bad-delivery-file');
    expect(error.where).toEqual({ file: 'delivery.yaml', row, field });
    expect(error.fix).toBe(fix);
  });

  it('lists every problem, each with its line', () => {
    const error = refused(DELIVERY_YAML.replace('America/Phoenix', 'Nowhere').replace('36 °F', 'cold'));
    expect(error.where).toMatchObject({ row: 5, field: 'stops[0].zone' });
    expect(error.message).toContain('"Nowhere" is not a time zone');
    expect(error.others).toEqual([
      'line 8: lines[0].instruction.setPoint: "cold" is not a temperature; write it like 36 °F or 2.2 °C',
    ]);
  });

  it.each([
    ['36 °F', '36', '36 is not a temperature; write it like 36 °F or 2.2 °C'],
    ['2 °F', '2', '2 is not a tolerance; write it like 2 °F or 1 °C'],
  ])('says how %s is written when its unit is forgotten', (right, bare, said) => {
    const asked = DELIVERY_YAML.replace('setPoint: 36 °F', 'setPoint: 36 °F, tolerance: 2 °F');
    expect(refused(asked.replace(right, bare)).message).toBe(said);
  });

  it.each([
    ['a key twice', 'a: 1\na: 2\n', /unique/],
    ['__proto__', 'a: {__proto__: {x: 1}}\n', /not allowed/],
    ['an alias without anchor', 'a: *b\n', /anchor|alias/i],
    [
      'an alias bomb',
      `a: &a [x,x,x,x,x,x,x,x,x]\n${'bcdefgh'
        .split('')
        .map((k, i) => `${k}: &${k} [${Array(9).fill(`*${'abcdefg'[i]}`).join(',')}]\n`)
        .join('')}`,
      /alias/i,
    ],
    ['deep nesting', `a: ${'['.repeat(5000)}${']'.repeat(5000)}\n`, /deeper/],
    ['two documents', 'a: 1\n---\nb: 2\n', /document/],
    ['too much text', `a: ${'x'.repeat(1_000_001)}`, /at most/],
    ['a broken text', 'a: [1, 2\nb: }', /./],
  ])('refuses %s', (_, text, message) => {
    const error = failure(() => readYaml(text, 'x.yaml', 'bad-delivery-file'));
    expect(error.message).toMatch(message);
  });

  it('reads dates, yes and no as the text that they are (YAML 1.2 core schema)', () => {
    expect(readYaml('a: 2026-07-14\nb: no\nc: 0o17\n', 'x', 'bad-value').value).toEqual({
      a: '2026-07-14',
      b: 'no',
      c: 15,
    });
  });

  it('throws nothing but a DossierError on any text', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (text) => {
        expect(refused(text)).toBeInstanceOf(DossierError);
      }),
      { numRuns: cases(200) },
    );
  });
});

describe('a rule set', () => {
  const RULES = `ruleSet: small
version: "1"
title: A small one
rules:
  - id: seal-photo
    stage: loading
    title: The seal
    needs: { photo: seal }
    proves: [good-condition-at-receipt]
    why: Because.
    how: Photograph it.
    basis: common practice
`;
  it('is read with its defaults', () => {
    const file = readRuleSetFile(RULES, 'small.yaml');
    const { ruleSet } = resolveRuleSet([{ file, over: [] }], [file]);
    expect(ruleSet.rules[0]?.needs).toEqual({ photo: 'seal', atLeast: 1, per: 'delivery' });
  });

  it('says which need is wrong, not that no branch of a union fits', () => {
    const error = failure(() => readRuleSetFile(RULES.replace('photo: seal', 'photo: seel'), 'small.yaml'));
    expect(error.code).toBe('bad-rule-set');
    expect(error.where.row).toBe(8);
    expect(error.message).toContain('seel');
  });
});

describe('JSON Schemas', () => {
  it.each([
    ['delivery', deliverySchema, ['delivery', 'parties', 'equipment', 'stops', 'lines']],
    ['rule set', ruleSetSchema, ['ruleSet', 'version', 'title']],
  ])('of the %s name what must be there', (_, schema, required) => {
    expect(schema()).toMatchObject({ type: 'object', required, additionalProperties: false });
  });
});
