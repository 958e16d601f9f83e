/** What is published, each value with its source, and quantities read and turned over. */
export { DossierError, type ErrorCode, type Problem, type Where } from './core/model/error.js';
export { type Currency, type MinorUnits, type Money, minorUnits, parseMoney } from './core/model/money.js';
export {
  type Celsius,
  celsius,
  fromCelsius,
  type Kelvin,
  kelvin,
  parseTemperature,
  type Temperature,
  type TemperatureDifference,
  type TemperatureUnit,
} from './core/model/temperature.js';
export { type Instant, toInstant } from './core/model/time.js';
export { findGoods, type Goods, goodsTable } from './core/reference/goods.js';
export { type PublishedValue, publishedValues } from './core/reference/published-values.js';
export { loadQuotations } from './core/reference/quotations.js';
export { type QuotedGoods, type QuotedValue, quotePublished } from './core/reference/quote-published.js';
export {
  type RatePoint,
  type Respiration,
  respirationOf,
  wattsPerKilogram,
} from './core/reference/respiration.js';
export { type Source, type SourceStatus, sources } from './core/reference/sources.js';
export {
  celsiusRange,
  type Printed,
  printedAmount,
  type Quantity,
  type TemperatureRange,
  type ValueCell,
} from './core/reference/value-cell.js';
export { type PublishedOnGoods, whatIsPublished } from './core/reference/what-is-published.js';
