import { type TradeQuantity, thousandths } from '../../model/quantity.js';
import type { DumpingContent, SupportingDocument } from '../../model/results.js';
import type { ItemOf, RecordState } from '../../model/state.js';
import { shippedOf } from '../line-tally.js';

type Certificate = ItemOf<'inspection'>;

/** Certificates that say how much was dumped, or that goods have no commercial value. */
export const dumpingCertificates = ({ evidence }: Pick<RecordState, 'evidence'>): Certificate[] =>
  evidence.filter(
    (item): item is Certificate =>
      item.kind === 'inspection' && (item.dumped !== undefined || item.noCommercialValue === true),
  );

/** What 7 CFR 46.23 asks a certificate of dumping to show, and where it stands. */
const SHOWS: readonly [DumpingContent, (certificate: Certificate) => boolean][] = [
  ['commodity', ({ line }) => line !== undefined],
  ['lot', ({ lot }) => lot !== ''],
  ['marks', ({ marks }) => marks !== undefined],
  ['quantity', ({ dumped }) => dumped !== undefined],
  ['shipper', ({ shipper }) => shipper !== undefined],
  ['applicant', ({ requestedBy }) => requestedBy !== undefined],
  ['condition', ({ defects, caption }) => defects.length > 0 || caption !== undefined],
  ['time', ({ time }) => time.is === 'known'],
  ['place', ({ place, where }) => where !== undefined || place?.stop !== undefined],
  ['no-commercial-value', ({ noCommercialValue }) => noCommercialValue === true],
];

/**
 * What certificates of dumping lack of what 7 CFR 46.23 asks for, where none has all of it, and what share of each line was
 * dumped: from five percent of a shipment on, 46.22 asks for a certificate.
 */
export function dumpingOf(state: Pick<RecordState, 'evidence' | 'delivery'>): SupportingDocument['dumping'] {
  const certificates = dumpingCertificates(state);
  if (certificates.length === 0) return undefined;
  const lacks = certificates.map((one) => SHOWS.flatMap(([content, has]) => (has(one) ? [] : [content])));
  const fewest = lacks.reduce((least, one) => (one.length < least.length ? one : least));
  const shares = state.delivery.lines.flatMap((line) => {
    const shipped = shippedOf(line);
    const dumped = certificates.filter((one) => one.line === line.id).flatMap((one) => one.dumped ?? []);
    const units = [...new Set(dumped.map(({ unit }) => unit))];
    return units.flatMap((unit) => {
      const whole = shipped.get(unit);
      const part = sumIn(dumped, unit);
      return whole === undefined
        ? []
        : [{ line: line.id, percent: Math.round((part / whole) * 10_000) / 100 }];
    });
  });
  return { lacks: fewest, shares };
}

const sumIn = (quantities: readonly TradeQuantity[], unit: TradeQuantity['unit']): number =>
  quantities.filter((one) => one.unit === unit).reduce((sum, { amount }) => sum + thousandths(amount), 0);
