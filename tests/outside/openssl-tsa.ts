import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';

const CONFIG = `
[ req ]
distinguished_name = name
prompt = no
x509_extensions = ext
[ name ]
CN = Time office of the checks
[ ext ]
basicConstraints = critical,CA:FALSE
keyUsage = critical,digitalSignature
extendedKeyUsage = critical,timeStamping
[ tsa ]
default_tsa = one
[ one ]
serial = SERIAL
crypto_device = builtin
digests = sha256, sha384, sha512
default_policy = 1.2.3.4.1
other_policies = 1.2.3.4.5
signer_digest = sha256
accuracy = secs:1
ess_cert_id_chain = no
ess_cert_id_alg = sha256
`;

/** A time-stamp server (RFC 3161) of this machine: `openssl ts -reply` behind HTTP. */
export async function opensslTsa(
  folder: string,
  key: readonly string[] = ['rsa:2048'],
): Promise<{ url: string; certificate: string; end: () => void }> {
  const path = (name: string) => join(folder, name);
  writeFileSync(path('tsa.cnf'), CONFIG.replace('SERIAL', path('tsa.serial')));
  writeFileSync(path('tsa.serial'), '01\n');
  const certificate = path('tsa.crt.pem');
  const openssl = (...args: string[]) => execFileSync('openssl', args, { stdio: ['ignore', 'pipe', 'pipe'] });
  openssl(
    ...['req', '-x509', '-newkey', ...key, '-nodes', '-days', '30', '-config', path('tsa.cnf')],
    ...['-keyout', path('tsa.key.pem'), '-out', certificate],
  );
  const server = createServer((request, response) => {
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => {
      writeFileSync(path('query.tsq'), Buffer.concat(chunks));
      response.setHeader('content-type', 'application/timestamp-reply');
      openssl(
        ...['ts', '-reply', '-config', path('tsa.cnf'), '-section', 'one', '-queryfile', path('query.tsq')],
        ...['-inkey', path('tsa.key.pem'), '-signer', certificate, '-out', path('reply.tsr')],
      );
      response.end(readFileSync(path('reply.tsr')));
    });
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const { port } = server.address() as AddressInfo;
  return { url: `http://127.0.0.1:${port}/`, certificate, end: () => void server.close() };
}
