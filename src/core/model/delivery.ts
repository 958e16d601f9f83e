import { z } from 'zod';
import { axleIssues, axleLimits, emptyWeights, tractorAxles, trailerAxles } from './axles.js';
import { compartment, compartmentIssues } from './compartment.js';
import { instruction } from './instruction.js';
import { writtenFootprint, writtenLength } from './length.js';
import { assumedUncertainty, halfCoolingHours, instrument } from './measurement.js';
import { currency } from './money.js';
import { tradeUnit } from './quantity.js';
import { references } from './references.js';
import { slug } from './slug.js';
import { soldAs } from './sold-as.js';
import { temperatureUnit } from './temperature.js';
import { localTime, zone } from './time.js';

export { runMode } from './instruction.js';

const party = z.strictObject({
  name: z.string().min(1).max(200).meta({ description: 'Name' }),
  address: z.string().max(400).optional().meta({ description: 'Postal address' }),
  contact: z.string().max(400).optional().meta({ description: 'Telephone, e-mail or a name' }),
});

export const partyRole = z.enum(['carrier', 'shipper', 'receiver', 'broker', 'insurer', 'driver']);
export type PartyRole = z.infer<typeof partyRole>;

/** Degrees north and east on WGS 84. */
const coordinates = z
  .tuple([z.number().min(-90).max(90), z.number().min(-180).max(180)])
  .meta({ description: 'Latitude and longitude in degrees, north and east positive.' });

export const stop = z.strictObject({
  id: slug.meta({ description: 'Short name for rules, entries and files: letters, digits, dashes' }),
  does: z.enum(['load', 'unload']).meta({ description: 'Whether goods are loaded or unloaded here' }),
  place: z.string().min(1).max(200).meta({ description: 'Place as written on the bill of lading' }),
  zone: zone.meta({ description: 'IANA name of the time zone' }),
  at: coordinates.optional().meta({
    description: 'Latitude and longitude in degrees, north and east positive; photos find the stop by it',
  }),
  planned: localTime.optional().meta({ description: 'Planned time, local to the place' }),
  plannedUntil: localTime
    .optional()
    .meta({ description: 'End of the appointment that begins at `planned`, where it is one' }),
  party: party
    .optional()
    .meta({ description: "Who ships or receives here; left out: the delivery's own shipper or receiver" }),
  references: references.optional().meta({ description: 'Numbers of this stop, where they differ' }),
});
export type Stop = z.infer<typeof stop>;

export const line = z.strictObject({
  id: slug.meta({ description: 'Short name of the line' }),
  goods: z.string().min(1).max(100).meta({
    description:
      'Key or name in the reference table, such as lettuce-romaine, or any other name, which has no published limits',
  }),
  name: z.string().min(1).max(200).optional().meta({ description: 'Name on the bill, where it differs' }),
  from: slug.meta({ description: 'Stop where the line is loaded' }),
  to: slug.meta({ description: 'Stop where the line is unloaded' }),
  pallets: z.int().positive().max(100).optional().meta({ description: 'Count of pallets' }),
  cartons: z.int().positive().optional().meta({ description: 'Count of cartons' }),
  shipped: z
    .partialRecord(tradeUnit, z.number().positive().max(999_999_999))
    .optional()
    .meta({ description: 'What was shipped, in other units, such as { cases: 864, lb: 21600 }' }),
  compartment: slug
    .optional()
    .meta({ description: 'Compartment that the line is loaded in, where the trailer has several' }),
  lot: references.shape.lot.meta({ description: 'Lot codes of these goods' }),
  iced: z.boolean().default(false).meta({ description: 'Top-iced or package-iced' }),
  instruction: instruction
    .optional()
    .meta({ description: 'Carriage instruction of the bill; left out where the bill has none' }),
  stackHeight: writtenLength.optional().meta({ description: 'Height of pallet and cartons' }),
  pallet: writtenFootprint
    .optional()
    .meta({ description: 'Footprint of a pallet; 40 × 48 in is assumed otherwise, and stated' }),
  sold: soldAs.optional().meta({
    description: 'What the contract of sale says of the goods, where the carrier knows it: 7 CFR 46.44(a)',
  }),
  light: z
    .boolean()
    .optional()
    .meta({ description: 'Light for its height, so that it tips and slides easily' }),
  halfCoolingHours: halfCoolingHours.optional().meta({
    description:
      'Half-cooling times of the goods as packed, where they were measured: shortest and longest in hours',
  }),
});
export type Line = z.infer<typeof line>;

/**
 * Trade terms of a sale. Under `fob-acceptance` and `fob-acceptance-final` the buyer accepts at shipping point and has
 * no right of rejection (7 CFR 46.43(l), (m)).
 */
const saleTerm = z.enum(['fob', 'fob-acceptance', 'fob-acceptance-final', 'delivered']);

