import { mkdirSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { zipOf } from '../intake/archive/make-zip.js';
import { type Yard, yard } from './a-delivery.js';

let here: Yard;
beforeAll(() => {
  here = yard();
});
afterAll(() => here.end());

const MAIL = (attached: string) =>
  `From: D. Windle <d@example.com>
To: m@example.com
Subject: Load 4711
Date: Tue, 14 Jul 2026 05:12:00 -0700
Message-ID: <1@example.com>
MIME-Version: 1.0
Content-Type: multipart/mixed; boundary="b"

--b

See attached.
--b
Content-Type: text/plain; name="notice.txt"
Content-Disposition: attachment; filename="notice.txt"

${attached}
--b--
`.replaceAll('\n', '\r\n');

/** Bodies of what was received, by the name of the file. */
function received(delivery: string): Record<string, Record<string, unknown>> {
  return Object.fromEntries(
    here
      .entries(delivery)
      .filter(({ type }) => type === 'evidence-received')
      .map(({ body }) => [(body.file as { name: string }).name, body]),
  );
}

describe('collect takes in what came inside', () => {
  it('an e-mail: a message at the time its sender claims, its attachment as evidence that says whence', async () => {
    const delivery = await here.delivery('mail');
    const { code, out } = await here.dossier(
      'collect',
      here.put('a.eml', MAIL('NOTICE OF REJECTION')),
      '-d',
      delivery,
    );
    expect(code).toBe(0);
    expect(out).toContain('2 taken in');
    const { 'a.eml': mail, 'a.eml/notice.txt': notice } = received(delivery);
    expect(mail).toMatchObject({
      kind: 'document',
      subject: { is: 'message', sure: 'proposed' },
      by: 'D. Windle <d@example.com>',
      time: {
        instant: '2026-07-14T12:12:00.000Z',
        basis: 'offset',
        stated: 'Tue, 14 Jul 2026 05:12:00 -0700',
      },
      caption: expect.stringMatching(/Load 4711.*what the sender’s program wrote/),
    });
    expect(notice).toMatchObject({
      within: { evidence: 'e1', entry: 'notice.txt' },
      subject: { is: 'rejection-notice', sure: 'proposed' },
      caption: 'Attached to an e-mail from D. Windle <d@example.com>: Load 4711',
    });
  });

  it('an archive: its files with its captions, the bad ones named; the same again adds nothing', async () => {
    const delivery = await here.delivery('zip');
    const zip = here.put(
      'chat.zip',
      zipOf([
        { name: 'papers/captions.csv', bytes: 'file,subject,stop\nbill.txt,bill-of-lading,load-1\n' },
        { name: 'papers/bill.txt', bytes: 'a bill' },
        { name: '../evil.txt', bytes: 'x' },
        { name: 'mail.eml', bytes: MAIL('an answer') },
        {
          name: 'inner.zip',
          bytes: zipOf([{ name: 'deep.zip', bytes: zipOf([{ name: 'too-deep.txt', bytes: 'y' }]) }]),
        },
      ]),
    );
    const first = await here.dossier('collect', zip, '-d', delivery);
    expect(first.code).toBe(2);
    expect(first.err).toContain('"../evil.txt" is not taken out');
    expect(first.err).toContain('nested too deep');
    const bodies = received(delivery);
    expect(Object.keys(bodies)).toEqual([
      'chat.zip',
      'chat.zip/papers/captions.csv',
      'chat.zip/papers/bill.txt',
      'chat.zip/mail.eml',
      'chat.zip/mail.eml/notice.txt',
      'chat.zip/inner.zip',
      'chat.zip/inner.zip/deep.zip',
    ]);
    expect(bodies['chat.zip/papers/bill.txt']).toMatchObject({
      subject: { is: 'bill-of-lading', from: 'captions.csv' },
      place: { stop: 'load-1' },
      within: { evidence: 'e1', entry: 'papers/bill.txt' },
    });
    const before = here.entries(delivery).length;
    const again = await here.dossier('collect', zip, '-d', delivery);
    expect(again.out).toContain('0 taken in');
    expect(here.entries(delivery)).toHaveLength(before);
  });

  it('of many that are only proposed names the command that asks about each', async () => {
    const delivery = await here.delivery('asks-of-many');
    mkdirSync(here.at('many'));
    for (let i = 0; i < 13; i += 1)
      writeFileSync(here.at('many', `notice-${i}.txt`), `NOTICE OF REJECTION ${i}\n`);
    const { out } = await here.dossier('collect', here.at('many'), '-d', delivery);
    expect(out).toContain(`13 × what it shows is only proposed\n      dossier describe -d ${delivery}\n`);
  });

  it('asks at the end what only a person can say, with the command that says it', async () => {
    const delivery = await here.delivery('asks');
    mkdirSync(here.at('in'));
    writeFileSync(here.at('in', 'some.txt'), 'hello');
    writeFileSync(here.at('in', 'notice.txt'), 'NOTICE OF REJECTION\n');
    const { out, err } = await here.dossier('collect', here.at('in'), '-d', delivery);
    expect(out).toContain('dossier describe e2 --subject SUBJECT');
    expect(out).toContain('dossier describe --confirm e1');
    // The commands name the delivery that was named, and can be typed as they stand.
    expect(out).toContain(`dossier describe --confirm e1 -d ${delivery}\n`);
    expect(err).toContain(`Next: dossier gaps ${delivery}\n`);
    expect((await here.dossier('describe', '--confirm', 'e1', '-d', delivery)).code).toBe(0);
    const { out: json } = await here.dossier('collect', here.at('in'), '-d', delivery, '--json');
    expect(JSON.parse(json).questions.map((question: { is: string }) => question.is)).toEqual(['subject']);
  });
});

describe('describe', () => {
  let delivery: string;
  beforeAll(async () => {
    delivery = await here.delivery('described');
    for (const name of ['one', 'two', 'three'])
      await here.dossier('collect', here.put(`${name}.txt`, `NOTICE OF REJECTION\n${name}`), '-d', delivery);
  });
  const say = (...args: string[]) => here.dossier('describe', ...args, '-d', delivery);

  it('doubts a time days away from the delivery, unless it is sure; of a paper it is no wonder', async () => {
    const far = await here.delivery('described-far');
    await here.aboard(far, '2026-07-14T06:00', '2026-07-16T06:00');
    await here.dossier('collect', here.put('letter.txt', 'We hold you liable.'), '-d', far);
    const of = (...args: string[]) => here.dossier('describe', 'e3', '--stop', 'drop-1', ...args, '-d', far);
    const before = await of('--time', '2026-04-01T10:00');
    expect([before.code, before.err]).toEqual([
      2,
      expect.stringMatching(/^--time: it is \d+ days before the first/),
    ]);
    expect((await of('--time', '2026-08-03T10:00')).code).toBe(0);
    expect((await of('--time', '2026-04-01T10:00', '--why', 'dated so', '--sure')).code).toBe(0);
  });
  const last = () => here.entries(delivery).at(-1);

  it('says what several show, as a new entry each, confirmed', async () => {
    const before = here.entries(delivery).length;
    const { code, out } = await say(
      'e1',
      'e2',
      '--subject',
      'Claim Letter',
      '--stop',
      'drop-1',
      '--by',
      'P. Hallam',
    );
    expect([code, out]).toEqual([0, expect.stringMatching(/^e1 .*claim-letter.*\ne2 .*claim-letter/)]);
    expect(here.entries(delivery)).toHaveLength(before + 2);
    expect(last()).toMatchObject({
      type: 'evidence-described',
      body: {
        evidence: 'e2',
        subject: { is: 'claim-letter', sure: 'confirmed' },
        place: { stop: 'drop-1' },
        by: 'P. Hallam',
      },
    });
  });

  it('adds nothing when nothing new is said', async () => {
    const before = here.entries(delivery).length;
    expect((await say('e1', '--subject', 'claim-letter')).out).toContain('nothing new');
    expect(here.entries(delivery)).toHaveLength(before);
  });

  it('asks why what a person said is corrected, and keeps both', async () => {
    const refused = await say('e1', '--subject', 'invoice');
    expect([refused.code, refused.err]).toEqual([2, expect.stringContaining('--why')]);
    expect((await say('e1', '--subject', 'invoice', '--why', 'wrong paper')).code).toBe(0);
    expect(last()?.body).toMatchObject({ subject: { is: 'invoice' }, why: 'wrong paper' });
  });

  it('takes a time local to the stop', async () => {
    await say('e3', '--stop', 'drop-1', '--time', '2026-07-16 06:35');
    expect(last()?.body).toMatchObject({ time: { instant: '2026-07-16T11:35:00.000Z', basis: 'typed' } });
  });

  it('confirms all that is proposed, and withholds with a reason', async () => {
    expect((await say('--confirm-all')).out).toContain('e3    rejection-notice');
    expect((await say('--confirm-all')).out).toContain('Nothing is proposed');
    expect((await say('--withhold', 'e3')).err).toContain('needs its reason');
    expect((await say('--withhold', 'e3', '--why', 'private')).code).toBe(0);
    expect(last()).toMatchObject({ type: 'evidence-withheld', body: { evidence: 'e3', why: 'private' } });
  });

  it.each([
    [['e9', '--subject', 'invoice'], 'Evidence is numbered e1 to e3'],
    [['e1', '--subject', 'damage'], 'A document is one of: bill-of-lading'],
    [['e1', '--subject', 'invoise'], 'Did you mean invoice?'],
    [['e1', '--line', 'kale'], 'Use one of: romaine, celery'],
    [['e1', '--stop', 'load-2'], 'Use one of: load-1, drop-1'],
    [['e1', '--position', 'left'], 'Use one of: nose, middle, tail'],
    [['e1'], 'dossier describe e1 --subject'],
    [[], 'On a terminal'],
    [['e1', '--confirm', '--withhold'], 'Use one of them alone'],
  ])('refuses %j with the choices, and writes nothing', async (args, said) => {
    const before = here.entries(delivery).length;
    const { code, err } = await say(...args);
    expect(code).toBe(2);
    expect(err).toContain(said);
    expect(here.entries(delivery)).toHaveLength(before);
  });
});

describe('record --notes', () => {
  const NOTES = `2026-07-14 load-1
04:10 pulp 34.2F romaine nose by M. Ortega
04:12 pulp 35 romaine middle
06:30 doors-closed
`;

  it('says on a dry run how each line is understood, and writes nothing', async () => {
    const delivery = await here.delivery('dry');
    const { code, out, err } = await here.dossier(
      'record',
      '--notes',
      here.put('n.txt', NOTES),
      '--dry-run',
      '-d',
      delivery,
    );
    expect(code).toBe(2);
    expect(out).toContain('pulp, 34.2F, romaine, nose, load-1, Tue Jul 14, 2026, 4:10 AM MST, M.');
    expect(out).toContain('2 understood, 1 refused; nothing was written');
    expect(err).toContain('n.txt, row 3');
    expect(err).toContain('Write 35F or 35C');
    expect(here.entries(delivery)).toHaveLength(1);
  });

  it('keeps the file and gives each reading its row; a mended copy adds only the mended line', async () => {
    const delivery = await here.delivery('notes');
    await here.dossier('record', '--notes', here.put('n.txt', NOTES), '-d', delivery);
    expect(
      here
        .entries(delivery)
        .slice(1)
        .map(({ body }) => [body.kind, body.source]),
    ).toEqual([
      ['readings', undefined],
      ['pulp', { is: 'row', evidence: 'e1', row: 2 }],
      ['event', { is: 'row', evidence: 'e1', row: 4 }],
    ]);
    const mended = here.put('n2.txt', NOTES.replace('35 romaine', '35F romaine'));
    const { code, out } = await here.dossier('record', '--notes', mended, '-d', delivery);
    expect([code, out]).toEqual([0, expect.stringContaining('1 recorded from e4; 2 recorded before')]);
    expect(here.entries(delivery).at(-1)?.body).toMatchObject({
      source: { is: 'row', evidence: 'e4', row: 3 },
    });
  });

  it('takes day, stop and name from the command line', async () => {
    const delivery = await here.delivery('given');
    const file = here.put('n.txt', '04:10 pulp 34F romaine');
    const args = ['--date', '2026-07-14', '--stop', 'load-1', '--by', 'R. Vela'];
    expect((await here.dossier('record', '--notes', file, ...args, '-d', delivery)).code).toBe(0);
    expect(here.entries(delivery).at(-1)?.body).toMatchObject({ by: 'R. Vela', place: { stop: 'load-1' } });
  });

  it('leaves the other ways of record as they are', async () => {
    const delivery = await here.delivery('plain');
    const args = ['pulp', '34F', '--stop', 'load-1', '--by', 'R. Vela', '--json', '-d', delivery];
    const { code, out } = await here.dossier('record', ...args);
    expect([code, JSON.parse(out).evidence]).toEqual([0, 'e1']);
    expect((await here.dossier('record', '--notes', here.at('none.txt'), '-d', delivery)).code).toBe(2);
  });
});

describe('what can be meant in two ways, with nobody to ask, is refused with the choices', () => {
  it.each([
    [['pulp', '34.2', '--stop', 'load-1'], 'Write 34.2F or 34.2C'],
    [['pulp', '34F', '--at', '14:05'], '--stop load-1 or --stop drop-1'],
    [['event', 'arrived', '--stop', 'drop-1', '--at', '2025-11-02 01:30'], '2025-11-02T01:30:00-05:00 or'],
  ])('%j', async (args, choices) => {
    const delivery = await here.delivery(`twice${args.length}${args[1]}${args[0]}`);
    const { code, err } = await here.dossier('record', ...args, '-d', delivery);
    expect(code).toBe(2);
    expect(err).toContain(choices);
    expect(here.entries(delivery)).toHaveLength(1);
  });
});
