/** Distances in metres from the front wall of the trailer inside, or along the tractor. */
export interface AxleGeometry {
  kingpin: number;
  group: number;
  /** Of the tractor, where it is stated. */
  tractor?: { wheelbase: number; fifthWheel: number };
}

/** What a load puts on each axle group; of the tractor only its kingpin load where its axles are not stated. */
export interface AxleShares {
  kingpin: number;
  trailer: number;
  steer?: number;
  drive?: number;
}

/**
 * What a weight at a distance behind the front wall puts on the kingpin and the trailer's axles, and on the tractor's: two
 * beams on two supports each, the second loaded at the fifth wheel (moments about one support give the other). An axle
 * group counts as one support in its middle, as it does where its axles share their load. Held against three published
 * worked examples in tests/core/assess/loading/axles.test.ts.
 */
export function axleShares(
  weight: number,
  centre: number,
  { kingpin, group, tractor }: AxleGeometry,
): AxleShares {
  const trailer = (weight * (centre - kingpin)) / (group - kingpin);
  const onKingpin = weight - trailer;
  if (tractor === undefined) return { kingpin: onKingpin, trailer };
  const steer = (onKingpin * tractor.fifthWheel) / tractor.wheelbase;
  return { kingpin: onKingpin, trailer, steer, drive: onKingpin - steer };
}
