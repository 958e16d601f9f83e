import { z } from 'zod';
import { runMode } from './delivery.js';
import {
  contact,
  contactSubject,
  documentSubject,
  eventName,
  flagName,
  instrumentDetail,
  instrumentType,
  particularSubject,
  position,
  readingFrom,
  sceneSubject,
  setPointSource,
  signingParty,
  statementTopic,
  stopReason,
} from './evidence.js';
import { milestoneOffset, withinWindow, writtenDuration } from './milestone.js';
import { writtenTemperatureDifference } from './temperature.js';

const oneOrMore = <T extends z.ZodType>(schema: T) => z.union([schema, z.array(schema).min(1).max(40)]);

const window = {
  /** At which kind of stop the evidence belongs. */
  at: z.enum(['loading-stop', 'unloading-stop']).optional(),
  /** Only evidence after, or before, this counts. */
  after: milestoneOffset.optional(),
  before: milestoneOffset.optional(),
  /** The same for a time next to a moment. */
  within: withinWindow.optional(),
};
const amount = {
  atLeast: z.int().positive().max(1000).default(1),
  /** The count is required for each line, or each stop, on its own. */
  per: z.enum(['delivery', 'line', 'stop']).default('delivery'),
};
const quality = {
  /** A file with one of these flags does not count. */
  without: z.array(flagName).min(1).optional(),
  /** Only what a person has said it shows counts, not what was proposed. */
  confirmed: z.boolean().optional(),
  /** Its time must be known. */
  dated: z.boolean().optional(),
};

const photoNeed = z.strictObject({ photo: oneOrMore(sceneSubject), ...quality, ...amount, ...window });
const documentNeed = z.strictObject({
  document: oneOrMore(documentSubject),
  ...quality,
  ...amount,
  ...window,
});
const pulpNeed = z.strictObject({
  reading: z.literal('pulp'),
  from: readingFrom.optional(),
  /** `core`: of goods that have no pulp, in the core or between packs; so it is called. */
  as: z.enum(['pulp', 'core']).default('pulp'),
  /** Parts of the load that must each have a reading. */
  spread: z.strictObject({ position: z.array(position).min(1) }).optional(),
  /** Every pulp must lie within the line's instruction ± this (or the bill's own tolerance when it states one). */
  withinInstruction: z.strictObject({ tolerance: writtenTemperatureDifference }).optional(),
  ...amount,
  ...window,
});
const unitCheckNeed = z.strictObject({
  reading: z.literal('round'),
  /** Longest time between looks, in hours. */
  everyHours: z.number().positive().max(1000).optional(),
  fuelAtLeast: z.number().min(0).max(1).optional(),
  /** Box air no farther than this from the bill's temperature. */
  boxAirWithin: writtenTemperatureDifference.optional(),
  ...amount,
  ...window,
});
const plainReadingNeed = z.strictObject({
  reading: z.enum(['set-point', 'bracing', 'contact', 'statement', 'exception']),
  /** Of a contact: who was told, one of these. */
  with: oneOrMore(contact.shape.with).optional(),
  /** Of a contact: what it was about, one of these; a contact without a subject does not count. */
  subject: oneOrMore(contactSubject).optional(),
  /** Of an exception: who signed it, one of these. */
  signedBy: oneOrMore(signingParty).optional(),
  /** Of a statement: its topic, one of these; a statement that names none counts too. */
  about: oneOrMore(statementTopic).optional(),
  /** Of a set point: where it was read. */
  shownBy: setPointSource.optional(),
  /** Of a set point: the run mode; `as-on-bill` is what the bill asks for. */
  run: z.enum([...runMode.options, 'as-on-bill']).optional(),
  /** What `as-on-bill` means when the bill is silent. Left out: any mode that is stated will do. */
  runIfSilent: runMode.optional(),
  ...amount,
  ...window,
});
const sealNeed = z.strictObject({
  reading: z.literal('seal'),
  state: z.enum(['applied', 'intact']).optional(),
  /** The number must be the one that was applied at loading. */
  sameAsApplied: z.boolean().default(false),
  ...amount,
  ...window,
});
const particularNeed = z.strictObject({
  particular: oneOrMore(particularSubject),
  /** Who did it, one of these. */
  who: oneOrMore(signingParty).optional(),
  ...amount,
  ...window,
});
const instrumentNeed = z.strictObject({
  instrument: oneOrMore(instrumentType),
  /** Whose it is, one of these. */
  owner: oneOrMore(signingParty).optional(),
  /** What must be said of it; one of which it is not said does not count. */
  has: z.array(instrumentDetail).min(1).optional(),
  ...amount,
  ...window,
});
const eventNeed = z.strictObject({
  event: oneOrMore(eventName),
  /** Of a stop: for this reason, or one of these. */
  reason: oneOrMore(stopReason).optional(),
  ...amount,
  ...window,
});

