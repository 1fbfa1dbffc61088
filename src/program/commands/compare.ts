import { OptionError } from '../options/OptionError.ts';
import type { RuleOptions } from '../options/run-rules.ts';
import type { SideOptions } from '../platens/gather-sides.ts';

export interface CompareOptions extends SideOptions, Pick<RuleOptions, 'target' | 'hold'> {
  readonly firstTrial?: string;
  readonly secondTrial?: string;
  readonly of?: 'warm-ups' | 'trials';
  readonly slower?: string;
  readonly faster?: string;
  readonly probePart?: string;
  readonly dwell?: string;
  readonly highestPeak?: string;
  readonly series?: boolean;
  readonly show: 'F' | 'C';
  readonly json?: boolean;
}

/** `compare`: two presses, or one over time, by warm-ups or by trials. Which of the two is found out from the files unless stated. */
export async function compare(options: CompareOptions): Promise<void> {
  const stored = options.firstTrial !== undefined || options.secondTrial !== undefined;
  if (stored || options.of === 'trials') {
    const { compareTrialSources } = await import('../platens/compare-trial-sources.ts');
    return compareTrialSources(options);
  }
  const { compareWarmUpFiles, looksLikeTrial } = await import('../platens/compare-warm-up-files.ts');
  const [first] = options.first ?? [];
  const bothNamed = first !== undefined && (options.second ?? []).length > 0;
  if (options.of === undefined && bothNamed && (await looksLikeTrial(first, options))) {
    const { compareTrialSources } = await import('../platens/compare-trial-sources.ts');
    return compareTrialSources(options);
  }
  return compareWarmUpFiles(options);
}

/** Names of the two sides: as stated, else the presses' own where they differ, else by place. */
export function sideNames(
  options: Pick<CompareOptions, 'names'>,
  first: string | undefined,
  second: string | undefined,
  places: readonly [string, string] = ['first', 'second'],
): { readonly first: string; readonly second: string } {
  if (options.names !== undefined) {
    const parts = options.names.split(',').map((part) => part.trim());
    if (parts.length !== 2 || parts.includes('')) {
      throw new OptionError(
        `--names: expected two names parted by a comma, came "${options.names}"`,
        'Write for example --names "before, after"',
      );
    }
    return { first: parts[0]!, second: parts[1]! };
  }
  if (first !== undefined && second !== undefined && first !== second) return { first, second };
  return { first: places[0], second: places[1] };
}
