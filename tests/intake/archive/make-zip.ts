import { crc32, deflateRawSync } from 'node:zlib';

/** An entry as a hostile or careless program may write it: any name, any type, any size. */
export interface Made {
  name: string | Uint8Array;
  bytes?: Uint8Array | string;
  /** Unix file type and rights; a plain file if not given. */
  mode?: number;
  /** What the central directory says instead of the truth. */
  claims?: { bytes?: number; crc?: number; flags?: number; method?: number; offset?: number };
}

/** A zip file byte by byte (APPNOTE 4.3). */
export function zipOf(entries: readonly Made[]): Buffer {
  const local: Buffer[] = [];
  const central: Buffer[] = [];
  let at = 0;
  for (const { name, bytes = '', mode = 0o100644, claims = {} } of entries) {
    const plain = Buffer.from(bytes);
    const packed = deflateRawSync(plain);
    const named = Buffer.from(name);
    const common = Buffer.alloc(26);
    common.writeUInt16LE(20, 0);
    common.writeUInt16LE(claims.flags ?? 0x0800, 2);
    common.writeUInt16LE(claims.method ?? 8, 4);
    common.writeUInt32LE(claims.crc ?? crc32(plain), 10);
    common.writeUInt32LE(packed.length, 14);
    common.writeUInt32LE(claims.bytes ?? plain.length, 18);
    common.writeUInt16LE(named.length, 22);
    const header = Buffer.concat([Buffer.from('PK\x03\x04'), common, named, packed]);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE((mode << 16) >>> 0, 6);
    tail.writeUInt32LE(claims.offset ?? at, 10);
    central.push(Buffer.concat([Buffer.from('PK\x01\x02\x14\x03'), common, tail, named]));
    local.push(header);
    at += header.length;
  }
  const directory = Buffer.concat(central);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(at, 16);
  return Buffer.concat([...local, directory, end]);
}
