import { expect } from 'vitest';
import { ZONE_NAMES } from '../../src/core/model/zone-names.js';
import { ask, checkWith, python } from './programs.js';

const SCRIPT = 'import zoneinfo; print("\\n".join(sorted(zoneinfo.available_timezones())))';

/** A name that is missing here came with a later release of the time zone database: make the list anew. */
checkWith(python, 'every zone of this machine’s time zone database is in the list', () => {
  const { out } = ask(python, '-c', SCRIPT);
  const names = out.split('\n').filter((name) => name.includes('/') || name === 'UTC');
  expect(names.length).toBeGreaterThan(400);
  expect(names.filter((name) => !ZONE_NAMES.includes(name))).toEqual([]);
});
