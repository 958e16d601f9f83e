import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { collect } from '../../src/jobs/collect.js';
import { withDelivery } from '../../src/jobs/delivery.js';
import { type Yard, yard } from '../cli/a-delivery.js';

let here: Yard;
let folder: string;
const now = () => new Date('2026-07-20T00:00:00Z');
const open = () => ({ folder, by: 'Test', now });
const picture = (background: string) =>
  sharp({ create: { width: 400, height: 400, channels: 3, background } })
    .jpeg()
    .toBuffer();
beforeAll(async () => {
  here = yard();
  folder = await here.delivery();
});
afterAll(() => here.end());

const items = () => withDelivery(open(), false, async (record) => record.state().evidence);

describe('captions that come after the pictures', () => {
  it('are applied to what the record holds, as entries, once, and leave what a person said', async () => {
    await collect({
      ...open(),
      paths: [here.put('a.jpg', await picture('#a52')), here.put('b.jpg', await picture('#25a'))],
    });
    const captions = here.put(
      'captions.csv',
      'file,time,subject,stop,line,by,caption\na.jpg,7/14/2026 4:05 AM,damage,load-1,romaine,R. Vela,Limp\nb.jpg,,seal,nowhere,,,\nc.jpg,,seal,,,,\n',
    );
    const report = await collect({ ...open(), paths: [captions] });
    expect(report.notices.join(' ')).toContain('describe e1, e2');
    expect(report.problems.map(({ message }) => message)).toEqual([
      expect.stringContaining('no stop "nowhere"'),
      'there is no file "c.jpg" in this folder',
    ]);
    const [a, b] = await items();
    expect(a).toMatchObject({
      subject: { is: 'damage', sure: 'proposed', from: 'captions.csv' },
      place: { stop: 'load-1' },
      line: 'romaine',
      by: 'R. Vela',
      caption: 'Limp',
      time: { is: 'known', basis: 'typed', instant: '2026-07-14T11:05:00.000Z' },
    });
    expect(b).toMatchObject({ subject: { is: 'seal', sure: 'proposed' } });
    const before = here.entries(folder).length;
    const again = await collect({ ...open(), paths: [here.at('a.jpg'), here.at('b.jpg'), captions] });
    expect(here.entries(folder)).toHaveLength(before);
    expect(again.counts).toMatchObject({ taken: 0, held: 3 });
  });
});
