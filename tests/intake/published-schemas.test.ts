import { describe, expect, it } from 'vitest';
import {
  claimDeadlinesSchema,
  deliverySchema,
  logMapSchema,
  ruleSetSchema,
} from '../../src/intake/schemas.js';

/** `npx vitest run tests/intake/published-schemas.test.ts -u` writes them anew. */
describe('the published JSON Schemas are those of the code', () => {
  it.each([
    ['delivery', deliverySchema],
    ['rule-set', ruleSetSchema],
    ['log-map', logMapSchema],
    ['claim-deadlines', claimDeadlinesSchema],
  ] as const)('%s', async (name, schema) => {
    await expect(`${JSON.stringify(schema(), null, 2)}\n`).toMatchFileSnapshot(
      `../../docs/schemas/${name}.schema.json`,
    );
  });
});
