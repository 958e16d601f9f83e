import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMailDate } from '../../../src/intake/email/date.js';
import { looksLikeMail } from '../../../src/intake/email/recognise-mail.js';
import { readMail } from '../../../src/intake/email.js';
import { cases } from '../../properties.js';
import { emptyFolder, put } from '../a-delivery.js';

const folder = await emptyFolder();

const MAIL = `Received: from mx.example.com by mail.example.com; Tue, 14 Jul 2026 12:12:03 +0000
From: "D. Windle" <d.windle@example.com>
To: M. Ortega <m.ortega@example.com>, dispatch@example.com
Subject: =?utf-8?Q?Romaine_34=C2=B0?=
Date: Tue, 14 Jul 2026 05:12:00 -0700
MIME-Version: 1.0
Content-Type: multipart/mixed; boundary="b"

--b
Content-Type: text/plain

See the bill.
--b
Content-Type: application/pdf; name="../../bol.pdf"
Content-Disposition: attachment; filename="../../bol.pdf"
Content-Transfer-Encoding: base64

JVBERi0xLjcK
--b
Content-Type: message/rfc822

From: shipper@example.com
Subject: inner

Inner text.
--b--
`.replaceAll('\n', '\r\n');

const read = async (text: string) => readMail((await put(folder, 'a.eml', text)).path, 'a.eml');

describe('an e-mail', () => {
  it('says who, what and when, with the offset as the sender wrote it', async () => {
    expect(await read(MAIL)).toMatchObject({
      from: 'D. Windle <d.windle@example.com>',
      to: 'M. Ortega <m.ortega@example.com>, dispatch@example.com',
      subject: 'Romaine 34°',
      time: {
        is: 'known',
        instant: '2026-07-14T12:12:00.000Z',
        basis: 'offset',
        stated: 'Tue, 14 Jul 2026 05:12:00 -0700',
      },
    });
  });

  it('gives its attachments under names without folders, and a forwarded e-mail whole', async () => {
    const { attachments } = await read(MAIL);
    expect(attachments.map(({ name }) => name)).toEqual(['.._.._bol.pdf', 'part-2.eml']);
    expect(Buffer.from(attachments[0]?.bytes ?? []).toString()).toBe('%PDF-1.7\n');
    expect(Buffer.from(attachments[1]?.bytes ?? []).toString()).toContain('Inner text.');
  });

  it('gives texts that are shown in it as files too, named or not, and keeps the first as its words', async () => {
    const part = (head: string, text: string) => `--b\r\nContent-Type: text/plain${head}\r\n\r\n${text}\r\n`;
    const inline = '\r\nContent-Disposition: inline';
    const body = [
      part('; name="why.txt"', 'A named one before the words.'),
      part(inline, 'See the readings.'),
      part(`${inline}; filename="readings.txt"`, '04:10 pulp 34.2F'),
      part(inline, 'Another, without a name.'),
      part('', 'A line that a mailing list adds.'),
      '--b--\r\n',
    ].join('');
    const mail = await read(MAIL.slice(0, MAIL.indexOf('--b')) + body);
    expect(mail.attachments.map(({ name, bytes }) => [name, Buffer.from(bytes).toString().trim()])).toEqual([
      ['why.txt', 'A named one before the words.'],
      ['readings.txt', '04:10 pulp 34.2F'],
      ['part-3.txt', 'Another, without a name.'],
    ]);
    expect(mail.text).toContain('See the readings.');
    expect(mail.text).toContain('a mailing list');
  });

  it.each([
    ['no date', MAIL.replace(/^Date: .*\r\n/m, '')],
    ['two dates', MAIL.replace(/^Date: /m, 'Date: Mon, 13 Jul 2026 05:12:00 -0700\r\nDate: ')],
    [
      'no such date',
      MAIL.replace('14 Jul 2026 05:12:00 -0700\r\nMIME', '31 Jun 2026 05:12:00 -0700\r\nMIME'),
    ],
  ])('with %s has no time, and says why', async (_, text) => {
    expect((await read(text)).time).toMatchObject({ is: 'none', why: expect.stringMatching(/Date header/) });
  });

  it('of more lines than e-mails have is refused: each of them takes time', async () => {
    await expect(read(MAIL + '\n'.repeat(1_000_001))).rejects.toMatchObject({
      code: 'file-too-large',
      message: expect.stringContaining('1000000 lines'),
    });
  });

  it('is read or refused, whatever the bytes', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(MAIL.length), fc.string({ maxLength: 40 }), async (at, text) => {
        const mail = await read(MAIL.slice(0, at) + text + MAIL.slice(at + 3));
        expect(mail.attachments.length).toBeLessThan(10);
      }),
      { numRuns: cases(100) },
    );
  });
});

describe('the Date header (RFC 5322 §3.3, §4.3)', () => {
  it.each([
    // RFC 5322 appendix A.1.1, A.5 (with comment and folding) and A.6.2 (obsolete form).
    ['Fri, 21 Nov 1997 09:55:06 -0600', '1997-11-21T15:55:06.000Z', -360],
    [
      'Thu,\r\n 13\r\n  Feb\r\n    1969\r\n 23:32\r\n -0330 (Newfoundland Time)',
      '1969-02-14T03:02:00.000Z',
      -210,
    ],
    ['21 Nov 97 09:55:06 GMT', '1997-11-21T09:55:06.000Z', 0],
    ['14 Jul 2026 05:12 MST', '2026-07-14T12:12:00.000Z', -420],
    ['Tue, 14 Jul 2026 05:12:00 -0000', '2026-07-14T05:12:00.000Z', -0],
  ])('%s', (header, instant, offset) => {
    const date = readMailDate(header);
    expect(new Date((date?.wall ?? 0) - (date?.offset ?? 0) * 60_000).toISOString()).toBe(instant);
    expect(date?.offset).toBe(offset);
  });

  it.each([
    '',
    'yesterday',
    '2026-07-14',
    '14 Jul 2026 05:12',
    '14 Jul 2026 05:12 X',
    '30 Feb 2026 05:12 +0000',
  ])('"%s" is no date', (header) => expect(readMailDate(header)).toBeUndefined());
});

describe('what is an e-mail file', () => {
  it.each([
    ['as saved', MAIL, true],
    ['cut out of a mailbox', `From d@example.com Tue Jul 14 05:12:00 2026\r\n${MAIL}`, true],
    ['a note that says From: and To:', 'From: R. Tansy\nTo: M. Ortega\nDate: today\n\nRun it at 38.', false],
    [
      'without a field of programs',
      'From: R. Tansy <r@example.com>\nTo: m@example.com\nSubject: Romaine\nDate: Tue, 14 Jul 2026 05:12:00 -0700\n\nRun it at 38.',
      true,
    ],
    ['a note with an address', 'From: r@example.com\nTo: m@example.com\nDate: July 14\n\nRun it.', false],
    ['prose', 'Dear all,\nFrom: me', false],
    ['nothing', '', false],
  ])('%s', (_, text, is) => expect(looksLikeMail(text)).toBe(is));
});
