import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { stringify } from 'yaml';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { type Zone, zone as zoneSchema } from '../core/model/time.js';
import type { Clock } from '../core/ports/clock.js';
import { parseDeliveryFile } from '../intake/delivery-file.js';
import { usualOrder } from '../intake/time/country-order.js';
import { zonesOfPlace } from '../intake/time/zone-places.js';
import { zoneOfWord } from '../intake/time/zone-words.js';
import { unreadable } from '../record/disk/disk-error.js';
import { createRecord } from '../record/store.js';
import { DELIVERY_FILE, portsWith } from './delivery.js';
import { requireShipped } from './rule-set.js';
import { typedReferences } from './typed/typed-references.js';
import { AMERICAN, parseZoneOption } from './typed/zone-option.js';

/** Minimal facts of a delivery, prompted for or given as options. */
export interface MinimalFacts {
  number: string;
  carrier: string;
  shipper?: string;
  receiver?: string;
  trailer: string;
  /** In the order of the trip. */
  stops: readonly MinimalStop[];
  /**
   * `goods; set point; tolerance; pallets; from; to`. All but the goods may be left out; with several loading or
   * unloading stops `from` or `to` names the one of this line, such as drop-2.
   */
  goods: readonly string[];
  /** Compartments from the front wall to the doors: name; bulkhead behind it; set point; tolerance. */
  compartments?: readonly string[];
  /** `bol 0044719`, `pro=771`, or of one stop `drop-1: po 8812`. */
  references?: readonly string[];
  rules?: string | readonly string[];
  /** Of amounts that name none; USD where every stop is in the United States and none is given. */
  currency?: string;
}

/** One stop of a delivery that is made from few words, in the order of the way. */
export interface MinimalStop {
  does: 'load' | 'unload';
  /**
   * `place; zone; planned; party`; a zone may be named by its state or city, and left empty where the place tells it.
   * The planned time and the party are left out where they are not known.
   */
  at: string;
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
  rules: string | string[];
  /** Each stop with the zone in which its times are read. */
  stops: { id: string; place: string; zone: Zone }[];
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
  const text = 'file' in input ? await readFacts(input.file) : yamlOf(input.facts);
  const { facts, written, sha256 } =
    'file' in input ? parseDeliveryFile(text, input.file) : parseMinimalFacts(input.facts);
  await requireShipped(facts.rules);
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
  const stops = facts.stops.map(({ id, place, zone }) => ({ id, place, zone }));
  return { folder, delivery: facts.delivery, rules: facts.rules, stops };
}

const PLACEHOLDER_FACTS: MinimalFacts = {
  number: '1',
  carrier: 'x',
  trailer: 'x',
  stops: [
    { does: 'load', at: 'x; America/Phoenix' },
    { does: 'unload', at: 'x; America/Phoenix' },
  ],
  goods: ['x'],
};

/** Throws DossierError for an answer that is invalid whatever the other answers will be. */
export function requireAnswer(answer: Partial<MinimalFacts>): void {
  parseMinimalFacts({ ...PLACEHOLDER_FACTS, ...answer });
}

/** Throws DossierError for a reference that is not understood, or of a stop that there is not. */
export function requireReferences(typed: readonly string[], stops: readonly MinimalStop[]): void {
  typedReferences(
    typed,
    numbered(stops).map(({ id }) => id),
  );
}

/** Facts given as options have no file yet: the option is named, not a place in a file. */
function parseMinimalFacts(facts: MinimalFacts): ReturnType<typeof parseDeliveryFile> {
  const text = yamlOf(facts);
  try {
    return parseDeliveryFile(text, DELIVERY_FILE);
  } catch (cause) {
    if (!(cause instanceof DossierError)) throw cause;
    const { field = '' } = cause.where;
    const option = stopOption(field, facts) ?? OPTION_OF.find(([path]) => path.test(field))?.[1];
    const part = option === undefined ? undefined : field.split('.').slice(1).at(-1);
    throw new DossierError(cause.code, part === undefined ? cause.message : `${part}: ${cause.message}`, {
      where: { field: option ?? field },
      fix: 'Places are written like "Yuma AZ" or "Example Farm; America/Phoenix", goods like "romaine; 36 °F; 2 °F; 12".',
      ...omitUndefined({ others: cause.others?.map((other) => other.replace(/^line \d+: /, '')) }),
      cause,
    });
  }
}

const OPTION_OF: readonly (readonly [RegExp, string])[] = [
  [/^lines/, '--goods'],
  [/^equipment\.trailer\.compartments/, '--compartment'],
  [/^delivery/, '--number'],
  [/^rules/, '--rules'],
];

function stopOption(field: string, { stops }: MinimalFacts): string | undefined {
  const [, index] = /^stops\[(\d+)\]/.exec(field) ?? [];
  const stop = index === undefined ? undefined : stops[Number(index)];
  return stop === undefined ? undefined : `--${stop.does}`;
}

const yamlOf = (facts: MinimalFacts): string => HEAD + stringify(factsFrom(facts));

async function readFacts(file: string): Promise<string> {
  return readFile(file, 'utf8').catch((cause: unknown) => {
    throw unreadable(file, cause);
  });
}

