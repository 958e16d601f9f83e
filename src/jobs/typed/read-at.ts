import { DossierError } from '../../core/model/error.js';
import { type Instant, toInstant } from '../../core/model/time.js';
import type { Clock } from '../../core/ports/clock.js';

/** The moment meant by `--at`: an ISO time with offset, or now. */
export function readAt(text: string | undefined, now: Clock): Instant {
  if (text === undefined) return toInstant(now().getTime());
  const withOffset = /(?:Z|[+-]\d{2}:?\d{2})$/i.test(text);
  const at = Date.parse(text);
  if (!withOffset || Number.isNaN(at))
    throw new DossierError('bad-usage', `"${text}" is not a moment`, {
      where: { field: '--at' },
      fix: 'Write it with its offset from UTC, such as 2026-07-14T05:00-07:00 or 2026-07-14T12:00Z.',
    });
  return toInstant(at);
}
