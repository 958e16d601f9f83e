import { describe, expect, it } from 'vitest';
import type { PublishedLimit } from '../../../src/core/model/results.js';
import { toCelsius } from '../../../src/core/model/temperature.js';
import { formatFor } from '../../../src/core/words/format.js';
import { showPublished } from '../../../src/core/words/published.js';

const us = formatFor({ temperature: '°F', language: 'en' });
const eu = formatFor({ temperature: '°C', language: 'es' });
const says = (source: string, low?: number, high?: number): PublishedLimit => ({
  ...(low === undefined ? {} : { low: toCelsius(low, '°F') }),
  ...(high === undefined ? {} : { high: toCelsius(high, '°F') }),
  source,
  printed: '',
  passage: `${source} 1`,
  secondary: false,
});
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('what publications say, in one line', () => {
  it.each<{ what: string; by: PublishedLimit[]; us: string }>([
    { what: 'one value', by: [says('A', 32, 32)], us: '32 °F (A)' },
    {
      what: 'sources that disagree',
      by: [says('A', 32, 32), says('B', 32, 36)],
      us: '32 °F (A); 32–36 °F (B)',
    },
    {
      what: 'sources that say the same',
      by: [says('A', 32, 32), says('B', 32, 36), says('C', 32, 32)],
      us: '32 °F (A, C); 32–36 °F (B)',
    },
    { what: 'one source twice', by: [says('A', 32, 32), says('A', 32, 32)], us: '32 °F (A)' },
    { what: 'at most', by: [says('A', undefined, 45)], us: '≤ 45 °F (A)' },
    { what: 'at least', by: [says('A', 50)], us: '≥ 50 °F (A)' },
    { what: 'below nought', by: [says('A', -10, 0)], us: '−10–0 °F (A)' },
  ])('$what', ({ by, us: expected }) => {
    expect(plain(showPublished({ is: 'published', of: 'temperature', by }, us))).toBe(expected);
  });

  it('in the units of the reader, and humidity in percent', () => {
    expect(plain(showPublished({ is: 'published', of: 'temperature', by: [says('A', 32, 41)] }, eu))).toBe(
      '0–5 °C (A)',
    );
    const humidity = { ...says('A'), low: 0.9, high: 0.95 };
    expect(plain(showPublished({ is: 'published', of: 'humidity', by: [humidity] }, us))).toBe('90–95 % (A)');
  });
});
