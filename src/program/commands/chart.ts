import { writeTextFile } from '../../adapters/files/write-text-file.ts';
import type { Picture } from '../../core/figure/Picture.ts';
import { pictureSvg } from '../../core/figure/picture-svg.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { REPORT_TEXT } from '../../core/text/report-text.ts';
import { parseCount } from '../options/parse-count.ts';
import { print } from '../output/print.ts';
import { comparesSides } from '../platens/compares-sides.ts';
import type { ChartView } from '../reports/chart-of-trial.ts';
import type { ComparisonOptions } from '../reports/comparison-of-warm-ups.ts';
import type { GatherOptions } from '../reports/gather-trial.ts';
import {
  OTHER_VIEWS,
  type OtherPictureOptions,
  type OtherView,
  otherPicture,
} from '../reports/other-pictures.ts';
import { outFile } from '../reports/out-file.ts';
import type { TransferOptions } from '../reports/transfer-of-trials.ts';
import { pageTypeface, typefaceFiles } from '../reports/typeface.ts';

interface ChartOptions extends GatherOptions, ComparisonOptions, OtherPictureOptions, TransferOptions {
  readonly out: string;
  readonly view?: ChartView | OtherView | 'warm-up' | 'presses';
  readonly run?: string;
  readonly width: string;
  readonly show: 'F' | 'C';
}

const KINDS = { svg: ['.svg'], png: ['.png'] } as const;

/** `chart FILES… | --trial ID --out FILE`: one chart as SVG or PNG, for a mail or a slide. */
export async function chart(files: readonly string[], options: ChartOptions): Promise<void> {
  const inputs = [...files, ...(options.first ?? []), ...(options.second ?? [])];
  const kind = outFile(options.out, KINDS, inputs);
  const widthPx = parseCount(options.width, '--width', { least: 200, most: 8000 });
  const picture = await wantedPicture(files, options);
  if (kind === 'svg')
    writeTextFile(options.out, [pictureSvg(picture, { alone: true, typeface: pageTypeface() })]);
  else await writePng(picture, options.out, widthPx);
  print(REPORT_TEXT.wrote(neutralise(options.out)));
}

async function wantedPicture(files: readonly string[], options: ChartOptions): Promise<Picture> {
  if (options.view === 'warm-up' || comparesSides(options)) {
    const { warmUpPicture } = await import('../reports/warm-up-picture.ts');
    return warmUpPicture(files, options);
  }
  const { view } = options;
  if (view !== undefined && (OTHER_VIEWS as readonly string[]).includes(view)) {
    return otherPicture(view as OtherView, files, options);
  }
  const [{ gatherTrial }, { chartOf }] = await Promise.all([
    import('../reports/gather-trial.ts'),
    import('../reports/chart-of-trial.ts'),
  ]);
  const gathered = await gatherTrial('chart', files, options);
  if (view === 'presses') {
    const { pressesPicture } = await import('../reports/presses-picture.ts');
    return pressesPicture(gathered, options);
  }
  const run =
    options.run === undefined
      ? undefined
      : parseCount(options.run, '--run', { least: 1, most: gathered.outcome.runs.length });
  return chartOf(gathered, {
    unit: options.show,
    ...(view === undefined ? {} : { view: view as ChartView }),
    ...(run === undefined ? {} : { run }),
  });
}

async function writePng(picture: Picture, out: string, widthPx: number): Promise<void> {
  const [{ picturePng }, { writeBinaryFile }] = await Promise.all([
    import('../../adapters/picture/picture-png.ts'),
    import('../../adapters/files/write-binary-file.ts'),
  ]);
  const { name, regular, bold } = typefaceFiles();
  const png = picturePng(pictureSvg(picture, { alone: true }), {
    widthPx,
    fontFiles: [regular, bold],
    typeface: name,
  });
  writeBinaryFile(out, png);
}
