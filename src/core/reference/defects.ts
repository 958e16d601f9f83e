import type { DefectNature } from '../model/evidence.js';
import type { DefectCauseText } from '../model/results.js';
import { type CauseLine, causeLines, causeSources, defectLines } from './data/defects.js';

/** What the nature of a defect rests on: the regulation, a list of the trade, or common practice without a source. */
export type NatureBasis = '46.44' | 'trade' | 'practice';

/** A defect that certificates name. */
export interface KnownDefect {
  id: string;
  nature: DefectNature;
  natureBy: NatureBasis;
}

const plain = (text: string) =>
  ` ${text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()} `;

interface NamedDefect extends KnownDefect {
  words: string;
}

/** Longest name first, so that `gray mold rot` is no rot. */
const named: readonly NamedDefect[] = defectLines
  .trim()
  .split('\n')
  .flatMap((line): NamedDefect[] => {
    const [id = '', english = '', spanish = '', nature, natureBy] = line.split('|');
    if (nature !== 'condition' && nature !== 'permanent') throw new Error(`not a defect: ${line}`);
    if (natureBy !== '46.44' && natureBy !== 'trade' && natureBy !== 'practice')
      throw new Error(`not a basis: ${line}`);
    return [...english.split('; '), ...spanish.split('; ')].map((words) => ({
      ...{ id, nature, natureBy },
      words: plain(words),
    }));
  })
  .sort((a, b) => b.words.length - a.words.length);

/** The defect that a certificate's words name; undefined where none of the known ones stands in them. */
export function defectNamed(text: string): KnownDefect | undefined {
  const wanted = plain(text);
  const found = named.find(({ words }) => wanted.includes(words));
  return found === undefined ? undefined : { id: found.id, nature: found.nature, natureBy: found.natureBy };
}

/** Defects that are decay for 7 CFR 46.44. */
export const isDecay = ({ id }: KnownDefect): boolean => id === 'decay' || id === 'gray-mold';

/** Texts on what usually causes a defect of these goods: those that name the goods first. None is a verdict. */
export function publishedCauses(defect: string, goods: string | undefined): DefectCauseText[] {
  const about = (line: CauseLine, key: string) => line.defects.includes(defect) && line.goods.includes(key);
  return [
    ...causeLines.filter((line) => goods !== undefined && about(line, goods)),
    ...causeLines.filter((line) => about(line, '*')),
  ].map(({ cause, source, quote }) => ({ cause, ...causeSources[source], quote }));
}
