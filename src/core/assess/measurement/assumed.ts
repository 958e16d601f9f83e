import type { Delivery } from '../../model/delivery.js';
import type { Channel } from '../../model/evidence.js';
import type { UncertaintyPart } from '../../model/results.js';
import { kelvin, type TemperatureDifference, type TemperatureUnit } from '../../model/temperature.js';

/**
 * Legal accuracy of food thermometers: ±2 °F scaled in Fahrenheit alone, ±1 °C scaled in Celsius or both (Cal. Health &
 * Safety Code 114159(c)). Which scale a thermometer has is not known: the unit that was written stands for it.
 */
const FOOD_THERMOMETERS: Record<TemperatureUnit, TemperatureDifference> = {
  '°F': { difference: 2, unit: '°F' },
  '°C': { difference: 1, unit: '°C' },
};
/** EN 12830, class 1, from memory: its class limits are in no text that could be read. */
const RECORDERS: TemperatureDifference = { difference: 1, unit: '°C' };
/** Cartons of one place: common practice, no source. USDA Marketing Research Report 1132 found far more within a trailer. */
const CARTONS: TemperatureDifference = { difference: 1, unit: '°C' };
/** Air at a place in the load beside the logged air: common practice, no source; from the same report, wide on purpose. */
const AIR_AT_PLACE: TemperatureDifference = { difference: 2, unit: '°C' };

type Assumed = Pick<Delivery, 'uncertainty' | 'instruments'>;

const part = (
  is: UncertaintyPart['is'],
  difference: TemperatureDifference,
  from: UncertaintyPart['from'],
): UncertaintyPart => ({ is, halfWidthKelvin: kelvin(difference), from });

/** The accuracy of a thermometer of which none is stated. */
export function thermometerAccuracy({ uncertainty }: Assumed, unit: TemperatureUnit): UncertaintyPart {
  const given = uncertainty?.thermometers;
  return given === undefined
    ? part('accuracy', FOOD_THERMOMETERS[unit], 'food-thermometers')
    : part('accuracy', given, 'assumed');
}

/** The accuracy of the sensor behind a column of a log. */
export function sensorAccuracy({ uncertainty, instruments }: Assumed, channel: Channel): UncertaintyPart {
  const stated = instruments?.find((one) => one.channel === channel)?.accuracy;
  if (stated !== undefined) return part('accuracy', stated, 'stated');
  const given = uncertainty?.sensors;
  return given === undefined ? part('accuracy', RECORDERS, 'recorders') : part('accuracy', given, 'assumed');
}

/** How far cartons of one place may differ. */
export const cartonSpread = ({ uncertainty }: Assumed): UncertaintyPart =>
  uncertainty?.cartons === undefined
    ? part('cartons', CARTONS, 'practice')
    : part('cartons', uncertainty.cartons, 'assumed');

/** How far the air at a place in the load may be from the logged air, K. */
export const airAtPlace = ({ uncertainty }: Assumed): number =>
  kelvin(uncertainty?.airAtPlace ?? AIR_AT_PLACE);