function factsFrom(facts: MinimalFacts): Record<string, unknown> {
  const stops = numbered(facts.stops);
  const references = typedReferences(
    facts.references ?? [],
    stops.map(({ id }) => id),
  );
  const placed = stops.map(({ id, does, at }) => ({
    ...stopFrom(id, does, at),
    ...omitUndefined({ references: references.get(id) }),
  }));
  const party = (name: string | undefined) => (name === undefined || name === '' ? undefined : { name });
  return {
    delivery: facts.number,
    parties: withoutEmpty({
      carrier: party(facts.carrier),
      shipper: party(facts.shipper),
      receiver: party(facts.receiver),
    }),
    ...omitUndefined({ references: references.get('') }),
    equipment: {
      trailer: withoutEmpty({
        number: facts.trailer,
        compartments: facts.compartments?.map(compartmentFrom),
      }),
    },
    stops: placed,
    lines: facts.goods.map((line, index) => lineFrom(line, index, stops)),
    rules: facts.rules ?? 'produce',
    ...withoutEmpty({ currency: facts.currency ?? usualCurrency(placed) }),
  };
}

/** Dollars of the United States where every stop is there; nothing is assumed elsewhere. */
const usualCurrency = (stops: readonly { zone: string }[]): string | undefined =>
  stops.every(({ zone }) => {
    const read = zoneSchema.safeParse(zone);
    return read.success && usualOrder(read.data) === 'month-day-year';
  })
    ? 'USD'
    : undefined;

/** Stops with their ids: load-1, load-2 … and drop-1, drop-2 …, each counted in the order of the trip. */
function numbered(stops: readonly MinimalStop[]): (MinimalStop & { id: string })[] {
  return stops.map((stop, index) => {
    const count = stops.slice(0, index + 1).filter(({ does }) => does === stop.does).length;
    return { ...stop, id: `${stop.does === 'load' ? 'load' : 'drop'}-${count}` };
  });
}

/** The stop that a line names, or the sole one of its side. */
function stopOfLine(
  named: string,
  does: MinimalStop['does'],
  goods: string,
  stops: readonly (MinimalStop & { id: string })[],
): string {
  const ids = stops.filter((stop) => stop.does === does).map(({ id }) => id);
  if (named === '' && ids.length > 1)
    throw new DossierError('bad-usage', `${goods}: not told where it is ${does}ed`, {
      where: { field: '--goods' },
      fix: `There are ${ids.join(', ')}: name the stops of each line as its last parts, "romaine; 36 °F; 2 °F; 12; load-1; ${ids[1]}".`,
    });
  return named === '' ? (ids[0] ?? `${does}-1`) : named;
}

interface Placed {
  id: string;
  does: 'load' | 'unload';
  place: string;
  zone: string;
  planned?: string;
  party?: { name: string };
}

/** The zone behind the semicolon, or the one in which the place itself lies. */
function stopFrom(id: string, does: 'load' | 'unload', text: string): Placed {
  const [place = '', zone = '', planned = '', party = ''] = text.split(';').map((part) => part.trim());
  const named = zone === '' ? place : zone;
  // What names no zone is left to the schema, which tells of all that is wrong at once.
  const known = zonesOfPlace(named).length > 0 || zoneOfWord(named, AMERICAN) !== undefined;
  return {
    id,
    does,
    place,
    zone: known ? parseZoneOption(named, `--${does}`, AMERICAN, 'bad-usage') : zone,
    ...omitUndefined({
      planned: planned === '' ? undefined : planned.replace(/^(\d{4}-\d{2}-\d{2}) /, '$1T'),
      party: party === '' ? undefined : { name: party },
    }),
  };
}

function lineFrom(
  text: string,
  index: number,
  stops: readonly (MinimalStop & { id: string })[],
): Record<string, unknown> {
  const all = text.split(';').map((part) => part.trim());
  // `in front`, wherever it stands, is the compartment.
  const compartment = all.map((part) => /^in\s+(\S+)$/i.exec(part)?.[1]).find((name) => name !== undefined);
  const parts = all.filter((part) => !/^in\s+\S+$/i.test(part));
  const [goods = '', setPoint = '', tolerance = '', pallets = '', from = '', to = ''] = parts;
  const slug = goods
    .toLowerCase()
    .normalize('NFD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 30);
  return withoutEmpty({
    id: slug === '' ? `line-${index + 1}` : slug,
    goods,
    from: stopOfLine(from, 'load', goods, stops),
    to: stopOfLine(to, 'unload', goods, stops),
    compartment,
    // Anything but a number stays as typed, so that the message shows it.
    pallets: pallets === '' ? undefined : Number.isNaN(Number(pallets)) ? pallets : Number(pallets),
    instruction:
      setPoint === ''
        ? undefined
        : withoutEmpty({ setPoint, tolerance: tolerance === '' ? undefined : tolerance }),
  });
}

/** `front; 20 ft; -10 °F; 5 °F`: name, bulkhead behind it, set point, tolerance. */
function compartmentFrom(text: string): Record<string, unknown> {
  const [id = '', bulkhead, setPoint, tolerance] = text
    .split(';')
    .map((part) => part.trim())
    .map((part, i) => (i > 0 && part === '' ? undefined : part));
  return withoutEmpty({
    id,
    bulkhead,
    instruction: setPoint === undefined ? undefined : withoutEmpty({ setPoint, tolerance }),
  });
}

function withoutEmpty(record: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined));
}
