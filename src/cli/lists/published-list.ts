import { fromCelsius, type TemperatureUnit } from '../../core/model/temperature.js';
import type { Goods } from '../../core/reference/goods.js';
import type { QuotedGoods, QuotedValue } from '../../core/reference/quote-published.js';
import { printedAmount, type Quantity, type TemperatureRange } from '../../core/reference/value-cell.js';
import type { Output } from '../output.js';
import { printWrapped } from '../print.js';

const TITLES: Record<Quantity, string> = {
  transport: 'Temperature for transport',
  'storage-or-transport': 'Temperature for storage and transport',
  storage: 'Temperature for storage',
  deviation: 'Rise allowed for a short time',
  freezing: 'Highest freezing point',
  chilling: 'Cold harms in time below',
  'chilling-band': 'Cold harms in time between, and not below',
  humidity: 'Relative humidity',
  life: 'How long it keeps',
  'ethylene-production': 'Ethylene given off',
  'ethylene-sensitivity': 'Harmed by ethylene',
  'top-ice': 'Ice on top, by the code of the source',
  respiration: 'Respiration, carbon dioxide per kg and hour',
  'specific-heat': 'Specific heat',
};

/** Everything published on some goods, a value a line under the quantity it is of. */
export function printPublished(output: Output, { goods, quantities }: QuotedGoods, quoted: boolean): void {
  output.line(output.style('bold', `${goods.name} (${goods.key}; ${goods.spanish})`));
  for (const { quantity, values } of quantities) {
    output.line();
    output.line(TITLES[quantity]);
    for (const value of values) printValue(output, value, quoted);
  }
}

function printValue(output: Output, value: QuotedValue, quoted: boolean): void {
  const { source, section, quotation, only, remark, at } = value;
  const also = convertedAmount(value);
  const said = [
    `${printedAmount(value)}${also === undefined ? '' : ` = ${also}`}`,
    ...(at === undefined ? [] : [`at ${at} °C`]),
    ...(only === undefined ? [] : [`only: ${only}`]),
    ...(remark === undefined ? [] : [remark]),
  ].join('; ');
  const status = source.status === 'secondary' ? ', secondary' : '';
  printWrapped(output, `${said}: ${source.name}${status}`, { mark: '  ', further: '      ' });
  if (!quoted) return;
  const rest = { mark: '      ', further: '      ' };
  printWrapped(output, `“${quotation}”`, rest);
  printWrapped(
    output,
    `${source.title}. ${source.by}; ${source.edition}; ${section}; read on ${source.read}`,
    rest,
  );
  output.line(`      ${source.address}`);
}

/** A temperature in the unit that its source does not print, converted exactly and shown to a tenth. */
function convertedAmount({ printed, celsius }: QuotedValue): string | undefined {
  const [own, other] = printed;
  if (own === undefined || other !== undefined || celsius === undefined) return undefined;
  return rangeIn(celsius, own.unit === '°C' ? '°F' : '°C');
}

function rangeIn({ low, high }: TemperatureRange, unit: TemperatureUnit): string {
  const written = (value: number) => String(Math.round(fromCelsius(value, unit) * 10) / 10).replace('-', '−');
  if (low === undefined) return `at most ${written(high ?? Number.NaN)} ${unit}`;
  if (high === undefined) return `at least ${written(low)} ${unit}`;
  return written(low) === written(high)
    ? `${written(low)} ${unit}`
    : `${written(low)} to ${written(high)} ${unit}`;
}

/** The goods of the library, by key. */
export function printGoodsNames(output: Output, all: readonly Goods[]): void {
  const widest = Math.max(...all.map(({ key }) => key.length));
  for (const { key, name, spanish } of all) output.line(`${key.padEnd(widest)}  ${name} (${spanish})`);
}
