// A key that stays in its own process, as in a smart card or with a key service: it gets SHA-256 digests, a line of hex
// each, and answers each with a signature by RSASSA-PKCS1-v1_5 (RFC 8017 §8.2), in order.
//   node signing-service.js KEY
import { constants, privateEncrypt } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';

const key = readFileSync(process.argv[2] ?? '', 'utf8');
/** DigestInfo of SHA-256 without the digest (RFC 8017 §9.2, note 1). */
const PREFIX = Buffer.from('3031300d060960864801650304020105000420', 'hex');

for await (const line of createInterface({ input: process.stdin })) {
  const padded = { key, padding: constants.RSA_PKCS1_PADDING };
  console.log(privateEncrypt(padded, Buffer.concat([PREFIX, Buffer.from(line, 'hex')])).toString('hex'));
}
