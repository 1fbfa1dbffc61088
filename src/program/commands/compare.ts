import { OptionError } from '../options/OptionError.ts';
import type { RuleOptions } from '../options/run-rules.ts';
import type { StoreOptions } from '../options/with-store.ts';
import type { WarmUpRuleOptions } from '../platens/warm-up-rules.ts';
import type { SourceOptions } from '../sources/Source.ts';

export interface CompareOptions
  extends WarmUpRuleOptions,
    SourceOptions,
    StoreOptions,
    Pick<RuleOptions, 'target' | 'hold'> {
  readonly first?: readonly string[];
  readonly second?: readonly string[];
  readonly firstTrial?: string;
  readonly secondTrial?: string;
  readonly of?: 'warm-ups' | 'trials';
  readonly names?: string;
  readonly slower?: string;
  readonly faster?: string;
  readonly probePart?: string;
  readonly dwell?: string;
  readonly highestPeak?: string;
  readonly series?: boolean;
  readonly show: 'F' | 'C';
  readonly json?: boolean;
}

/** `compare`: two presses by warm-ups or by trials. Which of the two is found out from the files unless stated. */
export async function compare(options: CompareOptions): Promise<void> {
  const stored = options.firstTrial !== undefined || options.secondTrial !== undefined;
  if (stored || options.of === 'trials') {
    const { compareTrialSources } = await import('../platens/compare-trial-sources.ts');
    return compareTrialSources(options);
  }
  const [first, second] = [options.first ?? [], options.second ?? []];
  if (first.length === 0 || second.length === 0) {
    throw new OptionError(
      'compare: two sides are needed',
      'Give --first FILE… --second FILE…, or --first-trial ID --second-trial ID',
    );
  }
  const { compareWarmUpFiles, looksLikeTrial } = await import('../platens/compare-warm-up-files.ts');
  if (options.of === undefined && (await looksLikeTrial(first[0]!, options))) {
    const { compareTrialSources } = await import('../platens/compare-trial-sources.ts');
    return compareTrialSources(options);
  }
  return compareWarmUpFiles(first, second, options);
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
