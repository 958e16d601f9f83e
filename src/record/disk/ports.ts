import { randomBytes } from 'node:crypto';
import { constants, readFileSync, type Stats, statSync } from 'node:fs';
import * as fs from 'node:fs/promises';
import type { Processes } from './processes.js';
import { thisMachine } from './processes.js';

/** How a file is opened; the record needs no other way. */
export type OpenMode =
  /** For writing, and only if nothing of that name exists. */
  | 'create'
  /** For writing at the end; made when missing. */
  | 'append'
  /** For reading; a symbolic link is refused and a pipe is not waited for. */
  | 'read';

export interface FileStat {
  isFile: boolean;
  isFolder: boolean;
  /** Bytes. */
  size: number;
  /** Milliseconds since 1970. */
  modified: number;
}

export interface OpenFile {
  /** The next bytes, at most `length`; empty at the end of the file. They are only good until the next read or the close. */
  read(length: number): Promise<Uint8Array>;
  /** Writes all of the bytes or fails. */
  write(bytes: Uint8Array): Promise<void>;
  truncate(size: number): Promise<void>;
  /** Returns when the bytes are on the disk itself. */
  sync(): Promise<void>;
  stat(): Promise<FileStat>;
  close(): Promise<void>;
}

/** The few file operations that the record uses. They fail as Node's own do: an Error with a `code`. */
export interface FileSystem {
  open(path: string, mode: OpenMode): Promise<OpenFile>;
  readFile(path: string): Promise<Uint8Array>;
  /** Names in a folder, in no order. */
  list(folder: string): Promise<string[]>;
  /** Makes the folder and those above it; fine when it is there. */
  makeFolder(path: string): Promise<void>;
  /** Replaces what has the new name, in one step. */
  rename(from: string, to: string): Promise<void>;
  remove(path: string): Promise<void>;
  /** Returns when the folder's own list of names is on the disk itself. */
  syncFolder(path: string): Promise<void>;
}

/** What the record takes from the world. */
export interface Ports {
  fs: FileSystem;
  now(): Date;
  random(bytes: number): Uint8Array;
  processes: Processes;
}

const NONE: Buffer = Buffer.alloc(0);
const FLAGS: Record<OpenMode, number> = {
  create: constants.O_WRONLY | constants.O_CREAT | constants.O_EXCL,
  append: constants.O_WRONLY | constants.O_CREAT | constants.O_APPEND,
  // Both flags are missing on Windows, where opening follows links.
  read: constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0),
};

function fileStat(stats: Stats): FileStat {
  return {
    isFile: stats.isFile(),
    isFolder: stats.isDirectory(),
    size: stats.size,
    modified: stats.mtimeMs,
  };
}

async function open(path: string, mode: OpenMode): Promise<OpenFile> {
  const handle = await fs.open(path, FLAGS[mode], 0o644);
  let buffer: Buffer = NONE;
  return {
    async read(length) {
      // One buffer for the whole file: a new one for each piece costs more than the reading.
      if (buffer.length < length) buffer = Buffer.allocUnsafe(length);
      const { bytesRead } = await handle.read(buffer, 0, length);
      return buffer.subarray(0, bytesRead);
    },
    write: (bytes) => handle.writeFile(bytes),
    truncate: (size) => handle.truncate(size),
    sync: () => handle.sync(),
    stat: async () => fileStat(await handle.stat()),
    close: () => handle.close(),
  };
}

/** Bytes up to which a file is read at once: the way through the thread pool takes ten times as long. */
const SMALL = 256 * 1024;

async function readFile(path: string): Promise<Uint8Array> {
  return statSync(path).size <= SMALL ? readFileSync(path) : fs.readFile(path);
}

async function syncFolder(path: string): Promise<void> {
  // Windows cannot open a folder to sync it; there the file system orders renames itself.
  if (process.platform === 'win32') return;
  const handle = await fs.open(path, constants.O_RDONLY);
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** The machine's own disk. */
export const diskFileSystem: FileSystem = {
  open,
  readFile,
  list: (folder) => fs.readdir(folder),
  makeFolder: async (path) => {
    await fs.mkdir(path, { recursive: true });
  },
  rename: (from, to) => fs.rename(from, to),
  remove: (path) => fs.unlink(path),
  syncFolder,
};

/** The machine's own disk, clock, randomness and processes. */
export function machinePorts(): Ports {
  return {
    fs: diskFileSystem,
    now: () => new Date(),
    random: (bytes) => randomBytes(bytes),
    processes: thisMachine(),
  };
}
