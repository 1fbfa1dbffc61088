import { basename } from 'node:path';
import { alignedSeries } from '../../core/press-comparison/aligned-series.ts';
import { compareWarmUps } from '../../core/press-comparison/compare-warm-ups.ts';
import type { ComparisonReportInput } from '../../core/report/comparison-report.ts';
import { sideNames } from '../commands/compare.ts';
import { analyseFile } from '../commands/warm-up.ts';
import { OptionError } from '../options/OptionError.ts';
import type { WarmUpRuleOptions } from '../platens/warm-up-rules.ts';
import type { SourceOptions } from '../sources/Source.ts';
import { fileSha256 } from './file-sha256.ts';

export interface ComparisonOptions extends WarmUpRuleOptions, SourceOptions {
  readonly first?: readonly string[];
  readonly second?: readonly string[];
  readonly names?: string;
}

type Gathered = Pick<ComparisonReportInput, 'comparison' | 'series' | 'recordings' | 'simulated'>;

/** Warm-ups of two presses from files, with their traces aligned at power-on. */
export async function comparisonOfWarmUps(options: ComparisonOptions): Promise<Gathered> {
  const { first = [], second = [] } = options;
  if (first.length === 0 || second.length === 0) {
    throw new OptionError('report: two sides are needed to compare', 'Give --first FILE… and --second FILE…');
  }
  const sides = { first: await analysed(first, options), second: await analysed(second, options) };
  const names = sideNames(
    options,
    sides.first[0]?.platens.head?.pressName,
    sides.second[0]?.platens.head?.pressName,
  );
  const both = ['first', 'second'] as const;
  return {
    comparison: compareWarmUps(
      { name: names.first, warmUps: sides.first.map(({ result }) => result) },
      { name: names.second, warmUps: sides.second.map(({ result }) => result) },
    ),
    series: both.flatMap((side) =>
      sides[side].flatMap(({ platens, result }) =>
        alignedSeries(platens.name, side, platens.record, result.powerOn),
      ),
    ),
    recordings: both.flatMap((side) =>
      sides[side].map(({ file, platens }) => ({
        side: names[side],
        name: basename(file),
        madeAt: platens.head?.madeAt ?? null,
        sound: platens.sound,
        sha256: fileSha256(file),
      })),
    ),
    simulated: both.some((side) => sides[side].some(({ platens }) => platens.head?.simulated === true)),
  };
}

async function analysed(files: readonly string[], options: ComparisonOptions) {
  const all = [];
  for (const file of files) all.push({ file, ...(await analyseFile(file, options)) });
  return all;
}
