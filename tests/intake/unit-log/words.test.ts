import { describe, expect, it } from 'vitest';
import { isFaultMark } from '../../../src/intake/unit-log/cells/fault-marks.js';
import { assignColumns } from '../../../src/intake/unit-log/headings/columns.js';
import { headingMeaning, plainHeading, unitIn } from '../../../src/intake/unit-log/headings/meaning.js';
import { HEADING_WORDS } from '../../../src/intake/unit-log/headings/words.js';

const lists = Object.entries(HEADING_WORDS).flatMap(([language, all]) =>
  all.map((list) => ({ language, ...list })),
);
const phrases = lists.flatMap(({ language, means, words, weak = [] }) =>
  [...words, ...weak].map((phrase) => ({ language, means, phrase })),
);

describe('the word lists', () => {
  it('say each phrase once in all languages together', () => {
    const seen = new Map<string, string>();
    const twice = phrases.flatMap(({ language, means, phrase }) => {
      const here = `${language}: ${means}`;
      const before = seen.get(phrase);
      seen.set(phrase, here);
      return before === undefined ? [] : [`"${phrase}" is ${before} and ${here}`];
    });
    expect(twice).toEqual([]);
  });

  it('are written as headings are compared', () => {
    expect(phrases.filter(({ phrase }) => plainHeading(phrase) !== phrase)).toEqual([]);
  });

  it('never rule their own words out, and mean by every phrase what its list says', () => {
    const wrong = phrases.flatMap(({ means, phrase }) => {
      const said = headingMeaning(phrase)?.means;
      return said === means ? [] : [`"${phrase}" is ${means} and read as ${said}`];
    });
    expect(wrong).toEqual([]);
  });

  it('have the same meanings in every language', () => {
    const meanings = (language: string) =>
      new Set(lists.filter((l) => l.language === language).map((l) => l.means));
    for (const language of Object.keys(HEADING_WORDS)) expect(meanings(language)).toEqual(meanings('en'));
  });
});

describe('headings', () => {
  it.each([
    ['Set Point (°F)', 'set-point'],
    ['SETPOINT', 'set-point'],
    ['Punto de consigna (°C)', 'set-point'],
    ['Température de consigne', 'set-point'],
    ['ReturnAirTempF', 'return-air'],
    ['Temperatura del aire de retorno', 'return-air'],
    ["Température de l'air de retour", 'return-air'],
    ['Disch. air', 'supply-air'],
    ['Aire de impulsión', 'supply-air'],
    ['Soufflage °C', 'supply-air'],
    ['Ambient', 'ambient'],
    ['Temperatura ambiente', 'ambient'],
    ['Température ambiante', 'ambient'],
    ['Modo de operación', 'mode'],
    ['Operation', 'operation'],
    ['Unit Status', 'operation'],
    ['Estado del equipo', 'operation'],
    ['État du groupe', 'operation'],
    ['Betriebszustand', 'operation'],
    ['Operating mode', 'mode'],
    ['Dégivrage', 'defrost'],
    ['Puerta trasera', 'door'],
    ['Porte arrière', 'door'],
    ['Marche/arrêt', 'power'],
    ['Código de alarma', 'alarm'],
    ['Niveau de carburant', 'fuel'],
    ['Fecha y hora', 'time'],
    ['Horodatage', 'time'],
    ['Fecha', 'date'],
    ['Heure', 'clock'],
    ['Pulp probe 2', 'probe'],
    ['Uhrzeit', 'clock'],
    ['Rücklufttemperatur (°C)', 'return-air'],
    ['Außentemperatur', 'ambient'],
    ['Tür', 'door'],
  ])('"%s" is %s', (heading, means) => {
    expect(headingMeaning(heading)?.means).toBe(means);
  });

  it.each([
    'Battery voltage',
    'Humedad',
    'Engine hours',
    'Latitude',
    'T1',
    'Suction pressure',
    'Coil temp',
    '',
  ])('"%s" is nothing that is read', (heading) => {
    expect(headingMeaning(heading)).toBeUndefined();
  });

  it.each([
    ['Set Point (°F)', '°F'],
    ['Ret ºC', '°C'],
    ['return_air_c', '°C'],
    ['ReturnAirF', '°F'],
    ['Temp ℃', '°C'],
    ['Deg. F', '°F'],
    ['Return', undefined],
    ['AC', undefined],
  ])('the unit in "%s" is %s', (heading, unit) => {
    expect(unitIn(heading)).toBe(unit);
  });
});

