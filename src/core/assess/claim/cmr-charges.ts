import type { AmountWorksheet } from '../../model/results.js';
import type { ClaimEntry } from '../../model/state.js';
import type { Figure, Sum } from './figures.js';
import { sortedSeqs } from './figures.js';
import { lostQuantity } from './quantities.js';

/** Units of account for each kilogram of gross weight short, in hundredths: CMR, article 23(3), Protocol of 1978. */
const PER_KILOGRAM = 833;

/**
 * Carriage charges in proportion to the loss: in full where all value is lost, else as the loss is to the value at
 * acceptance (CMR, article 23(4)). Each end of the range by its own proportion, a half rounded up.
 */
export function inProportion(charges: Figure, loss: Figure, base: Figure): Figure {
  return {
    low: share(charges.low, loss.low, base.low),
    high: share(charges.high, loss.high, base.high),
    seqs: sortedSeqs([...charges.seqs, ...loss.seqs]),
  };
}

function share(charges: Sum, loss: Sum, base: Sum): Sum {
  if (base.value <= 0) return { value: 0, off: 0 };
  const part = BigInt(Math.min(Math.max(loss.value, 0), base.value));
  const of = BigInt(base.value);
  const exact = BigInt(charges.value) * part * 1000n;
  const value = (2n * BigInt(charges.value) * part + of) / (2n * of);
  return { value: Number(value), off: Number(value * 1000n - exact / of) };
}

/** The limit by the gross weight of the goods affected, in SDR; undefined where no weight in kilograms is stated. */
export function weightLimitOf(entries: readonly ClaimEntry[]): AmountWorksheet['weightLimit'] {
  const affected = lostQuantity(entries, { unit: 'kg', short: true });
  if (affected === undefined) return undefined;
  const { low, high, seqs } = affected;
  const hundredths = (thousandths: number) => Math.round((thousandths * PER_KILOGRAM) / 1000);
  return {
    sdr: { low: hundredths(low), high: hundredths(high) },
    kilograms: { low: String(low / 1000), high: String(high / 1000) },
    seqs,
  };
}
