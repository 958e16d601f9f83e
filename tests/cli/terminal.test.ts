import { Writable } from 'node:stream';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { escapeControls, terminalOutput } from '../../src/cli/output.js';
import { runCli } from '../../src/cli/program.js';
import { FACTS, type Yard, yard } from './a-delivery.js';
import { dossier, dossierHere } from './run.js';

const ESCAPE = '\u001b';

let here: Yard;
let delivery: string;
beforeAll(async () => {
  here = yard();
  delivery = await here.delivery();
});
afterAll(() => here.end());
afterEach(() => vi.unstubAllEnvs());

/** A stream that says it is a terminal of 100 columns. */
function terminal(): { stream: NodeJS.WriteStream; text: () => string } {
  let text = '';
  const stream = new Writable({
    write: (chunk, _encoding, done) => {
      text += String(chunk);
      done();
    },
  });
  return {
    stream: Object.assign(stream, { isTTY: true, columns: 100 }) as unknown as NodeJS.WriteStream,
    text: () => text,
  };
}

async function onTerminal(...args: string[]) {
  const [out, err] = [terminal(), terminal()];
  const code = await runCli(args, terminalOutput(out.stream, err.stream));
  return { code, out: out.text(), err: err.text() };
}

describe('colour', () => {
  it('is on a terminal', async () => {
    vi.stubEnv('NO_COLOR', undefined);
    vi.stubEnv('TERM', 'xterm');
    const { out } = await onTerminal('gaps', delivery);
    expect(out).toContain(`${ESCAPE}[33mMISSING`);
  });

  it('is there when NO_COLOR is set but empty (no-color.org)', async () => {
    vi.stubEnv('NO_COLOR', '');
    vi.stubEnv('TERM', 'xterm');
    expect((await onTerminal('gaps', delivery)).out).toContain(ESCAPE);
  });

  it.each([
    ['NO_COLOR', '1'],
    ['NO_COLOR', 'false'],
    ['TERM', 'dumb'],
  ])('is off with %s=%s', async (name, value) => {
    vi.stubEnv('NO_COLOR', undefined);
    vi.stubEnv('TERM', 'xterm');
    vi.stubEnv(name, value);
    expect((await onTerminal('gaps', delivery)).out).not.toContain(ESCAPE);
  });

  const NO_TERMINAL = { NO_COLOR: '', FORCE_COLOR: '0', TERM: 'xterm' };
  it.each([
    [['gaps', 'DELIVERY']],
    [['gaps', 'DELIVERY', '--all']],
    [['temps', 'DELIVERY']],
    [['verify', '/dev/null']],
    [['gaps', 'x']],
    [['--help']],
  ])('and progress are off where the output is no terminal: %j', async (args) => {
    const words = args.map((word) => (word === 'DELIVERY' ? delivery : word));
    const { out, err } = await dossierHere(words, NO_TERMINAL);
    expect(out + err).not.toContain(ESCAPE);
    expect(out + err).not.toContain('\r');
  });

  it('and progress are off in a process that writes into pipes', async () => {
    const { code, out, err } = await dossier(['gaps', delivery], NO_TERMINAL);
    expect(code).toBe(1);
    expect(out).toContain('MISSING');
    expect(out + err).not.toContain(ESCAPE);
    expect(out + err).not.toContain('\r');
  });
});

/** CWE-150 (escape sequences) and CVE-2021-42574 (text that reads otherwise than it is). */
describe('what others wrote is shown, never sent to the terminal', () => {
  const title = `${ESCAPE}]0;owned\u0007`;
  const names = [
    `red${ESCAPE}[31m.txt`,
    'gpj.\u202etxt',
    `${title}x.txt`,
    'line\nbreak.txt',
    'c1\u009b31m.txt',
  ];

  describe('timeline as CSV or SVG', () => {
    const caption = `=1+1${ESCAPE}[31m\u202e\u0007`;
    let told: string;
    beforeAll(async () => {
      told = await here.delivery('told');
      await here.dossier(
        'record',
        'event',
        'arrived',
        '--at',
        '2026-07-14 03:58',
        '--stop',
        'load-1',
        '--note',
        caption,
        '-d',
        told,
      );
    });

    it.each(['--csv', '--svg'])('%s on a terminal', async (option) => {
      const { out, code } = await onTerminal('timeline', told, option);
      expect(code).toBe(0);
      expect(out).toContain(option === '--csv' ? escapeControls(caption) : '<svg');
      for (const hostile of [ESCAPE, '\u0007', '\u202e', '\r']) expect(out).not.toContain(hostile);
    });

    it('to a file the CSV is whole, and no spreadsheet runs it (CWE-1236)', async () => {
      const { out } = await here.dossier('timeline', told, '--csv');
      expect(out).toContain(`'${caption}`);
      expect(out).toContain('\r\n');
      expect(out).not.toMatch(/(?:^|,)"?=/m);
    });
  });

  it.each(names)('a file named %j, on collecting', async (name) => {
    const shown = await here.delivery(`d${names.indexOf(name)}`);
    const { out, err, code } = await here.dossier('collect', here.put(name, 'a note'), '-d', shown);
    expect(code).toBe(0);
    expect(out).toContain(`e1    ${escapeControls(name)}`);
    for (const hostile of [ESCAPE, '\u0007', '\u009b', '\u202e']) expect(out + err).not.toContain(hostile);
    // One file, two lines: no name makes a third.
    expect(out.split('\n\n')[0]?.split('\n')).toHaveLength(2);
  });

  it('a file that is not there', async () => {
    const { err } = await here.dossier('verify', `no${ESCAPE}[2J.pdf`);
    expect(err).toContain('no\\u{1b}[2J.pdf: there is no such file');
    expect(err).not.toContain(ESCAPE);
  });

  it('the name of a delivery folder, a word of the command line, an unknown command', async () => {
    for (const args of [
      ['gaps', `x${ESCAPE}[2J`],
      ['record', 'pulp', `34F${ESCAPE}[2J`, '-d', delivery],
      [`colect${ESCAPE}[2J`],
      ['gaps', delivery, `--all${ESCAPE}[2J`],
    ]) {
      const { code, out, err } = await here.dossier(...args);
      expect(code).toBe(2);
      expect(out + err, args.join(' ')).not.toContain(ESCAPE);
    }
  });

  it('what was recorded, when it is said again', async () => {
    const { out } = await here.dossier(
      'record',
      'seal',
      `47${ESCAPE}[31m`,
      '--state',
      'applied',
      '--stop',
      'load-1',
      '-d',
      delivery,
    );
    expect(out).toContain('seal, 47\\u{1b}[31m');
  });

  it('JSON, which stays what it was', async () => {
    const shown = await here.delivery('in-json');
    const name = `a${ESCAPE}\u009b\u202e.txt`;
    const { out } = await here.dossier('collect', here.put(name, 'a note'), '-d', shown, '--json');
    for (const hostile of [ESCAPE, '\u009b', '\u202e']) expect(out).not.toContain(hostile);
    expect(JSON.parse(out).items[0].file).toBe(name);
  });

  it('facts that could not be read', async () => {
    const facts = FACTS.replace('Esparto Flats, zone: America/Phoenix', `"Flats", zone: "Mars\\e[31m"`);
    const { code, err } = await here.dossier('new', 'hostile', '--file', here.put('hostile.yaml', facts));
    expect(code).toBe(2);
    expect(err).toMatch(/hostile\.yaml, row 5.*Mars\\u\{1b\}\[31m/);
    expect(err).not.toContain(ESCAPE);
  });
});
