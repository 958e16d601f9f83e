import { createHash } from 'node:crypto';
import type { z } from 'zod';
import { type Evidence, type EvidenceId, evidence, type Sha256 } from '../../src/core/model/evidence.js';

export const hashOf = (bytes: string | Uint8Array) =>
  createHash('sha256').update(bytes).digest('hex') as Sha256;

const PHOENIX = 'America/Phoenix';
const CHICAGO = 'America/Chicago';
type Given = z.input<typeof evidence>;

const known = (
  instant: string,
  zone: string,
  basis: 'gps' | 'typed' | 'log-zone' | 'place-zone' = 'typed',
) => ({
  is: 'known' as const,
  instant,
  zone,
  basis,
  uncertaintySeconds: basis === 'gps' ? 1 : 60,
});
const typed = { is: 'typed' as const };

/** The pictures of the sample delivery, by file name; the test makes their bytes. */
export const PHOTO_NAMES = [
  'IMG_0401.jpg',
  'IMG_0402.jpg',
  'IMG_0403.jpg',
  'IMG_0404.jpg',
  'IMG_0405.jpg',
  'IMG_0406.jpg',
  'IMG_0430.jpg',
  'IMG_0431.jpg',
] as const;

/** Evidence of an invented delivery from Yuma to Omaha. */
export function sampleEvidence(photos: ReadonlyMap<string, { sha256: Sha256; bytes: number }>): Evidence[] {
  let count = 0;
  const id = () => {
    count += 1;
    return `e${count}`;
  };
  const photo = (name: string, time: Given['time'], subject: string, caption: string, more: object = {}) => {
    const file = photos.get(name) ?? { sha256: hashOf(name), bytes: 1 };
    return {
      evidence: id(),
      kind: 'photo',
      file: { name, type: 'image/jpeg', ...file },
      time,
      place: { stop: 'load-1', gps: { latitude: 32.69213, longitude: -114.62441 } },
      subject: { is: subject, sure: 'confirmed' },
      camera: { make: 'Phone', model: 'P-7' },
      by: 'M. Ortega',
      caption,
      ...more,
    };
  };
  const event = (name: string, instant: string, stop: string, more: object = {}) => ({
    evidence: id(),
    kind: 'event',
    source: typed,
    event: name,
    time: known(instant, stop === 'load-1' ? PHOENIX : CHICAGO),
    place: { stop },
    by: 'M. Ortega',
    ...more,
  });
  const pulp = (
    stop: string,
    line: string,
    position: string,
    value: number,
    instant: string,
    from = 'driver',
  ) => ({
    evidence: id(),
    kind: 'pulp',
    source: typed,
    temperature: { value, unit: '°F' },
    line,
    from,
    instrument: 'probe 2',
    time: known(instant, stop === 'load-1' ? PHOENIX : CHICAGO),
    place: { stop, position },
    by: from === 'driver' ? 'M. Ortega' : 'Receiver’s dock',
  });
  const all = [
    event('arrived', '2026-07-14T10:52:00.000Z', 'load-1'),
    photo(
      'IMG_0401.jpg',
      known('2026-07-14T11:05:12.000Z', PHOENIX, 'gps'),
      'trailer-inside',
      'Floor and walls before loading, swept and dry',
    ),
    photo(
      'IMG_0402.jpg',
      known('2026-07-14T11:07:40.000Z', PHOENIX, 'gps'),
      'air-chute',
      'Air chute whole, back to the last third',
    ),
    event('doors-opened', '2026-07-14T11:20:00.000Z', 'load-1'),
    pulp('load-1', 'romaine', 'nose', 39.4, '2026-07-14T11:31:00.000Z'),
    pulp('load-1', 'romaine', 'middle', 41.2, '2026-07-14T11:48:00.000Z'),
    pulp('load-1', 'romaine', 'tail', 40.1, '2026-07-14T12:20:00.000Z'),
    photo(
      'IMG_0403.jpg',
      known('2026-07-14T11:48:30.000Z', PHOENIX, 'gps'),
      'pulp-display',
      'Romaine, middle, 41.2 °F',
      { line: 'romaine' },
    ),
    {
      evidence: id(),
      kind: 'contact',
      source: typed,
      with: 'shipper',
      how: 'call',
      about: 'Romaine pulps 39 to 41 °F, bill asks for 36; dock lead says load it',
      time: known('2026-07-14T12:02:00.000Z', PHOENIX),
      by: 'M. Ortega',
      place: { stop: 'load-1' },
    },
    pulp('load-1', 'broccoli', 'middle', 34.8, '2026-07-14T12:31:00.000Z'),
    event('loading-began', '2026-07-14T11:35:00.000Z', 'load-1'),
    photo(
      'IMG_0404.jpg',
      known('2026-07-14T12:55:10.000Z', PHOENIX, 'gps'),
      'load-pattern',
      'From the doors: straight, last row turned',
    ),
    {
      evidence: id(),
      kind: 'bracing',
      source: typed,
      device: 'load-bars',
      note: 'Two bars behind row 13',
      time: known('2026-07-14T13:01:00.000Z', PHOENIX),
      by: 'M. Ortega',
      place: { stop: 'load-1' },
    },
    photo(
      'IMG_0405.jpg',
      known('2026-07-14T13:06:00.000Z', PHOENIX, 'gps'),
      'unit-display',
      'Set point 36 °F, continuous',
    ),
    {
      evidence: id(),
      kind: 'set-point',
      source: typed,
      shownBy: 'display',
      temperature: { value: 36, unit: '°F' },
      run: 'continuous',
      time: known('2026-07-14T13:06:00.000Z', PHOENIX),
      by: 'M. Ortega',
      place: { stop: 'load-1' },
    },
    {
      evidence: id(),
      kind: 'seal',
      source: typed,
      number: '0044718',
      state: 'applied',
      time: known('2026-07-14T13:11:00.000Z', PHOENIX),
      by: 'M. Ortega',
      place: { stop: 'load-1' },
    },
    event('doors-closed', '2026-07-14T13:10:00.000Z', 'load-1'),
    photo(
      'IMG_0406.jpg',
      { is: 'local', local: '2026-07-14T06:12:00', why: 'the file has no time zone and no GPS' },
      'seal',
      'Seal 0044718',
      {
        flags: [{ is: 'time-zone-unknown', detail: '' }],
        place: { stop: 'load-1' },
      },
    ),
    event('departed', '2026-07-14T13:22:00.000Z', 'load-1'),
    ...[5, 10, 16, 21, 27, 33, 39].map((hours, i) => ({
      evidence: id(),
      kind: 'round',
      source: typed,
      boxAir: { value: [36, 37, 36, 42, 36, 37, 36][i] ?? 36, unit: '°F' },
      setPoint: { value: 36, unit: '°F' },
      fuel: 0.9 - i * 0.07,
      alarms: i === 3 ? ['E2 supply sensor'] : [],
      time: known(
        new Date(Date.parse('2026-07-14T13:22:00Z') + hours * 3_600_000).toISOString(),
        i < 2 ? PHOENIX : CHICAGO,
      ),
      by: 'M. Ortega',
    })),
    event('arrived', '2026-07-16T10:48:00.000Z', 'drop-1'),
    event('doors-opened', '2026-07-16T11:24:00.000Z', 'drop-1'),
    {
      evidence: id(),
      kind: 'seal',
      source: typed,
      number: '0044718',
      state: 'intact',
      time: known('2026-07-16T11:22:00.000Z', CHICAGO),
      by: 'M. Ortega',
      place: { stop: 'drop-1' },
    },
    photo(
      'IMG_0430.jpg',
      known('2026-07-16T11:25:00.000Z', CHICAGO, 'gps'),
      'load-at-opening',
      'As the doors opened',
      { place: { stop: 'drop-1' } },
    ),
    pulp('drop-1', 'romaine', 'tail', 41.0, '2026-07-16T11:40:00.000Z', 'receiver'),
    pulp('drop-1', 'romaine', 'middle', 41.8, '2026-07-16T11:55:00.000Z', 'receiver'),
    pulp('drop-1', 'broccoli', 'middle', 35.2, '2026-07-16T12:05:00.000Z', 'receiver'),
    photo(
      'IMG_0431.jpg',
      known('2026-07-16T12:02:00.000Z', CHICAGO, 'gps'),
      'damage',
      'Romaine, receiver’s cut sample',
      { place: { stop: 'drop-1' }, line: 'romaine' },
    ),
    event('refused', '2026-07-16T13:15:00.000Z', 'drop-1', { note: 'Romaine warm, pink ribs' }),
    {
      evidence: id(),
      kind: 'statement',
      source: typed,
      text: 'I was on the dock from 4:20 until the doors were closed.\nThe dock lead saw the 41 and said the field heat would come out on the way.',
      time: known('2026-07-16T15:00:00.000Z', CHICAGO),
      by: 'M. Ortega',
    },
    {
      evidence: id(),
      kind: 'document',
      file: {
        name: 'bill-of-lading-55120.pdf',
        bytes: 84_213,
        sha256: hashOf('bill'),
        type: 'application/octet-stream',
      },
      pages: 2,
      subject: { is: 'bill-of-lading', sure: 'confirmed' },
      time: { is: 'none', why: 'the paper states a date without a time' },
      place: { stop: 'load-1' },
    },
    {
      evidence: id(),
      kind: 'unit-log',
      file: { name: 'unit download 0716.csv', bytes: 21_480, sha256: hashOf('log'), type: 'text/csv' },
      mapping: {
        encoding: 'utf-8',
        delimiter: ',',
        decimal: '.',
        headerRow: 1,
        time: { columns: [0], order: 'iso', zone: PHOENIX },
        channels: [{ channel: 'return-air', column: 1, unit: '°F', heading: 'Return' }],
        states: [],
      },
      rows: 272,
      rowsLeftOut: 3,
      from: '2026-07-14T12:10:00.000Z',
      to: '2026-07-16T11:44:00.000Z',
      time: known('2026-07-16T12:30:00.000Z', CHICAGO, 'log-zone'),
    },
  ];
  return all.map((item) => evidence.parse(item));
}

export const idsOf = (all: readonly Evidence[], match: (item: Evidence) => boolean): EvidenceId[] =>
  all.filter(match).map((item) => item.evidence);