describe('a trailer of two zones', () => {
  const found = (...headings: string[]) => {
    const columns = assignColumns(['Time', ...headings], [['2026-07-14 04:00']]);
    if (columns.is !== 'columns') throw new Error(columns.is);
    const { channels, unused } = columns.columns;
    return { read: channels.map((c) => headings[c.column - 1]), unused };
  };
  it.each([
    ['the second after the first', ['Zone 1 return', 'Zone 2 return'], ['Zone 1 return'], ['Zone 2 return']],
    ['the second before the first', ['Zone 2 return', 'Zone 1 return'], ['Zone 1 return'], ['Zone 2 return']],
    ['the first without a number', ['Retorno zona 2', 'Retorno'], ['Retorno'], ['Retorno zona 2']],
    ['the second alone', ['Zone 2 return'], ['Zone 2 return'], []],
  ])('%s: the lowest is read, the other named as not read', (_, headings, read, unused) =>
    expect(found(...headings)).toEqual({ read, unused }),
  );
});

describe('probes', () => {
  const channelsOf = (...headings: string[]) => {
    const found = assignColumns(['Time', ...headings], [['2026-07-14 04:00']]);
    return found.is === 'columns' ? found.columns.channels.map((c) => [c.channel, c.column]) : found.is;
  };
  it.each([
    [
      'by their numbers',
      ['Probe 2', 'Probe 1'],
      [
        ['probe', 2],
        ['probe-2', 1],
      ],
    ],
    [
      'in their order where they have none',
      ['Nose probe', 'Tail probe'],
      [
        ['probe', 1],
        ['probe-2', 2],
      ],
    ],
    [
      'after those that have one',
      ['Spare sensor', 'Probe 1'],
      [
        ['probe', 2],
        ['probe-2', 1],
      ],
    ],
    ['one of them alone', ['Probe 3'], [['probe-3', 1]]],
    [
      'at most four',
      ['Probe 1', 'Probe 2', 'Probe 3', 'Probe 4', 'Probe 5'],
      [
        ['probe', 1],
        ['probe-2', 2],
        ['probe-3', 3],
        ['probe-4', 4],
      ],
    ],
    [
      'a recorder’s temperatures',
      ['Temp 1', 'Temp 2'],
      [
        ['probe', 1],
        ['probe-2', 2],
      ],
    ],
    ['not what may be anything beside named air', ['Return air', 'Temperature'], [['return-air', 1]]],
  ])('are taken %s', (_, headings, expected) => {
    expect(channelsOf(...headings)).toEqual(expected);
  });
});

describe('marks of a sensor that gave nothing', () => {
  it.each([
    '---',
    '***',
    '--.-',
    'N/A',
    '#N/A',
    'Open',
    'Sin datos',
    'Défaut',
    'Court-circuit',
    'HORS PLAGE',
    '-99.9',
  ])('%s, whatever the unit', (text) => {
    expect(isFaultMark(text, true)).toBe(true);
  });
  it.each(['999.9', '9999', '3276.7', '-3276,8', '32767', '-127', '0x7FFF', '6553.5'])(
    '%s, where it is no temperature',
    (text) => {
      expect([isFaultMark(text, false), isFaultMark(text, true)]).toEqual([true, false]);
    },
  );
  it.each(['900', '99.9', '36.0', 'warm', '250'])('%s is none', (text) => {
    expect(isFaultMark(text, text === '99.9' || text === '36.0')).toBe(false);
  });
});
