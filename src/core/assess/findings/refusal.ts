import type { EvidenceId } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { Finding, LineOutcome, OutcomeStatement } from '../../model/results.js';
import type { EvidenceItem } from '../../model/state.js';
import { knownMilliseconds } from '../../model/time.js';
import { isRefused, partTakenBack } from '../outcomes.js';
import { amount, duration, type FindingContext, finding, lineRef, stopRef, time, zoneOf } from './make.js';

/**
 * Findings on each refusal, when and why, and on rejection documents that are not on file. A refusal of everything for a
 * stop is one finding; a refusal of a part is one of its line.
 */
export function refusalFindings(context: FindingContext): Finding[] {
  const refused = context.outcomes.filter(isRefused);
  const stops = [...new Set(refused.map(({ stop }) => stop))];
  const notices = papersOf(context, 'rejection-notice', undefined);
  if (stops.length === 0)
    return notices.length === 0
      ? []
      : [
          finding('refused', 'events and papers', notices, { notices: notices.length }),
          ...lackingPapers(context, undefined, notices),
        ];
  return stops.flatMap((stop) => {
    const here = context.outcomes.filter((one) => one.stop === stop);
    const whole = here.every(({ is }) => is === 'refused') && sharedStatements(here);
    const groups = whole ? [here] : here.filter(isRefused).map((one) => [one]);
    return [
      ...groups.map((group) => refusal(context, stop, group, whole)),
      ...lackingPapers(
        context,
        stop,
        here.flatMap(refusalsIn).map(({ evidence }) => evidence),
      ),
    ];
  });
}

const sharedStatements = (lines: readonly LineOutcome[]): boolean => {
  const keys = lines.map((one) =>
    refusalsIn(one)
      .map(({ evidence }) => evidence)
      .join(),
  );
  return new Set(keys).size === 1;
};

const refusalsIn = ({ statements }: LineOutcome): OutcomeStatement[] =>
  statements.filter(({ outcome, rest }) => outcome === 'refused' || rest === 'refused');

function refusal(
  context: FindingContext,
  stop: string,
  lines: readonly LineOutcome[],
  whole: boolean,
): Finding {
  const [line] = lines;
  const said = line === undefined ? [] : refusalsIn(line);
  const [first] = said;
  const at = first?.at;
  const arrived = context.milestones.events.find(
    (one) => one.stop === stop && (one.event === 'arrived' || one.event === 'notice-of-arrival'),
  );
  const notices = papersOf(context, 'rejection-notice', stop);
  const several = context.outcomes.some((one) => one.stop !== stop);
  const part = line?.amounts.find(({ refused }) => refused !== undefined);
  const takenBack = whole || line === undefined ? undefined : partTakenBack(line);
  const words = said.flatMap((one) => one.words ?? []);
  const reasons = [...new Set(said.flatMap((one) => one.reasons))].filter((one) => one !== 'other');
  return finding('refused', 'events and papers', [...said.map(({ evidence }) => evidence), ...notices], {
    ...omitUndefined({
      at: at === undefined ? undefined : time(at, zoneOf(context.state, stop)),
      stop: several || isStated(context, said) ? stopRef(stop) : undefined,
      line: whole || line === undefined ? undefined : lineRef(line.line),
      amount:
        whole || part?.refused === undefined || line?.is === 'refused'
          ? undefined
          : amount(part.refused, part.unit, part.shipped),
      accepted:
        whole || part?.refused === undefined || part.accepted === undefined
          ? undefined
          : amount(part.accepted, part.unit),
      ofOneStop: whole && several ? true : undefined,
      reasons: reasons.length === 0 ? undefined : reasons.join(', '),
      reason: words.length === 0 ? undefined : [...new Set(words)].join('; '),
      saidBy: first?.saidBy,
      allFirst: takenBack === undefined ? undefined : true,
      acceptedAt: takenBack?.at === undefined ? undefined : time(takenBack.at, zoneOf(context.state, stop)),
      sinceArrival:
        at === undefined || arrived === undefined || at < arrived.at
          ? undefined
          : duration((at - arrived.at) / 1000),
    }),
    notices: notices.length,
  });
}

/** Whether the record states the stop, so that it is not only implied. */
const isStated = ({ state }: FindingContext, said: readonly OutcomeStatement[]): boolean =>
  said.some(
    (one) => state.evidence.find(({ evidence }) => evidence === one.evidence)?.place?.stop !== undefined,
  );

/** A paper by its subject; what a certificate states of a lot is as good as the certificate here. */
const shows = (item: EvidenceItem, is: 'rejection-notice' | 'inspection-certificate'): boolean =>
  ('subject' in item && item.subject?.is === is) ||
  (is === 'inspection-certificate' && item.kind === 'inspection' && item.defects.length > 0);

/** Papers of a kind about a stop; one that names no stop is about any. */
function papersOf(
  { state, now }: FindingContext,
  is: 'rejection-notice' | 'inspection-certificate',
  stop: string | undefined,
): EvidenceId[] {
  return state.evidence
    .filter(
      (item) =>
        shows(item, is) &&
        (stop === undefined || (item.place?.stop ?? stop) === stop) &&
        (knownMilliseconds(item.time) ?? 0) <= now,
    )
    .map((item) => item.evidence);
}

function lackingPapers(
  context: FindingContext,
  stop: string | undefined,
  ids: readonly EvidenceId[],
): Finding[] {
  // Where all of one delivery was refused, it was the load; else it was goods at a stop.
  const named =
    stop !== undefined && context.outcomes.some((one) => one.is !== 'refused' || one.stop !== stop);
  const at = named ? { stop: stopRef(stop) } : {};
  const asked = context.milestones.events.some(
    (one) => one.event === 'inspection-requested' && (stop === undefined || one.stop === stop),
  );
  return [
    ...(papersOf(context, 'rejection-notice', stop).length === 0
      ? [finding('refused-no-written-notice', 'papers of the refusal', ids, at)]
      : []),
    ...(papersOf(context, 'inspection-certificate', stop).length === 0
      ? [finding('refused-not-inspected', 'papers of the refusal', ids, { requested: asked, ...at })]
      : []),
  ];
}
