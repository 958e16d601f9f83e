import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FACTS, type Yard, yard } from './a-delivery.js';

let here: Yard;
beforeAll(() => {
  here = yard();
});
afterAll(() => here.end());

const OPTIONS = [
  ...['--number', '4711', '--carrier', 'Example Haulage', '--trailer', 'T-7'],
  ...['--load', 'Yuma AZ; America/Phoenix', '--unload', 'Omaha NE; America/Chicago'],
  ...['--goods', 'lettuce-romaine; 36 °F; 2 °F; 12', 'Côté d’Azur cabbage'],
];

/** The options with others in the place of those of the same name. */
const optionsWith = (instead: readonly string[]) => {
  const isName = (word: string) => word.startsWith('--');
  const others = OPTIONS.filter((_, i) => {
    const name = OPTIONS.slice(0, i + 1).findLast(isName);
    return name === undefined || !instead.includes(name);
  });
  return [...others, ...instead];
};

describe('new', () => {
  it('makes a delivery from options, whose facts are the first entry', async () => {
    const { code, out, err } = await here.dossier('new', 'made', ...OPTIONS);
    expect(`${code} ${err}`).toMatch(/^0 /);
    expect(out).toMatch(/4711.*produce/);
    expect(here.entries(here.at('made'))).toMatchObject([
      {
        type: 'delivery-facts',
        body: {
          facts: {
            delivery: '4711',
            parties: { carrier: { name: 'Example Haulage' } },
            lines: [
              { id: 'lettuce-romaine', pallets: 12, instruction: { setPoint: '36 °F', tolerance: '2 °F' } },
              { goods: 'Côté d’Azur cabbage' },
            ],
          },
        },
      },
    ]);
    expect((await here.dossier('gaps', 'made')).code).toBe(1);
  });

  it('keeps every stop in the order given, and puts each line to its own', async () => {
    const drop = ['--unload', 'Denver CO; America/Denver'];
    const lines = ['strawberry; 32 °F; 2 °F; 18; load-1; drop-1', 'celery; 32 °F; 2 °F; 6; load-1; drop-2'];
    const { code, err } = await here.dossier(
      ...['new', 'two-drops', '--number', '4712', '--carrier', 'Example Haulage', '--trailer', 'T-7'],
      ...['--load', 'Yuma AZ; America/Phoenix', ...drop, '--unload', 'Omaha NE; America/Chicago'],
      ...['--goods', ...lines],
    );
    expect(`${code} ${err}`).toMatch(/^0 /);
    expect(here.entries(here.at('two-drops'))[0]?.body.facts).toMatchObject({
      stops: [
        { id: 'load-1', does: 'load', place: 'Yuma AZ' },
        { id: 'drop-1', does: 'unload', place: 'Denver CO' },
        { id: 'drop-2', does: 'unload', place: 'Omaha NE' },
      ],
      lines: [
        { from: 'load-1', to: 'drop-1', pallets: 18 },
        { from: 'load-1', to: 'drop-2' },
      ],
    });
  });

  it('with several stops, refuses a line that does not say which is its own', async () => {
    const { code, err } = await here.dossier(
      ...['new', 'unclear', ...OPTIONS, '--unload', 'Denver CO; America/Denver'],
    );
    expect(code).toBe(2);
    expect(err).toMatch(/--goods: lettuce-romaine: not told where it is unloaded\n.*drop-1, drop-2/);
    expect(existsSync(here.at('unclear'))).toBe(false);
  });

  it('takes a file as it is, comments too', async () => {
    const text = `# a word of the office\n${FACTS}`;
    await here.dossier('new', 'from-file', '--file', here.put('facts.yaml', text));
    expect(readFileSync(here.at('from-file', 'delivery.yaml'), 'utf8')).toBe(text);
  });

  it('without facts and without a terminal says which options are lacking', async () => {
    const { code, err } = await here.dossier('new', 'nothing', '--carrier', 'Example Haulage');
    expect(code).toBe(2);
    expect(err).toMatch(/not told: --number, --trailer, --load, --unload, --goods\n.*-f FILE/);
    expect(existsSync(here.at('nothing'))).toBe(false);
  });

  it('takes several rule sets, and refuses one that there is not before anything is made', async () => {
    await here.dossier('new', 'both', ...OPTIONS, '--rules', 'frozen', 'drop-trailer');
    expect(readFileSync(here.at('both', 'delivery.yaml'), 'utf8')).toContain('- frozen\n  - drop-trailer\n');
    const ran = await here.dossier('gaps', 'both', '--all');
    expect(ran.out).toMatch(/Where the rule sets differ\n.*\[box-pre-cooled\], off:.*drop-trailer counts/s);
    const { code, err } = await here.dossier('new', 'slip', ...OPTIONS, '--rules', 'frozn');
    expect([code, err]).toEqual([
      2,
      expect.stringMatching(/no rule set "frozn.yaml"\n.*Did you mean frozen\?/),
    ]);
    expect(existsSync(here.at('slip'))).toBe(false);
  });

  it('into a folder that is not empty refuses, and leaves it as it was', async () => {
    mkdirSync(here.at('full'));
    here.put('full/photo.jpg', 'mine');
    const { code, err } = await here.dossier('new', 'full', ...OPTIONS);
    expect(code).toBe(2);
    expect(err).toMatch(/full: the folder is not empty\n.*folder of its own/);
    expect(readFileSync(here.at('full', 'photo.jpg'), 'utf8')).toBe('mine');
    expect(existsSync(here.at('full', 'delivery.yaml'))).toBe(false);
  });

  it('twice into the same folder refuses the second time', async () => {
    await here.dossier('new', 'twice', ...OPTIONS);
    const before = readFileSync(here.at('twice', 'ledger.jsonl'));
    expect((await here.dossier('new', 'twice', ...OPTIONS)).code).toBe(2);
    expect(readFileSync(here.at('twice', 'ledger.jsonl')).equals(before)).toBe(true);
  });

  it.each([
    ['a zone that is none', ['--load', 'Yuma AZ; America/Yuma'], /"America\/Yuma".*time zone/s],
    ['no zone at all', ['--load', 'Yuma'], /zone/],
    ['a state of two zones', ['--load', 'Somewhere TX'], /America\/Chicago and America\/Denver/],
    ['a set point of 900 °F', ['--goods', 'celery; 900 °F'], /900 °F.*−112 to 185/s],
    ['pallets that are no number', ['--goods', 'celery; 36 °F; 2 °F; many'], /--goods: pallets: "many"/],
  ])('refuses %s and makes no folder', async (_, instead, said) => {
    const { code, err } = await here.dossier('new', 'refused', ...optionsWith(instead));
    expect(err).toMatch(said);
    expect(code).toBe(2);
    expect(existsSync(here.at('refused'))).toBe(false);
  });

  it('says all that is wrong with the options, each on a line', async () => {
    const wrong = ['--load', 'Yuma', '--goods', 'celery; 36; 2'];
    const { err } = await here.dossier('new', 'refused', ...optionsWith(wrong));
    expect(err).toMatch(/^--load: zone: "" is not a time zone.*\n {2}Places are written like "Yuma AZ"/);
    expect(err).toMatch(/^ {2}also lines\[\d\]\.instruction\.setPoint: "36" is not a temperature/m);
    expect(err).toMatch(/^ {2}also lines\[\d\]\.instruction\.tolerance: "2" is not a tolerance/m);
    expect(err).not.toContain('u{a}');
  });

  it('says all that is wrong with a file, each with its line', async () => {
    const text = FACTS.replace('America/Phoenix', 'Yuma').replace('36 °F', '36');
    const { err } = await here.dossier('new', 'refused', '--file', here.put('wrong.yaml', text));
    expect(err).toMatch(/wrong\.yaml, row 5, stops\[0\]\.zone: "Yuma" is not a time zone/);
    expect(err).toMatch(
      /^ {2}also line 8: lines\[0\]\.instruction\.setPoint: 36 is not a temperature; write it like 36 °F/m,
    );
    const gone = await here.dossier('new', 'refused', '--file', 'gone.yaml');
    expect(gone.err).toMatch(/gone\.yaml: there is no such file\n {2}Check the name/);
  });

  it('a change of delivery.yaml enters the record at the next command, a wrong one does not', async () => {
    await here.dossier('new', 'changed', '--file', here.put('facts.yaml', FACTS));
    here.put('changed/delivery.yaml', FACTS.replace('T-7', 'T-8'));
    expect((await here.dossier('gaps', 'changed')).code).toBe(1);
    expect(here.entries(here.at('changed')).map((entry) => entry.type)).toEqual([
      'delivery-facts',
      'delivery-facts',
    ]);
    here.put('changed/delivery.yaml', FACTS.replace('America/Phoenix', 'America/Phenix'));
    const { code, err } = await here.dossier('gaps', 'changed');
    expect(code).toBe(2);
    expect(err).toMatch(/delivery\.yaml, row 5.*"America\/Phenix" is not a time zone/);
    expect(here.entries(here.at('changed'))).toHaveLength(2);
  });
});

