/** Compartments of a trailer that holds goods at several temperatures. */
import { z } from 'zod';
import { position } from './evidence/place.js';
import { channel, stateColumn } from './evidence/unit-log.js';
import { instruction } from './instruction.js';
import { type Length, metres, writtenLength } from './length.js';
import { slug } from './slug.js';

/** A column of a log by its heading, or by its number counted from 1. */
const columnName = z.union([z.string().min(1).max(200), z.int().positive()]);

export const compartment = z.strictObject({
  id: slug.meta({ description: 'Short name of the compartment, such as front' }),
  bulkhead: writtenLength.optional().meta({
    description:
      'From the front wall of the trailer to the bulkhead behind the compartment; the last one ends at the doors',
  }),
  instruction: instruction
    .optional()
    .meta({ description: 'Carriage instruction for the compartment; a line may have its own' }),
  columns: z
    .partialRecord(z.enum([...channel.options, ...stateColumn.options]), columnName)
    .optional()
    .meta({
      description:
        "Columns of the unit's log that are of this compartment, by heading or number; left out: those that bear its number from the front, or its name",
    }),
});
/** One compartment of a trailer, from the front wall or a bulkhead to the next bulkhead or the doors. */
export type Compartment = z.infer<typeof compartment>;

/** What compartments are held against: the trailer's floor, and the names of stops and lines. */
export interface CompartmentContext {
  length?: Length | undefined;
  insideLength?: Length | undefined;
  compartments: readonly Compartment[];
  stops: readonly { id: string }[];
  lines: readonly { id: string; compartment?: string | undefined }[];
}

/** What is wrong with a field of delivery.yaml. */
export interface FieldIssue {
  message: string;
  path: (string | number)[];
}

const PATH = ['equipment', 'trailer', 'compartments'];

/** What contradicts itself: names, bulkheads in their order and within the trailer, lines and their compartments. */
export function compartmentIssues(context: CompartmentContext): FieldIssue[] {
  return [...nameIssues(context), ...bulkheadIssues(context), ...lineIssues(context)];
}

function nameIssues({ compartments, stops, lines }: CompartmentContext): FieldIssue[] {
  const taken = new Map<string, string>([
    ...position.options.map((name) => [name, 'a part of the load'] as const),
    ...stops.map(({ id }) => [id.toLowerCase(), 'a stop'] as const),
    ...lines.map(({ id }) => [id.toLowerCase(), 'a line'] as const),
  ]);
  return compartments.flatMap(({ id }, i) => {
    const name = id.toLowerCase();
    const other = taken.get(name);
    taken.set(name, 'another compartment');
    return other === undefined
      ? []
      : [
          {
            message: `"${id}" is the name of ${other} too; name the compartment otherwise`,
            path: [...PATH, i, 'id'],
          },
        ];
  });
}

function bulkheadIssues({ compartments, length, insideLength }: CompartmentContext): FieldIssue[] {
  const floor = insideLength ?? length;
  let before = 0;
  return compartments.flatMap(({ id, bulkhead }, i): FieldIssue[] => {
    if (bulkhead === undefined) return [];
    const path = [...PATH, i, 'bulkhead'];
    const written = `${bulkhead.value} ${bulkhead.unit}`;
    const at = metres(bulkhead);
    if (i === compartments.length - 1)
      return [{ message: `the last compartment "${id}" ends at the doors; leave its bulkhead out`, path }];
    if (floor !== undefined && at >= metres(floor))
      return [
        {
          message: `a bulkhead ${written} from the front wall is beyond the trailer of ${floor.value} ${floor.unit}`,
          path,
        },
      ];
    if (at <= before)
      return [
        {
          message: `the bulkhead behind "${id}" is not behind the one before it; write distances from the front wall, front to rear`,
          path,
        },
      ];
    before = at;
    return [];
  });
}

function lineIssues({ compartments, lines }: CompartmentContext): FieldIssue[] {
  const ids = compartments.map(({ id }) => id);
  const choices = ids.join(', ');
  const ofLines = lines.flatMap((line, i): FieldIssue[] => {
    const path = ['lines', i, 'compartment'];
    if (line.compartment === undefined)
      return ids.length === 0
        ? []
        : [{ message: `say in which compartment line "${line.id}" is: ${choices}`, path }];
    if (ids.includes(line.compartment)) return [];
    return [
      {
        message:
          ids.length === 0
            ? `there is no compartment "${line.compartment}"; list it under equipment: trailer: compartments`
            : `there is no compartment "${line.compartment}"; there are ${choices}`,
        path,
      },
    ];
  });
  const empty = compartments.flatMap(({ id }, i) =>
    lines.some((line) => line.compartment === id)
      ? []
      : [
          {
            message: `no line is in compartment "${id}"; give a line compartment: ${id}, or take the compartment out`,
            path: [...PATH, i, 'id'],
          },
        ],
  );
  return [...ofLines, ...empty];
}
