import type { EventName, EvidenceId } from '../evidence.js';

/** A temperature of a reading, by the name that it is typed under. */
export type TypedDegrees = 'temperature' | 'box air' | '--set-point';

/** Why a reading may be mistyped: it lies far from its kin. A person who says so is believed. */
export type Doubt =
  /** A temperature far from what the bill of lading instructs; °C and kelvin. */
  | {
      is: 'far-from-instruction';
      field: TypedDegrees;
      celsius: number;
      low: number;
      high: number;
      beyondKelvin: number;
    }
  /** The number fits the instruction in the other unit, and is far from it in the one that was typed. */
  | {
      is: 'other-unit';
      field: TypedDegrees;
      celsius: number;
      low: number;
      high: number;
      otherCelsius: number;
    }
  /** A pulp far from the middle one of the same line at the same stop. */
  | { is: 'far-from-neighbours'; celsius: number; middle: number; neighbours: number; beyondKelvin: number }
  /** A time days before the first or after the last that is known or planned of the delivery; milliseconds UTC. */
  | { is: 'outside-delivery'; side: 'before' | 'after'; days: number; bound: number }
  /** No time was typed, and the last that is known or planned of the delivery is days ago; milliseconds UTC. */
  | { is: 'no-time-given'; days: number; last: number }
  /** An inspection at a place of unloading before the truck came, or after the goods were disposed of; milliseconds UTC. */
  | {
      is: 'inspected-before-arrival' | 'inspected-after-disposal';
      event: number;
      evidence?: EvidenceId;
    }
  /** The same event was recorded at the same stop; no evidence where it is a row of the same file. */
  | { is: 'recorded-before'; event: EventName; stop: string; evidence?: EvidenceId };
