import { neutralise } from '../../core/text/neutralise.ts';
import { definitionLines, warmUpLines } from '../../core/text/warm-up-text.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { analyseWarmUp } from '../../core/warm-up/analyse-warm-up.ts';
import { warmUpJson } from '../../core/warm-up/warm-up-json.ts';
import { OptionError } from '../options/OptionError.ts';
import { print, printJson } from '../output/print.ts';
import { openPlatens } from '../platens/open-platens.ts';
import { type WarmUpRuleOptions, warmUpRules } from '../platens/warm-up-rules.ts';
import type { SourceOptions } from '../sources/Source.ts';

export interface WarmUpOptions extends WarmUpRuleOptions, SourceOptions {
  readonly poweredAt?: string;
  readonly explain?: boolean;
  /** Records the platens now instead of reading files. */
  readonly live?: boolean;
  readonly show: 'F' | 'C';
  readonly json?: boolean;
}

/** `warm-up FILE…`: figures of each recorded warm-up. Ends with 1 when one was not READY by the rule. */
export async function warmUp(files: readonly string[], options: WarmUpOptions): Promise<void> {
  if (options.live) return (await import('../warm-up-live/warm-up-live.ts')).warmUpLive(options);
  if (files.length === 0) {
    if (options.explain) return print(definitionLines().join('\n'));
    throw new OptionError(
      'warm-up: no file given',
      'Name one or more recordings, for example: dwellwright warm-up recordings/warm-up-north-1.dwell.txt',
    );
  }
  const opened = [];
  for (const file of files) opened.push(await analyseFile(file, options));
  if (options.json) {
    printJson({
      warmUps: opened.map(({ platens, result }) => ({
        source: platens.name,
        press: platens.head?.pressName ?? null,
        madeAt: platens.head?.madeAt ?? null,
        simulated: platens.head?.simulated ?? false,
        sound: platens.sound,
        ...warmUpJson(result),
      })),
    });
  } else {
    const lines = opened.flatMap(({ platens: { name, head, sound }, result }, index) => [
      ...(index > 0 ? [''] : []),
      neutralise(
        `${name}: warm-up${head?.pressName === undefined ? '' : ` of ${head.pressName}`}.${head?.simulated ? ' SIMULATED.' : ''}`,
      ),
      ...(sound ? [] : ['Note: the recording was cut short or altered after it was made.']),
      ...warmUpLines(result, options.show),
    ]);
    print([...lines, ...(options.explain ? ['', ...definitionLines()] : [])].join('\n'));
  }
  if (opened.some(({ result }) => result.rules.setPointC !== null && result.readyAtS === null))
    process.exitCode = 1;
}

/** One file's warm-up by the options. */
export async function analyseFile(
  file: string,
  options: WarmUpRuleOptions & SourceOptions & { readonly poweredAt?: string },
) {
  const platens = await openPlatens(file, options);
  const poweredAtS =
    options.poweredAt === undefined
      ? null
      : parseDuration(options.poweredAt, '--powered-at', { negative: true });
  return { platens, result: analyseWarmUp(platens.record, warmUpRules(options, platens.head), poweredAtS) };
}
