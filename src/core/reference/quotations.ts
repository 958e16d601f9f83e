/** The part of the library that only a reader who wants to follow a value needs, loaded when asked for. */
const FILES = [
  async () => (await import('./data/quotations/uc-davis-fruit.js')).ucDavisFruit,
  async () => (await import('./data/quotations/uc-davis-vegetables.js')).ucDavisVegetables,
  async () => (await import('./data/quotations/handbooks.js')).handbooks,
  async () => (await import('./data/quotations/tables.js')).tables,
  async () => (await import('./data/quotations/extension.js')).extension,
  async () => (await import('./data/quotations/law.js')).law,
  async () => (await import('./data/quotations/thermal.js')).thermal,
  async () => (await import('./data/quotations/other-countries.js')).otherCountries,
  async () => (await import('./data/quotations/trade.js')).trade,
] as const;

function readQuotations(text: string): [passage: string, quotation: string][] {
  let source = '';
  return text
    .trim()
    .split('\n')
    .flatMap((line): [string, string][] => {
      if (line.startsWith('@ ')) {
        source = line.slice(2);
        return [];
      }
      const mark = line.indexOf('|');
      return [[`${source} ${line.slice(0, mark)}`, line.slice(mark + 1)]];
    });
}

/** The sentences and table cells that values stand in, word for word, by passage; see `PublishedValue`. */
export async function loadQuotations(): Promise<ReadonlyMap<string, string>> {
  const texts = await Promise.all(FILES.map((load) => load()));
  return new Map(texts.flatMap(readQuotations));
}
