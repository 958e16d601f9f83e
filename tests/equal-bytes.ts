import { expect } from 'vitest';

/** Bytes are compared as bytes: going through a file of some megabytes number by number takes seconds. */
expect.addEqualityTesters([
  (one: unknown, other: unknown) =>
    one instanceof Uint8Array && other instanceof Uint8Array && one.constructor === other.constructor
      ? Buffer.compare(one, other) === 0
      : undefined,
]);
