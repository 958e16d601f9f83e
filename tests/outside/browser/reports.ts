import { z } from 'zod';
import { fromBase64 } from '../../../src/core/model/bytes.js';
import type { Container } from '../../../src/core/verify/container/container.js';
import type { Item } from '../../../src/core/verify/item.js';
import { verifyAll } from '../../../src/core/verify/verify-all.js';

const bytes = z.string().transform((text) => fromBase64(text) ?? new Uint8Array());
const given = z.discriminatedUnion('is', [
  z.object({ is: z.literal('dossier'), bytes }),
  z.object({ is: z.enum(['bag', 'record']), files: z.record(z.string(), bytes) }),
]);
const cases = z.array(z.object({ items: z.array(given), trusted: z.array(bytes) }));
/** What is to be verified, with bytes in base64. */
export type GivenCases = z.input<typeof cases>;

function itemOf(one: z.output<typeof given>, i: number): Item {
  const path = `given ${i + 1}`;
  if (one.is === 'dossier') return { path, open: async () => one };
  return { path, open: async () => ({ is: one.is, container: async () => inMemory(one.files) }) };
}

function inMemory(all: Record<string, Uint8Array>): Container {
  const files = new Map(
    Object.entries(all).map(([path, content]) => [
      path,
      {
        bytes: content.length,
        open: async () =>
          (async function* () {
            yield content.subarray(0, 100);
            yield content.subarray(100);
          })(),
      },
    ]),
  );
  return { files, close: () => undefined };
}

/** The reports of all cases as one text: the same here and in a page. */
export async function reportsOf(text: string): Promise<string> {
  const reports: unknown[] = [];
  for (const { items, trusted } of cases.parse(JSON.parse(text)))
    reports.push(await verifyAll(items.map(itemOf), { trusted, at: new Date('2100-01-01T00:00:00Z') }));
  return JSON.stringify(reports);
}
