import { z } from 'zod';
import { writtenFootprint, writtenLength } from './length.js';
import { currency } from './money.js';
import { tradeUnit } from './quantity.js';
import { references } from './references.js';
import { temperatureUnit, writtenTemperature, writtenTemperatureDifference } from './temperature.js';
import { localTime, zone } from './time.js';

/** A short name that people and rules refer to: letters, digits, dash. */
const slug = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]{0,40}$/i, { error: 'use letters, digits and dashes, such as load-1' });

const party = z.strictObject({
  name: z.string().min(1).max(200),
  address: z.string().max(400).optional(),
  contact: z.string().max(400).optional(),
});

export const partyRole = z.enum(['carrier', 'shipper', 'receiver', 'broker', 'insurer', 'driver']);
export type PartyRole = z.infer<typeof partyRole>;

/** Degrees north and east on WGS 84. */
const coordinates = z
  .tuple([z.number().min(-90).max(90), z.number().min(-180).max(180)])
  .meta({ description: 'Latitude and longitude in degrees, north and east positive.' });

export const stop = z.strictObject({
  id: slug,
  does: z.enum(['load', 'unload']),
  place: z.string().min(1).max(200),
  zone,
  at: coordinates.optional(),
  /** Wall-clock time at the place. */
  planned: localTime.optional(),
  /** End of the appointment that begins at `planned`, where it is one. */
  plannedUntil: localTime.optional(),
  /** Who ships or receives here; left out: the delivery's own shipper or receiver. */
  party: party.optional(),
  references: references.optional(),
});
export type Stop = z.infer<typeof stop>;

export const runMode = z.enum(['continuous', 'start-stop']);

const instruction = z.strictObject({
  setPoint: writtenTemperature,
  tolerance: writtenTemperatureDifference.optional(),
  run: runMode.optional(),
});

export const line = z.strictObject({
  id: slug,
  /** A key of the reference table, such as lettuce-romaine, or the name on the bill when the table lacks it. */
  goods: z.string().min(1).max(100),
  /** The words on the bill, where they differ from the key. */
  name: z.string().min(1).max(200).optional(),
  from: slug,
  to: slug,
  pallets: z.int().positive().max(100).optional(),
  cartons: z.int().positive().optional(),
  /** What was shipped, in other units, such as { cases: 864, lb: 21600 }. */
  shipped: z.partialRecord(tradeUnit, z.number().positive().max(999_999_999)).optional(),
  /** Lot codes of these goods. */
  lot: references.shape.lot,
  iced: z.boolean().default(false),
  /** What the bill says to run. Left out when the bill is silent. */
  instruction: instruction.optional(),
  stackHeight: writtenLength.optional(),
  /** What one pallet covers of the floor. Left out: 40 × 48 in, and said to be assumed. */
  pallet: writtenFootprint.optional(),
  /** Light for its height, so that it tips and slides easily. Left out: not known. */
  light: z.boolean().optional(),
});
export type Line = z.infer<typeof line>;

/**
 * Trade terms of a sale. Under `fob-acceptance` and `fob-acceptance-final` the buyer accepts at shipping point and has
 * no right of rejection (7 CFR 46.43(l), (m)).
 */
const saleTerm = z.enum(['fob', 'fob-acceptance', 'fob-acceptance-final', 'delivered']);

const equipment = z.strictObject({
  tractor: z.strictObject({ number: z.string().max(60) }).optional(),
  trailer: z.strictObject({
    number: z.string().min(1).max(60),
    length: writtenLength.optional(),
    /** From the bulkhead at the nose to the closed doors. Left out: `length`, and said to be so. */
    insideLength: writtenLength.optional(),
    insideWidth: writtenLength.optional(),
    insideHeight: writtenLength.optional(),
    airChute: z.boolean().optional(),
    drains: z.enum(['rear', 'front', 'both', 'none']).optional(),
  }),
  unit: z.strictObject({ number: z.string().max(60).optional() }).optional(),
});

export const language = z.enum(['en', 'es']);
/** Language of the pages. */
export type Language = z.infer<typeof language>;
export const paper = z.enum(['Letter', 'A4']);
/** Paper of the pages. */
export type Paper = z.infer<typeof paper>;

export const displaySettings = z.strictObject({
  temperature: temperatureUnit.default('°F'),
  language: language.default('en'),
  paper: paper.default('Letter'),
});
export type DisplaySettings = z.infer<typeof displaySettings>;

/** The facts of one delivery, as people write them in delivery.yaml. */
export const delivery = z
  .strictObject({
    delivery: z
      .string()
      .regex(/^[\p{L}\p{N}][\p{L}\p{N}._/ -]{0,80}$/u, { error: 'use letters, digits, spaces and . _ / -' })
      .meta({ description: 'The number or name by which this delivery is known.' }),
    parties: z.partialRecord(partyRole, party),
    references: references.optional(),
    equipment,
    stops: z.array(stop).min(2).max(40),
    lines: z.array(line).min(1).max(200),
    /** The trade term on which the goods were sold, where the carrier knows it: 7 CFR 46.43. */
    sale: saleTerm.optional(),
    /** A shipped rule set by its name, or a path relative to the delivery. */
    rules: z.string().min(1).default('produce'),
    /** Of amounts that name no currency, such as $11.00. */
    currency: currency.optional(),
    show: displaySettings.prefault({}),
  })
  .superRefine((facts, ctx) => {
    const issue = (message: string, path: (string | number)[]) =>
      ctx.addIssue({ code: 'custom', message, path });
    unique(facts.stops, 'stops', issue);
    unique(facts.lines, 'lines', issue);
    if (facts.parties.carrier === undefined) issue('name the carrier', ['parties']);
    for (const does of ['load', 'unload'] as const)
      if (!facts.stops.some((s) => s.does === does)) issue(`no stop with does: ${does}`, ['stops']);
    facts.lines.forEach((l, i) => {
      for (const [end, does] of [
        ['from', 'load'],
        ['to', 'unload'],
      ] as const) {
        const found = facts.stops.find((s) => s.id === l[end]);
        if (found === undefined) issue(`there is no stop "${l[end]}"`, ['lines', i, end]);
        else if (found.does !== does) issue(`stop "${l[end]}" does not ${does}`, ['lines', i, end]);
      }
    });
  });
/** The facts of a delivery, as delivery.yaml states them with its defaults filled in: see docs/formats.md. */
export type Delivery = z.infer<typeof delivery>;
/** The same before parsing: what the YAML holds and the ledger keeps. */
export type DeliveryInput = z.input<typeof delivery>;

function unique(
  list: readonly { id: string }[],
  field: string,
  issue: (message: string, path: (string | number)[]) => void,
): void {
  const seen = new Set<string>();
  list.forEach((item, i) => {
    if (seen.has(item.id)) issue(`"${item.id}" is used twice`, [field, i, 'id']);
    seen.add(item.id);
  });
}
