import { describe, expect, it } from 'vitest';
import { bandsOf } from '../../../src/core/assess/bands.js';
import { readMilestones } from '../../../src/core/assess/milestones.js';
import { lifeUsed } from '../../../src/core/assess/temperature/life.js';
import { lineMargins } from '../../../src/core/assess/temperature/margins.js';
import { temperatureResult } from '../../../src/core/assess/temperature/result.js';
import { fromCelsius } from '../../../src/core/model/temperature.js';
import { q10, type Respiration, rateAt } from '../../../src/core/reference/respiration.js';
import { sourceOf } from '../../../src/core/reference/sources.js';
import { at, DAY_START, HOUR, items, log, rulesOf, state } from './made.js';

const hours = Array.from({ length: 41 }, (_, i) => i / 4);
const F = (celsius: number | undefined) => fromCelsius(celsius ?? Number.NaN, '°F');

function margin(goods: string, air: (hour: number) => number, supply = air, setPoint = '36 °F') {
  const made = state(
    items(
      { kind: 'event', event: 'doors-closed', place: { stop: 'load-1' }, time: at(0) },
      { kind: 'event', event: 'doors-opened', place: { stop: 'drop-1' }, time: at(10) },
    ),
    { lines: [{ id: 'a', goods, from: 'load-1', to: 'drop-1', instruction: { setPoint } }] },
  );
  const of = log(hours, { 'return-air': hours.map(air), 'supply-air': hours.map(supply) });
  return lineMargins(made.delivery.lines, [of], readMilestones(made, DAY_START + 100 * HOUR))[0];
}

describe('sums that another result has already', () => {
  it('give the same margins as sums of their own', () => {
    const hours = Array.from({ length: 161 }, (_, i) => i / 4);
    const of = log(hours, {
      'return-air': hours.map((h) => 36 + 5 * Math.sin(h)),
      'supply-air': hours.map((h) => 33 + 3 * Math.sin(h)),
    });
    const made = state(
      items(
        { kind: 'event', event: 'doors-closed', place: { stop: 'load-1' }, time: at(2) },
        { kind: 'event', event: 'doors-opened', place: { stop: 'drop-1' }, time: at(38) },
      ),
    );
    const milestones = readMilestones(made, DAY_START + 100 * HOUR);
    const { lines } = made.delivery;
    const result = temperatureResult(
      of,
      milestones,
      bandsOf(lines, rulesOf({ needs: { event: 'arrived' } })),
      {
        lines,
      },
    );
    if (result === undefined) throw new Error('no result');
    const own = lineMargins(lines, [of], milestones);
    expect(own[0]?.freezing?.channels.length).toBe(2);
    expect(lineMargins(lines, [of], milestones, [result])).toEqual(own);
  });
});

describe('margin to the highest freezing point', () => {
  it('is of the lowest supply air too, with its time', () => {
    const of = margin(
      'romaine',
      () => 36,
      (h) => (h === 5 ? 30.7 : 34),
    );
    const supply = of?.freezing?.channels.find((one) => one.channel === 'supply-air');
    expect(F(of?.freezing?.celsius)).toBeCloseTo(31.7, 9);
    expect(((supply?.margin ?? 0) * 9) / 5).toBeCloseTo(-1, 9);
    expect(supply?.lowest.at).toBe(DAY_START + 5 * HOUR);
    // From 34 to 30.7 in 15 min: below 31.7 °F for 1/3.3 of it on either side.
    expect(supply?.belowSeconds).toBeCloseTo((2 * 900) / 3.3, 3);
  });

  it('is against the highest where sources disagree, and each is named', () => {
    const of = margin('garlic', () => 29.5);
    // WFLO manual (2018) 30.5 °F (-0.8 °C), ASHRAE -0.8 °C, Cantwell (2001) -2.0 °C (28.4 °F): the highest is -0.8 °C.
    expect(of?.freezing?.celsius).toBeCloseTo(-0.8, 9);
    expect(F(of?.freezing?.lowest)).toBeCloseTo(28.4, 9);
    expect(of?.freezing?.points.map(({ source }) => source)).toEqual([
      'WFLO manual',
      'ASHRAE',
      'Cantwell (2001)',
    ]);
    // 29.5 °F is below two of them and above the third.
    expect(of?.freezing?.channels[0]).toMatchObject({ belowSeconds: 36_000, belowAllSeconds: 0 });
  });

  it('is absent where none is published, and so is a line of unknown goods', () => {
    const basil = margin('basil', () => 50);
    expect(basil?.range).toBeDefined();
    expect(basil?.freezing).toBeUndefined();
    expect(margin('dragon fruit', () => 50)).toBeUndefined();
  });
});

