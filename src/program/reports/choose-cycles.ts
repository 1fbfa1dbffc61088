import { numberCycles } from '../../core/bonding/number-cycles.ts';
import type { Store } from '../../core/store/Store.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { OptionError } from '../options/OptionError.ts';
import { parseCount } from '../options/parse-count.ts';

export interface LotChoice {
  readonly assembly?: string;
  readonly press?: string;
  /** Numbers and ranges, such as 1-40,42. */
  readonly cycles?: string;
  readonly from?: string;
  readonly to?: string;
  readonly recipeVersion?: string;
}

/** Cycles that the options name, of one assembly on one press, in the order they were logged. */
export function chooseCycles(store: Pick<Store, 'cycles'>, options: LotChoice) {
  const fromMs = options.from === undefined ? null : momentMs(options.from, '--from', 'start');
  const toMs = options.to === undefined ? null : momentMs(options.to, '--to', 'end');
  const version =
    options.recipeVersion === undefined
      ? null
      : parseCount(options.recipeVersion, '--recipe-version', { least: 1, most: 1_000_000 });
  const wanted = options.cycles === undefined ? null : numbersOf(options.cycles);
  const fitting = numberCycles(store.cycles()).filter(({ number, cycle }) => {
    const closedMs = Date.parse(cycle.closedAt);
    return (
      (options.assembly === undefined || cycle.assemblyName === options.assembly) &&
      (options.press === undefined || cycle.pressName === options.press) &&
      (version === null || cycle.recipeVersion === version) &&
      (fromMs === null || closedMs >= fromMs) &&
      (toMs === null || closedMs <= toMs) &&
      (wanted === null || wanted.some(([first, last]) => number >= first && number <= last))
    );
  });
  const jobs = [
    ...new Set(fitting.map(({ cycle }) => neutralise(`${cycle.assemblyName} on ${cycle.pressName}`))),
  ];
  if (jobs.length === 1) return fitting;
  throw new OptionError(
    jobs.length === 0
      ? 'report --lot: no logged cycle fits'
      : `report --lot: the cycles are of more than one job: ${jobs.join('; ')}`,
    jobs.length === 0
      ? 'See what there is: dwellwright bond --cycles; then --assembly, --press, --from, --to or --cycles 1-40'
      : 'Name one: --assembly WB-212 --press North',
    jobs.length === 0 ? 'no-cycles' : 'several-jobs',
  );
}

/** "1-40,42": ranges, first and last. */
function numbersOf(text: string): readonly (readonly [number, number])[] {
  return text.split(',').map((part) => {
    const [first = '', last = first, more] = part.trim().split(/\s*(?:-|–|\bto\b)\s*/u);
    const limits = { least: 1, most: 99_999_999 };
    if (more !== undefined) parseCount(part, '--cycles', limits);
    const range = [parseCount(first, '--cycles', limits), parseCount(last, '--cycles', limits)] as const;
    if (range[0] <= range[1]) return range;
    throw new OptionError(
      `--cycles: expected the lower number first, came "${neutralise(part.trim())}"`,
      'Write for example --cycles 1-40,42',
    );
  });
}

/** A day (all of it, by this computer's clock) or a moment. */
function momentMs(text: string, option: string, which: 'start' | 'end'): number {
  const day = /^\d{4}-\d\d-\d\d$/u.test(text.trim());
  const whole = day ? `${text.trim()}T${which === 'start' ? '00:00:00.000' : '23:59:59.999'}` : text.trim();
  const ms = /^\d{4}-\d\d-\d\dT\d\d:\d\d/u.test(whole) ? Date.parse(whole) : Number.NaN;
  if (Number.isFinite(ms)) return ms;
  throw new OptionError(
    `${option}: expected a day or a moment, came "${neutralise(text)}"`,
    `Write ${option} 2026-03-02, or ${option} 2026-03-02T08:00`,
  );
}
