import { widthOf } from './svg.js';

export interface Mark {
  at: number;
  label: string;
}
export interface PlacedMark {
  mark: Mark;
  x: number;
  anchor: 'start' | 'end';
  /** Row of the label, counted upwards from the axis; undefined when there is no room for it. */
  row?: number;
}

/**
 * Assigns rows to the labels of marks on an axis, so that no label covers another and no leader line cuts through a
 * label. Marks left of the middle are labelled to the right, the others to the left.
 */
export function placeMarks(
  marks: readonly Mark[],
  x: (at: number) => number,
  middle: number,
  size: number,
  mostRows: number,
): PlacedMark[] {
  const placed = marks.map(
    (mark): PlacedMark => ({ mark, x: x(mark.at), anchor: x(mark.at) <= middle ? 'start' : 'end' }),
  );
  const extent = (one: PlacedMark): [number, number] => {
    const wide = widthOf(one.mark.label, size) + 6;
    return one.anchor === 'start' ? [one.x, one.x + wide] : [one.x - wide, one.x];
  };
  const done: PlacedMark[] = [];
  const starts = placed.filter((one) => one.anchor === 'start').sort((a, b) => b.x - a.x);
  const ends = placed.filter((one) => one.anchor === 'end').sort((a, b) => a.x - b.x);
  for (const one of [...starts, ...ends]) {
    const [left, right] = extent(one);
    // A label must be above every leader line within its extent, and above labels it would touch.
    const below = done.filter((other) => {
      if (other.row === undefined) return false;
      const [otherLeft, otherRight] = extent(other);
      return otherLeft < right && otherRight > left;
    });
    const row = below.reduce((top, other) => Math.max(top, (other.row ?? 0) + 1), 0);
    if (row < mostRows) one.row = row;
    done.push(one);
  }
  return placed;
}

export const rowsOf = (placed: readonly PlacedMark[]): number =>
  placed.reduce((most, one) => Math.max(most, (one.row ?? -1) + 1), 0);
