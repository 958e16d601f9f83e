import { z } from 'zod';

/** The parts of JSON Schema that zod writes and the tables read. */
const shape = z.object({
  type: z.string().optional(),
  description: z.string().optional(),
  const: z.unknown().optional(),
  enum: z.array(z.unknown()).optional(),
  default: z.unknown().optional(),
  get anyOf() {
    return z.array(shape).optional();
  },
  get oneOf() {
    return z.array(shape).optional();
  },
  get items() {
    return z.union([z.boolean(), shape]).optional();
  },
  get prefixItems() {
    return z.array(shape).optional();
  },
  get properties() {
    return z.record(z.string(), shape).optional();
  },
  required: z.array(z.string()).optional(),
});
type Shape = z.infer<typeof shape>;

/** What the members of a list are, where all are alike. */
const itemOf = ({ items }: Shape): Shape | undefined => (typeof items === 'object' ? items : undefined);

const shapeOf = (schema: z.ZodType): Shape =>
  shape.parse(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any', reused: 'inline' }));

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows].map((row) => `| ${row.join(' | ')} |`).join('\n');

/** A table of every field of a schema, nested ones by their path, with the words of their `meta`. */
export function fieldTable(schema: z.ZodType): string {
  return table(['field', 'values', 'what it is'], rowsOf(shapeOf(schema)));
}

/** A table of the fields that all members of a union have, and one of those that each has besides, by its name. */
export function kindTable(schema: z.ZodType, name: string): string {
  const members = membersOf(shapeOf(schema));
  const [first] = members;
  const isShared = (field: string) =>
    field !== name &&
    new Set(members.map(({ properties }) => JSON.stringify(properties?.[field]))).size === 1;
  const fieldsOf = (member: Shape | undefined, wanted: (field: string) => boolean): Shape => ({
    ...member,
    properties: Object.fromEntries(
      Object.entries(member?.properties ?? {}).filter(([field]) => wanted(field)),
    ),
  });
  const rows = members.flatMap((member) => {
    const own = rowsOf(fieldsOf(member, (field) => field !== name && !isShared(field)));
    const kind = `\`${String(member.properties?.[name]?.const)}\``;
    return [[kind, '', '', member.description ?? ''], ...own.map((row) => ['', ...row])];
  });
  return [
    table(['field', 'values', 'what it is'], rowsOf(fieldsOf(first, isShared))),
    table([`\`${name}\``, 'field', 'values', 'what it is'], rows),
  ].join('\n\n');
}

const membersOf = (one: Shape): Shape[] => {
  const several = one.oneOf ?? one.anyOf;
  return several === undefined ? [one] : several.flatMap(membersOf);
};

/** A part that is like one before it is named, not written out again. */
function rowsOf(one: Shape, under = '', seen = new Map<string, string>()): string[][] {
  return Object.entries(one.properties ?? {}).flatMap(([name, field]) => {
    const path = `${under}${name}`;
    const inner = field.type === 'array' ? itemOf(field) : field;
    const nested = inner?.properties;
    const key = JSON.stringify(nested);
    const like = nested === undefined ? undefined : seen.get(key);
    if (nested !== undefined && like === undefined) seen.set(key, path);
    const values = like === undefined ? valuesOf(field) : `as \`${like}\``;
    const left = (one.required ?? []).includes(name) ? [] : [leftOut(field)];
    const words = [[values, ...left].join('; '), field.description ?? ''];
    const row = [`\`${path}\``, ...words.map((text) => text.replaceAll('|', '\\|'))];
    if (inner === undefined || nested === undefined || like !== undefined) return [row];
    return [row, ...rowsOf(inner, `${path}${field.type === 'array' ? '[].' : '.'}`, seen)];
  });
}

const leftOut = ({ default: value }: Shape): string =>
  value === undefined ? 'optional' : `optional, \`${JSON.stringify(value)}\``;

/** What a value can be, in words. */
function valuesOf(one: Shape): string {
  if (one.const !== undefined) return `\`${String(one.const)}\``;
  if (one.enum !== undefined) return one.enum.map((value) => `\`${String(value)}\``).join(' ');
  const several = membersOf(one);
  if (several.length > 1) return choiceOf(several);
  switch (one.type) {
    case 'array':
      return listOf(one);
    case 'object':
      return 'object';
    case 'integer':
      return 'whole number';
    case 'boolean':
      return 'true or false';
    case 'string':
      return 'text';
    default:
      return one.type ?? 'any value';
  }
}

/** A list by its members, which have rows of their own where they are objects. */
function listOf(one: Shape): string {
  const { prefixItems } = one;
  const item = itemOf(one);
  if (prefixItems !== undefined)
    return `list of ${prefixItems.length}: ${[...new Set(prefixItems.map(valuesOf))].join(' or ')}`;
  return item === undefined || item.properties !== undefined ? 'list' : `list: ${valuesOf(item)}`;
}

/** Objects that one field tells apart are named by it. */
function choiceOf(members: readonly Shape[]): string {
  const name = Object.keys(members[0]?.properties ?? {}).find((field) =>
    members.every(({ properties }) => properties?.[field]?.const !== undefined),
  );
  if (name === undefined) return [...new Set(members.map(valuesOf))].join(' or ');
  const names = new Set(members.map(({ properties }) => `\`${String(properties?.[name]?.const)}\``));
  return `object, by its \`${name}\`: ${[...names].join(' ')}`;
}
