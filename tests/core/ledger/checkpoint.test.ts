import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Checkpoint,
  parseCheckpoint,
  parseFingerprint,
  printCheckpoint,
  printFingerprint,
} from '../../../src/core/ledger/checkpoint.js';
import { EMPTY_ROOT, sha256Of } from '../../../src/core/ledger/tree.js';

const anyHead: fc.Arbitrary<Checkpoint> = fc.record({
  delivery: fc.stringMatching(/^[A-Za-z0-9é][A-Za-z0-9._/ -]{0,20}$/),
  size: fc.nat(),
  root: fc.uint8Array().map(sha256Of),
});

describe('a checkpoint', () => {
  it('has origin, size and base64 root on three lines (C2SP tlog-checkpoint)', () => {
    // The root of no entries in base64 is that of SHA-256 of nothing (RFC 9162 §2.1.1).
    expect(printCheckpoint({ delivery: '2026-0714-A', size: 0, root: EMPTY_ROOT })).toBe(
      'load-dossier/2026-0714-A\n0\n47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=\n',
    );
  });

  it('is read as it was printed', () => {
    fc.assert(
      fc.property(anyHead, (head) => {
        expect(parseCheckpoint(printCheckpoint(head))).toEqual(head);
      }),
    );
  });

  it('has one form only: no other text is read as the same', () => {
    fc.assert(
      fc.property(anyHead, fc.nat(), fc.string({ maxLength: 1 }), (head, at, put) => {
        const text = printCheckpoint(head);
        const i = at % (text.length + 1);
        const changed = text.slice(0, i) + put + text.slice(i + 1);
        fc.pre(changed !== text);
        expect(parseCheckpoint(changed)).not.toEqual(head);
      }),
    );
  });

  it.each([
    ['nothing', ''],
    ['another origin', 'example.com/log\n0\n47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=\n'],
    ['no name', 'load-dossier/\n0\n47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=\n'],
    ['a size with a zero in front', 'load-dossier/a\n01\n47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=\n'],
    ['a short root', 'load-dossier/a\n1\n47DEQpj8HBSa\n'],
    ['a root with spare bits', 'load-dossier/a\n0\n47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFV=\n'],
    ['Windows line ends', 'load-dossier/a\r\n0\r\n47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=\r\n'],
    ['no end of line', 'load-dossier/a\n0\n47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='],
    ['more lines', 'load-dossier/a\n0\n47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=\nmore\n'],
  ])('is not read from %s', (_name, text) => {
    expect(parseCheckpoint(text)).toBeUndefined();
  });
});

describe('a fingerprint line', () => {
  it('is name, size and root in hexadecimal', () => {
    expect(printFingerprint({ delivery: 'A 1', size: 0, root: EMPTY_ROOT })).toBe(`A 1 0 ${EMPTY_ROOT}`);
  });

  it('is read as it was printed, also as a mail programme may hand it on', () => {
    fc.assert(
      fc.property(anyHead, (head) => {
        expect(parseFingerprint(printFingerprint(head))).toEqual(head);
        expect(parseFingerprint(` ${head.delivery} ${head.size} ${head.root.toUpperCase()}\r\n`)).toEqual({
          ...head,
          delivery: head.delivery,
        });
      }),
    );
  });

  it.each(['', 'A 1', `A ${EMPTY_ROOT}`, `A 1 ${EMPTY_ROOT.slice(1)}`, `A -1 ${EMPTY_ROOT}`])(
    'is not read from "%s"',
    (line) => expect(parseFingerprint(line)).toBeUndefined(),
  );
});
