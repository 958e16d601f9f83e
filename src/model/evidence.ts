import { z } from 'zod';
import { runMode } from './delivery.js';
import { temperature, temperatureUnit } from './temperature.js';
import { eventTime, instant, localTime, zone } from './time.js';

export const sha256 = z
  .string()
  .regex(/^[0-9a-f]{64}$/)
  .transform((hex) => hex as Sha256);
export type Sha256 = string & z.$brand<'Sha256'>;

export const evidenceId = z
  .string()
  .regex(/^e[1-9]\d*$/)
  .transform((id) => id as EvidenceId);
export type EvidenceId = string & z.$brand<'EvidenceId'>;

/** What a photo can show. Papers may be photographed too: see `paperSubject`. */
export const sceneSubject = z.enum([
  'pulp-display',
  'unit-display',
  'trailer-inside',
  'drains',
  'air-chute',
  'pallets-on-dock',
  'load-pattern',
  'air-path',
  'bracing',
  'seal',
  'load-at-opening',
  'damage',
  'fuel-gauge',
  'thermometer-in-ice',
  'pallet-tag',
  'other-scene',
]);
/** What a paper can be, whether it came as PDF, text or picture. */
export const paperSubject = z.enum([
  'bill-of-lading',
  'proof-of-delivery',
  'inspection-certificate',
  'washout-receipt',
  'scale-ticket',
  'thermometer-check',
  'pre-trip-report',
  'shipper-pulp-sheet',
  'tally-sheet',
  'rejection-notice',
  'claim-letter',
  'claim-acknowledgement',
  'claim-answer',
  'invoice',
  'sale-account',
  'message',
  'other-paper',
]);
export const subjectName = z.enum([...sceneSubject.options, ...paperSubject.options]);
export type SubjectName = z.infer<typeof subjectName>;

/** What evidence shows: proposed by the tool until a person says so. */
export const subject = z.strictObject({
  is: subjectName,
  sure: z.enum(['proposed', 'confirmed']),
  /** What the proposal rests on, such as the folder name or a caption. */
  from: z.string().optional(),
});
export type Subject = z.infer<typeof subject>;

/** Part of the load, counted from the unit at the nose to the doors at the tail. */
export const position = z.enum(['nose', 'middle', 'tail']);
export type Position = z.infer<typeof position>;

export const place = z.strictObject({
  /** Stop id of the delivery. */
  stop: z.string().optional(),
  position: position.optional(),
  /** Where the camera was, by its own GPS: degrees on WGS 84. */
  gps: z.strictObject({ latitude: z.number(), longitude: z.number() }).optional(),
});
export type Place = z.infer<typeof place>;

/** A file as it was taken in; its bytes lie under originals/ by this hash. */
export const fileRef = z.strictObject({
  name: z.string(),
  bytes: z.int().nonnegative(),
  sha256,
  /** Media type, recognised from the content. */
  type: z.string(),
});
export type FileRef = z.infer<typeof fileRef>;

/** Where a reading was written down: typed in, or a row of a file that is evidence itself. */
export const source = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('typed') }),
  z.strictObject({ is: z.literal('row'), evidence: evidenceId, row: z.int().positive() }),
]);
export type Source = z.infer<typeof source>;

/** Something about the evidence that a reader should know, with a stable id. */
export const flagName = z.enum([
  'no-capture-time',
  'time-zone-unknown',
  'time-happened-twice',
  'time-never-happened',
  'edited',
  'dark',
  'blurred',
  'tiny',
  'far-from-stop',
  'outside-stop-window',
  /** A log whose own lines name another trailer or unit than the delivery does. */
  'other-trailer',
  /** A log that does not touch the planned time of the delivery. */
  'outside-delivery-time',
  'same-scene',
  'picture-unreadable',
  'encrypted',
  /** A paper that carries programs, files or actions of its own; they are never run or opened. */
  'active-content',
  /** A paper or archive whose bytes do not hold together. */
  'damaged',
  'empty-file',
  'unknown-type',
]);
export type FlagName = z.infer<typeof flagName>;
export const flag = z.strictObject({ is: flagName, detail: z.string() });
export type Flag = z.infer<typeof flag>;

/** Part of an upright picture that copies for outsiders must not show, as fractions of its sides from left and top. */
export const region = z
  .strictObject({
    x: z.number().min(0).max(1),
    y: z.number().min(0).max(1),
    width: z.number().positive().max(1),
    height: z.number().positive().max(1),
  })
  .meta({ description: 'A part of a picture, as fractions of its width and height.' });
export type Region = z.infer<typeof region>;

