import sharp from 'sharp';
import { numberExhibits } from '../../src/compose/exhibits.js';
import type { ComposeInput } from '../../src/compose/input.js';
import { MOST_LINES } from '../../src/compose/view/cover-lines.js';
import { delivery } from '../../src/core/model/delivery.js';
import type { Evidence, Sha256 } from '../../src/core/model/evidence.js';
import { omitUndefined } from '../../src/core/model/omit-undefined.js';
import type {
  Assessment,
  Finding,
  GapResult,
  PulpGroup,
  TimelineItem,
} from '../../src/core/model/results.js';
import type { RecordState } from '../../src/core/model/state.js';
import { celsius, toCelsius } from '../../src/core/model/temperature.js';
import { type Instant, knownMilliseconds, milliseconds, type Zone } from '../../src/core/model/time.js';
import { hashOf, idsOf, PHOTO_NAMES, sampleEvidence } from './sample-evidence.js';
import { DOORS_CLOSED, DOORS_OPENED, sampleLog, sampleTemperatures } from './sample-log.js';

export const BUILT_AT = '2026-07-17T16:20:00.000Z' as Instant;
const PHOENIX = 'America/Phoenix' as Zone;
const CHICAGO = 'America/Chicago' as Zone;
const f = (fahrenheit: number) => toCelsius(fahrenheit, '°F');

export const SAMPLE_FACTS = {
  delivery: '2026-0714-A',
  parties: {
    carrier: { name: 'Low Desert Cartage LLC', address: '18 Canal Rd, Yuma AZ' },
    shipper: { name: 'Three Wells Produce' },
    receiver: { name: 'Plainsview Grocers DC 4' },
    broker: { name: 'Corner Post Brokerage' },
  },
  equipment: {
    trailer: { number: 'T-118', length: '53 ft' },
    unit: { number: 'R-118' },
    tractor: { number: '77' },
  },
  stops: [
    {
      id: 'load-1',
      does: 'load',
      place: 'Three Wells, Yuma AZ',
      zone: 'America/Phoenix',
      at: [32.69, -114.62],
    },
    { id: 'drop-1', does: 'unload', place: 'Plainsview DC 4, Omaha NE', zone: 'America/Chicago' },
  ],
  lines: [
    {
      id: 'romaine',
      goods: 'lettuce-romaine',
      name: 'Romaine 24s',
      from: 'load-1',
      to: 'drop-1',
      pallets: 16,
      instruction: { setPoint: '36 °F', tolerance: '2 °F', run: 'continuous' },
    },
    {
      id: 'broccoli',
      goods: 'broccoli',
      from: 'load-1',
      to: 'drop-1',
      pallets: 6,
      iced: true,
      instruction: { setPoint: '34 °F', tolerance: '2 °F' },
    },
  ],
  show: { temperature: '°F', paper: 'Letter' },
};

const pictures = new Map<string, Promise<Buffer>>();

/** A small picture that says which it is, by its pattern; made once. */
export function picture(index: number, width = 640, height = 480): Promise<Buffer> {
  const key = `${index} ${width} ${height}`;
  const made = pictures.get(key) ?? drawn(index, width, height);
  pictures.set(key, made);
  return made;
}

