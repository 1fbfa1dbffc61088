import { recipeLines } from '../../core/text/store-lists-text.ts';
import { parsePressure } from '../../core/units/parse-pressure.ts';
import type { DwellOptions } from '../options/outcome-settings.ts';
import { changeInStore, type StoreOptions } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';
import { acceptStored } from '../trials/accept-stored.ts';

interface AcceptOptions extends StoreOptions, DwellOptions {
  readonly initials: string;
  readonly reason?: string;
  readonly note: string;
  readonly gauge?: string;
  readonly show: 'F' | 'C';
  readonly json?: boolean;
}

/** `accept TRIAL --initials AB`: the trial's dwell becomes the next version of its recipe. */
export async function accept(trialId: string, options: AcceptOptions): Promise<void> {
  await changeInStore(options, (store) => {
    const recipe = acceptStored(store, trialId, {
      ...options,
      ...(options.gauge === undefined ? {} : { gaugePsi: parsePressure(options.gauge, '--gauge') }),
      acceptedAt: new Date().toISOString(),
    });
    if (options.json) printJson({ recipe });
    else print(['Accepted.', recipeLines(recipe, options.show)].join('\n'));
  });
}