const instructionNeed = z.strictObject({
  /**
   * `on-the-bill`: each line has a temperature. `one-for-all`: one air temperature suits every line.
   * `in-published-range`: each line's temperature is recommended by some source of the reference library.
   */
  instruction: z.enum(['on-the-bill', 'one-for-all', 'in-published-range']),
  per: z.literal('line').default('line'),
});
const setPointAgreementNeed = z.strictObject({
  agreement: z.literal('set-point'),
  /** Sources that must agree within this much of each other. */
  between: z.array(z.enum(['bill', 'shipper', 'dispatcher', 'display', 'log'])).min(2),
  tolerance: writtenTemperatureDifference,
});
const pulpAgreementNeed = z.strictObject({
  agreement: z.literal('pulp'),
  /** Whose readings of one line at one stop must have means within this much of each other. */
  between: z.tuple([readingFrom, readingFrom]),
  at: z.enum(['loading-stop', 'unloading-stop']),
  tolerance: writtenTemperatureDifference,
});
const logNeed = z.strictObject({
  log: z.literal('unit-log'),
  /** Share of the window in which values are known, 0 to 1. */
  coverage: z.number().min(0).max(1).default(0),
  /** The last known air before the window's end is no farther than this from the bill's temperature. */
  airWithin: writtenTemperatureDifference.optional(),
  from: milestoneOffset,
  to: milestoneOffset,
});
const alarmsNeed = z.strictObject({
  /** `none`: no alarm in the window, in the log or at a look. `answered`: somebody acted on each. */
  alarms: z.enum(['none', 'answered']),
  /** How soon after its start an alarm must be answered. */
  soon: writtenDuration.optional(),
  at: window.at,
  after: milestoneOffset.optional(),
  before: milestoneOffset.optional(),
});
const delaysNeed = z.strictObject({
  /** Long stops on the way and late arrivals have a note, or somebody was told. */
  delays: z.literal('explained'),
  /** What is shorter needs no explanation. */
  over: writtenDuration,
});

/** What the record must say of each of its claims. */
const claimNeed = z.strictObject({ claim: z.enum(['received', 'acknowledged', 'resolved']) });

const simpleNeed = z.union([
  photoNeed,
  documentNeed,
  pulpNeed,
  unitCheckNeed,
  plainReadingNeed,
  sealNeed,
  eventNeed,
  particularNeed,
  instrumentNeed,
  instructionNeed,
  setPointAgreementNeed,
  pulpAgreementNeed,
  logNeed,
  alarmsNeed,
  delaysNeed,
  claimNeed,
]);
/** One thing that a rule asks for: see docs/formats/rule-sets-and-templates.md. */
export type SimpleNeed = z.infer<typeof simpleNeed>;
/** What a rule asks for. */
export type Need = SimpleNeed | { all: Need[] } | { any: Need[] } | { none: Need[] };
type NeedInput =
  | z.input<typeof simpleNeed>
  | { all: NeedInput[] }
  | { any: NeedInput[] }
  | { none: NeedInput[] };

export const need: z.ZodType<Need, NeedInput> = z.lazy(() =>
  z.union([
    simpleNeed,
    z.strictObject({ all: z.array(need).min(1).max(20) }),
    z.strictObject({ any: z.array(need).min(1).max(20) }),
    z.strictObject({ none: z.array(need).min(1).max(20) }),
  ]),
);

/** Numbers of a need that a set which extends another may set on their own. */
export const THRESHOLDS = [
  'atLeast',
  'everyHours',
  'fuelAtLeast',
  'boxAirWithin',
  'coverage',
  'airWithin',
  'tolerance',
  'within',
  'soon',
  'over',
  'without',
  'spread',
] as const;
