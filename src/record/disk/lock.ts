import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { z } from 'zod';
import { DossierError } from '../../core/model/error.js';
import { instant, toInstant } from '../../core/model/time.js';
import { errorCode, onDisk } from './disk-error.js';
import { removeIfThere, using } from './durable.js';
import type { Ports } from './ports.js';

const claim = z.strictObject({
  pid: z.int().positive(),
  host: z.string(),
  started: z.string(),
  since: instant,
});
type Claim = z.infer<typeof claim>;

const NAME = /^writer-[0-9a-f]{16}\.lock$/;
/** Name of a lock that is still being written, which blocks nobody. */
const UNFINISHED = /^writer-[0-9a-f]{16}\.claim$/;
/** A claim is empty only for the moment between being made and being written. */
const EMPTY_FOR_AT_MOST = 10_000;
const DEFAULT_WAIT = 5_000;

type Holder = { file: string; claim?: Claim };

export interface Lock {
  /** Releases the folder. Never fails: a lock that stays behind is taken over once this process has ended. */
  release(): Promise<void>;
}

/**
 * Makes this process the one writer of a folder.
 *
 * Every writer makes a lock file of its own, and then looks for others: whoever finds a live one withdraws and
 * tries again. With one shared lock file, two writers that both find it dead could each remove and remake it and
 * both believe they hold it; a name that is used once can be removed without that race.
 *
 * @param wait milliseconds to wait for another writer, 5,000 if not given
 * @throws DossierError 'record-locked' naming who holds it
 */
export async function acquireLock(folder: string, ports: Ports, wait = DEFAULT_WAIT): Promise<Lock> {
  const until = performance.now() + wait;
  for (;;) {
    const holder = await onDisk('lock the record', folder, () => attempt(folder, ports));
    if ('release' in holder) return holder;
    if (performance.now() >= until) throw lockedBy(holder, folder);
    // Of random length, so that two that withdrew at the same moment do not meet again.
    await sleep(20 + 60 * ((ports.random(1)[0] ?? 0) / 255));
  }
}

async function attempt(folder: string, ports: Ports): Promise<Lock | Holder> {
  const before = await findHolder(folder, ports);
  if (before !== undefined) return before;
  const writer = `writer-${Buffer.from(ports.random(8)).toString('hex')}`;
  const name = `${writer}.lock`;
  const path = join(folder, name);
  const claimed = join(folder, `${writer}.claim`);
  const withdraw = async () => {
    for (const file of [claimed, path]) await removeIfThere(ports.fs, file).catch(() => undefined);
  };
  try {
    const own: Claim = { ...ports.processes.self, since: toInstant(ports.now().getTime()) };
    // Named as a lock only when it is whole: one without its process, left by a kill, would hold others up.
    await using(await ports.fs.open(claimed, 'create'), (file) =>
      file.write(Buffer.from(JSON.stringify(own))),
    );
    if (!(await becomesLock(ports, claimed, path))) return { file: name };
    const other = await findHolder(folder, ports, name);
    if (other === undefined) return { release: withdraw };
    await withdraw();
    return other;
  } catch (error) {
    await withdraw();
    throw error;
  }
}

/** False when another took the claim for one left behind, because it stayed empty too long: this writer tries again. */
async function becomesLock(ports: Ports, claimed: string, path: string): Promise<boolean> {
  try {
    await ports.fs.rename(claimed, path);
    return true;
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return false;
    throw error;
  }
}

/** A live writer other than `own`; lock files of dead ones are removed on the way. */
async function findHolder(folder: string, ports: Ports, own?: string): Promise<Holder | undefined> {
  const all = await ports.fs.list(folder);
  for (const file of all.filter((name) => UNFINISHED.test(name)))
    if ((await readHolder(join(folder, file), ports)) === 'dead')
      await removeIfThere(ports.fs, join(folder, file));
  const names = all.filter((name) => NAME.test(name) && name !== own).sort();
  for (const file of names) {
    const holder = await readHolder(join(folder, file), ports);
    if (holder === 'gone') continue;
    if (holder === 'dead') await removeIfThere(ports.fs, join(folder, file));
    else return { file, ...holder };
  }
  return undefined;
}

async function readHolder(path: string, ports: Ports): Promise<'gone' | 'dead' | { claim?: Claim }> {
  try {
    return await using(await ports.fs.open(path, 'read'), async (file) => {
      const { modified } = await file.stat();
      const read = parseClaim(Buffer.from(await file.read(4096)).toString('utf8'));
      if (read !== undefined) return ports.processes.isRunning(read) ? { claim: read } : 'dead';
      return Math.abs(ports.now().getTime() - modified) > EMPTY_FOR_AT_MOST ? 'dead' : {};
    });
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return 'gone';
    throw error;
  }
}

function parseClaim(text: string): Claim | undefined {
  try {
    return claim.safeParse(JSON.parse(text)).data;
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

function lockedBy(holder: Holder, folder: string): DossierError {
  const who =
    holder.claim === undefined
      ? 'another process that has just begun'
      : `process ${holder.claim.pid} on ${holder.claim.host}, since ${holder.claim.since}`;
  return new DossierError('record-locked', `the record is being written by ${who}`, {
    where: { file: join(folder, holder.file) },
    fix: 'Wait until it has finished and run the command again. If that process is surely gone, remove the file.',
  });
}
