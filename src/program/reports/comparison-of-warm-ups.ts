import { basename } from 'node:path';
import { alignedSeries } from '../../core/press-comparison/aligned-series.ts';
import { compareWarmUps } from '../../core/press-comparison/compare-warm-ups.ts';
import { headProbes } from '../../core/probe/head-probes.ts';
import type { ComparisonReportInput } from '../../core/report/comparison-report.ts';
import { gatherSides, type SideOptions } from '../platens/gather-sides.ts';
import { distinctProbes } from './source-trace.ts';

export type ComparisonOptions = SideOptions;

type Gathered = Pick<
  ComparisonReportInput,
  'comparison' | 'series' | 'recordings' | 'simulated' | 'remarks' | 'heads' | 'probes'
>;

/** Warm-ups of two presses, or of one over time, with their traces aligned at power-on. */
export async function comparisonOfWarmUps(options: ComparisonOptions): Promise<Gathered> {
  const sides = await gatherSides(options);
  const both = ['first', 'second'] as const;
  const heads = both.flatMap((side) => sides[side].heatings.map(({ platens }) => platens.head));
  return {
    comparison: compareWarmUps(
      { name: sides.first.name, warmUps: sides.first.heatings.map(({ result }) => result) },
      { name: sides.second.name, warmUps: sides.second.heatings.map(({ result }) => result) },
    ),
    series: both.flatMap((side) =>
      sides[side].heatings.flatMap(({ label, platens, result }) =>
        alignedSeries(label, side, platens.record, result.powerOn),
      ),
    ),
    recordings: both.flatMap((side) =>
      sides[side].heatings.map(({ label, platens }) => ({
        side: sides[side].name,
        name: basename(label),
        madeAt: platens.head?.madeAt ?? null,
        sound: platens.sound,
        sha256: platens.sha256,
      })),
    ),
    heads,
    probes: distinctProbes(heads.flatMap((head) => (head === null ? [] : headProbes(head)))),
    remarks: both.flatMap((side) => sides[side].remarks),
    simulated: both.some((side) =>
      sides[side].heatings.some(({ platens }) => platens.head?.simulated === true),
    ),
  };
}
