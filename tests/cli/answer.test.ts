import { mkdirSync, readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FACTS, type Yard, yard } from './a-delivery.js';

let here: Yard;
let delivery: string;
const claim = (...args: string[]) => here.dossier('record', 'claim', ...args, '-d', delivery);
const answer = (at: string, ...args: string[]) => here.dossier('answer', delivery, '--at', at, ...args);

beforeAll(async () => {
  here = yard();
  delivery = await here.delivery();
  await here.dossier('collect', here.put('claim.txt', 'We hold you liable.'), '-d', delivery);
  const events = [
    ['departed', '2026-07-14T05:00-07:00'],
    ['arrived', '2026-07-16T06:10-05:00'],
    ['refused', '2026-07-16T15:00-05:00'],
  ] as const;
  for (const [event, at] of events) await here.dossier('record', 'event', event, '--at', at, '-d', delivery);
});
afterAll(() => here.end());

describe('answer', () => {
  it('without a claim says how to record one, and whether the receiver refused in time', async () => {
    const { code, out } = await answer('2026-08-01T00:00Z');
    expect(code).toBe(0);
    expect(out).toMatch(/No claim is recorded.*record claim\s+received/s);
    expect(out).toMatch(/Thu Jul 16, 2026, 4:00 PM CDT +not shown +Rejection in time/);
    const said = out.replace(/\s+/g, ' ');
    expect(said).toContain('In time on these hours alone.');
    expect(said).toContain('notice to the consignor is not on file');
  });

  it('says what is due when under each candidate while nobody has said what governs', async () => {
    await claim(
      ...['received', 'Mock Elms Produce', '--as', 'receiver', '--on', '2026-08-03'],
      ...['--amount', '12480.50 USD', '--paper', 'e1', '--says', 'shipment', '--lacks', 'liability'],
    );
    const { code, out } = await answer('2026-08-10T00:00Z');
    expect(code).toBe(0);
    expect(out).toContain('Governing terms: not known');
    expect(out).toMatch(/Wed Sep 2, 2026, America\/Chicago +open +Acknowledge the claim/);
    expect(out).toContain('if the CMR');
    // Of one that comes round again, which turn.
    expect(out.replace(/\s+/g, ' ')).toContain('Report the status of the claim (no. 1) [us-status]');
    expect(out).toMatch(/MISSING +says that the carrier is liable/);
    expect(out).toMatch(/outstanding +invoice/);
    expect(out).toContain('No carrier deadline has passed.');
    expect(out).toContain('This is not legal advice.');
  });

  it('exits with 1 from the first instant after the last day, in the zone of the claim', async () => {
    expect((await answer('2026-09-02T23:59-05:00')).code).toBe(0);
    const late = await answer('2026-09-03T00:00-05:00');
    expect(late.code).toBe(1);
    expect(late.out).toMatch(/OVERDUE +Acknowledge the claim/);
    expect(late.out).toContain('Carrier actions overdue: 1');
  });

  it('shows only the clocks of what governs, and a term of the contract with its note', async () => {
    await claim('terms', 'us-carriage-by-contract', '--paper', 'e1');
    await claim('clock', 'us-acknowledge', '--span', '15 days', '--note', 'Clause 12(b)');
    // A clock of the carrier's own rules, which the shipped ones do not have.
    mkdirSync(here.at('rules'));
    const shipped = readFileSync('templates/claim-deadlines.yaml', 'utf8');
    here.put('rules/claim-deadlines.yaml', shipped.replaceAll('us-status', 'us-nothing'));
    await claim('clock', 'us-nothing', '--span', '15 days', '--templates', here.at('rules'));
    await claim('letter', 'acknowledgement', '--way', 'sent', '--with', 'Mock Elms', '--on', '2026-08-20');
    const { code, out } = await answer('2026-09-10T00:00Z');
    expect(code).toBe(0);
    expect(out).not.toContain('CMR');
    expect(out).toMatch(/Tue Aug 18, 2026, America\/Chicago +done late +Acknowledge/);
    expect(out.replace(/\s+/g, ' ')).toMatch(/Set by the contract, entry \d+ \(Clause 12\(b\)\)\./);
    expect(out.replace(/\s+/g, ' ')).toMatch(/not in the rules, and changes nothing: entry \d+, us-nothing/);
  });

  it('says with --why how each was counted and what the rule rests on', async () => {
    const { out } = await answer('2026-09-10T00:00Z', '--why');
    const said = out.replace(/\s+/g, ' ');
    expect(said).toContain('49 CFR 370.5(a): its text was read.');
    expect(said).toContain('Counted from: receipt of the claim: Mon Aug 3, 2026, America/Chicago (e1, #');
  });

  it('gives the same as data', async () => {
    const { out, code } = await answer('2026-12-20T00:00Z', '--json', '--claim', 'c1');
    expect(code).toBe(1);
    expect(JSON.parse(out)).toMatchObject({
      delivery: '2026-0714-A',
      overdue: 2,
      claims: [{ claim: 'c1', governs: 'us-carriage-by-contract' }],
      refusalClocks: [{ id: 'us-refusal-fresh', state: 'not-shown', stop: 'drop-1' }],
      unknownTerms: [{ clock: 'us-nothing' }],
    });
  });

  it('takes clocks of the carrier’s own', async () => {
    const shipped = readFileSync(new URL('../../templates/claim-deadlines.yaml', import.meta.url), 'utf8');
    mkdirSync(here.at('own'));
    here.put('own/claim-deadlines.yaml', shipped.replace("from: '08:00'", "from: '06:00'"));
    const { out } = await answer('2026-08-01T00:00Z', '--templates', here.at('own'));
    expect(out).toMatch(/Thu Jul 16, 2026, 2:10 PM CDT +done late +Rejection in time/);
    here.put('own/claim-deadlines.yaml', shipped.replace('binds: carrier', 'binds: driver'));
    const refused = await answer('2026-08-01T00:00Z', '--templates', here.at('own'));
    expect(refused.code).toBe(2);
    expect(refused.err).toMatch(/claim-deadlines\.yaml, row \d+.*"driver" is not one of/s);
  });

  it('names the claims there are when asked for another', async () => {
    const { code, err } = await answer('2026-09-10T00:00Z', '--claim', 'c2');
    expect(code).toBe(2);
    expect(err).toContain('Use one of: c1.');
  });

  it('says of several deliveries in a line each what is due first, and reads on past a bad one', async () => {
    const other = await here.delivery('other', FACTS.replace('2026-0714-A', '2026-0801-B'));
    await here.dossier(
      ...['record', 'claim', 'received', 'Mock Elms Produce', '--as', 'receiver'],
      ...['--on', '2026-08-01', '-d', other],
    );
    const { out, err, code } = await here.dossier(
      ...['answer', delivery, here.at('none'), other, '--at', '2026-09-05T00:00Z'],
    );
    expect(code).toBe(2);
    expect(err).toContain('no delivery.yaml');
    const [head, ...rows] = out.split('\n').filter((line) => !/^$|legal advice/.test(line));
    expect(head).toMatch(/^due +state +delivery +claim +what$/);
    expect(rows).toEqual([
      expect.stringMatching(/^2026-12-01 +open +2026-0714-A +c1 +\S.*/),
      expect.stringMatching(/^2026-08-31 +OVERDUE +2026-0801-B +c1 +Acknowledge.* \(\+\d\)$/),
    ]);
  });

  it('speaks the language of the delivery', async () => {
    const spanish = await here.delivery('spanish', `${FACTS}show: { language: es }\n`);
    await here.dossier(
      ...['record', 'claim', 'received', 'Mock Elms Produce', '--as', 'receiver'],
      ...['--on', '2026-08-03', '-d', spanish],
    );
    const { out } = await here.dossier('answer', spanish, '--at', '2026-09-10T00:00Z');
    expect(out).toMatch(/mié 2 sept? 2026, America\/Chicago +VENCIDO +Acusar recibo/);
    expect(out).toContain('Esto no es asesoría legal.');
  });
});
