import { expect, it } from 'vitest';
import { z } from 'zod';
import { verificationReport } from '../../../src/core/model/verification.js';
import { recordFiles, scratch, verifyPaths } from './files.js';

/** `npx vitest run tests/core/verify/published-schema.test.ts -u` writes it anew. */
it('the published JSON Schema of a verification is that of the code', async () => {
  const schema = { title: 'A verification', ...z.toJSONSchema(verificationReport) };
  await expect(`${JSON.stringify(schema, null, 2)}\n`).toMatchFileSnapshot(
    '../../../docs/schemas/verification.schema.json',
  );
});

it('and a verification is of that form', async () => {
  const disk = await scratch();
  const report = await verifyPaths([await disk.write('record', recordFiles())]);
  await disk.end();
  expect(verificationReport.parse(JSON.parse(JSON.stringify(report)))).toEqual(report);
});
