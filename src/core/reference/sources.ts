import { sourceLines } from './data/sources.js';

/**
 * `read`: the source itself was read, also in a copy that somebody else holds. `secondary`: a document that retells
 * another was read, and the other was not. Values from memory are not in the library.
 */
export type SourceStatus = 'read' | 'secondary';

/** A publication that values were taken from. */
export interface Source {
  id: string;
  /** As it is named beside a value: `UC Davis`. */
  name: string;
  title: string;
  /** The author, or the body that published it. */
  by: string;
  /** Year, edition, or whose copy was read. */
  edition: string;
  address: string;
  status: SourceStatus;
  /** The day on which it was read. */
  read: string;
}

/** The day on which all sources were read; a source that is added later states its own. */
const READ = '2026-11-30';

function fromLine(line: string): Source {
  const [id = '', name = '', title = '', by = '', edition = '', address = '', status, read = READ] =
    line.split('|');
  if (id === '' || name === '' || title === '' || (status !== 'read' && status !== 'secondary'))
    throw new Error(`not a line of sources: ${line}`);
  return { id, name, title, by, edition, address, status, read };
}

/** Every source of the library, by id. */
export const sources: ReadonlyMap<string, Source> = new Map(
  sourceLines
    .trim()
    .split('\n')
    .map(fromLine)
    .map((source) => [source.id, source]),
);

/** The source with this id, which the library must have. */
export function sourceOf(id: string): Source {
  const source = sources.get(id);
  if (source === undefined) throw new Error(`no source ${id}`);
  return source;
}
