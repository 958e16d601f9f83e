import { lineOfFinding } from '../../core/assess/claim/finding-relevance.js';
import { isRefused } from '../../core/assess/outcomes.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { Finding, LineOutcome } from '../../core/model/results.js';
import { formatAmount } from '../../core/words/amounts.js';
import { escapeMarkdown } from '../../core/words/escape.js';
import { type Facts, MarkdownText } from '../../core/words/facts.js';
import { outcomeReasons, outcomeSayers } from '../../core/words/outcome-said.js';
import type { LetterInput } from './input.js';
import { reservations } from './reservations.js';
import type { LetterView } from './view.js';

/** Elements that the shipper answers for: the goods as tendered, and the instructions. */
const OF_SHIPPER: ReadonlySet<string> = new Set([
  'pulps-at-loading-above-band',
  'pulps-at-loading-below-band',
  'warm-at-loading-told',
  'exception-signed',
  'pallets-noted-differ',
  'no-instruction-on-bill',
  'instruction-outside-published-range',
  'instruction-near-freezing',
]);
/** Load placement: a matter for the shipper only where the shipper loaded. */
const OF_LOADING: ReadonlySet<string> = new Set([
  'rows-hard-to-walls',
  'side-room-not-braced',
  'tall-light-pallets-not-braced',
  'tall-pallets-not-braced',
  'iced-ahead-of-dry',
  'iced-away-from-drains',
  'air-path-blocked',
  'load-near-ceiling',
  'load-near-doors',
  'load-does-not-fit',
  'mixed-temperatures',
  'mixed-ethylene',
  'mixed-moisture',
]);
const HAPPENED = ['doors-closed', 'departed', 'arrived', 'doors-opened', 'unloaded', 'inspected'] as const;
/** Lighter findings stay in the dossier: a letter of many lines is not read. A convention of this project. */
const LEAST_WEIGHT = 50;
/** An estimate belongs in the dossier, beside its assumptions: in a letter it reads like proof. */
const ESTIMATES: ReadonlySet<string> = new Set(['arrival-supports-origin']);
const isAny = (value: unknown, of: readonly unknown[]) => of.includes(value);

/** Facts of the delivery and its findings for letters; every sentence names its exhibits. */
export function recordFacts(view: LetterView<LetterInput>): Facts {
  const { input, names } = view;
  const { delivery } = input.state;
  const { findings } = input.assessment;
  const refused = input.assessment.outcomes.filter(isRefused);
  const last =
    delivery.stops.find(({ id }) => id === refused[0]?.stop) ??
    delivery.stops.findLast(({ does }) => does === 'unload');
  const first = delivery.stops.find(({ does }) => does === 'load');
  const isTold = ({ id }: Finding) => OF_SHIPPER.has(id) || (input.loading && OF_LOADING.has(id));
  const refusal = sentences(
    view,
    findings.filter(({ id }) => id === 'refused'),
  );
  const happened = happenedLines(view);
  const reserved = reservations(view);
  const shipperFacts = sentences(view, byWeight(findings.filter(isTold)));
  return {
    delivery: delivery.delivery,
    carrier: delivery.parties.carrier?.name ?? '',
    contact: delivery.parties.carrier?.contact,
    trailer: delivery.equipment.trailer.number,
    from: first?.place,
    place: last?.place,
    dossier: input.enclosed.some(({ what }) => what === 'dossier'),
    assessment: input.enclosed.some(({ what }) => what === 'assessment'),
    helps: helpLines(view),
    shipperFacts,
    reservedOn: reserved.reservedFrom.length + shipperFacts.length > 0,
    refusal,
    ...rejectionFacts(view, refused),
    happened,
    anythingHappened: happened.length + refusal.length > 0,
    lines: delivery.lines
      .filter((line) => isInDispute(line.id, refused))
      .map((line) => {
        const part = refusedAmounts(view, line.id, refused);
        const shipped = [
          ...(line.pallets === undefined ? [] : [`${line.pallets} ${view.labels('cover.pallets')}`]),
          ...(line.cartons === undefined
            ? []
            : [`${view.format.number(line.cartons)} ${view.labels('cover.cartons')}`]),
        ];
        return new MarkdownText(
          escapeMarkdown([names.line(line.id), ...(part.length === 0 ? shipped : part)].join(', ')),
        );
      }),
    ...reserved,
  };
}