function drawn(index: number, width: number, height: number): Promise<Buffer> {
  const stripes = Array.from(
    { length: 12 },
    (_, i) =>
      `<rect x="${i * (width / 12)}" width="${width / 24}" height="${height}" fill="#${(((index * 31 + i * 17) % 200) + 40).toString(16).padStart(2, '0').repeat(3)}"/>`,
  ).join('');
  const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><rect width="100%" height="100%" fill="#6f8fa0"/>${stripes}<circle cx="${80 + index * 50}" cy="160" r="90" fill="#d8e2c8"/></svg>`;
  return sharp(Buffer.from(drawing)).jpeg({ quality: 70 }).toBuffer();
}

export interface SampleOptions {
  facts?: object;
  /** Changes the evidence before anything is made of it. */
  change?: (evidence: Evidence[]) => Evidence[];
  findings?: Finding[];
  /** Bytes in place of the made pictures, by name. */
  pictures?: ReadonlyMap<string, Uint8Array>;
}

/** Everything `composeDossier` takes, for the invented delivery. */
export async function sampleInput(options: SampleOptions = {}): Promise<ComposeInput> {
  const originals = new Map<Sha256, Uint8Array>();
  const photos = new Map<string, { sha256: Sha256; bytes: number }>();
  for (const [i, name] of PHOTO_NAMES.entries()) {
    const bytes = options.pictures?.get(name) ?? (await picture(i, i === 2 ? 480 : 640, i === 2 ? 640 : 480));
    originals.set(hashOf(bytes), bytes);
    photos.set(name, { sha256: hashOf(bytes), bytes: bytes.length });
  }
  const all = (options.change ?? ((same) => same))(sampleEvidence(photos));
  const state = stateOf(all, options.facts ?? {});
  const assessment = assessmentOf(all, options.findings);
  const log = all.find((item) => item.kind === 'unit-log');
  const attached = new TextEncoder().encode('{"manifest":"load-dossier-manifest-1"}\n');
  return {
    state,
    assessment,
    logs: log === undefined ? [] : [sampleLog(log.evidence)],
    exhibits: numberExhibits(state).map((one) => ({
      ...one,
      ...omitUndefined({
        attachedAs: one.kind === 'photo' ? `original-${String(one.exhibit).padStart(3, '0')}.jpg` : undefined,
      }),
    })),
    attachments: [
      {
        name: 'manifest.json',
        bytes: attached,
        type: 'application/json',
        description: 'List of everything that the signature covers',
        relationship: 'data',
      },
      {
        name: 'ledger.jsonl',
        bytes: new TextEncoder().encode('{}\n'),
        type: 'application/x-ndjson',
        description: 'Every entry of the record',
        relationship: 'source',
      },
    ],
    readOriginal: (sha256) => {
      const bytes = originals.get(sha256);
      return bytes === undefined ? Promise.reject(new Error('no such original')) : Promise.resolve(bytes);
    },
    builtAt: BUILT_AT,
    fingerprint: { delivery: state.delivery.delivery, size: state.size, root: state.root },
    signer: { name: 'Low Desert Cartage LLC', certificateSha256: hashOf('certificate') },
    tool: { name: 'load-dossier', version: '0.1.0' },
  };
}

function stateOf(all: readonly Evidence[], facts: object): RecordState {
  return {
    delivery: delivery.parse({ ...SAMPLE_FACTS, ...facts }),
    deliveryHash: hashOf('facts'),
    evidence: all.map((item, i) => ({
      ...item,
      seq: i + 1,
      enteredAt: new Date(Date.parse('2026-07-14T13:30:00Z') + i * 60_000).toISOString() as Instant,
      enteredBy: 'M. Ortega',
      describedBy: [],
      correctedBy: [],
    })),
    clocks:
      all.length === 0
        ? []
        : [
            {
              seq: all.length + 1,
              clock: { is: 'camera', camera: 'Phone P-7' },
              at: '2026-07-14T11:05:12.000Z' as Instant,
              addSeconds: -2,
              uncertaintySeconds: 1,
              from: 'GPS time of IMG_0401.jpg',
            },
          ],
    published: [
      {
        seq: all.length + 2,
        at: '2026-07-16T20:00:00.000Z' as Instant,
        by: 'M. Ortega',
        type: 'fingerprint-published',
        body: { size: all.length + 1, root: hashOf('earlier'), to: 'Corner Post Brokerage', how: 'e-mail' },
      },
    ],
    notCounted: [],
    corrections: [],
    strikes: [],
    merges: [],
    timeStamps: [],
    dossiers: [],
    claims: [],
    size: all.length + 3,
    root: hashOf('root'),
  };
}

function assessmentOf(all: readonly Evidence[], findings: Finding[] | undefined): Assessment {
  const log = all.find((item) => item.kind === 'unit-log');
  const event = (name: string, stop: string) =>
    all.find((item) => item.kind === 'event' && item.event === name && item.place?.stop === stop);
  const [closed, opened] = [event('doors-closed', 'load-1'), event('doors-opened', 'drop-1')];
  return {
    at: BUILT_AT,
    ruleSet: { name: 'produce', version: '1', sha256: hashOf('rules'), title: 'Fresh produce by truck' },
    temperatures:
      log === undefined || closed === undefined || opened === undefined
        ? []
        : [sampleTemperatures(log.evidence, closed.evidence, opened.evidence)],
    pulps: pulpsOf(all),
    setPoints: {
      words:
        all.length === 0
          ? []
          : [
              { source: 'bill', celsius: f(36), lines: ['romaine'], run: 'continuous' },
              { source: 'bill', celsius: f(34), lines: ['broccoli'] },
              ...all.flatMap((item) =>
                item.kind === 'set-point'
                  ? [
                      {
                        source: 'display' as const,
                        celsius: celsius(item.temperature),
                        evidence: item.evidence,
                        at: knownMilliseconds(item.time) ?? 0,
                        run: 'continuous',
                      },
                    ]
                  : [],
              ),
            ],
      differences:
        all.length === 0
          ? []
          : [
              {
                between: [
                  { source: 'bill', celsius: f(34), lines: ['broccoli'] },
                  { source: 'display', celsius: f(36) },
                ],
                kelvin: 10 / 9,
                slip: 'one-digit',
              },
            ],
      verdict: all.length === 0 ? 'not-comparable' : 'differ',
    },
    timeline: {
      items: timelineOf(all),
      intervals:
        all.length === 0
          ? []
          : [
              {
                id: 'on-the-dock',
                stop: 'load-1',
                from: milliseconds('2026-07-14T10:52:00.000Z' as Instant),
                to: DOORS_CLOSED + 720_000,
                seconds: 9000,
                evidence: [],
              },
              {
                id: 'in-transit',
                from: DOORS_CLOSED + 720_000,
                to: DOORS_OPENED - 2_160_000,
                seconds: 163_560,
                evidence: [],
              },
              {
                id: 'arrival-to-refusal',
                stop: 'drop-1',
                from: DOORS_OPENED - 2_160_000,
                to: milliseconds('2026-07-16T13:15:00.000Z' as Instant),
                seconds: 8820,
                evidence: idsOf(all, (item) => item.kind === 'event' && item.event === 'refused'),
              },
            ],
      untimed: idsOf(all, (item) => item.time.is !== 'known'),
    },
    gaps: sampleGaps(all),
    outcomes: [],
    findings: findings ?? sampleFindings(all),
  };
}

const timelineOf = (all: readonly Evidence[]): TimelineItem[] =>
  all
    .flatMap((item): TimelineItem[] => {
      if (item.time.is !== 'known' || item.kind === 'unit-log' || item.kind === 'readings') return [];
      return [
        {
          at: milliseconds(item.time.instant),
          zone: item.time.zone,
          uncertaintySeconds: item.time.uncertaintySeconds,
          evidence: item.evidence,
          ...omitUndefined({ stop: item.place?.stop }),
          is: item.kind,
          ...omitUndefined({ event: item.kind === 'event' ? item.event : undefined }),
          label: item.kind,
        },
      ];
    })
    .sort((a, b) => a.at - b.at);

function pulpsOf(all: readonly Evidence[]): PulpGroup[] {
  const bands = { romaine: { low: f(34), high: f(38) }, broccoli: { low: f(32), high: f(36) } };
  return (['load-1', 'drop-1'] as const).flatMap((stop) =>
    (['romaine', 'broccoli'] as const).flatMap((line): PulpGroup[] => {
      const band = bands[line];
      const readings = all.flatMap((item): PulpGroup['readings'] => {
        if (item.kind !== 'pulp' || item.line !== line || item.place?.stop !== stop) return [];
        const value = celsius(item.temperature);
        return [
          {
            evidence: item.evidence,
            celsius: value,
            ...omitUndefined({ position: item.place.position }),
            from: item.from,
            ...omitUndefined({ instrument: item.instrument }),
            verdict: value > band.high ? 'above' : 'in-band',
            answer: value > band.high ? 'above' : 'within',
            uncertainty: { parts: [], standardKelvin: 0.17, guardKelvin: 0.28 },
            beyond: Math.max(0, value - band.high),
          },
        ];
      });
      const values = readings.map((one) => one.celsius);
      if (values.length === 0) return [];
      return [
        {
          line,
          stop,
          does: stop === 'load-1' ? 'load' : 'unload',
          band,
          readings,
          count: values.length,
          min: Math.min(...values),
          max: Math.max(...values),
          mean: values.reduce((a, b) => a + b, 0) / values.length,
          inBand: readings.filter((one) => one.verdict === 'in-band').length,
        },
      ];
    }),
  );
}

function sampleFindings(all: readonly Evidence[]): Finding[] {
  if (all.length === 0) return [];
  const t = (celsiusValue: number) => ({ is: 'temperature' as const, celsius: celsiusValue });
  const d = (seconds: number) => ({ is: 'duration' as const, seconds });
  const pulps = idsOf(all, (item) => item.kind === 'pulp' && item.line === 'romaine');
  const finding = (
    id: string,
    weighs: Finding['weighs'],
    weight: number,
    evidence: Finding['evidence'],
    facts: Finding['facts'],
  ): Finding => ({
    id,
    weighs,
    weight,
    element: 'care-in-transit',
    evidence,
    by: id,
    facts,
  });
  const made = [
    finding(
      'refused',
      'hurts',
      98,
      idsOf(all, (item) => item.kind === 'event' && item.event === 'refused'),
      {
        at: { is: 'time', at: Date.parse('2026-07-16T13:15:00Z'), zone: CHICAGO },
        stop: { is: 'stop', stop: 'drop-1' },
        reason: 'Romaine warm, pink ribs',
        sinceArrival: d(8820),
        notices: 0,
      },
    ),
    finding('arrival-supports-origin', 'helps', 95, pulps, {
      line: { is: 'line', line: 'romaine' },
      loadMin: t(f(39.4)),
      loadMax: t(f(41.2)),
      deliveryMin: t(f(41)),
      deliveryMax: t(f(41.8)),
      places: 'nose, middle',
      cold: false,
      instructedLow: t(f(34)),
      instructedHigh: t(f(39)),
      measuredLow: t(f(39.2)),
      measuredHigh: t(f(42.4)),
      airAlone: { is: 'share', of: 0.1 },
      otherPlaces: false,
      shortest: d(4 * 3600),
      longest: d(15.7 * 86_400),
      basis: 'common practice, no source',
      draws: 2000,
      matters: 'loading-pulps',
    }),
    finding(
      'set-point-differs',
      'hurts',
      93,
      idsOf(all, (item) => item.kind === 'set-point'),
      {
        first: 'bill',
        firstSetPoint: t(f(34)),
        second: 'display',
        secondSetPoint: t(f(36)),
        size: { is: 'difference', kelvin: 10 / 9 },
        slip: 'one-digit',
      },
    ),
    finding(
      'excursions-unexplained',
      'hurts',
      83,
      idsOf(all, (item) => item.kind === 'unit-log'),
      {
        count: 1,
        total: d(9000),
        longest: d(9000),
        highest: t(f(43.1)),
        degreeHours: { is: 'degree-hours', kelvinHours: 4.1 },
        firstAt: { is: 'time', at: DOORS_CLOSED + 73_080_000, zone: PHOENIX },
      },
    ),
    finding(
      'air-mostly-in-band',
      'open',
      80,
      idsOf(all, (item) => item.kind === 'unit-log'),
      {
        channel: 'return-air',
        share: { is: 'share', of: 0.875 },
        coverage: { is: 'share', of: 0.948 },
        custody: d(166_440),
        mean: t(f(37.1)),
        min: t(f(35.5)),
        max: t(f(45.2)),
        low: t(f(34)),
        high: t(f(38)),
        above: d(19_800),
        below: d(0),
        degreeHoursAbove: { is: 'degree-hours', kelvinHours: 7.4 },
        degreeHoursBelow: { is: 'degree-hours', kelvinHours: 0 },
      },
    ),
    finding(
      'warm-at-loading-told',
      'helps',
      78,
      idsOf(all, (item) => item.kind === 'contact'),
      {
        line: { is: 'line', line: 'romaine' },
        with: 'shipper',
        at: { is: 'time', at: Date.parse('2026-07-14T12:02:00Z'), zone: PHOENIX },
        about: 'Romaine pulps 39 to 41 °F',
      },
    ),
    finding(
      'seal-same',
      'helps',
      66,
      idsOf(all, (item) => item.kind === 'seal'),
      { number: '0044718' },
    ),
    finding('refused-not-inspected', 'open', 67, [], { requested: false }),
    finding(
      'rounds-far-apart',
      'hurts',
      58,
      idsOf(all, (item) => item.kind === 'round'),
      {
        count: 7,
        longest: d(21_600),
        limit: d(14_400),
      },
    ),
  ];
  if (made.length <= MOST_LINES)
    throw new Error('the sample must have more findings than the cover has lines');
  return made;
}

function sampleGaps(all: readonly Evidence[]): GapResult[] {
  const gap = (
    rule: string,
    stage: GapResult['stage'],
    title: string,
    outcome: GapResult['outcome'],
    more: Partial<GapResult> = {},
  ): GapResult => ({
    rule,
    stage,
    weight: 'supporting',
    title,
    outcome,
    counted: [],
    nearly: [],
    against: [],
    lacking: [],
    notes: [],
    wanted: [],
    closable: { is: 'now' },
    substitutes: [],
    proves: ['good-condition-at-receipt'],
    why: 'Without it nobody can say what the state was before the goods went on.',
    how: 'Photograph it with the pallet tag in view.',
    basis: 'common practice',
    ...more,
  });
  return [
    gap('drains-open', 'before-loading', 'Rear drains open', 'missing', {
      closable: { is: 'lost', since: 'doors-closed', at: '2026-07-14T13:10:00.000Z' as Instant },
      lacking: [{ is: 'none', facts: { thing: 'drains', need: 1 } }],
    }),
    gap('pulp-before-loading', 'loading', 'Pulp temperatures before the pallets went on', 'short', {
      weight: 'decisive',
      counted: idsOf(all, (item) => item.kind === 'pulp').slice(0, 4),
      lacking: [
        { is: 'too-few', facts: { thing: 'pulp', have: 1, need: 3 }, line: 'broccoli' },
        { is: 'none-at-position', facts: { positions: 'nose,tail' }, line: 'broccoli' },
      ],
      closable: { is: 'lost', since: 'doors-closed' },
      why: 'Warm product at loading is the shipper’s; warm product at delivery without a loading pulp is the carrier’s.',
    }),
    gap('set-point-agrees', 'loading', 'Set point as on the bill', 'contradicted', {
      against: idsOf(all, (item) => item.kind === 'set-point'),
    }),
    gap('seal-number', 'loading', 'Seal number', 'met'),
    gap('inspection', 'rejection', 'Inspection certificate', 'missing', {
      lacking: [{ is: 'none', facts: { thing: 'inspection-certificate', need: 1 } }],
      how: 'Ask for an inspection; any party with a financial interest may.',
    }),
    gap('claim', 'claim', 'The claim with its papers', 'not-yet-due'),
  ];
}
