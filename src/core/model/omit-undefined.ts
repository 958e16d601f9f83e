/** Fields that may be undefined become fields that may be absent. */
type WithoutUndefined<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/** The fields that have a value: an optional field is absent, never present as undefined. */
export function omitUndefined<const T extends object>(fields: T): WithoutUndefined<T>;
export function omitUndefined(fields: object): object {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
}
