import { neutralise } from '../../core/text/neutralise.ts';
import { WARM_UP_REMARKS } from '../../core/text/warm-up-remarks.ts';
import { definitionLines, heatingLines, warmUpLines } from '../../core/text/warm-up-text.ts';
import { warmUpJson } from '../../core/warm-up/warm-up-json.ts';
import { OptionError } from '../options/OptionError.ts';
import { print, printJson } from '../output/print.ts';
import { type AnalysedHeating, type AnalyseOptions, analysePlatens } from '../platens/analyse-platens.ts';

export interface WarmUpOptions extends AnalyseOptions {
  readonly explain?: boolean;
  /** Records the platens now instead of reading files. */
  readonly live?: boolean;
  readonly show: 'F' | 'C';
  readonly json?: boolean;
}

/** `warm-up RECORDING…`: figures of each heating of each recording. Ends with 1 when one was not READY by the rule. */
export async function warmUp(files: readonly string[], options: WarmUpOptions): Promise<void> {
  if (options.live) return (await import('../warm-up-live/warm-up-live.ts')).warmUpLive(options);
  if (files.length === 0) {
    if (options.explain) return print(definitionLines().join('\n'));
    throw new OptionError(
      'warm-up: no recording given',
      'Name files or recordings of the store, for example: dwellwright warm-up recordings/warm-up-north-1.dwell.txt; dwellwright recordings lists those of the store',
    );
  }
  const opened: AnalysedHeating[] = [];
  for (const file of files) opened.push(...(await analysePlatens(file, options)));
  if (options.json) {
    printJson({
      warmUps: opened.map(({ platens, heating, result }) => ({
        source: platens.name,
        heating: heating.number,
        heatings: heating.of,
        coolsFromS: heating.coolsFromS,
        press: platens.head?.pressName ?? null,
        madeAt: platens.head?.madeAt ?? null,
        simulated: platens.head?.simulated ?? false,
        sound: platens.sound,
        ...warmUpJson(result),
      })),
    });
  } else {
    const lines = opened.flatMap(({ platens: { head, sound }, label, heating, result }, index) => [
      ...(index > 0 ? [''] : []),
      neutralise(
        `${label}: warm-up${head?.pressName === undefined ? '' : ` of ${head.pressName}`}.${head?.simulated ? ' SIMULATED.' : ''}`,
      ),
      ...(sound ? [] : [WARM_UP_REMARKS.notWhole]),
      ...heatingLines(heating),
      ...warmUpLines(result, options.show),
    ]);
    print([...lines, ...(options.explain ? ['', ...definitionLines()] : [])].join('\n'));
  }
  if (opened.some(({ result }) => result.rules.setPointC !== null && result.readyAtS === null))
    process.exitCode = 1;
}
