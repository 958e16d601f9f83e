import { withoutAccents } from '../../time/months.js';

/** Units of what is no temperature, in lower case, as they stand in brackets, after a comma or alone in a cell. */
const OTHER_UNITS: ReadonlySet<string> = new Set([
  ...['%', '%rh', 'rh', '% rh', '%hr', '% hr', '%rf', '% rf', 'r.h.', 'pct', 'percent', '‰'],
  ...[
    'lux',
    'lx',
    'lum/ft2',
    'klux',
    'w/m2',
    'wm-2',
    'w/m^2',
    'umol',
    'ppm',
    'ppb',
    'mg/m3',
    'ug/m3',
    'g/m3',
  ],
  ...['v', 'mv', 'volt', 'volts', 'vdc', 'a', 'ma', 'w', 'kw', 'wh', 'kwh', 'ohm', 'kohm', 'db', 'dbm'],
  ...['pa', 'hpa', 'kpa', 'mbar', 'bar', 'psi', 'inhg', 'mmhg', 'atm', 'torr', 'millibar'],
  ...['m/s', 'ms-1', 'km/h', 'kmh', 'kph', 'mph', 'kt', 'knots', 'rpm', 'hz', 'khz', 'g', 'mg'],
  ...[
    'mm',
    'cm',
    'm',
    'km',
    'in',
    'inch',
    'inches',
    'ft',
    'feet',
    'meters',
    'metres',
    'miles',
    'mi',
    'm3/m3',
  ],
  ...[
    'l',
    'ml',
    'gal',
    'kg',
    'lb',
    'lbs',
    's',
    'sec',
    'ms',
    'min',
    'h',
    'hr',
    'hrs',
    'hours',
    'minutes',
    'days',
  ],
  // Absolute temperature is no reading of a logger in transport, and is never guessed to be °C.
  ...[
    'k',
    'kelvin',
    '°k',
    'us/cm',
    'ms/cm',
    'ph',
    'counts',
    'mg/l',
    'ug/l',
    'ntu',
    'fnu',
    'psu',
    'count',
    'raw',
    'bits',
    'deg',
    'degrees true',
    '°',
  ],
]);

/** Those that stand for nothing else when a heading ends with them. */
const PLAIN_AT_END: ReadonlySet<string> = new Set([
  ...['%', '%rh', 'lux', 'ppm', 'ppb', 'mv', 'volts', 'hpa', 'kpa', 'mbar', 'psi', 'inhg', 'mmhg', 'percent'],
  ...['pct', 'dbm', 'mph', 'kph', 'kwh'],
]);

/**
 * Words of columns that hold no temperature of air or goods, though a word of temperature may stand beside them: dew
 * point, wet bulb, heat index, a limit. Lower case, without accents, by language (BCP 47).
 */
const OTHER_WORDS: Readonly<Record<string, readonly string[]>> = {
  en: [
    ...[
      'humidity',
      'humid',
      'hum',
      'humi',
      'rh',
      'moisture',
      'dew',
      'dewpoint',
      'dewpt',
      'wet bulb',
      'wetbulb',
    ],
    ...['heat index', 'humidex', 'vpd', 'feels', 'apparent', 'chill', 'windchill', 'enthalpy', 'frost point'],
    ...[
      'pressure',
      'baro',
      'barometer',
      'barometric',
      'light',
      'lux',
      'illuminance',
      'intensity',
      'brightness',
    ],
    ...[
      'radiation',
      'solar',
      'uv',
      'co 2',
      'voc',
      'tvoc',
      'dust',
      'wind',
      'gust',
      'rain',
      'rainfall',
      'snow',
    ],
    ...[
      'battery',
      'batt',
      'voltage',
      'volt',
      'volts',
      'rssi',
      'signal',
      'speed',
      'direction',
      'conductivity',
    ],
    ...[
      'salinity',
      'cond',
      'conductance',
      'turbidity',
      'orp',
      'chlorophyll',
      'oxygen',
      'depth',
      'latitude',
      'lat',
      'longitude',
      'lon',
      'lng',
      'altitude',
      'elevation',
    ],
    ...['index', 'counter', 'limit', 'threshold', 'interval', 'calibration', 'offset', 'units', 'error'],
    ...[
      'uncertainty',
      'uncert',
      'stderr',
      'err',
      'pts',
      'npts',
      'count',
      'flag',
      'quality',
      'qm',
      'qf',
      'qc',
      'valid',
    ],
    ...['cpu', 'board', 'chip', 'processor', 'coupler', 'host', 'mkt', 'difference', 'delta', 'change'],
  ],
  es: [
    ...['humedad', 'rocio', 'bulbo humedo', 'presion', 'luz', 'luminosidad', 'bateria', 'voltaje', 'tension'],
    ...['viento', 'lluvia', 'latitud', 'longitud', 'altitud', 'limite', 'velocidad'],
  ],
  fr: [
    ...[
      'humidite',
      'hygrometrie',
      'rosee',
      'pression',
      'lumiere',
      'luminosite',
      'eclairement',
      'pile',
      'batterie',
    ],
    ...['vent', 'pluie', 'limite', 'vitesse'],
  ],
  de: [
    ...['feuchte', 'feuchtigkeit', 'luftfeuchte', 'luftfeuchtigkeit', 'rel feuchte', 'taupunkt', 'druck'],
    ...['luftdruck', 'licht', 'helligkeit', 'spannung', 'wind', 'regen', 'grenzwert', 'breite', 'lange'],
  ],
  it: ['umidita', 'rugiada', 'pressione', 'luce', 'vento', 'pioggia'],
  nl: ['vochtigheid', 'luchtvochtigheid', 'dauwpunt', 'druk', 'luchtdruk', 'licht', 'regen'],
  pt: ['umidade', 'humidade', 'orvalho', 'pressao', 'vento', 'chuva'],
};

const WORDS = [...new Set(Object.values(OTHER_WORDS).flat())];

/** Whether a cell is a unit of what is no temperature. */
export function isOtherUnit(text: string): boolean {
  return OTHER_UNITS.has(plainUnit(text));
}

/** Whether a heading's own unit is one of what is no temperature: `RH, % (…)`, `Light [lux]`, `Pressure_hPa`. */
export function statesOtherUnit(heading: string): boolean {
  const text = heading.slice(0, 200);
  const inBrackets = [...text.matchAll(/[([{]([^)\]}]*)[)\]}]/g)].map(([, inside = '']) => inside);
  const bare = text.replaceAll(/[([{][^)\]}]*[)\]}]/g, ' ').trim();
  const afterComma = bare.includes(',') ? [bare.slice(bare.lastIndexOf(',') + 1)] : [];
  if ([...inBrackets, ...afterComma].some(isOtherUnit)) return true;
  const last = plainUnit(bare.split(/[\s_:-]+/).at(-1) ?? '');
  return PLAIN_AT_END.has(last) || /[^\s]%$/.test(bare);
}

/** Whether the words of a heading, as `plainHeading` gives them, are of something that is no temperature to read. */
export function namesOtherQuantity(plain: string): boolean {
  return WORDS.some((word) => ` ${plain} `.includes(` ${word} `));
}

function plainUnit(text: string): string {
  return withoutAccents(text).toLowerCase().trim().replace('²', '2').replace('³', '3').replace('µ', 'u');
}
