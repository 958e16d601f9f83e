/**
 * One row of the produce table as it is kept: °F as published, and beside each value the keys of its
 * sources, parted by spaces. The key M means that the value was not read in a source.
 */
export interface ProduceRow {
  key: string;
  name: string;
  /** Other trade names that mean this row. */
  aliases?: readonly string[];
  /** Lowest and highest temperature of the published range. */
  range: readonly [low: number, high: number, sources: string];
  /** Highest freezing point. */
  freezing?: readonly [value: number, sources: string];
  /**
   * Below the threshold it is harmed in time; low and high differ where sources, cultivars or ripeness do. A band
   * is harmful between its ends and not below.
   */
  chilling?: readonly [low: number, high: number, sources: string, is?: 'floor' | 'band'];
  /** Values of other sources that differ. */
  others?: readonly (readonly [
    field: 'freezing' | 'chilling' | 'range',
    value: number,
    source: string,
    note: string,
  ])[];
  note?: string;
}
