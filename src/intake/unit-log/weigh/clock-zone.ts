import type { Problem, Where } from '../../../core/model/error.js';
import { type Zone, zone as zoneSchema } from '../../../core/model/time.js';
import { zoneRules } from '../../../core/model/zone-rules.js';
import { fixedZone, type StatedZone, zoneIn } from '../../time/stated-zone.js';
import { type DateOrder, readWall } from '../../time/wall-time.js';
import type { FoundTable } from '../headings/find-table.js';
import type { LogContext } from '../log-context.js';
import { zoneLetters } from '../rows/zone-letters.js';
import type { RowLetters } from './row-letters.js';
import { rowsRead } from './ways.js';

export type ZoneVerdict =
  | { is: 'zone'; zone: Zone | 'offset'; letters?: Record<string, number | null> }
  | { is: 'doubt'; problem: Problem }
  /** Nothing says it. */
  | { is: 'unknown' };

/** What is known of the rows beyond those at the head of the table. */
export interface RowsSeen {
  /** Their earliest and latest wall time. */
  span: () => Promise<{ from: number; to: number } | undefined>;
  /** Letters of a zone that stand in them. */
  letters: RowLetters;
}

/**
 * The zone of a log's clock: every row's own offset or letters; what a person says; what the heading of the times or the lines
 * above the header state; the only zone of the stops. Two statements that differ, letters that mean several zones, and
 * letters of winter on rows of summer are asked about.
 */
export async function weighZone(
  table: FoundTable,
  order: DateOrder,
  context: LogContext,
  where: Where,
  { span, letters }: RowsSeen,
): Promise<ZoneVerdict> {
  const { zone: mapped } = context.logMap ?? {};
  if (mapped === 'offset' || statesOffsets(table, order)) return { is: 'zone', zone: 'offset' };
  const said = context.logZone ?? mapped;
  if (said !== undefined) {
    const passedOver = Object.fromEntries(letters.letters.map((one) => [one, null]));
    return { is: 'zone', zone: said, ...(letters.letters.length === 0 ? {} : { letters: passedOver }) };
  }
  const own = letters.verdict(context.zones ?? []);
  if (own.is === 'offsets') return { is: 'zone', zone: 'offset', letters: own.offsets };
  if (own.is === 'unclear')
    return {
      is: 'doubt',
      problem: {
        code: 'unsupported-file',
        message: `"${own.letters.join('" and "')}" in the rows does not say of each how far the clock is from UTC`,
        where,
        fix: 'say the zone that the clock was set to with --log-zone',
      },
    };
  const stated = statements(table, order, context.zones ?? []);
  const [first] = stated;
  if (first === undefined)
    return context.onlyZone === undefined ? { is: 'unknown' } : { is: 'zone', zone: context.onlyZone };
  const doubt = (message: string, zones: readonly Zone[]): ZoneVerdict => ({
    is: 'doubt',
    problem: {
      code: 'unsupported-file',
      message,
      where,
      fix: 'say the zone that the clock was set to with --log-zone',
      ways: zones.map((zone) => ({
        answer: `--log-zone ${zone}`,
        rows: rowsRead(table, order, -offsetAt(table, order, zone), ' UTC'),
      })),
    },
  });
  const read: Reading[] = [];
  for (const one of stated) read.push(await zonesOf(one, span));
  const zones = [...new Set(read.flatMap((r) => r.zones))];
  const texts = [...new Set(stated.map(({ text }) => `"${text}"`))].join(' and ');
  const [only] = zones;
  if (only !== undefined && zones.length === 1 && read.every((r) => r.sure))
    return { is: 'zone', zone: only };
  if (stated.length > 1 && zones.length > 1)
    return doubt(`the table states the zone of its clock as ${texts}`, zones);
  return doubt(`${texts} beside the times does not say how far the clock is from UTC`, zones);
}

interface Reading {
  zones: Zone[];
  sure: boolean;
}

async function zonesOf(
  stated: StatedZone,
  span: () => Promise<{ from: number; to: number } | undefined>,
): Promise<Reading> {
  switch (stated.is) {
    case 'zone':
      return { zones: [stated.zone], sure: true };
    case 'offset': {
      const zone = fixedZone(stated.minutes);
      return { zones: zone === undefined ? [] : [zone], sure: zone !== undefined };
    }
    case 'word': {
      const { zone, offset } = stated.named;
      if (offset === undefined) return { zones: [zone], sure: true };
      const fixed = fixedZone(offset);
      const days = await span();
      // EST on rows of July is a clock that keeps winter time, or a word for New York's time as it was.
      const keeps = days !== undefined && offsets(zone, days).every((minutes) => minutes === offset);
      if (fixed !== undefined && keeps) return { zones: [fixed], sure: true };
      return { zones: fixed === undefined ? [zone] : [fixed, zone], sure: false };
    }
    case 'unclear':
      return { zones: [], sure: false };
  }
}

