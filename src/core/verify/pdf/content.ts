import { refuse } from '../malformed.js';
import { ENDS, WHITE } from './characters.js';

/** Maps a point of a drawing to the page (ISO 32000-1 §8.3.4): x' = a·x + c·y + e, y' = b·x + d·y + f. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** One use of an external object in the content of a page. */
export interface Drawing {
  /** Its name among the resources of the page. */
  name: string;
  /** Maps the unit square of a picture to the page, in points. */
  matrix: Matrix;
}

const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];
const DEEPEST_STATE = 256;
const TOKEN = new RegExp(
  `[${WHITE}]+|/([^${ENDS}]*)|([+-]?(?:\\d+\\.?\\d*|\\.\\d+))(?=[${ENDS}]|$)|([A-Za-z'"][A-Za-z0-9*'"]*)|<<|>>|<[0-9A-Fa-f${WHITE}]*>|[[\\]]`,
  'y',
);
const STRING = /[^()\\]*/y;

/**
 * The external objects that the content of a page draws, in order (ISO 32000-1 §8.4.2, §8.8).
 * @throws Malformed for a picture that stands in the content itself, and for content that is cut off
 */
export function drawingsIn(content: string): Drawing[] {
  const found: Drawing[] = [];
  const states: Matrix[] = [];
  let matrix = IDENTITY;
  let numbers: number[] = [];
  let name = '';
  const operate = (operator: string): void => {
    if (operator === 'q') states.push(matrix);
    else if (operator === 'Q') matrix = states.pop() ?? refuse('a page restores a state that was not saved');
    else if (operator === 'cm') matrix = combined(matrixOf(numbers), matrix);
    else if (operator === 'Do') found.push({ name, matrix });
    else if (operator === 'BI') refuse('a picture that stands in the content of a page');
    if (states.length > DEEPEST_STATE) refuse('a page saves its state too deep');
    numbers = [];
  };
  for (let at = 0; at < content.length; ) {
    if (content[at] === '(') {
      at = afterString(content, at);
      continue;
    }
    TOKEN.lastIndex = at;
    const token = TOKEN.exec(content);
    if (token === null) return refuse(`no PDF syntax at character ${at} of a page's content`);
    at = TOKEN.lastIndex;
    if (token[1] !== undefined) name = token[1];
    else if (token[2] !== undefined) numbers.push(Number(token[2]));
    else if (token[3] !== undefined) operate(token[3]);
  }
  return found;
}

function matrixOf([a, b, c, d, e, f, more]: readonly number[]): Matrix {
  if (a === undefined || b === undefined || c === undefined || d === undefined)
    return refuse('a matrix that is short');
  if (e === undefined || f === undefined || more !== undefined) return refuse('a matrix without six numbers');
  return [a, b, c, d, e, f];
}

/** The matrix that maps by the first and then by the second. */
function combined(first: Matrix, second: Matrix): Matrix {
  const [a, b, c, d, e, f] = first;
  const [A, B, C, D, E, F] = second;
  return [a * A + b * C, a * B + b * D, c * A + d * C, c * B + d * D, e * A + f * C + E, e * B + f * D + F];
}

function afterString(content: string, from: number): number {
  let at = from + 1;
  for (let open = 1; open > 0; at += 1) {
    STRING.lastIndex = at;
    STRING.test(content);
    at = STRING.lastIndex;
    if (at >= content.length) refuse("a string without end in a page's content");
    if (content[at] === '(') open += 1;
    else if (content[at] === ')') open -= 1;
    else at += 1;
  }
  return at;
}