/** The e-mail or archive that a file came in, which is evidence itself, and its name in there. */
export const within = z.strictObject({ evidence: evidenceId, entry: z.string().min(1).max(1000) });
export type Within = z.infer<typeof within>;

const common = {
  evidence: evidenceId,
  time: eventTime,
  place: place.optional(),
  /** Line id of the delivery. */
  line: z.string().optional(),
  /** Who took it or saw it; the ledger entry's own `by` says who entered it. */
  by: z.string().max(200).optional(),
  caption: z.string().max(2000).optional(),
};
const filed = {
  ...common,
  file: fileRef,
  subject: subject.optional(),
  flags: z.array(flag).default([]),
  within: within.optional(),
};
const told = { ...common, source };

export const camera = z.strictObject({
  make: z.string().optional(),
  model: z.string().optional(),
  serial: z.string().optional(),
});

export const photo = z.strictObject({
  kind: z.literal('photo'),
  ...filed,
  width: z.int().positive().optional(),
  height: z.int().positive().optional(),
  /** EXIF orientation 1 to 8. */
  orientation: z.int().min(1).max(8).optional(),
  camera: camera.optional(),
  /** What the file itself states about its time, before any of it was chosen. */
  statedTimes: z
    .strictObject({
      /** The camera's wall clock. */
      camera: localTime.optional(),
      /** Minutes east of UTC that the camera states for it. */
      offsetMinutes: z.int().optional(),
      /** Satellite time: of the last fix, not of the shutter. */
      gps: instant.optional(),
    })
    .optional(),
  /** What the picture looks like, coarsely: 64 bits, close for pictures of one scene. See docs/method.md. */
  sceneHash: z
    .string()
    .regex(/^[0-9a-f]{16}$/)
    .optional(),
});

/** What a column of temperatures measures; `probe` is the first of up to four probes in the box or the load. */
export const channel = z.enum([
  'set-point',
  'return-air',
  'supply-air',
  'ambient',
  'probe',
  'probe-2',
  'probe-3',
  'probe-4',
]);
export type Channel = z.infer<typeof channel>;
export const stateColumn = z.enum(['mode', 'defrost', 'door', 'power', 'alarm', 'fuel']);
export type StateColumn = z.infer<typeof stateColumn>;

/** How a unit log's table is read: data that a person can see, give or correct. Columns count from 0. */
export const logMapping = z.strictObject({
  encoding: z.enum(['utf-8', 'utf-16le', 'utf-16be', 'latin1']),
  delimiter: z.enum([',', ';', '\t', '|']),
  decimal: z.enum(['.', ',']),
  /** Line of the header, counted from 1; 0 when the table has none. */
  headerRow: z.int().nonnegative(),
  /** Name of the sheet, where the file is a spreadsheet; its rows are then read as text. */
  sheet: z.string().optional(),
  time: z.strictObject({
    /** One column with date and time, or the date and then the time column. */
    columns: z.array(z.int().nonnegative()).min(1).max(2),
    order: z.enum(['iso', 'month-day-year', 'day-month-year']),
    /** The zone that the log's clock is set to; `offset` when every row states its own. */
    zone: z.union([z.literal('offset'), zone]),
  }),
  channels: z.array(
    z.strictObject({
      channel,
      column: z.int().nonnegative(),
      unit: temperatureUnit,
      /** The column's heading, as in the file. */
      heading: z.string(),
    }),
  ),
  states: z.array(z.strictObject({ state: stateColumn, column: z.int().nonnegative(), heading: z.string() })),
});
export type LogMapping = z.infer<typeof logMapping>;

export const unitLogEvidence = z.strictObject({
  kind: z.literal('unit-log'),
  ...filed,
  mapping: logMapping,
  rows: z.int().nonnegative(),
  rowsLeftOut: z.int().nonnegative(),
  from: z.string(),
  to: z.string(),
});

export const readingsTable = z.strictObject({
  kind: z.literal('readings'),
  ...filed,
  rows: z.int().nonnegative(),
  rowsLeftOut: z.int().nonnegative(),
});

export const document = z.strictObject({
  kind: z.literal('document'),
  ...filed,
  pages: z.int().positive().optional(),
});

/** Whose hand or paper a reading comes from. */
export const readingFrom = z.enum(['driver', 'shipper', 'receiver', 'inspector', 'other']);
export type ReadingFrom = z.infer<typeof readingFrom>;

export const pulp = z.strictObject({
  kind: z.literal('pulp'),
  ...told,
  temperature,
  from: readingFrom.default('driver'),
  instrument: z.string().max(100).optional(),
});