const WEEK = 7 * 86_400_000;

/** Offsets in minutes that a zone has between two wall times, looked at week by week. */
function offsets(zone: Zone, { from, to }: { from: number; to: number }): number[] {
  const rules = zoneRules(zone);
  const found = [rules.offset(to)];
  for (let at = from; at < to && found.length < 2_000; at += WEEK) found.push(rules.offset(at));
  return found;
}

function offsetAt(table: FoundTable, order: DateOrder, zone: Zone): number {
  const wall = table.sample
    .map((row) => readWall(timeText(table, row), order)?.wall)
    .find((one) => one !== undefined);
  return wall === undefined ? 0 : zoneRules(zone).offset(wall) * 60_000;
}

const timeText = (table: FoundTable, row: readonly string[]) =>
  table.columns.time.map((c) => row[c] ?? '').join(' ');

function statesOffsets(table: FoundTable, order: DateOrder): boolean {
  const read = table.sample.flatMap((row) => readWall(timeText(table, row), order) ?? []);
  return read.length > 0 && read.every((wall) => wall.offset !== undefined);
}

/** What the headings of the times and the lines above them say of the zone. */
function statements(table: FoundTable, order: DateOrder, near: readonly Zone[]): StatedZone[] {
  const headings = table.columns.time.map((column) => (table.headings[column] ?? '').replaceAll('_', ' '));
  const inHeadings = headings.flatMap((heading) => zoneIn(heading, near) ?? []);
  return [...inHeadings, ...above(table.preamble, near), ...ofFirstRow(table, order, near)];
}

/** Milliseconds by which the start that a table states may differ from its first row. */
const SAME_START = 60_000;

/** The zone of a time above the rows that is the time of the first row: both are of one clock. */
function ofFirstRow(table: FoundTable, order: DateOrder, near: readonly Zone[]): StatedZone[] {
  const first = table.sample
    .map((row) => readWall(timeText(table, row), order)?.wall)
    .find((wall) => wall !== undefined);
  if (first === undefined) return [];
  return table.preamble.flatMap((cells) =>
    cells.flatMap((cell, i) => {
      const behind = cell.slice(cell.indexOf(':') + 1).trim();
      return [cell.trim(), behind, (cells[i + 1] ?? '').trim()].flatMap((text): StatedZone[] => {
        const found = zoneLetters(text);
        const wall = readWall(found?.rest ?? text, order);
        if (wall === undefined || Math.abs(wall.wall - first) > SAME_START) return [];
        if (wall.offset !== undefined) return [{ is: 'offset', minutes: wall.offset, text }];
        const named = found === undefined ? undefined : zoneIn(found.letters, near);
        return named === undefined ? [] : [named];
      });
    }),
  );
}

const LABEL = /zone\b|\btz\b|clock|utc offset|gmt offset|huso|fuseau|zeitzone/i;

/** A zone beside or under a label such as `Time zone` or `Clock zone`. */
function above(preamble: readonly (readonly string[])[], near: readonly Zone[]): StatedZone[] {
  return preamble.flatMap((cells, line) =>
    cells.flatMap((cell, i) => {
      if (!LABEL.test(cell) || cell.length > 200) return [];
      const [, ...rest] = cell.split(/[:=]/);
      const beside = [rest.join(':'), cells[i + 1] ?? '', preamble[line + 1]?.[i] ?? '', cell];
      for (const text of beside) {
        const found = zoneIn(text, near) ?? signed(text);
        if (found !== undefined) return [found];
      }
      return [];
    }),
  );
}

/** A number with a sign, which beside a label of a zone is an offset in hours. */
function signed(text: string): StatedZone | undefined {
  const match = /^\s*([+\-−])(\d{1,2})(?:[.:](\d{2}))?\s*(?:h|hours?)?\s*$/i.exec(text);
  if (match === null) return undefined;
  const minutes = Number(match[2]) * 60 + Number(match[3] ?? 0);
  return { is: 'offset', minutes: match[1] === '+' ? minutes : -minutes, text: text.trim() };
}

export const UTC = zoneSchema.parse('UTC');
