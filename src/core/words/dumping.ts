import type { SupportingDocument } from '../model/results.js';
import type { Labels } from './labels.js';

/** From this percentage of a shipment on 7 CFR 46.22 asks for a certificate. */
const FROM = 5;

/**
 * What a dumping certificate lacks, and what share of each line was dumped: `The certificate does not show: shipper`.
 * @param formatPercent `12.5` as `12.5 %`
 */
export function dumpingWords(
  labels: Labels,
  { lacks, shares }: NonNullable<SupportingDocument['dumping']>,
  formatPercent: (value: number) => string,
  nameOf: (line: string) => string,
): string[] {
  return [
    ...(lacks.length === 0
      ? []
      : [`${labels('dumping.lacks')} ${lacks.map((one) => labels(`dumping.content-${one}`)).join(', ')}`]),
    ...shares.map(
      ({ line, percent }) => `${formatPercent(percent)} ${labels('dumping.share')} ${nameOf(line)}`,
    ),
    ...(shares.some(({ percent }) => percent >= FROM) ? [labels('dumping.from-five')] : []),
  ];
}
