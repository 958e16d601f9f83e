import { beforeAll, describe, expect, it } from 'vitest';
import { dossierHere as dossier, type Ran } from './run.js';

/** Names under "Commands:" of a help text; continued lines are indented deeper. */
function commandsIn(help: string): string[] {
  const [, list = ''] = /\nCommands:\n([\s\S]*?)\n\n/.exec(help) ?? [];
  return [...list.matchAll(/^ {2}([a-z-]+)/gm)]
    .map(([, name = '']) => name)
    .filter((name) => name !== 'help');
}

/** Every command and what its --help gave; each is a process, so they are asked once. */
let helped: { command: string[]; help: Ran }[];
beforeAll(async () => {
  const ask = async (command: string[]) => ({ command, help: await dossier([...command, '--help']) });
  helped = [];
  for (const name of commandsIn((await dossier(['--help'])).out)) {
    const top = await ask([name]);
    helped.push(top);
    for (const sub of commandsIn(top.help.out)) helped.push(await ask([name, sub]));
  }
});

describe('help', () => {
  it('names every command of the flow', () => {
    const commands = helped.map(({ command }) => command);
    for (const name of ['new', 'collect', 'record', 'gaps', 'temps', 'build', 'verify'])
      expect(commands).toContainEqual([name]);
    for (const kind of ['pulp', 'set-point', 'check', 'seal', 'bracing', 'event', 'contact', 'statement'])
      expect(commands).toContainEqual(['record', kind]);
  });

  it('of every command is on the output, with usage and examples, and ends with 0', () => {
    for (const {
      command,
      help: { code, out, err },
    } of helped) {
      expect(code, command.join(' ')).toBe(0);
      expect(err).toBe('');
      expect(out).toMatch(new RegExp(`^Usage: dossier ${command.join(' ')}`));
      expect(out).toMatch(new RegExp(`\nExamples?:\n {2}dossier ${command.join(' ')}`));
    }
  });

  it('of every command about a delivery that is there has -d for its folder', () => {
    const others = /^(new|verify|published|identity.*|record|record claim)$/;
    for (const { command, help } of helped)
      if (!others.test(command.join(' ')))
        expect(help.out, command.join(' ')).toMatch(/^ {2}-d, --delivery/m);
  });

  it('of every command fits a terminal of 80 columns, but for the examples', () => {
    for (const { help } of helped) {
      const [options = ''] = help.out.split(/\nExamples?:/);
      for (const line of options.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
    }
  });

  it.each([[[]], [['--help']], [['-h']], [['help']]])(
    '%j prints the whole, with examples, and ends with 0',
    async (args) => {
      const { code, out } = await dossier(args);
      expect(code).toBe(0);
      expect(out).toMatch(/^Usage: dossier /);
      expect(out).toMatch(/\nExamples:\n {2}dossier new /);
      expect(out).toMatch(/Exit codes: 0 fine, 1 .* 2 .* 70 /);
    },
  );

  it.each([['-V'], ['--version']])('%s prints the version of the package', async (flag) => {
    const { code, out } = await dossier([flag]);
    expect(code).toBe(0);
    expect(out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});

describe('what is not understood ends with 2, says so beside the result, and suggests', () => {
  it.each([
    [['colect'], "unknown command 'colect'", 'Did you mean collect?'],
    [['verfy', 'x.pdf'], "unknown command 'verfy'", 'Did you mean verify?'],
    [['record', 'plup', '34F'], "unknown command 'plup'", 'Did you mean pulp?'],
    [['verify', 'x.pdf', '--jsn'], "unknown option '--jsn'", 'Did you mean --json?'],
    [['record', 'pulp', '34F', '--lin', 'x'], "unknown option '--lin'", 'Did you mean --line?'],
    [['collect'], "missing required argument 'paths'", ''],
    [['record', 'pulp'], "missing required argument 'temperature'", ''],
    [['verify'], "missing required argument 'files'", ''],
    [['build', '--out'], "option '-o, --out <file>' argument missing", ''],
    [['temps', 'a', 'b'], 'too many arguments', ''],
  ])('%j', async (args, wrong, suggestion) => {
    const { code, out, err } = await dossier(args);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(wrong);
    expect(err).toContain(suggestion);
  });
});
