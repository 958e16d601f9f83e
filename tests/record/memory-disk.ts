import { basename, dirname } from 'node:path';
import type { FileStat, FileSystem, OpenFile } from '../../src/record/disk/ports.js';

class SystemError extends Error {
  constructor(readonly code: string) {
    // Thousands are thrown, and nobody reads where.
    const limit = Error.stackTraceLimit;
    Error.stackTraceLimit = 0;
    super(code);
    Error.stackTraceLimit = limit;
  }
}

interface Body {
  current: Buffer;
  /** What the disk itself holds. */
  synced: Buffer;
}
type Folder = { names: Map<string, Body>; synced: Map<string, Body> };

/** How the Nth operation goes wrong. */
export type Fault =
  /** It fails and nothing of it happened. */
  | 'not-done'
  /** It fails, and yet it happened. */
  | 'done'
  /** It fails, and a write has put half of its bytes down. */
  | 'half-done';

/** What a power cut leaves of that which was not synced. */
export type Cut =
  /** Nothing. */
  | 'all-lost'
  /** Names (made, renamed, removed) but not bytes. */
  | 'bytes-lost'
  /** Bytes of files whose names were synced, but no name. */
  | 'names-lost'
  /** Everything, as when only the process is killed. */
  | 'nothing-lost';
export const CUTS: readonly Cut[] = ['all-lost', 'bytes-lost', 'names-lost', 'nothing-lost'];

/**
 * A disk in memory that knows what was synced and what was not, and that can be told which operation fails.
 * Folders themselves are always durable; names in them and bytes of files only after a sync.
 */
export class MemoryDisk implements FileSystem {
  readonly folders = new Map<string, Folder>();
  /** Operations so far. */
  count = 0;
  #failAt = Number.POSITIVE_INFINITY;
  #fault: Fault = 'not-done';
  #dies = false;

  /** From now on the Nth operation fails; if the machine dies with it, all later ones fail too. */
  failAt(n: number, fault: Fault, dies: boolean): void {
    this.count = 0;
    this.#failAt = n;
    this.#fault = fault;
    this.#dies = dies;
  }

  get failed(): boolean {
    return this.count >= this.#failAt;
  }

  /** The power comes back: all files are closed and the disk holds what the cut left. */
  restart(cut: Cut): void {
    this.failAt(Number.POSITIVE_INFINITY, 'not-done', false);
    for (const folder of this.folders.values()) {
      if (cut === 'all-lost' || cut === 'names-lost') folder.names = new Map(folder.synced);
      else folder.synced = new Map(folder.names);
      for (const body of folder.names.values()) {
        if (cut === 'all-lost' || cut === 'bytes-lost') body.current = body.synced;
        else body.synced = body.current;
      }
    }
  }

  async #step<T>(action: () => T, half: () => void = () => undefined): Promise<T> {
    this.count += 1;
    if (this.count < this.#failAt || (this.count > this.#failAt && !this.#dies)) return action();
    if (this.count === this.#failAt) {
      if (this.#fault === 'done') action();
      if (this.#fault === 'half-done') half();
    }
    throw new SystemError('EIO');
  }

  #folder(path: string): Folder {
    const folder = this.folders.get(path);
    if (folder === undefined) throw new SystemError('ENOENT');
    return folder;
  }

  #body(path: string): Body {
    const body = this.#folder(dirname(path)).names.get(basename(path));
    if (body === undefined) throw new SystemError('ENOENT');
    return body;
  }

  async open(path: string, mode: 'create' | 'append' | 'read'): Promise<OpenFile> {
    return this.#step(() => {
      if (mode === 'read') return this.#opened(this.#body(path));
      const { names } = this.#folder(dirname(path));
      const there = names.get(basename(path));
      if (there !== undefined) {
        if (mode === 'create') throw new SystemError('EEXIST');
        return this.#opened(there);
      }
      const body = { current: Buffer.alloc(0), synced: Buffer.alloc(0) };
      names.set(basename(path), body);
      return this.#opened(body);
    });
  }

  #opened(body: Body): OpenFile {
    let position = 0;
    const add = (bytes: Uint8Array) => {
      body.current = Buffer.concat([body.current, bytes]);
    };
    return {
      read: (length) =>
        this.#step(() => {
          const bytes = body.current.subarray(position, position + length);
          position += bytes.length;
          return bytes;
        }),
      write: (bytes) =>
        this.#step(
          () => add(bytes),
          () => add(bytes.subarray(0, Math.floor(bytes.length / 2))),
        ),
      truncate: (size) =>
        this.#step(() => {
          body.current = body.current.subarray(0, size);
        }),
      sync: () =>
        this.#step(() => {
          body.synced = body.current;
        }),
      stat: () =>
        this.#step(
          (): FileStat => ({ isFile: true, isFolder: false, size: body.current.length, modified: 0 }),
        ),
      close: () => this.#step(() => undefined),
    };
  }

  readFile(path: string): Promise<Uint8Array> {
    return this.#step(() => Buffer.from(this.#body(path).current));
  }
  list(folder: string): Promise<string[]> {
    return this.#step(() => [...this.#folder(folder).names.keys()]);
  }
  makeFolder(path: string): Promise<void> {
    return this.#step(() => {
      for (let at = path; !this.folders.has(at); at = dirname(at))
        this.folders.set(at, { names: new Map(), synced: new Map() });
    });
  }
  rename(from: string, to: string): Promise<void> {
    return this.#step(() => {
      const body = this.#body(from);
      this.#folder(dirname(to)).names.set(basename(to), body);
      this.#folder(dirname(from)).names.delete(basename(from));
    });
  }
  remove(path: string): Promise<void> {
    return this.#step(() => {
      this.#body(path);
      this.#folder(dirname(path)).names.delete(basename(path));
    });
  }
  syncFolder(path: string): Promise<void> {
    return this.#step(() => {
      const folder = this.#folder(path);
      folder.synced = new Map(folder.names);
    });
  }
}
