import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { captionKey } from '../../../src/intake/captions.js';
import { parseChat } from '../../../src/intake/chat/messages.js';
import { readChats } from '../../../src/intake/chat.js';
import { examinePhoto } from '../../../src/intake/photo/examine-photo.js';
import { delivery, emptyFolder, put, someHash } from '../a-delivery.js';

const folder = await emptyFolder();
const bare = await sharp({ create: { width: 400, height: 400, channels: 3, background: '#7a4' } })
  .jpeg()
  .toBuffer();
const LRM = '\u200E';

describe('the messages of an exported chat', () => {
  it.each([
    [
      'one kind of phone',
      '12/07/2026, 14:05 - Name: IMG-20260712-WA0012.jpg (file attached)',
      'IMG-20260712-WA0012.jpg',
    ],
    ['with half days', '7/12/26, 2:05\u202FPM - R. Vela: IMG-1.jpg (file attached)', 'IMG-1.jpg'],
    ['in Spanish', '12/7/26, 14:05 - R. Vela: IMG-1.jpg (archivo adjunto)', 'IMG-1.jpg'],
    [
      'the other',
      `[12/07/2026, 14:05:32] R. Vela: ${LRM}<attached: 00000012-PHOTO-2026-07-12-14-05-32.jpg>`,
      '00000012-PHOTO-2026-07-12-14-05-32.jpg',
    ],
    [
      'the other, in Spanish',
      `${LRM}[12/7/26, 2:05:32 p. m.] R. Vela: <adjunto: 0001-FOTO.jpg>`,
      '0001-FOTO.jpg',
    ],
    ['words alone', '12/07/2026, 14:05 - R. Vela: it is warm (very warm)', undefined],
  ])('%s', (_, line, attached) => {
    expect(parseChat(line).map((one) => one.attached)).toEqual([attached]);
  });

  it.each(['Dear driver,\nthe load is warm.', '04:10 pulp 34.2F', 'time,kind\n2026-07-14,pulp', ''])(
    'are none in %j',
    (text) => expect(parseChat(text)).toEqual([]),
  );
});

describe('what a chat says of the pictures beside it', () => {
  const hintsOf = async (lines: string[]) => {
    const chat = await put(folder, 'chat.txt', lines.join('\n'));
    return readChats([chat], delivery, captionKey);
  };

  it('gives sender and time, with a basis of its own and the zones of the delivery as its uncertainty', async () => {
    const hints = await hintsOf([
      '14/07/2026, 04:01 - R. Vela: here',
      '14/07/2026, 04:05 - R. Vela: IMG-20260714-WA0001.jpg (file attached)',
    ]);
    expect(hints.get(join(folder, 'IMG-20260714-WA0001.jpg'))).toMatchObject({
      caption: expect.stringMatching(/^Sent in a chat by R\. Vela, 14\/07\/2026 04:05/),
      // 04:05 in Chicago is 09:05 UTC, in Phoenix 11:05.
      time: {
        is: 'known',
        basis: 'chat',
        instant: '2026-07-14T10:05:00.000Z',
        uncertaintySeconds: 60 + 3600,
      },
    });
  });

  it.each([
    ['month first, by the planned times', ['7/14/26, 4:05 AM', '7/14/26, 4:06 AM'], '2026-07-14'],
    ['day first, by a day above twelve', ['06/07/26, 04:05', '14/07/26, 04:06'], '2026-07-06'],
    [
      'by the one way that messages run',
      ['07/08/26, 04:05', '08/07/26, 04:05', '09/06/26, 04:05'],
      '2026-07-08',
    ],
  ])('reads %s', async (_, stamps, day) => {
    const hints = await hintsOf(stamps.map((stamp, i) => `${stamp} - R. Vela: p${i}.jpg (file attached)`));
    const time = hints.get(join(folder, 'p0.jpg'))?.time;
    expect(time?.is === 'known' && time.instant.slice(0, 10)).toBe(day);
  });

  const received = async (name: string, hint = {}) => {
    const { path } = await put(folder, 'x.jpg', bare);
    const file = { name, bytes: bare.length, sha256: someHash, type: 'image/jpeg' };
    return (await examinePhoto({ path, type: 'image/jpeg', delivery, file, hint })).received;
  };

  it.each(['IMG-20260714-WA0012.jpg', 'Image 2026-07-14 at 14.05.32.jpeg', 'a/20260714_140532.jpg'])(
    'a picture without a time has the day in its name as a proposal: %s',
    async (name) => {
      const { time, flags } = await received(name);
      // From midnight in Chicago to midnight in Phoenix.
      expect(time).toMatchObject({
        is: 'known',
        basis: 'file-name',
        instant: '2026-07-14T18:00:00.000Z',
        uncertaintySeconds: 13 * 3600,
        stated: '2026-07-14',
      });
      expect(flags.map(({ is }) => is)).toContain('no-capture-time');
    },
  );

  it.each(['IMG_0412.jpg', 'IMG-20261399-WA1.jpg', '20260230_1.jpg', '4711202607140.jpg'])(
    'no day is read from %s',
    async (name) => {
      expect((await received(name)).time.is).toBe('none');
    },
  );

  it('the chat counts before the name', async () => {
    const hints = await hintsOf(['14/07/2026, 04:05 - R. Vela: IMG-20260714-WA0001.jpg (file attached)']);
    const hint = hints.get(join(folder, 'IMG-20260714-WA0001.jpg'));
    expect((await received('IMG-20260714-WA0001.jpg', hint)).time).toMatchObject({ basis: 'chat' });
  });
});