/** What the refusals of the record say of reason, sayer and the one who was told; what is left to fill in. */
function rejectionFacts({ labels, names }: LetterView<LetterInput>, refused: readonly LineOutcome[]): Facts {
  const told = refused.map((one) => one.statements.filter(({ outcome }) => outcome === 'refused'));
  const ofLine = (one: LineOutcome, said: string) =>
    said === '' ? [] : [new MarkdownText(escapeMarkdown(`${names.line(one.line)}: ${said}`))];
  const whole = (statements: LineOutcome['statements']) =>
    statements.length > 0 &&
    statements.every((one) => one.saidBy !== undefined && one.told !== undefined && one.how !== undefined);
  const reasons = refused.map((one, i) =>
    outcomeReasons(labels, { reasons: one.reasons, statements: told[i] ?? [] }),
  );
  return {
    rejectionReasons: refused.flatMap((one, i) => ofLine(one, reasons[i] ?? '')),
    rejectionReasonsLeft: refused.length === 0 || reasons.includes(''),
    rejectionTold: refused.flatMap((one, i) => ofLine(one, outcomeSayers(labels, told[i] ?? []))),
    rejectionToldLeft: refused.length === 0 || !told.every(whole),
  };
}

/** Goods that were accepted are no matter of a letter about refused ones. */
const isInDispute = (line: string, refused: readonly LineOutcome[]): boolean =>
  refused.length === 0 || refused.some((one) => one.line === line);

/** `8 of 18 pallets refused`, where a part of a line was. */
function refusedAmounts(
  { format, labels }: LetterView<LetterInput>,
  line: string,
  refused: readonly LineOutcome[],
): string[] {
  return refused
    .filter((one) => one.line === line && one.is === 'refused-in-part')
    .flatMap(({ amounts }) => amounts)
    .flatMap(({ unit, shipped: of, refused: value }) =>
      value === undefined
        ? []
        : [
            `${formatAmount(labels, format, { value, unit, ...omitUndefined({ of }) })} ${labels('goods-fate.refused')}`,
          ],
    );
}

const byWeight = (findings: readonly Finding[]) => [...findings].sort((a, b) => b.weight - a.weight);

const sentences = (view: LetterView, findings: readonly Finding[]): MarkdownText[] =>
  findings.map(view.sentence).filter((one) => one !== undefined);

/**
 * Findings for the carrier. Where there is a table on the burden of proof, only those on the carrier's side, in its
 * order: sound goods at loading help to show care, but are also the claimant's case.
 */
function helpLines(view: LetterView<LetterInput>): MarkdownText[] {
  const { assessment, claim } = view.input;
  const position = claim?.result?.position ?? [];
  const points = (side: 'forCarrier' | 'againstCarrier') =>
    position.flatMap((row) =>
      row[side].flatMap(({ from }) => (from.is === 'finding' ? [pointKey(from.id, from.line)] : [])),
    );
  const key = (finding: Finding) => pointKey(finding.id, lineOfFinding(finding));
  const [forCarrier, against] = [points('forCarrier'), new Set(points('againstCarrier'))];
  const helps = byWeight(
    assessment.findings.filter(
      ({ id, weighs, weight }) => weighs === 'helps' && weight >= LEAST_WEIGHT && !ESTIMATES.has(id),
    ),
  );
  const chosen =
    position.length === 0
      ? helps
      : helps
          .filter((one) => forCarrier.includes(key(one)) && !against.has(key(one)))
          .sort((one, other) => forCarrier.indexOf(key(one)) - forCarrier.indexOf(key(other)));
  return chosen.flatMap((finding) => {
    const sentence = view.sentence(finding);
    const element = escapeMarkdown(capital(view.labels(`element.${finding.element}`)));
    return sentence === undefined ? [] : [new MarkdownText(`**${element}:** ${sentence}`)];
  });
}

/** The key of a finding in that table. */
const pointKey = (id: string, line: string | undefined) => JSON.stringify([id, line ?? null]);

const capital = (words: string) => words.charAt(0).toLocaleUpperCase() + words.slice(1);

/** Main times of the delivery, each with its exhibit. */
function happenedLines(view: LetterView<LetterInput>): MarkdownText[] {
  const { format, labels, names } = view;
  return view.input.assessment.timeline.items.flatMap((item) => {
    const { evidence } = item;
    if (item.is !== 'event' || !isAny(item.event, HAPPENED)) return [];
    if (evidence === undefined || view.number(evidence) === undefined) return [];
    const where = item.stop === undefined ? '' : `, ${names.stop(item.stop)}`;
    const words = `${labels(`event.${item.event}`)}${where}, ${format.time(item.at, item.zone)}`;
    return [new MarkdownText(`${escapeMarkdown(words)}${view.source([evidence])}`)];
  });
}
