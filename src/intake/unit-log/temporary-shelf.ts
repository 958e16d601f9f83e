import { randomUUID } from 'node:crypto';
import { closeSync, openSync, readSync, unlinkSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ByteShelf } from '../../core/model/columns/kept-blocks.js';

/** What stays in memory, bytes: a year by the minute with six temperatures takes less. */
const IN_MEMORY = 4 << 20;

/** A file has no name any more, so it is gone when its shelf is, however the program ends. */
const closing = new FinalizationRegistry<number>((file) => closeSync(file));

/**
 * The first bytes stay in memory, and the rest goes to a file in the folder for temporary files, which only this user
 * can read and which has no name from the moment it is made: nothing of a log is left behind. Where no such file can
 * be made or filled, all stays in memory.
 */
export class TemporaryShelf implements ByteShelf {
  #inMemory = 0;
  #file: number | undefined;
  #length = 0;
  #full = false;
  readonly #most: number;

  /** @param most bytes that stay in memory */
  constructor(most = IN_MEMORY) {
    this.#most = most;
  }

  put(bytes: Uint8Array): number | undefined {
    if (this.#inMemory + bytes.length <= this.#most || this.#full) {
      this.#inMemory += bytes.length;
      return undefined;
    }
    try {
      this.#file ??= this.#make();
      for (let done = 0; done < bytes.length; )
        done += writeSync(this.#file, bytes, done, bytes.length - done, this.#length + done);
    } catch {
      // No room, or no folder to write to. What lies there already can be read as before.
      this.#full = true;
      return undefined;
    }
    const at = this.#length;
    this.#length += bytes.length;
    return at;
  }

  get(at: number, into: Uint8Array): void {
    if (this.#file === undefined) throw new Error('nothing lies on this shelf');
    for (let done = 0; done < into.length; ) {
      const read = readSync(this.#file, into, done, into.length - done, at + done);
      if (read === 0) throw new Error('a temporary file is shorter than what was written to it');
      done += read;
    }
  }

  #make(): number {
    const path = join(tmpdir(), `log-${randomUUID()}`);
    const file = openSync(path, 'wx+', 0o600);
    closing.register(this, file);
    unlinkSync(path);
    return file;
  }
}
