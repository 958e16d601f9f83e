import type {
  CounterfactualVerdict,
  Finding,
  PlaceCounterfactual,
  ProductResult,
  PulpPlace,
} from '../../model/results.js';
import { duration, type FindingContext, finding, lineRef, share, temperature } from './make.js';

const FINDING = {
  origin: 'arrival-supports-origin',
  transit: 'arrival-supports-transit',
  both: 'arrival-does-not-discriminate',
  neither: 'arrival-fits-neither',
} as const satisfies Record<CounterfactualVerdict, string>;
const BY = 'what would have arrived in this air, loaded as instructed and as measured';

/**
 * For each line and log, what the places that arrived out of range are consistent with. Only a verdict that
 * discriminates weighs, and only where no place of the line, in any log, speaks against it.
 */
export function counterfactualFindings({ product = [] }: FindingContext): Finding[] {
  return product.flatMap((result) => {
    const ofLine = product.filter(({ line }) => line === result.line).flatMap(({ places }) => places);
    const has = (...verdicts: CounterfactualVerdict[]) =>
      ofLine.some(({ verdict }) => verdicts.includes(verdict));
    const isMixed: Record<CounterfactualVerdict, boolean> = {
      origin: has('transit', 'neither'),
      transit: has('origin'),
      both: false,
      neither: false,
    };
    return (['origin', 'transit', 'both', 'neither'] as const).flatMap((verdict) => {
      const places = result.places.filter((one) => one.verdict === verdict);
      return (['warm', 'cold'] as const).flatMap((side) => {
        const [first, ...rest] = places.filter((one) => one.side === side);
        return first === undefined ? [] : [found(verdict, result, [first, ...rest], isMixed[verdict])];
      });
    });
  });
}

function found(
  verdict: CounterfactualVerdict,
  { line, log, draws, matters, assumptions }: ProductResult,
  places: readonly [PlaceCounterfactual, ...PlaceCounterfactual[]],
  isMixed: boolean,
): Finding {
  const least = (of: (one: PlaceCounterfactual) => number) => temperature(Math.min(...places.map(of)));
  const most = (of: (one: PlaceCounterfactual) => number) => temperature(Math.max(...places.map(of)));
  return finding(
    FINDING[verdict],
    BY,
    [...places.flatMap(({ evidence }) => evidence), log],
    {
      line: lineRef(line),
      places: places.map(({ place }) => placeWord(place)).join(', '),
      cold: places[0].side === 'cold',
      loadMin: least(({ loading }) => loading.min),
      loadMax: most(({ loading }) => loading.max),
      deliveryMin: least(({ arrival }) => arrival.mean),
      deliveryMax: most(({ arrival }) => arrival.mean),
      instructedLow: least(({ asInstructed }) => asInstructed.low),
      instructedHigh: most(({ asInstructed }) => asInstructed.high),
      measuredLow: least(({ asMeasured }) => asMeasured.low),
      measuredHigh: most(({ asMeasured }) => asMeasured.high),
      airAlone: share(Math.max(...places.map(({ asInstructed }) => asInstructed.beyondRange))),
      otherPlaces: places.some(({ loadingFrom }) => loadingFrom === 'whole-line'),
      shortest: duration(assumptions.halfCoolingSeconds.low),
      longest: duration(assumptions.halfCoolingSeconds.high),
      basis: assumptions.halfCoolingSeconds.from,
      draws,
      matters: matters?.is ?? 'loading-pulps',
    },
    isMixed ? 'open' : undefined,
  );
}

/** A place as one word of a list: the mark of the pallet, else the part of the load. */
const placeWord = ({ pallet, position }: PulpPlace): string => pallet ?? position ?? 'place-not-stated';
