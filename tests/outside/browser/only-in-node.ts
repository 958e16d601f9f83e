/** Tests of the core that a browser can't run, with why. */
export const ONLY_IN_NODE: Readonly<Record<string, string>> = {
  'tests/core/pictures': 'they compare with what sharp decodes',
  'tests/core/verify':
    'they forge files with Node’s crypto, zlib and disk; `verify.check.ts` holds a browser’s reports to Node’s',
};