/** Where a set point was read or heard. The bill's own line is an instruction in delivery.yaml. */
export const setPointSource = z.enum(['bill', 'dispatcher', 'shipper', 'display']);
export const setPoint = z.strictObject({
  kind: z.literal('set-point'),
  ...told,
  temperature,
  shownBy: setPointSource,
  run: runMode.optional(),
});

/** A look at the running unit on the way. */
export const round = z.strictObject({
  kind: z.literal('round'),
  ...told,
  boxAir: temperature.optional(),
  setPoint: temperature.optional(),
  /** Fuel of the unit's own tank as a fraction, 0 to 1. */
  fuel: z.number().min(0).max(1).optional(),
  alarms: z.array(z.string().max(200)).default([]),
});

export const seal = z.strictObject({
  kind: z.literal('seal'),
  ...told,
  number: z.string().min(1).max(60),
  state: z.enum(['applied', 'intact', 'broken', 'removed']),
});

export const bracing = z.strictObject({
  kind: z.literal('bracing'),
  ...told,
  device: z.enum(['air-bags', 'load-bars', 'straps', 'boards', 'foam-blocks', 'other']),
  note: z.string().max(2000).optional(),
});

/** How the two pallets of a row stand: short side across, long side across, one of each; or one pallet alone. */
export const rowPattern = z.enum(['straight', 'turned', 'pinwheel', 'single']);
export type RowPattern = z.infer<typeof rowPattern>;
/** What a row can stand in the way of. */
export const airBlock = z.enum(['air-return', 'floor', 'ceiling', 'air-chute', 'rear-doors']);
export type AirBlock = z.infer<typeof airBlock>;

/** How the pallets of some rows stood. Rows count from 1 at the nose; a later word on a row holds. */
export const pattern = z.strictObject({
  kind: z.literal('pattern'),
  ...told,
  pattern: rowPattern,
  rows: z
    .strictObject({ from: z.int().min(1).max(60), to: z.int().min(1).max(60) })
    .refine(({ from, to }) => from <= to, { error: 'the first row comes before the last' }),
  /** Where the air cannot pass in these rows. */
  blocks: z.array(airBlock).default([]),
  note: z.string().max(2000).optional(),
});

export const eventName = z.enum([
  'arrived',
  'doors-opened',
  'loading-began',
  'loading-ended',
  'doors-closed',
  'departed',
  'stopped',
  'resumed',
  'notice-of-arrival',
  'unloading-began',
  'unloaded',
  'refused',
  'inspection-requested',
  'inspected',
]);
export type EventName = z.infer<typeof eventName>;
export const event = z.strictObject({
  kind: z.literal('event'),
  ...told,
  event: eventName,
  note: z.string().max(2000).optional(),
});

export const contact = z.strictObject({
  kind: z.literal('contact'),
  ...told,
  with: z.enum(['shipper', 'receiver', 'broker', 'dispatcher', 'insurer', 'carrier', 'inspector', 'other']),
  how: z.enum(['call', 'message', 'e-mail', 'in-person', 'letter']),
  about: z.string().min(1).max(2000),
});

/** A detached signature by the person whose statement it is: see docs/formats.md, "Signed statement". */
export const statementSignature = z.strictObject({
  /** CMS SignedData (RFC 5652) in DER, base64. */
  cms: z.base64().max(100_000),
  certificateSha256: sha256,
});
export type StatementSignature = z.infer<typeof statementSignature>;

export const statement = z.strictObject({
  kind: z.literal('statement'),
  ...told,
  text: z.string().min(1).max(20000),
  signature: statementSignature.optional(),
});

export const receivedEvidence = z.discriminatedUnion('kind', [
  photo,
  unitLogEvidence,
  readingsTable,
  document,
]);
export type ReceivedEvidence = z.infer<typeof receivedEvidence>;
export const reading = z.discriminatedUnion('kind', [
  pulp,
  setPoint,
  round,
  seal,
  bracing,
  pattern,
  event,
  contact,
  statement,
]);
export type Reading = z.infer<typeof reading>;
export const evidence = z.discriminatedUnion('kind', [...receivedEvidence.options, ...reading.options]);
export type Evidence = z.infer<typeof evidence>;
export type EvidenceKind = Evidence['kind'];
/** One member of the union, by its kind. */
export type EvidenceOf<K extends EvidenceKind> = Extract<Evidence, { kind: K }>;
export const readingKind = z.enum([
  'pulp',
  'set-point',
  'round',
  'seal',
  'bracing',
  'pattern',
  'event',
  'contact',
  'statement',
]);
export type ReadingKind = z.infer<typeof readingKind>;
