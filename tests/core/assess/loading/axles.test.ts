import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axleShares } from '../../../../src/core/assess/loading/axles.js';
import { cases } from '../../../properties.js';

describe('statics of a semi-trailer against published worked examples', () => {
  it('a tractor of 4.00 m with its fifth wheel 1.00 m ahead of the drive axle: 10,000 kg is 2,500 and 7,500 kg', () => {
    // "カプラオフセット" at tokusha-sien.com/?page_id=422 (read 1 December 2026): own weight 4,500 and 2,500 kg, so 7,000
    // and 10,000 kg in all.
    const shares = axleShares(10_000, 0, { kingpin: 0, group: 10, tractor: { wheelbase: 4, fifthWheel: 1 } });
    expect([shares.steer, shares.drive]).toEqual([2_500, 7_500]);
    expect([4_500 + (shares.steer ?? 0), 2_500 + (shares.drive ?? 0)]).toEqual([7_000, 10_000]);
  });

  it('a trailer whose load lies three fifths of the way to its axle: 10 t is 4 t on the kingpin and 6 t on the axle', () => {
    // "トレーラの軸重" at tokusha-sien.com/?page_id=490 (read 1 December 2026): kingpin 2/5 × 10 t = 4 t; with 2.5 t of the
    // trailer itself the fifth wheel carries 6.5 t.
    const shares = axleShares(10, 3, { kingpin: 0, group: 5 });
    expect([shares.kingpin, shares.trailer]).toEqual([4, 6]);
    expect(shares.kingpin + 2.5).toBe(6.5);
  });

  it('a truck of 8,000 lb and a tanker of 20,000 lb: wheels carry 8,000, 14,857.15 and 5,142.85 lb', () => {
    // A problem of a statics textbook, solved at zuoti.pro/solutions/er818vqql (read 1 December 2026): the tanker's weight
    // 10 ft behind the turntable, its wheels 25 ft; the turntable above the rear wheels of the truck, whose own weight is
    // 9 of 14 ft ahead of them.
    const tanker = axleShares(20_000, 10, {
      kingpin: 0,
      group: 25,
      tractor: { wheelbase: 14, fifthWheel: 0 },
    });
    const truck = axleShares(8_000, 0, { kingpin: 0, group: 1, tractor: { wheelbase: 14, fifthWheel: 9 } });
    expect(tanker.trailer).toBe(8_000);
    expect((tanker.drive ?? 0) + (truck.drive ?? 0)).toBeCloseTo(14_857.15, 1);
    expect((tanker.steer ?? 0) + (truck.steer ?? 0)).toBeCloseTo(5_142.85, 1);
  });
});

describe('laws of it', () => {
  const metres = fc.double({ min: 0.1, max: 20, noNaN: true });
  const weights = fc.double({ min: 1, max: 40_000, noNaN: true });

  it('the groups together carry the load, wherever it lies', () => {
    fc.assert(
      fc.property(weights, metres, metres, metres, (weight, centre, kingpin, more) => {
        const {
          steer = 0,
          drive = 0,
          trailer,
        } = axleShares(weight, centre, {
          kingpin,
          group: kingpin + more,
          tractor: { wheelbase: 5, fifthWheel: 0.5 },
        });
        expect(steer + drive + trailer).toBeCloseTo(weight, 4);
      }),
      { numRuns: cases(200) },
    );
  });

  it('a load behind the axles of the trailer lifts the kingpin', () => {
    expect(axleShares(1_000, 12, { kingpin: 1, group: 11 }).kingpin).toBeLessThan(0);
  });
});
