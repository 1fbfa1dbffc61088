import type { Picture } from '../../core/figure/Picture.ts';
import { warmUpChart } from '../../core/figure/warm-up-chart.ts';
import { alignedSeries } from '../../core/press-comparison/aligned-series.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import type { TemperatureUnit } from '../../core/text/units-text.ts';
import { OptionError } from '../options/OptionError.ts';
import { type AnalysedHeating, analysePlatens } from '../platens/analyse-platens.ts';
import { comparesSides } from '../platens/compares-sides.ts';
import { type ComparisonOptions, comparisonOfWarmUps } from './comparison-of-warm-ups.ts';

/** Warm-ups as a picture, aligned at power-on: of one press from files, or of two with --first and --second. */
export async function warmUpPicture(
  files: readonly string[],
  options: ComparisonOptions & { readonly show: TemperatureUnit },
): Promise<Picture> {
  if (files.length > 0 && comparesSides(options)) {
    throw new OptionError(
      'chart: came both files and sides to compare',
      'Give files, or --first and --second',
    );
  }
  const short = (name: string) => neutralise(name, { longest: 40 });
  if (files.length === 0) {
    const { comparison, series, simulated } = await comparisonOfWarmUps(options);
    const names = { first: short(comparison.first.name), second: short(comparison.second.name) };
    return warmUpChart({ series, names, unit: options.show, simulated });
  }
  const analysed: AnalysedHeating[] = [];
  for (const file of files) analysed.push(...(await analysePlatens(file, options)));
  const name = short(analysed[0]?.platens.head?.pressName ?? 'press');
  return warmUpChart({
    series: analysed.flatMap(({ label, platens, result }) =>
      alignedSeries(label, 'first', platens.record, result.powerOn),
    ),
    names: { first: name, second: name },
    unit: options.show,
    simulated: analysed.some(({ platens }) => platens.head?.simulated === true),
  });
}
