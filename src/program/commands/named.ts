import { closest } from 'fastest-levenshtein';
import { neutralise } from '../../core/text/neutralise.ts';
import { OptionError } from '../options/OptionError.ts';

/** The one of this name, or a refusal that names the nearest. */
export function named<Named extends { readonly name: string }>(
  all: readonly Named[],
  name: string,
  what: 'press' | 'assembly' | 'probe',
  further = '',
): Named {
  const found =
    all.find((one) => one.name === name) ?? all.find((one) => one.name.toLowerCase() === name.toLowerCase());
  if (found !== undefined) return found;
  const names = all.map((one) => one.name);
  const list = { press: 'presses', assembly: 'assemblies', probe: 'probes' }[what];
  throw new OptionError(
    `no ${what} "${neutralise(name)}" in the store`,
    names.length === 0
      ? `Add it first: dwellwright ${list} "${neutralise(name)}" …${further}`
      : `Did you mean "${neutralise(closest(name, names))}"? Or add it: dwellwright ${list} "${neutralise(name)}" …${further}`,
    `${what}-unknown`,
  );
}
