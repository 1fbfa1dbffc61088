import { realpathSync } from 'node:fs';
import { extname } from 'node:path';
import { neutralise } from '../../core/text/neutralise.ts';
import { OptionError } from '../options/OptionError.ts';

/** The kind of file that the name's ending asks for; refuses other endings, and to write over what is read. */
export function outFile<Kind extends string>(
  out: string,
  kinds: Readonly<Record<Kind, readonly string[]>>,
  inputs: readonly string[],
): Kind {
  const ending = extname(out).toLowerCase();
  const kind = (Object.keys(kinds) as Kind[]).find((one) => kinds[one].includes(ending));
  if (kind === undefined) {
    const endings = (Object.values(kinds) as (readonly string[])[]).map(([first]) => first).join(' or ');
    throw new OptionError(
      `--out: expected a file that ends in ${endings}, came "${neutralise(out)}"`,
      `Name a file that ends in ${endings}`,
    );
  }
  if (inputs.some((input) => same(input, out))) {
    throw new OptionError(`--out: ${neutralise(out)} is one of the files to be read`, 'Name another file');
  }
  return kind;
}

function same(one: string, other: string): boolean {
  try {
    return realpathSync(one) === realpathSync(other);
  } catch {
    // One of the two does not exist yet, so nothing can be written over.
    return false;
  }
}
