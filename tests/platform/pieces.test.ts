import * as browserHash from '../../src/platform/browser/hash.js';
import * as browserInflate from '../../src/platform/browser/inflate.js';
import * as browserSignature from '../../src/platform/browser/signature.js';
import { testPieces } from './pieces.js';

// Node 20 unpacks what stands before something else, where browsers refuse it; `tests/core/platform.test.ts` tries it there.
testPieces('what browsers use, in Node', { ...browserHash, ...browserInflate, ...browserSignature }, false);
