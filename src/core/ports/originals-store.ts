import type { Sha256 } from '../model/evidence.js';

/** How an original is to be kept. */
export interface OriginalOrder {
  /** Ending of its name, such as `.jpg`; without meaning for the bytes. */
  extension: string;
  /** Bytes that it may have at most. */
  most: number;
}

/** An original as it is kept. */
export interface KeptOriginal {
  /** SHA-256 of the kept bytes, 64 lower-case hex digits. */
  sha256: Sha256;
  bytes: number;
  /** False when the same bytes were kept before. */
  isNew: boolean;
}

/**
 * Where the originals of one record are kept, byte for byte, each under its SHA-256. The folder `originals` of a
 * delivery is one; a shared disk or an object store is another.
 *
 * The contract:
 * - `add` reads a stream once, each piece only until it asks for the next, and resolves when the bytes are safe from a
 *   crash. Equal bytes are one original; adding them again mends a damaged one. When the stream fails, `add` rejects
 *   with the stream's own error; when it gives more than `most` bytes, with the DossierError `file-too-large`. Nothing
 *   of it is kept then. Several may be added at once.
 * - `flush` resolves when everything added so far will be found again after a crash.
 * - `file` gives the path of a file on this machine that has the bytes and whose name is the hash with an ending of at
 *   most eight small letters and digits; undefined when nothing is kept under the hash. It stays until it is removed.
 *   A store elsewhere lays a copy there.
 * - `remove` takes an original back; nothing happens when there is none.
 * - What goes wrong with the store itself is a DossierError `disk`.
 *
 * The record compares what it reads with the hash: a store need not.
 */
export interface OriginalsStore {
  /** Keeps what the stream gives. */
  add(bytes: AsyncIterable<Uint8Array>, order: OriginalOrder): Promise<KeptOriginal>;
  /** Resolves when everything added so far will be found again after a crash. */
  flush(): Promise<void>;
  /** A file on this machine that has the bytes; undefined when none are kept under the hash. */
  file(of: Sha256): Promise<string | undefined>;
  /** Takes an original back; nothing happens when there is none. */
  remove(of: Sha256): Promise<void>;
}
