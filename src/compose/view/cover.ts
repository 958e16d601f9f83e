import type { PartyRole } from '../../core/model/delivery.js';
import { minorUnits } from '../../core/model/money.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { WindowBound } from '../../core/model/results.js';
import { milliseconds } from '../../core/model/time.js';
import type { Block, Cover, Fact, Inline } from '../../core/words/blocks.js';
import { plain, text, wordsOf } from '../../core/words/blocks.js';
import { exhibitLinks, type View } from './context.js';
import { coverWeighing } from './cover-weighing.js';
import { outcomeHeadline } from './outcome-words.js';
import { referenceText, stopParty } from './reference-text.js';

export const CODE_ASSET = 'fingerprint.svg';
/** The fingerprint line, which can be sent and is in the code on the first page. */
export const fingerprintLine = ({ delivery, size, root }: View['input']['fingerprint']): string =>
  `${delivery} ${size} ${root}`;

export function coverOf(view: View, shows: Block[] = []): Cover {
  const { labels, words, volume } = view;
  const { fingerprint, signer, builtAt, tool } = view.input;
  return {
    kind: labels(volume === 'assessment' ? 'assessment.kind' : 'document.kind'),
    delivery: fingerprint.delivery,
    route: routeOf(view).join(' → '),
    says: words.line(`${volume}-says`),
    happened: happened(view),
    facts: [
      ...references(view),
      ...parties(view),
      ...stopFacts(view),
      ...equipment(view),
      ...ends(view),
      ...custody(view),
    ],
    ...(volume === 'assessment' ? { weighing: coverWeighing(view) } : { shows }),
    proof: [
      { label: labels('cover.fingerprint'), value: [{ is: 'code', text: fingerprint.root }] },
      {
        label: labels('cover.record'),
        value: plain(`${view.format.number(fingerprint.size)} ${labels('cover.entries')}`),
      },
      {
        label: labels('cover.signer'),
        value: words.line('cover-signed', {
          signer: commonNameIn(signer.name),
          at: { is: 'time', at: milliseconds(builtAt), zone: view.startZone },
          tool: tool.name,
          version: tool.version,
        }),
      },
      { label: labels('cover.how'), value: words.line('cover-verify', { steps: labels('section.verify') }) },
      { label: labels('cover.certificate'), value: [{ is: 'code', text: signer.certificateSha256 }] },
    ],
    code: {
      asset: CODE_ASSET,
      alt: wordsOf(words.line('alt-fingerprint', { fingerprint: fingerprintLine(fingerprint) })),
      caption: labels('cover.code'),
    },
    cautions: words.blocks('cautions', { assessment: volume === 'assessment' }),
    ...omitUndefined({ copy: view.input.copy && redactedCopyText(view, view.input.copy) }),
  };
}

function redactedCopyText(view: View, copy: NonNullable<View['input']['copy']>): Inline[] {
  return view.words.line('cover-copy', {
    title: copy.title,
    evidence: copy.evidenceLeftOut,
    entries: copy.entriesLeftOut,
    sections: copy.sectionsLeftOut.map((id) => view.labels(`section.${id}`)).join(', '),
    positions: copy.positions,
    findings: view.volume === 'assessment' ? copy.findingsLeftOut : 0,
    requirements: view.volume === 'assessment' ? copy.requirementsLeftOut : 0,
  });
}

/** The common name where the certificate's subject has only that; else the subject in full. */
export const commonNameIn = (subject: string): string => /^CN=([^,=+]+)$/.exec(subject)?.[1] ?? subject;

function routeOf(view: View): string[] {
  return view.input.state.delivery.stops.map((stop) => stop.place);
}

function happened(view: View): Inline[] {
  const { delivery } = view.input.state;
  const { assessment } = view.input;
  const goods = [...new Set(delivery.lines.map((line) => view.names.line(line.id)))];
  const places = (does: 'load' | 'unload') =>
    listed([...new Set(delivery.stops.filter((stop) => stop.does === does).map(({ place }) => place))], view);
  const custody = assessment.temperatures[0]?.custody;
  return view.words.line('cover', {
    goods: goodsIn(goods),
    from: places('load'),
    to: places('unload'),
    custody:
      custody === undefined
        ? undefined
        : { is: 'duration', seconds: (custody.to.at - custody.from.at) / 1000 },
    outcome: outcomeHeadline(view),
    ...claimed(view),
  });
}

/** The first goods by name; names with commas of their own are told apart. */
function goodsIn(goods: readonly string[]): string {
  const between = goods.some((name) => name.includes(',')) ? '; ' : ', ';
  return goods.length > 3 ? `${goods.slice(0, 3).join(between)} …` : goods.join(between);
}

