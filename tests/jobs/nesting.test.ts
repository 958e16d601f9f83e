import { describe, expect, it } from 'vitest';
import { allowedFiles, oneLevelDeeper } from '../../src/jobs/collect/nesting.js';

const file = (bytes = 1) => ({ entry: 'a', bytes, read: () => (async function* () {})() });

describe('what one file may bring', () => {
  it('files, bytes and archives however nested, each told when it is more', () => {
    const outer = oneLevelDeeper(undefined, true);
    expect(allowedFiles([file(), file(5 * 1024 ** 3)], outer)).toMatchObject({
      files: [{ bytes: 1 }],
      left: ['1 file is more than one file may bring'],
    });
    const inner = oneLevelDeeper(outer, true);
    for (let i = 0; i < 199; i += 1) expect(allowedFiles([file()], inner).left).toEqual([]);
    expect(allowedFiles([file(), file()], inner)).toEqual({
      files: [],
      left: ['2 files are in more than 200 archives of one file'],
    });
    // Another file has room of its own.
    expect(allowedFiles([file()], oneLevelDeeper(undefined, true)).left).toEqual([]);
  });

  it('archives in archives, and no deeper', () => {
    const deep = oneLevelDeeper(oneLevelDeeper(oneLevelDeeper(undefined, true), true), true);
    expect(allowedFiles([file()], deep).left).toEqual(['1 file is nested too deep']);
  });
});
