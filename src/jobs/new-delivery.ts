import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { stringify } from 'yaml';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { Clock } from '../core/ports/clock.js';
import { parseDeliveryFile } from '../intake/delivery-file.js';
import { unreadable } from '../record/disk/disk-error.js';
import { createRecord } from '../record/store.js';
import { DELIVERY_FILE, portsWith } from './delivery.js';

/** Minimal facts of a delivery, prompted for or given as options. */
export interface MinimalFacts {
  number: string;
  carrier: string;
  shipper?: string;
  receiver?: string;
  trailer: string;
  /** `place; zone` */
  load: string;
  unload: string;
  /** `goods; set point; tolerance; pallets`, the last three may be left out. */
  goods: readonly string[];
  rules?: string;
}

/** A delivery to be made: from a file of facts, or from the few that it can't do without. */
export type NewDeliveryInput = {
  folder: string;
  by: string;
  now: Clock;
} & ({ file: string } | { facts: MinimalFacts });

/** The delivery that was made. */
export interface NewDelivery {
  folder: string;
  delivery: string;
  rules: string;
}

const HEAD = `# The facts of this delivery. Change what is wrong or add what is missing;
# the next command takes the change into the record, with its time.
`;

/**
 * Makes a delivery folder: delivery.yaml and a record whose first entry holds its facts.
 * Throws DossierError when the folder is not empty or the facts don't hold together.
 */
export async function newDelivery(input: NewDeliveryInput): Promise<NewDelivery> {
  const { folder, by, now } = input;
  const text = 'file' in input ? await readFacts(input.file) : HEAD + stringify(factsFrom(input.facts));
  const { facts, written, sha256 } =
    'file' in input ? parseDeliveryFile(text, input.file) : parseMinimalFacts(text);
  await mkdir(folder, { recursive: true });
  const there = (await readdir(folder)).filter((name) => !name.startsWith('.'));
  if (there.length > 0)
    throw new DossierError('bad-usage', 'the folder is not empty', {
      where: { file: folder },
      fix: 'Give the delivery a folder of its own.',
    });
  // The facts first: a crash in between leaves a folder that `new` reports as not empty, never a record without
  // facts.
  await writeFile(join(folder, DELIVERY_FILE), text, { flag: 'wx' });
  const record = await createRecord(folder, portsWith(now), { sha256, facts: written, by });
  await record.close();
  return { folder, delivery: facts.delivery, rules: facts.rules };
}

const PLACEHOLDER_FACTS: MinimalFacts = {
  number: '1',
  carrier: 'x',
  trailer: 'x',
  load: 'x; America/Phoenix',
  unload: 'x; America/Phoenix',
  goods: ['x'],
};

/** Throws DossierError for an answer that is invalid whatever the other answers will be. */
export function requireAnswer(answer: Partial<MinimalFacts>): void {
  parseMinimalFacts(stringify(factsFrom({ ...PLACEHOLDER_FACTS, ...answer })));
}

/** Facts given as options have no file yet: the option is named, not a place in a file. */
function parseMinimalFacts(text: string): ReturnType<typeof parseDeliveryFile> {
  try {
    return parseDeliveryFile(text, DELIVERY_FILE);
  } catch (cause) {
    if (!(cause instanceof DossierError)) throw cause;
    const { field = '' } = cause.where;
    const option = OPTION_OF.find(([path]) => path.test(field))?.[1];
    const part = option === undefined ? undefined : field.split('.').slice(1).at(-1);
    throw new DossierError(cause.code, part === undefined ? cause.message : `${part}: ${cause.message}`, {
      where: { field: option ?? field },
      fix: 'Places are written like "Yuma AZ; America/Phoenix", goods like "romaine; 36 °F; 2 °F; 12".',
      ...omitUndefined({ others: cause.others?.map((other) => other.replace(/^line \d+: /, '')) }),
      cause,
    });
  }
}

const OPTION_OF: readonly (readonly [RegExp, string])[] = [
  [/^stops\[0\]/, '--load'],
  [/^stops\[1\]/, '--unload'],
  [/^lines/, '--goods'],
  [/^delivery/, '--number'],
  [/^rules/, '--rules'],
];

async function readFacts(file: string): Promise<string> {
  return readFile(file, 'utf8').catch((cause: unknown) => {
    throw unreadable(file, cause);
  });
}

function factsFrom(facts: MinimalFacts): Record<string, unknown> {
  const [load, unload] = [stopFrom('load-1', 'load', facts.load), stopFrom('drop-1', 'unload', facts.unload)];
  const party = (name: string | undefined) => (name === undefined || name === '' ? undefined : { name });
  return {
    delivery: facts.number,
    parties: withoutEmpty({
      carrier: party(facts.carrier),
      shipper: party(facts.shipper),
      receiver: party(facts.receiver),
    }),
    equipment: { trailer: { number: facts.trailer } },
    stops: [load, unload],
    lines: facts.goods.map(lineFrom),
    rules: facts.rules ?? 'produce',
  };
}

function stopFrom(id: string, does: 'load' | 'unload', text: string): Record<string, unknown> {
  const [place = '', zone = ''] = text.split(';').map((part) => part.trim());
  return { id, does, place, zone };
}

function lineFrom(text: string, index: number): Record<string, unknown> {
  const [goods = '', setPoint = '', tolerance = '', pallets = ''] = text
    .split(';')
    .map((part) => part.trim());
  const slug = goods
    .toLowerCase()
    .normalize('NFD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 30);
  return withoutEmpty({
    id: slug === '' ? `line-${index + 1}` : slug,
    goods,
    from: 'load-1',
    to: 'drop-1',
    // Anything but a number stays as typed, so that the message shows it.
    pallets: pallets === '' ? undefined : Number.isNaN(Number(pallets)) ? pallets : Number(pallets),
    instruction:
      setPoint === ''
        ? undefined
        : withoutEmpty({ setPoint, tolerance: tolerance === '' ? undefined : tolerance }),
  });
}

function withoutEmpty(record: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined));
}
