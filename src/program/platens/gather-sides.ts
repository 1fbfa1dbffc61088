import { neutralise } from '../../core/text/neutralise.ts';
import { WARM_UP_REMARKS } from '../../core/text/warm-up-remarks.ts';
import { sideNames } from '../commands/compare.ts';
import { OptionError } from '../options/OptionError.ts';
import { type AnalysedHeating, type AnalyseOptions, analysePlatens } from './analyse-platens.ts';
import { parseDays } from './days.ts';
import { storedWarmUps } from './stored-warm-ups.ts';

export interface SideOptions extends AnalyseOptions {
  /** Files, or recordings of the store by id. */
  readonly first?: readonly string[];
  readonly second?: readonly string[];
  /** Else every stored warm-up of a press, made on these days. */
  readonly firstPress?: string;
  readonly secondPress?: string;
  readonly firstDates?: string;
  readonly secondDates?: string;
  readonly names?: string;
}

export interface WarmUpSide {
  readonly name: string;
  readonly heatings: readonly AnalysedHeating[];
  /** What was left out, and why. */
  readonly remarks: readonly string[];
}

type Which = 'first' | 'second';

/** Both sides of a comparison of warm-ups, from files, recordings of the store, or a press and days. */
export async function gatherSides(
  options: SideOptions,
): Promise<{ readonly first: WarmUpSide; readonly second: WarmUpSide }> {
  const chosen = { first: choose('first', options), second: choose('second', options) };
  const first = await gather('first', chosen.first, options);
  const second = await gather('second', chosen.second, options);
  requireApart(first.heatings, second.heatings);
  if (options.names === undefined) for (const side of [first, second]) requireOnePress(side.heatings);
  const press = ({ heatings }: typeof first) => heatings[0]?.platens.head?.pressName;
  const names = sideNames(options, press(first), press(second), [
    first.chosen ?? 'first',
    second.chosen ?? 'second',
  ]);
  return { first: named(first, names.first), second: named(second, names.second) };
}

function named(side: Gathered, name: string): WarmUpSide {
  const figures = side.heatings.map(({ result }) => JSON.stringify(result.channels));
  const remarks = new Set(figures).size < figures.length ? [WARM_UP_REMARKS.alike(neutralise(name))] : [];
  return { ...side, name, remarks: [...side.remarks, ...remarks] };
}

interface Gathered extends Omit<WarmUpSide, 'name'> {
  /** Press and days, where it was chosen so. */
  readonly chosen: string | null;
}

interface Chosen {
  readonly named: readonly string[];
  readonly press: string | undefined;
  readonly dates: string | undefined;
}

/** What the options choose for a side; refused before anything is read. */
function choose(which: Which, options: SideOptions): Chosen {
  const named = options[which] ?? [];
  const [own, dates] =
    which === 'first' ? [options.firstPress, options.firstDates] : [options.secondPress, options.secondDates];
  if (named.length > 0 && (own !== undefined || dates !== undefined))
    throw new OptionError(
      `compare: came both --${which} and a press or days for it`,
      `Give --${which} RECORDING…, or --${which}-press with --${which}-dates`,
    );
  // One press over time: the second side's press is the first's where only days are given.
  const press = own ?? (dates === undefined ? undefined : options.firstPress);
  if (named.length === 0 && press === undefined)
    throw new OptionError(
      'compare: two sides are needed',
      'Give --first RECORDING… --second RECORDING…, --first-press NAME --second-press NAME, or --first-trial ID --second-trial ID',
    );
  return { named, press, dates };
}

async function gather(
  which: Which,
  { named, press, dates }: Chosen,
  options: SideOptions,
): Promise<Gathered> {
  if (named.length > 0 || press === undefined)
    return { ...keepCold(await analyseAll(named, options), options), chosen: null };
  const days = dates === undefined ? null : parseDays(dates, `--${which}-dates`);
  const { ids, simulatedLeftOut } = await storedWarmUps(press, days, options);
  const all = await analyseAll(ids, options);
  const rising = all.filter(({ heating }) => heating.rises);
  const flat = all.length - rising.length;
  const chosen = `${press}${dates === undefined ? '' : ` ${dates}`}`;
  if (rising.length === 0)
    throw new OptionError(
      `compare: no warm-up of ${neutralise(chosen)} in the store`,
      'See dwellwright recordings; record one with dwellwright warm-up --live',
      'recording-unknown',
    );
  const kept = keepCold(rising, options);
  return {
    ...kept,
    remarks: [
      ...kept.remarks,
      ...(flat === 0 ? [] : [WARM_UP_REMARKS.withoutRise(neutralise(chosen), flat)]),
      ...(simulatedLeftOut === 0 ? [] : [WARM_UP_REMARKS.simulated(neutralise(chosen), simulatedLeftOut)]),
    ],
    chosen,
  };
}

async function analyseAll(
  names: readonly string[],
  options: SideOptions,
): Promise<readonly AnalysedHeating[]> {
  const all: AnalysedHeating[] = [];
  for (const name of names) all.push(...(await analysePlatens(name, options)));
  return all;
}

/** A heating that began warm does not compare with one from cold: left out where its recording holds several, and said. */
function keepCold(all: readonly AnalysedHeating[], { heating }: SideOptions): Omit<Gathered, 'chosen'> {
  const warm = (one: AnalysedHeating) => one.heating.of > 1 && one.result.cautions.includes('began-hot');
  const kept = heating === undefined ? all.filter((one) => !warm(one)) : all;
  if (kept.length === 0) return { heatings: all, remarks: [] };
  return {
    heatings: kept,
    remarks: all
      .filter((one) => !kept.includes(one))
      .map(({ label, heating: { number } }) => WARM_UP_REMARKS.beganWarm(neutralise(label), number)),
  };
}

/** A recording against itself tells nothing, and would count as repeated. */
function requireApart(first: readonly AnalysedHeating[], second: readonly AnalysedHeating[]): void {
  const identity = ({ platens }: AnalysedHeating) => platens.head?.recordingId ?? platens.name;
  const there = new Set(first.map(identity));
  const both = second.find((one) => there.has(identity(one)));
  if (both === undefined) return;
  throw new OptionError(
    `compare: ${neutralise(both.platens.name)} stands on both sides`,
    'Keep the sides apart; for one press over time give days for each: --first-dates /2026-06-30 --second-dates 2026-07-01/',
  );
}

function requireOnePress(heatings: readonly AnalysedHeating[]): void {
  const presses = [...new Set(heatings.flatMap(({ platens }) => platens.head?.pressName ?? []))];
  if (presses.length <= 1) return;
  throw new OptionError(
    `compare: one side holds recordings of different presses, ${presses.map((name) => neutralise(name)).join(' and ')}`,
    'Keep each side to one press, or name the two sides with --names',
  );
}
