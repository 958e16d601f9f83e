import * as hash from '#platform/hash';
import * as inflate from '#platform/inflate';
import * as signature from '#platform/signature';
import { testPieces } from '../platform/pieces.js';

testPieces('what this platform uses', { ...hash, ...inflate, ...signature });
