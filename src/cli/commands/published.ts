import { Command } from 'commander';
import type { CliContext } from '../context.js';
import { EXIT } from '../exit.js';

interface Options {
  quote?: boolean;
  json?: boolean;
}

export function publishedCommand({ output, exit }: CliContext): Command {
  return new Command('published')
    .description('What is published for goods, and by whom: temperatures, freezing points, humidity, life.')
    .argument('[goods...]', 'key or name of the goods, English or Spanish (default: lists them)')
    .option('--quote', 'with the sentence or table cell of each value, its source and address')
    .option('--json', 'the answer as JSON, with sentences, sources and addresses')
    .addHelpText(
      'after',
      `
Examples:
  dossier published romaine
  dossier published sweet corn --quote
  dossier published "lechuga romana" --json

Each value stands under the source that says it, as printed there, and is never joined with another.
Secondary: the source itself was not read, but a document that retells it. Values from memory are
not in the library. Nothing here says whether food is safe to eat.`,
    )
    .action(async (words: string[], options: Options) => {
      const { goodsTable } = await import('../../core/reference/goods.js');
      const name = words.join(' ');
      if (name === '') {
        if (options.json === true) return output.json(goodsTable);
        const { printGoodsNames } = await import('../lists/published-list.js');
        return printGoodsNames(output, goodsTable);
      }
      const { quotePublished } = await import('../../core/reference/quote-published.js');
      const found = await quotePublished(name);
      if (found === undefined) {
        exit(EXIT.no);
        if (options.json === true) return output.json({ goods: null });
        return output.line(
          `The library has nothing on "${name}". dossier published lists the goods that it has.`,
        );
      }
      if (options.json === true) return output.json(found);
      const { printPublished } = await import('../lists/published-list.js');
      printPublished(output, found, options.quote === true);
    });
}