const equipment = z.strictObject({
  tractor: z
    .strictObject({
      number: z.string().max(60).meta({ description: 'Number' }),
      axles: tractorAxles
        .optional()
        .meta({ description: 'Where its axles lie, for an estimate of axle weights' }),
    })
    .optional()
    .meta({ description: 'Tractor' }),
  trailer: z
    .strictObject({
      number: z.string().min(1).max(60).meta({ description: 'Number' }),
      length: writtenLength.optional().meta({ description: 'Nominal length' }),
      insideLength: writtenLength.optional().meta({
        description:
          'From the bulkhead to the closed doors; the nominal length is used otherwise, and stated',
      }),
      insideWidth: writtenLength.optional().meta({ description: 'Inside width' }),
      insideHeight: writtenLength.optional().meta({ description: 'Inside height' }),
      airChute: z.boolean().optional().meta({ description: 'Whether it has an air chute' }),
      drains: z
        .enum(['rear', 'front', 'both', 'none'])
        .optional()
        .meta({ description: 'Where its floor drains are' }),
      axles: trailerAxles
        .optional()
        .meta({ description: 'Where its kingpin and axles lie, for an estimate of axle weights' }),
      compartments: z.array(compartment).min(2).max(6).optional().meta({
        description:
          'Compartments from the front wall to the doors, where bulkheads divide the trailer; every line then names its own',
      }),
    })
    .meta({ description: 'Trailer' }),
  unit: z
    .strictObject({ number: z.string().max(60).optional().meta({ description: 'Number' }) })
    .optional()
    .meta({ description: 'Refrigeration unit' }),
  empty: emptyWeights.optional(),
  limits: axleLimits.optional(),
});

export const language = z.enum(['en', 'es']);
/** Language of the pages. */
export type Language = z.infer<typeof language>;
export const paper = z.enum(['Letter', 'A4']);
/** Paper of the pages. */
export type Paper = z.infer<typeof paper>;

export const displaySettings = z.strictObject({
  temperature: temperatureUnit.default('°F').meta({ description: 'Unit that comes first' }),
  language: language.default('en').meta({ description: 'Language of the pages' }),
  paper: paper.default('Letter').meta({ description: 'Page size' }),
});
export type DisplaySettings = z.infer<typeof displaySettings>;

/** The facts of one delivery, as people write them in delivery.yaml. */
export const delivery = z
  .strictObject({
    delivery: z
      .string()
      .regex(/^[\p{L}\p{N}][\p{L}\p{N}._/ -]{0,80}$/u, { error: 'use letters, digits, spaces and . _ / -' })
      .meta({ description: 'Number or name of the delivery' }),
    parties: z.partialRecord(partyRole, party).meta({
      description:
        'Carrier, shipper, receiver, broker, insurer, driver: each with name and address; the carrier is required',
    }),
    references: references.optional().meta({
      description:
        'Numbers that the trade files by: bill of lading, PRO, purchase order and the like, each one or a list',
    }),
    equipment: equipment.meta({ description: 'Vehicle' }),
    stops: z.array(stop).min(2).max(40).meta({ description: 'Stops in their order' }),
    lines: z.array(line).min(1).max(200).meta({ description: 'Commodity lines of the bill' }),
    instruments: z
      .array(instrument)
      .max(100)
      .optional()
      .meta({ description: 'Thermometers and sensors, and what is known of them' }),
    uncertainty: assumedUncertainty
      .optional()
      .meta({ description: 'What is assumed of instruments and places of which nothing is stated' }),
    sale: saleTerm.optional().meta({
      description: 'The trade term on which the goods were sold, where the carrier knows it: 7 CFR 46.43',
    }),
    rules: z
      .union([z.string().min(1), z.array(z.string().min(1)).min(1).max(8)])
      .default('produce')
      .meta({ description: 'Shipped rule set, or path of a file; or a list of several that hold together' }),
    currency: currency.optional().meta({ description: 'Of amounts that name no currency, such as $11.00' }),
    show: displaySettings.prefault({}).meta({ description: 'Units, language and page size' }),
  })
  .superRefine((facts, ctx) => {
    const issue = (message: string, path: (string | number)[]) =>
      ctx.addIssue({ code: 'custom', message, path });
    unique(facts.stops, 'stops', issue);
    unique(facts.lines, 'lines', issue);
    const { trailer } = facts.equipment;
    for (const { message, path } of axleIssues(facts.equipment)) issue(message, path);
    for (const { message, path } of compartmentIssues({
      ...trailer,
      compartments: trailer.compartments ?? [],
      stops: facts.stops,
      lines: facts.lines,
    }))
      issue(message, path);
    if (facts.parties.carrier === undefined) issue('name the carrier', ['parties']);
    for (const does of ['load', 'unload'] as const)
      if (!facts.stops.some((s) => s.does === does)) issue(`no stop with does: ${does}`, ['stops']);
    facts.instruments?.forEach(({ name, checks }, i) => {
      if (facts.instruments?.findIndex((one) => one.name === name) !== i)
        issue(`"${name}" is used twice`, ['instruments', i, 'name']);
      checks.forEach(({ stop: at }, check) => {
        if (at !== undefined && !facts.stops.some((s) => s.id === at))
          issue(`there is no stop "${at}"`, ['instruments', i, 'checks', check, 'stop']);
      });
    });
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
  })
  .transform((facts) => ({ ...facts, lines: facts.lines.map((l) => withInstruction(l, facts.equipment)) }));
/** The facts of a delivery, as delivery.yaml states them with its defaults filled in: see docs/formats/deliveries-and-readings.md. */
export type Delivery = z.infer<typeof delivery>;
/** The same before parsing: what the YAML holds and the ledger keeps. */
export type DeliveryInput = z.input<typeof delivery>;

/** A line without an instruction of its own has that of its compartment. */
function withInstruction(line: Line, { trailer }: z.infer<typeof equipment>): Line {
  const own = trailer.compartments?.find(({ id }) => id === line.compartment)?.instruction;
  return line.instruction === undefined && own !== undefined ? { ...line, instruction: own } : line;
}

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
