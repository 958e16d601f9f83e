/** What people call the parts that others play, by the word that records hold. Common practice of the trade, no source. */
const CALLED: readonly (readonly [role: string, called: readonly string[]])[] = [
  ['receiver', ['receiver', 'consignee', 'receiving', 'receiving clerk', 'receiving dock', 'destinatario']],
  ['shipper', ['shipper', 'consignor', 'packer', 'grower', 'embarcador', 'remitente']],
  ['broker', ['broker', 'freight broker', 'intermediario']],
  ['dispatcher', ['dispatcher', 'dispatch']],
  ['insurer', ['insurer', 'insurance', 'insurance company', 'underwriter', 'aseguradora']],
  ['carrier', ['carrier', 'trucker', 'trucking company', 'transportista']],
  ['inspector', ['inspector', 'surveyor', 'usda', 'usda inspector']],
  ['driver', ['driver', 'chofer', 'conductor']],
  ['owner', ['owner', 'owner of the goods']],
  // Whose warehouse it is is not said.
  ['other', ['warehouse', 'cold storage', 'other']],
];

const ROLE_OF = new Map(CALLED.flatMap(([role, called]) => called.map((name) => [name, role] as const)));

/** `the shipper's agent` acts for the shipper. */
const plain = (said: string): string =>
  said
    .trim()
    .toLowerCase()
    .replace(/^the\s+/, '')
    .replace(/['’]s\s+(?:agent|office|desk|clerk|man|rep(?:resentative)?)$/, '')
    .replace(/\s+agent$/, '')
    .replaceAll(/[\s_-]+/g, ' ');

/** The role of a list that a word means: `consignee` is the receiver, `shipper's agent` the shipper. */
export function roleOf<T extends string>(said: string, options: readonly T[]): T | undefined {
  const role = ROLE_OF.get(plain(said)) ?? plain(said).replaceAll(' ', '-');
  return options.find((option) => option === role);
}

/**
 * The role of a list that a name begins with: `by receiver` and `by the consignee R. Vela` are the receiver's.
 * Undefined for a name alone.
 */
export function roleOfName<T extends string>(name: string, options: readonly T[]): T | undefined {
  const words = name.trim().split(/\s+/).slice(0, 5);
  for (let length = words.length; length > 0; length -= 1) {
    const begin = words
      .slice(0, length)
      .join(' ')
      .replace(/[,;:]$/, '');
    const role = ROLE_OF.get(plain(begin));
    const found = options.find((option) => option === role);
    if (found !== undefined) return found;
  }
  return undefined;
}
