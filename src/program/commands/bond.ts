import { createMonotonicClock } from '../../adapters/host/create-monotonic-clock.ts';
import { numberCycles } from '../../core/bonding/number-cycles.ts';
import { recipesInForce } from '../../core/bonding/recipes-in-force.ts';
import type { Recipe } from '../../core/recipe/Recipe.ts';
import type { ChannelRole } from '../../core/recording/RecordingEntry.ts';
import type { Store } from '../../core/store/Store.ts';
import { BONDING_TEXT, cycleLine } from '../../core/text/bonding-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { parseTemperatureDifference } from '../../core/units/parse-temperature-difference.ts';
import { logForsakenClosings } from '../bonding/log-forsaken-closings.ts';
import { openPort } from '../bonding/open-reader.ts';
import { runBonding } from '../bonding/run-bonding.ts';
import { waitForDisk } from '../live/wait-for-disk.ts';
import { OptionError } from '../options/OptionError.ts';
import { parseCount } from '../options/parse-count.ts';
import { parseNumber } from '../options/parse-number.ts';
import { rememberedProbes, rememberedRoles } from '../options/press-channels.ts';
import { parseRoles } from '../options/run-rules.ts';
import { openNamedStore, type StoreOptions } from '../options/with-store.ts';
import { canDraw } from '../output/can-draw.ts';
import { print, printJson } from '../output/print.ts';
import { aboveZero } from '../platens/warm-up-rules.ts';

export interface BondOptions extends StoreOptions {
  readonly assembly?: string;
  readonly press?: string;
  readonly port?: string;
  readonly simulated?: boolean;
  /** False with `--no-reader`. */
  readonly reader?: boolean;
  readonly speed?: string;
  readonly roles?: string;
  /** Probe on each channel by name; remembered for the press. */
  readonly probes?: string;
  readonly baud?: string;
  readonly rate?: string;
  readonly unit?: 'C' | 'F' | 'K';
  readonly platenBand?: string;
  readonly band?: string;
  readonly initials?: string;
  readonly stopAfter?: string;
  readonly seconds?: string;
  readonly cycles?: boolean;
  readonly plain?: boolean;
  readonly ascii?: boolean;
  readonly show: 'F' | 'C';
  readonly json?: boolean;
}

const SIMULATED_ROLES: readonly ChannelRole[] = [
  'bond-line',
  'bond-line-outer',
  'upper-platen',
  'lower-platen',
];

/** `bond`: the production timer. `bond --cycles`: every logged cycle. */
export async function bond(options: BondOptions): Promise<void> {
  if (options.cycles !== true) checkReader(options);
  const store = await openNamedStore(options, waitForDisk);
  try {
    const unfinished = await logForsakenClosings(store);
    if (options.cycles) return listCycles(store, options);
    const choices = chosen(store, options);
    const plain = options.plain === true || options.json === true || !canDraw();
    const one =
      choices.length === 1 && (options.assembly !== undefined || plain) ? (choices[0] ?? null) : null;
    if (plain && one === null)
      throw new OptionError(
        'bond: several recipes',
        'Name one: --assembly WB-212 --press North',
        'recipe-not-named',
      );
    const ended = new AbortController();
    const cycles = await runBonding({
      store,
      choices,
      recipe: one,
      openReader: readerOf(options, plain, () => ended.abort()),
      roles: (recipe) => rolesFor(store, options, recipe),
      probes: (recipe, channels) =>
        rememberedProbes(store, options, recipe.pressName, { channels, use: 'bonding' }),
      platenBandC:
        options.platenBand === undefined
          ? 5 / 1.8
          : aboveZero(parseTemperatureDifference(options.platenBand, '--platen-band'), '--platen-band', '5F'),
      bandToleranceC:
        options.band === undefined
          ? 10 / 1.8
          : aboveZero(parseTemperatureDifference(options.band, '--band'), '--band', '10F'),
      simulated: options.simulated === true,
      initials: options.initials ?? null,
      portPath: options.port ?? null,
      statedUnit: options.unit ?? null,
      endAfterCycles:
        options.stopAfter === undefined
          ? null
          : parseCount(options.stopAfter, '--stop-after', { least: 1, most: 9999 }),
      endAfterS: options.seconds === undefined ? null : parseDuration(options.seconds, '--seconds'),
      endSignal: ended.signal,
      plain,
      ascii: options.ascii === true,
      show: options.show,
      message: unfinished.length === 0 ? null : BONDING_TEXT.unfinishedLogged(unfinished),
      write: (line) => {
        if (plain) (options.json ? process.stderr : process.stdout).write(`${line}\n`);
      },
    });
    if (options.json) printJson({ cycles });
    else if (!plain)
      print(
        cycles.length === 0
          ? BONDING_TEXT.none
          : cycles.map((cycle) => cycleLine(cycle, options.show)).join('\n'),
      );
  } finally {
    store.close();
  }
}

