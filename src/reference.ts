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
export {
  cite,
  type EthyleneLevel,
  findProduce,
  type Produce,
  type Published,
  produceTable,
  type ValueRange,
} from './core/reference/produce.js';
export {
  type RatePoint,
  type Respiration,
  respirationOf,
  wattsPerKilogram,
} from './core/reference/respiration.js';
export { type PublishedField, type SourceKey, sources } from './core/reference/sources.js';
