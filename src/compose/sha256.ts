import { createHash } from 'node:crypto';
import { type Sha256, sha256 } from '../core/model/evidence.js';

export const sha256Hex = (bytes: Uint8Array): Sha256 =>
  sha256.parse(createHash('sha256').update(bytes).digest('hex'));