function listCycles(store: Store, { assembly, press, show, json }: BondOptions): void {
  const all = numberCycles(store.cycles()).filter(
    ({ cycle }) =>
      (assembly === undefined || cycle.assemblyName === assembly) &&
      (press === undefined || cycle.pressName === press),
  );
  if (json) {
    printJson({ cycles: all.map(({ number, cycle }) => ({ number, ...cycle })) });
    return;
  }
  print(
    all.length === 0
      ? BONDING_TEXT.noCycles
      : all.map(({ number, cycle }) => `${number}  ${cycleLine(cycle, show)}`).join('\n'),
  );
}

function checkReader({ port, simulated, reader }: BondOptions): void {
  // Without a reader --simulated says that it is only tried: no real press is bonded with.
  const given = [port !== undefined, simulated === true || reader === false].filter(Boolean).length;
  if (given === 1) return;
  throw new OptionError(
    given === 0 ? 'bond: no reader named' : 'bond: came --port together with --simulated or --no-reader',
    'Give one: --port /dev/ttyACM0 (dwellwright readers lists them), --simulated, or --no-reader for the time alone',
    'reader-not-named',
  );
}

/** Recipes in force that fit the options. One that rests on simulated readings is only tried, never timed at a real press. */
function chosen(store: Store, { assembly, press, simulated }: BondOptions): readonly Recipe[] {
  const fit = recipesInForce(store.recipes()).filter(
    (one) =>
      (assembly === undefined || one.assemblyName === assembly) &&
      (press === undefined || one.pressName === press),
  );
  if (fit.length === 0) {
    const of = [
      ...(assembly === undefined ? [] : [assembly]),
      ...(press === undefined ? [] : [`on ${press}`]),
    ].join(' ');
    throw new OptionError(
      `bond: no recipe${of === '' ? '' : ` for ${neutralise(of)}`} in the store`,
      'Hold a trial and accept it first (dwellwright trial, dwellwright accept); dwellwright recipes lists what there is',
      'recipe-unknown',
    );
  }
  const usable = simulated === true ? fit : fit.filter((one) => !one.simulated);
  if (usable.length > 0) return usable;
  throw new OptionError(
    'bond: the recipe rests on simulated readings',
    'Prove it with a real reader first (dwellwright trial); to try the timer add --simulated',
    'recipe-simulated',
  );
}

function readerOf(options: BondOptions, plain: boolean, onFinished: () => void) {
  const { port } = options;
  if (port !== undefined) return () => openPort(port, options);
  if (!options.simulated || options.reader === false) return null;
  const speed = parseNumber(options.speed ?? '1', '--speed', { least: 0.1, most: 1000 });
  return async () => {
    const { simulatedRate, simulatedTrialReader } = await import('../live/simulated-trial-reader.ts');
    return simulatedTrialReader({
      host: createMonotonicClock(),
      speed,
      runs: 5,
      onFinished,
      closing: plain ? 'by-itself' : 'by-hand',
      ...(options.rate === undefined ? {} : { rateHz: simulatedRate(options.rate) }),
    });
  };
}

/** The simulated reader's four channels unless other roles are stated for them. */
function rolesFor(store: Store, options: BondOptions, recipe: Recipe): readonly ChannelRole[] {
  if (!options.simulated) return rememberedRoles(store, options, recipe.pressName, 'bonding');
  return options.roles === undefined
    ? SIMULATED_ROLES
    : parseRoles(options.roles, '--roles', { bondLine: 'optional' });
}