describe('chilling and range', () => {
  it('counts hours below the lowest and the highest of the published floors', () => {
    // Bananas: 11.5 to 13 °C (53 to 56 °F), Produce Degradation, table 20.5; 11.5 °C is 52.7 °F.
    const of = margin('bananas', (h) => (h <= 2 ? 52 : h <= 6 ? 55 : 58));
    expect(of?.chilling).toMatchObject({ is: 'floor', limits: [{ secondary: false }] });
    expect((of?.chilling?.belowHighSeconds ?? 0) / 3600).toBeCloseTo(6 + 1 / 12, 3);
    expect((of?.chilling?.belowLowSeconds ?? 0) / 3600).toBeCloseTo(2 + (0.25 * 0.7) / 3, 3);
    // UC Davis recommends up to 58 °F.
    expect(of?.range?.bySource[0]).toMatchObject({ source: 'UC Davis', aboveSeconds: 0 });
  });

  it.each([
    // Snap beans: chilled below 45 °F by Produce Degradation, carried at 40 to 45 °F by the New England guide, and at 37 to
    // 45 °F by NC State.
    { goods: 'snap beans', air: 42, below: 36_000, againstAll: 0 },
    { goods: 'snap beans', air: 36, below: 36_000, againstAll: 36_000 },
    // Lemons: chilled below 52 to 55 °F by Produce Degradation; 7 to 12 °C by Handbook 66 (2002 draft).
    { goods: 'lemons', air: 46, below: 36_000, againstAll: 0 },
    // Basil: kept above 50 °F by UC Davis, at 46 to 50 °F by the New England guide.
    { goods: 'basil', air: 48, below: 36_000, againstAll: 0 },
    { goods: 'basil', air: 44, below: 36_000, againstAll: 36_000 },
  ])('air of $air °F over $goods is against every source for $againstAll s', (one) => {
    expect(margin(one.goods, () => one.air)?.chilling).toMatchObject({
      belowHighSeconds: one.below,
      againstAllSeconds: one.againstAll,
    });
  });

  it('of peaches, a band: colder than it is safe', () => {
    // Breakdown is most severe between 36 and 41 °F (California Agriculture, 1974).
    expect(margin('peaches', () => 33)?.chilling).toMatchObject({ is: 'band', insideSeconds: 0 });
    expect(margin('peaches', () => 40)?.chilling).toMatchObject({
      insideSeconds: 36_000,
      againstAllSeconds: 36_000,
    });
  });

  it('says when no source was read but one that retells it', () => {
    expect(margin('plums', () => 33)?.freezing?.points).toMatchObject([{ secondary: true }]);
    expect(margin('romaine', () => 33)?.freezing?.points).toMatchObject([{ secondary: false }]);
  });

  it('hours above what each source recommends are of the judged air', () => {
    expect(
      margin('strawberries', () => 34)?.range?.bySource.map(({ source, aboveSeconds }) => [
        source,
        aboveSeconds,
      ]),
    ).toEqual([
      ['UC Davis', 36_000],
      ['Produce Degradation (2005)', 36_000],
    ]);
    expect(margin('strawberries', () => 33)?.range?.bySource.map(({ aboveSeconds }) => aboveSeconds)).toEqual(
      [0, 36_000],
    );
  });
});

describe('life by respiration', () => {
  // Table 20.4 of Saltveit in USDA Agriculture Handbook 66: Q10 of 3.0, 2.5, 2.0, 1.5 give rates of 1, 3, 7.5, 15, 22.5.
  const saltveit: Respiration = {
    key: 'x',
    source: sourceOf('produce-degradation'),
    unit: 'mg',
    points: [1, 3, 7.5, 15, 22.5].map((rate, i) => ({ celsius: i * 10, low: rate, high: rate })),
  };

  it('the published relative rates and lives follow from the Q10 values (Handbook 66, table 20.4)', () => {
    const rates = [0, 10, 20, 30, 40].map((t) => rateAt(saltveit, t, 'middle'));
    expect(rates).toEqual([1, 3, 7.5, 15, 22.5]);
    expect(rates.map((rate) => Math.round(100 / rate))).toEqual([100, 33, 13, 7, 4]);
    expect(q10({ celsius: 0, rate: 21 }, { celsius: 10, rate: 81 })).toBeCloseTo(3.857, 3);
    expect(rateAt(saltveit, 5, 'middle')).toBeCloseTo(Math.sqrt(3), 9);
  });

  it('ten hours at 10 °C cost thirty at 0 °C', () => {
    const of = log([0, 10], { probe: [10, 10] }, {}, '°C');
    const window = { from: DAY_START, to: DAY_START + 10 * HOUR };
    const used = lifeUsed(of.times, of.channels.probe ?? new Float64Array(), window, 1e6, saltveit, 0);
    expect(used.equivalentSeconds / 3600).toBeCloseTo(30, 9);
  });

  it('a ramp from 0 to 20 °C costs what the integral says, and the same backwards', () => {
    // ∫ 3^(t/10) from 0 to 10 is 2·10/ln 3; then 3 ∫ 2.5^(t/10) is 4.5·10/ln 2.5.
    const expected = 20 / Math.log(3) + 45 / Math.log(2.5);
    for (const values of [
      [0, 20],
      [20, 0],
    ]) {
      const of = log([0, 20], { probe: values }, {}, '°C');
      const window = { from: DAY_START, to: DAY_START + 20 * HOUR };
      const used = lifeUsed(of.times, of.channels.probe ?? new Float64Array(), window, 1e6, saltveit, 0);
      expect(used.equivalentSeconds / 3600).toBeCloseTo(expected, 6);
      expect(used.extrapolatedSeconds).toBe(0);
    }
  });

  it('is given only where a rate is published and no chilling threshold stands in the way', () => {
    expect(margin('broccoli', () => 36)?.life).toMatchObject({ secondary: false, knownSeconds: 36_000 });
    expect(margin('chives', () => 36)?.life).toBeUndefined();
    expect(margin('cucumbers', () => 50)?.life).toBeUndefined();
  });

  it('in steady air at the set point is the time itself', () => {
    const life = margin('broccoli', () => 36)?.life;
    expect(life?.equivalentSeconds).toBeCloseTo(36_000, 3);
  });
});