/** `A`, `A and B`, `A, B and C`. */
function listed(names: readonly string[], { labels }: View): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} ${labels('cover.and')} ${last}`;
}

/** The carrier's numbers of the claims, and the amount where there is one claim. */
function claimed({ input, format }: View): {
  claimed: string | undefined;
  claimedAmount: string | undefined;
} {
  const claims = (input.assessment.claims ?? []).map(({ received }) => received);
  const amount = claims.length === 1 ? claims[0]?.amount : undefined;
  return {
    claimed: claims.map(({ ourNumber }) => ourNumber).join(', ') || undefined,
    claimedAmount: amount && format.money(minorUnits(amount), amount.currency),
  };
}

/** The numbers of the delivery that the trade files by. */
function references({ input, labels }: View): Fact[] {
  const claims = (input.assessment.claims ?? []).map(
    ({ received }) => `${labels('cover.claim')} ${received.ourNumber}`,
  );
  const numbers = [referenceText(labels, input.state.delivery.references), ...claims]
    .filter((one) => one !== '')
    .join('; ');
  return numbers === '' ? [] : [{ label: labels('cover.references'), value: plain(numbers) }];
}

/** Most stops on the first page; the others are in the table of stops. */
const MOST_STOPS = 5;

/** Party, numbers and appointment of each stop that has its own. */
function stopFacts(view: View): Fact[] {
  const { labels, names, input } = view;
  const told = input.state.delivery.stops.flatMap((stop): Fact[] => {
    const parts = stopParty(labels, stop);
    if (parts.length === 0) return [];
    const role = labels(stop.does === 'load' ? 'cover.shipper-at' : 'cover.consignee-at');
    const label = stop.party === undefined ? names.stop(stop.id) : `${role} ${names.stop(stop.id)}`;
    return [{ label, value: plain(parts.join('; ')) }];
  });
  return told.slice(0, MOST_STOPS);
}

/** Parties by name, those of one side in one line; their addresses are in the first section. */
function parties({ labels, input }: View): Fact[] {
  const known = input.state.delivery.parties;
  return PARTY_LINES.flatMap((roles): Fact[] => {
    const here = roles.flatMap((role) => {
      const party = known[role];
      return party === undefined ? [] : [{ role: labels(`role.${role}`), name: party.name }];
    });
    if (here.length === 0) return [];
    return [
      {
        label: here.map(({ role }, i) => (i === 0 ? role : role.toLowerCase())).join(' / '),
        value: plain(here.map(({ name }) => name).join(' / ')),
      },
    ];
  });
}
const PARTY_LINES: readonly (readonly PartyRole[])[] = [
  ['carrier', 'driver'],
  ['shipper', 'receiver'],
  ['broker', 'insurer'],
];

function equipment({ labels, input }: View): Fact[] {
  const { trailer, unit, tractor } = input.state.delivery.equipment;
  const machines = [
    `${labels('cover.trailer')} ${trailer.number}`,
    ...(unit?.number === undefined ? [] : [`${labels('cover.unit')} ${unit.number}`]),
    ...(tractor === undefined ? [] : [`${labels('cover.tractor')} ${tractor.number}`]),
  ];
  return [{ label: labels('cover.equipment'), value: plain(machines.join(', ')) }];
}

/** Custody, where a receipt or an outcome shows more than the doors do. */
function custody(view: View): Fact[] {
  const { labels, format, names, input } = view;
  const span = input.assessment.custody;
  if (span === undefined) return [];
  const bound = ({ at, basis, evidence }: WindowBound, zone: View['startZone']) => {
    const links = exhibitLinks(view, [evidence]);
    const exhibits = links.length === 0 ? [] : [text(', '), ...links];
    return [text(`${format.time(at, zone)} (${labels(`custody-bound.${basis}`)}`), ...exhibits, text(')')];
  };
  const held = span.heldAfterRefusal.map((line) => names.line(line)).join('; ');
  return [
    {
      label: labels('cover.custody'),
      value: [
        ...bound(span.from, view.startZone),
        ...(span.to !== undefined
          ? [text(' – '), ...bound(span.to, view.endZone)]
          : // What the record lacks is said in the assessment.
            view.volume === 'dossier'
            ? []
            : [
                text(
                  ` – ${held === '' ? labels('cover.custody-open') : `${labels('cover.custody-held')} ${held}`}`,
                ),
              ]),
      ],
    },
  ];
}

function ends(view: View): Fact[] {
  const custody = view.input.assessment.temperatures[0]?.custody;
  if (custody === undefined) return [];
  const at = (ms: number, zone: View['startZone']) => text(view.format.time(ms, zone));
  const refs = (id: (typeof custody)['from']['evidence']) => {
    const links = exhibitLinks(view, [id]);
    return links.length === 0 ? [] : [text(' ('), ...links, text(')')];
  };
  return [
    {
      label: view.labels('cover.carried'),
      value: [
        at(custody.from.at, view.startZone),
        ...refs(custody.from.evidence),
        text(' – '),
        at(custody.to.at, view.endZone),
        ...refs(custody.to.evidence),
      ],
    },
  ];
}
