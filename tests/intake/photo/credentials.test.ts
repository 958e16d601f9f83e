import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readCredentials } from '../../../src/intake/photo/credentials/read-credentials.js';
import { examinePhoto } from '../../../src/intake/photo/examine-photo.js';
import { delivery, emptyFolder, put, someHash } from '../a-delivery.js';

const folder = await emptyFolder();
const SIGNED = 'fixtures/photos/signed.jpg';

describe('content credentials (C2PA) of a picture', () => {
  it('tell what was checked apart from what is claimed, and that nobody vouches for the signer', async () => {
    expect(await readCredentials(SIGNED, 'image/jpeg')).toEqual({
      state: 'intact',
      claims: {
        madeWith: expect.stringContaining('Invented Camera App'),
        title: 'signed.jpg',
        actions: ['c2pa.created'],
      },
      signer: { name: 'Invented Camera', issuer: 'Invented Pictures', stamped: false, trusted: false },
      findings: [],
    });
  });

  it('say that a picture was changed, by the code of what does not hold, and flag it', async () => {
    const bytes = readFileSync(SIGNED);
    bytes.writeUInt8(bytes.readUInt8(bytes.length - 200) ^ 1, bytes.length - 200);
    const { path, name } = await put(folder, 'changed.jpg', bytes);
    const file = { name, bytes: bytes.length, sha256: someHash, type: 'image/jpeg' };
    const { received } = await examinePhoto({ path, type: 'image/jpeg', delivery, file });
    expect(received.credentials).toMatchObject({
      state: 'broken',
      findings: ['assertion.dataHash.mismatch'],
    });
    expect(received.flags).toContainEqual({
      is: 'credentials-broken',
      detail: 'the picture is not as it was signed: assertion.dataHash.mismatch',
    });
  });

  it('that cannot be read say so, and cost nothing else', async () => {
    const bytes = readFileSync(SIGNED);
    bytes.fill(0, bytes.indexOf('jumdc2pa') + 40, bytes.indexOf('jumdc2pa') + 400);
    const { path, name } = await put(folder, 'bad.jpg', bytes);
    const file = { name, bytes: bytes.length, sha256: someHash, type: 'image/jpeg' };
    const { received } = await examinePhoto({ path, type: 'image/jpeg', delivery, file });
    expect(received.credentials?.state).toMatch(/unreadable|broken/);
    expect(received.camera).toEqual({ make: 'Demo', model: 'Phone A' });
  });

  it.each([
    ['signed.png', 'image/png', 'IDAT', 12],
    ['signed.webp', 'image/webp', 'VP8 ', 20],
    ['signed.heic', 'image/heic', 'mdat', 20],
    ['signed.avif', 'image/avif', 'mdat', 8],
    ['signed.tif', 'image/tiff', undefined, 0],
  ])('are read in other kinds of pictures: %s', async (name, type, mark, behind) => {
    const path = `fixtures/photos/${name}`;
    expect(await readCredentials(path, type)).toMatchObject({
      state: 'intact',
      signer: { name: 'Invented Camera', trusted: false },
    });
    const bytes = readFileSync(path);
    const at = mark === undefined ? bytes.length - 50 : bytes.indexOf(mark) + behind;
    bytes.writeUInt8(bytes.readUInt8(at) ^ 1, at);
    const changed = await put(folder, name, bytes);
    expect((await readCredentials(changed.path, type))?.state).toBe('broken');
  });

  it('whose check was given up are told as not checked, not as bad', async () => {
    expect(await readCredentials(SIGNED, 'image/jpeg', { seconds: 0.001 })).toEqual({
      state: 'not-checked',
      findings: ['it took longer than 0.001 s'],
    });
  });

  it('are not looked for by the library in a picture that carries none', async () => {
    const begun = performance.now();
    expect(await readCredentials('fixtures/photos/plain.jpg', 'image/jpeg')).toBeUndefined();
    expect(performance.now() - begun).toBeLessThan(100);
  });
});
