import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { layoutLine } from '../../core/text/layout-text.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';

/** `layouts`: the named layouts of loggers' files. */
export async function layouts(options: StoreOptions & { readonly json?: boolean }): Promise<void> {
  await readFromStore(options, (store) => {
    const all = store.exchange.layouts();
    if (options.json) return printJson({ layouts: all });
    print(all.length === 0 ? COMMAND_TEXT.none.layout : all.map(layoutLine).join('\n'));
  });
}
