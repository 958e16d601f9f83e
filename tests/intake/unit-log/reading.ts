import { evidenceId, type LogMapping } from '../../../src/core/model/evidence.js';
import { toInstant, zone } from '../../../src/core/model/time.js';
import type { LogContext } from '../../../src/intake/unit-log/log-context.js';
import { type ReadLog, readUnitLog } from '../../../src/intake/unit-log/read.js';
import { recogniseUnitLog } from '../../../src/intake/unit-log/recognise.js';

export const evidence = evidenceId.parse('e1');
export const phoenix = zone.parse('America/Phoenix');

/** Bytes as something to read from, in pieces of the given size. */
export const source = (bytes: string | Uint8Array, size = Number.POSITIVE_INFINITY) => {
  const all = typeof bytes === 'string' ? Buffer.from(bytes) : bytes;
  return async function* () {
    for (let at = 0; at < all.length; at += size) yield all.subarray(at, Math.min(all.length, at + size));
  };
};

export async function recognised(bytes: string | Uint8Array, context: Partial<LogContext> = {}) {
  return recogniseUnitLog(source(bytes), { fileName: 'log.csv', logZone: phoenix, ...context });
}

export async function mappingOf(
  bytes: string | Uint8Array,
  context: Partial<LogContext> = {},
): Promise<LogMapping> {
  const found = await recognised(bytes, context);
  if (found.is !== 'log') throw new Error(found.problem.message);
  return found.mapping;
}

export async function read(
  bytes: string | Uint8Array,
  context: Partial<LogContext> = {},
  addedSeconds = 0,
): Promise<ReadLog> {
  return readUnitLog(source(bytes), await mappingOf(bytes, context), { evidence, addedSeconds });
}

export const instants = (times: Iterable<number>) => [...times].map((t) => toInstant(t).slice(0, 16));
export const celsius = (values: Iterable<number> | undefined) =>
  [...(values ?? [])].map((v) => Math.round(v * 100) / 100);
