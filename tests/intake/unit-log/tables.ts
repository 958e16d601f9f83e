import { toInstant } from '../../../src/core/model/time.js';
import { parseDeliveryFile } from '../../../src/intake/delivery-file.js';
import type { ExaminedFile, LogOptions } from '../../../src/intake/draft.js';
import { examineFile } from '../../../src/intake/examine.js';
import { readUnitLog } from '../../../src/intake/unit-log/read.js';
import { DELIVERY_YAML, emptyFolder, put, someHash } from '../a-delivery.js';
import { celsius, evidence } from './reading.js';

/** Deliveries whose stops are all in Phoenix, in Phoenix and Chicago, and all in Berlin. */
export const inOneZone = parseDeliveryFile(
  DELIVERY_YAML.replace('America/Chicago', 'America/Phoenix'),
  'delivery.yaml',
).facts;
export const inTwoZones = parseDeliveryFile(DELIVERY_YAML, 'delivery.yaml').facts;
export const inBerlin = parseDeliveryFile(
  DELIVERY_YAML.replaceAll(/America\/(?:Chicago|Phoenix)/g, 'Europe/Berlin'),
  'delivery.yaml',
).facts;

/** Tables as files, taken in as one takes them in. */
export async function tables() {
  const folder = await emptyFolder();
  let files = 0;
  async function taken(
    lines: readonly string[] | Uint8Array,
    delivery = inOneZone,
    options: LogOptions = {},
  ): Promise<{ examined: ExaminedFile; path: string }> {
    files += 1;
    const bytes = lines instanceof Uint8Array ? lines : `${lines.join('\n')}\n`;
    const found = await put(folder, `log-${files}.csv`, bytes);
    const { path, name } = found;
    const file = { name, bytes: found.bytes, sha256: someHash };
    return { examined: await examineFile({ path, name, file, delivery, options }), path };
  }

  /** The log as read: its first time in UTC, its zone, and the first value of each channel in °C. */
  async function reading(
    lines: readonly string[] | Uint8Array,
    delivery = inOneZone,
    options: LogOptions = {},
  ): Promise<unknown> {
    const { examined, path } = await taken(lines, delivery, options);
    const { received, problems } = examined;
    if (received.kind !== 'unit-log') return problems[0]?.message ?? examined.takenFor;
    const log = await readUnitLog(path, received.mapping, { evidence, addedSeconds: 0 });
    return {
      from: toInstant(log.times[0] ?? 0).slice(0, 16),
      rows: log.times.length,
      ...Object.fromEntries(
        received.mapping.channels.map(({ channel }) => [channel, celsius(log.channels[channel])[0]]),
      ),
    };
  }

  /** The times of all rows in UTC, to the minute. */
  async function times(lines: readonly string[], delivery = inOneZone): Promise<readonly string[] | string> {
    const { examined, path } = await taken(lines, delivery);
    const { received, problems } = examined;
    if (received.kind !== 'unit-log') return problems[0]?.message ?? examined.takenFor;
    const log = await readUnitLog(path, received.mapping, { evidence, addedSeconds: 0 });
    return Array.from(log.times, (at) => toInstant(at).slice(5, 16));
  }

  return { taken, reading, times };
}
