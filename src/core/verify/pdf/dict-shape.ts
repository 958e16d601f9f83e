/**
 * What dictionaries that look alike have in common: their keys, in order, and their /Type. Thousands of dictionaries are
 * of a few dozen kinds, and a check that looks for keys need look at each kind only. Kinds are the branches of a tree,
 * which starts from the dictionary without entries: `new PdfKind()`.
 */
export class DictShape {
  /** Numbers of the objects that hold dictionaries of this kind. */
  readonly objects: number[] = [];
  private places: Map<string, number> | undefined;
  private next: DictShape | undefined;
  private others: Map<string, DictShape> | undefined;
  private typed: Map<string, DictShape> | undefined;

  constructor(
    private readonly before?: DictShape,
    private readonly key = '',
    private readonly count = 0,
    /** The name that stands under /Type. */
    readonly type?: string,
  ) {}

  /** The kind with one more key at its end. */
  with(key: string): DictShape {
    if (this.next === undefined) this.next = new DictShape(this, key, this.count + 1, this.type);
    if (this.next.key === key) return this.next;
    this.others ??= new Map();
    const known = this.others.get(key);
    if (known !== undefined) return known;
    const made = new DictShape(this, key, this.count + 1, this.type);
    this.others.set(key, made);
    return made;
  }

  /** The same keys with this name under /Type. */
  ofType(type: string): DictShape {
    this.typed ??= new Map();
    const known = this.typed.get(type);
    if (known !== undefined) return known;
    const made = new DictShape(this.before, this.key, this.count, type);
    this.typed.set(type, made);
    return made;
  }

  /** Notes an object that holds a dictionary of this kind; whether it is the first. */
  standsIn(object: number): boolean {
    const { objects } = this;
    if (objects[objects.length - 1] !== object) objects.push(object);
    return objects.length === 1;
  }

  has(...keys: readonly string[]): boolean {
    return keys.some((key) => this.placeOf(key) !== undefined);
  }

  /** Where the key stands, from 0; undefined when it does not. */
  placeOf(key: string): number | undefined {
    return this.byKey().get(key);
  }

  /** The keys in order, each once. */
  keys(): string[] {
    return [...this.byKey().keys()];
  }

  /** The first key that stands there a second time. */
  twice(): string | undefined {
    if (this.byKey().size === this.count) return undefined;
    const seen = new Set<string>();
    return this.inOrder().find((key) => seen.size === seen.add(key).size);
  }

  private byKey(): Map<string, number> {
    this.places ??= new Map(this.inOrder().map((key, i) => [key, i]));
    return this.places;
  }

  private inOrder(): string[] {
    const keys: string[] = [];
    for (let at: DictShape | undefined = this; at?.before !== undefined; at = at.before) keys.push(at.key);
    return keys.reverse();
  }
}
