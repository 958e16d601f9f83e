import { spawn } from 'node:child_process';
import { generateKeyPairSync } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { Signer } from '../../src/core/ports/signer.js';
import { sampleIdentity } from '../signing/sample-identity.js';

/** A signer whose key is in another process, which is given digests alone. */
export function outsideSigner(folder: string): { signer: Signer; end: () => void } {
  const keys = generateKeyPairSync('rsa', { modulusLength: 2048 });
  const { certificateDer } = sampleIdentity({ keys });
  const file = join(folder, 'key.pem');
  writeFileSync(file, keys.privateKey.export({ type: 'pkcs8', format: 'pem' }), { mode: 0o600 });
  const service = spawn(process.execPath, [join(import.meta.dirname, 'signing-service.js'), file], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const waiting: ((signature: Uint8Array) => void)[] = [];
  createInterface({ input: service.stdout }).on('line', (line) =>
    waiting.shift()?.(Uint8Array.from(Buffer.from(line, 'hex'))),
  );
  return {
    signer: {
      certificateDer,
      sign: ({ digest, signal }) => {
        signal?.throwIfAborted();
        service.stdin.write(`${Buffer.from(digest).toString('hex')}\n`);
        return new Promise((done) => waiting.push(done));
      },
    },
    end: () => service.stdin.end(),
  };
}
