import { describe, expect, it } from 'vitest';
import { isChat, parseChat } from '../../../src/intake/chat/messages.js';
import { readWall } from '../../../src/intake/time/wall-time.js';

/**
 * Exports of both kinds of phones as they are written in several languages, each with invented people and what a reader of
 * that language gets from it. From memory of such exports: no source.
 */
const LRM = '\u200E';
const NARROW = '\u202F';
const EXPORTS: readonly [
  language: string,
  lines: readonly string[],
  order: 'day-month-year' | 'month-day-year' | 'iso',
  read: readonly [wall: string, sender: string, attached?: string][],
][] = [
  [
    'English, United States',
    [
      `7/12/26, 2:05${NARROW}PM - R. Vela: IMG-1.jpg (file attached)`,
      `7/12/26, 2:06${NARROW}PM - Dock 4: ok`,
    ],
    'month-day-year',
    [
      ['2026-07-12T14:05', 'R. Vela', 'IMG-1.jpg'],
      ['2026-07-12T14:06', 'Dock 4'],
    ],
  ],
  [
    'English, the other phone',
    [`[7/12/26, 2:05:32${NARROW}PM] R. Vela: ${LRM}<attached: 0001-PHOTO.jpg>`],
    'month-day-year',
    [['2026-07-12T14:05', 'R. Vela', '0001-PHOTO.jpg']],
  ],
  [
    'German',
    ['12.07.26, 14:05 - K. Brandt: IMG-1.jpg (Datei angehängt)', 'zwei Paletten warm'],
    'day-month-year',
    [['2026-07-12T14:05', 'K. Brandt', 'IMG-1.jpg']],
  ],
  [
    'German, the other phone',
    [`${LRM}[12.07.26, 14:05:32] K. Brandt: ${LRM}<Anhang: 0001-PHOTO.jpg>`],
    'day-month-year',
    [['2026-07-12T14:05', 'K. Brandt', '0001-PHOTO.jpg']],
  ],
  [
    'French',
    ['12/07/2026 à 14:05 - A. Morel : IMG-1.jpg (fichier joint)', '12/07/2026, 14:06 - A. Morel: non'],
    'day-month-year',
    [
      ['2026-07-12T14:05', 'A. Morel', 'IMG-1.jpg'],
      ['2026-07-12T14:06', 'A. Morel'],
    ],
  ],
  [
    'French, the other phone',
    [`[12/07/2026 14:05:32] A. Morel : ${LRM}<pièce jointe : 0001-PHOTO.jpg>`],
    'day-month-year',
    [['2026-07-12T14:05', 'A. Morel', '0001-PHOTO.jpg']],
  ],
  [
    'Spanish, Mexico',
    [`12/07/26 2:05${NARROW}p.${NARROW}m. - R. Vela: IMG-1.jpg (archivo adjunto)`],
    'day-month-year',
    [['2026-07-12T14:05', 'R. Vela', 'IMG-1.jpg']],
  ],
  [
    'Portuguese',
    ['12/07/2026 14:05 - J. Prado: IMG-1.jpg (arquivo anexado)'],
    'day-month-year',
    [['2026-07-12T14:05', 'J. Prado', 'IMG-1.jpg']],
  ],
  [
    'Dutch',
    ['12-07-2026 14:05 - P. Velde: IMG-1.jpg (bestand bijgevoegd)'],
    'day-month-year',
    [['2026-07-12T14:05', 'P. Velde', 'IMG-1.jpg']],
  ],
  [
    'Swedish',
    ['2026-07-12 14:05 - M. Ek: IMG-1.jpg (fil bifogad)'],
    'iso',
    [['2026-07-12T14:05', 'M. Ek', 'IMG-1.jpg']],
  ],
  [
    'Hungarian',
    ['2026. 07. 12. 14:05 - Kis B.: IMG-1.jpg (fájl csatolva)'],
    'iso',
    [['2026-07-12T14:05', 'Kis B.', 'IMG-1.jpg']],
  ],
  [
    'Arabic',
    ['١٢\u200F/٧\u200F/٢٠٢٦، ٢:٠٥ م - سامي: IMG-1.jpg (الملف مرفق)'],
    'day-month-year',
    [['2026-07-12T14:05', 'سامي', 'IMG-1.jpg']],
  ],
  [
    'Japanese, the other phone',
    [`[2026/07/12 14:05:32] 林: ${LRM}<添付ファイル: 0001-PHOTO.jpg>`],
    'iso',
    [['2026-07-12T14:05', '林', '0001-PHOTO.jpg']],
  ],
  [
    'Chinese, the other phone',
    [`[2026/7/12 下午2:05:32] 林: ${LRM}<附件：0001-PHOTO.jpg>`],
    'iso',
    [['2026-07-12T14:05', '林', '0001-PHOTO.jpg']],
  ],
];

describe('an exported chat in', () => {
  it.each(EXPORTS)('%s', (_, lines, order, read) => {
    const text = lines.join('\n');
    expect(
      parseChat(text).map(({ stamp, sender, attached }) => [
        new Date(readWall(stamp, order)?.wall ?? 0).toISOString().slice(0, 16),
        sender,
        ...(attached === undefined ? [] : [attached]),
      ]),
    ).toEqual(read);
    expect(isChat(lines)).toBe(true);
  });
});
