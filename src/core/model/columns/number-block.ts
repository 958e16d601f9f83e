import { fromCelsius, type TemperatureUnit, toCelsius } from '../temperature.js';

/** What whole numbers stand for: milliseconds and row numbers themselves, or tenths and hundredths of a degree. */
export type Form = { is: 'whole' } | { is: 'degrees'; unit: TemperatureUnit; parts: 10 | 100 };

type Offsets = Uint8Array | Uint16Array | Uint32Array;

/** Values of neighbouring rows, without loss. */
export type NumberBlock =
  /** `base + i × step`; all NaN where the base is. */
  | { is: 'even'; base: number; step: number }
  /** Whole numbers above a base; the highest number that the array holds stands for NaN. */
  | { is: 'offsets'; form: Form; base: number; offsets: Offsets }
  | { is: 'as-they-are'; values: Float64Array };

const FORMS: readonly Form[] = [
  { is: 'whole' },
  { is: 'degrees', unit: '°F', parts: 10 },
  { is: 'degrees', unit: '°C', parts: 10 },
  { is: 'degrees', unit: '°F', parts: 100 },
  { is: 'degrees', unit: '°C', parts: 100 },
];

const toWhole = (form: Form, value: number): number =>
  Math.round(form.is === 'whole' ? value : fromCelsius(value, form.unit) * form.parts);

/** The same steps as when a cell is read, so that the same number comes out. */
const fromWhole = (form: Form, whole: number): number =>
  form.is === 'whole' ? whole : toCelsius(whole / form.parts, form.unit);

// Room that is used again and again: an array for each of thousands of blocks is collected late.
let wholesRoom = new Float64Array();
const ofBytes = new Float64Array(256);

/** Packs values so that exactly these come out again; what no form fits is kept as it is. */
export function packBlock(values: Float64Array): NumberBlock {
  const even = evenBlock(values);
  if (even !== undefined) return even;
  if (wholesRoom.length < values.length) wholesRoom = new Float64Array(values.length);
  for (const form of FORMS) {
    const block = offsetsBlock(values, form, wholesRoom);
    if (block !== undefined) return block;
  }
  return { is: 'as-they-are', values: values.slice() };
}

function evenBlock(values: Float64Array): NumberBlock | undefined {
  const base = values[0] ?? Number.NaN;
  if (Number.isNaN(base))
    return values.every(Number.isNaN) ? { is: 'even', base, step: Number.NaN } : undefined;
  const step = values.length > 1 ? (values[1] as number) - base : 0;
  // No number of infinite steps is none at all.
  if (!Number.isFinite(step)) return undefined;
  for (let i = 1; i < values.length; i++) if (values[i] !== base + i * step) return undefined;
  return { is: 'even', base, step };
}

function offsetsBlock(values: Float64Array, form: Form, wholes: Float64Array): NumberBlock | undefined {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number;
    const whole = toWhole(form, value);
    wholes[i] = whole;
    if (Number.isNaN(value)) continue;
    if (fromWhole(form, whole) !== value) return undefined;
    if (whole < low) low = whole;
    if (whole > high) high = whole;
  }
  const offsets = offsetsFor(high - low, values.length);
  if (offsets === undefined) return undefined;
  const unknown = unknownIn(offsets);
  for (let i = 0; i < values.length; i++) {
    const whole = wholes[i] as number;
    offsets[i] = Number.isNaN(whole) ? unknown : whole - low;
  }
  return { is: 'offsets', form, base: low, offsets };
}

function offsetsFor(range: number, length: number): Offsets | undefined {
  if (range < 0xff) return new Uint8Array(length);
  if (range < 0xffff) return new Uint16Array(length);
  return range < 0xffff_ffff ? new Uint32Array(length) : undefined;
}

function unknownIn(offsets: Offsets): number {
  if (offsets instanceof Uint8Array) return 0xff;
  return offsets instanceof Uint16Array ? 0xffff : 0xffff_ffff;
}

/** One value of a block. */
export function valueIn(block: NumberBlock, index: number): number {
  switch (block.is) {
    case 'even':
      return block.base + index * block.step;
    case 'offsets': {
      const offset = block.offsets[index] ?? Number.NaN;
      return offset === unknownIn(block.offsets) ? Number.NaN : fromWhole(block.form, block.base + offset);
    }
    case 'as-they-are':
      return block.values[index] ?? Number.NaN;
  }
}

/** Writes `count` values of a block from `from` on into `into` at `to`. */
export function unpackBlock(
  block: NumberBlock,
  from: number,
  count: number,
  into: Float64Array,
  to: number,
): void {
  switch (block.is) {
    case 'even':
      for (let i = 0; i < count; i++) into[to + i] = block.base + (from + i) * block.step;
      return;
    case 'as-they-are':
      into.set(block.values.subarray(from, from + count), to);
      return;
    case 'offsets':
      if (block.offsets instanceof Uint8Array) unpackBytes(block.offsets, block, from, count, into, to);
      else if (block.offsets instanceof Uint16Array) unpackPairs(block.offsets, block, from, count, into, to);
      else for (let i = 0; i < count; i++) into[to + i] = valueIn(block, from + i);
  }
}

type Scale = Pick<Extract<NumberBlock, { is: 'offsets' }>, 'form' | 'base'>;

// One loop for each kind of array: a loop over several is several times as slow.

function unpackBytes(
  offsets: Uint8Array,
  { form, base }: Scale,
  from: number,
  count: number,
  into: Float64Array,
  to: number,
): void {
  // A byte has few values: each is worked out once.
  const known = ofBytes;
  known[0xff] = Number.NaN;
  for (let i = 0; i < 0xff; i++) known[i] = fromWhole(form, base + i);
  for (let i = 0; i < count; i++) into[to + i] = known[offsets[from + i] as number] as number;
}

function unpackPairs(
  offsets: Uint16Array,
  { form, base }: Scale,
  from: number,
  count: number,
  into: Float64Array,
  to: number,
): void {
  for (let i = 0; i < count; i++) {
    const offset = offsets[from + i] as number;
    into[to + i] = offset === 0xffff ? Number.NaN : fromWhole(form, base + offset);
  }
}