describe('new with several parties and numbers', () => {
  const STOPS = [
    ...['new', 'filed', '--number', '4713', '--carrier', 'Example Haulage', '--trailer', 'T-7'],
    ...['--load', 'Yuma AZ; America/Phoenix; 2026-07-14 04:00; Dry Wash Growers'],
    ...['--unload', 'Denver CO;; 2026-07-16T06:00; Peak Produce', '--unload', 'Omaha NE'],
    ...['--goods', 'strawberry; 32 °F; 2 °F; 18; load-1; drop-1', 'celery; ; ; 6; load-1; drop-2'],
  ];

  it('keeps the party, planned time and numbers of each stop, and those of the delivery', async () => {
    const refs = ['bol 0044719', 'PRO=771', 'drop-1: po 8812', 'drop-1: PO #8813', 'Drop-2: seal 5512'];
    const { code, err } = await here.dossier(...STOPS, '--ref', ...refs);
    expect(`${code} ${err}`).toMatch(/^0 /);
    expect(here.entries(here.at('filed'))[0]?.body.facts).toMatchObject({
      references: { billOfLading: '0044719', pro: '771' },
      stops: [
        { planned: '2026-07-14T04:00', party: { name: 'Dry Wash Growers' } },
        {
          zone: 'America/Denver',
          planned: '2026-07-16T06:00',
          party: { name: 'Peak Produce' },
          references: { purchaseOrder: ['8812', '8813'] },
        },
        { references: { seal: '5512' } },
      ],
    });
  });

  it.each([
    ['a kind that there is not', 'isbn 12', /"isbn 12" is not a reference/],
    ['a stop that there is not', 'drop-9: po 1', /no stop "drop-9"/],
  ])('refuses %s', async (_, ref, says) => {
    const ran = await here.dossier('new', 'refused', ...STOPS.slice(2), '--ref', ref);
    expect([ran.code, ran.err]).toEqual([2, expect.stringMatching(says)]);
    expect(existsSync(here.at('refused'))).toBe(false);
  });
});
