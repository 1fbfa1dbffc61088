import { createMonotonicClock } from '../../adapters/host/create-monotonic-clock.ts';
import { createSleepWatch } from '../../adapters/host/create-sleep-watch.ts';
import type { Assembly, Press } from '../../core/press/Press.ts';
import type { ChannelRole } from '../../core/recording/RecordingEntry.ts';
import type { Store, StoredTrial } from '../../core/store/Store.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { secondsText, temperatureText } from '../../core/text/units-text.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { identifyCommand, rateCommand, startCommand } from '../../core/wire/protocol/commands.ts';
import { holdTrial } from '../live/hold-trial.ts';
import type { TrialReader } from '../live/TrialReader.ts';
import { waitForDisk } from '../live/wait-for-disk.ts';
import { OptionError } from '../options/OptionError.ts';
import { parseCount } from '../options/parse-count.ts';
import { parseNumber } from '../options/parse-number.ts';
import { rememberedProbes, rememberedRoles } from '../options/press-channels.ts';
import { type ConditionOptions, runConditions } from '../options/run-conditions.ts';
import type { RuleOptions } from '../options/run-rules.ts';
import { openNamedStore, type StoreOptions } from '../options/with-store.ts';
import { canDraw } from '../output/can-draw.ts';
import { findTrial } from '../trials/stored-outcome.ts';
import { newAssembly } from './assemblies.ts';
import { DEMO_ASSEMBLY, DEMO_PRESS } from './demo-shop.ts';
import { named } from './named.ts';
import { newPress } from './presses.ts';

export interface TrialOptions extends RuleOptions, StoreOptions, ConditionOptions {
  readonly port?: string;
  readonly simulated?: boolean;
  readonly speed: string;
  readonly assembly?: string;
  readonly press?: string;
  /** Adds an assembly or press that the store does not know. */
  readonly new?: boolean;
  /** Trial of the store that gets further runs; its press and assembly hold. */
  readonly goOn?: string;
  readonly runs?: string;
  readonly baud: string;
  readonly rate?: string;
  readonly unit?: 'C' | 'F' | 'K';
  readonly roles?: string;
  /** Probe on each channel by name; remembered for the press. */
  readonly probes?: string;
  readonly initials?: string;
  readonly seconds?: string;
  readonly plain?: boolean;
  readonly ascii?: boolean;
  readonly show: 'F' | 'C';
  readonly json?: boolean;
}

const FOUR_CHANNELS: readonly ChannelRole[] = [
  'bond-line',
  'bond-line-outer',
  'upper-platen',
  'lower-platen',
];

/** `trial`: a heat-soak trial with a reader at the press, to runs, dwell and a recipe. */
export async function trial(options: TrialOptions): Promise<void> {
  // Loaded while reader and store are opened; what fails here is told where the screen is needed.
  if (!isPlain(options)) import('../live/screen-front.ts').catch(() => undefined);
  const reader = await trialReader(options);
  const store = await openNamedStore(options, waitForDisk);
  try {
    const before = options.goOn === undefined ? null : trialToGoOnWith(store, options.goOn, options);
    const assemblyName =
      before?.assemblyName ??
      options.assembly ??
      (options.simulated ? 'WB-212' : COMMAND_TEXT.unnamedAssembly);
    const pressName =
      before?.pressName ?? options.press ?? (options.simulated ? 'North' : COMMAND_TEXT.unnamedPress);
    if (options.simulated) demoNamesIn(store, assemblyName, pressName);
    // Names that were not given, and those of the trial that is gone on with, are no slips of typing.
    const mayBeNew = (given: string | undefined) =>
      before !== null || given === undefined || options.new === true;
    // With --json standard output belongs to the result.
    const tell = (line: string) => (options.json ? process.stderr : process.stdout).write(`${line}\n`);
    const press = known(store, 'press', pressName, mayBeNew(options.press), tell);
    const assembly = known(store, 'assembly', assemblyName, mayBeNew(options.assembly), tell);
    const roles = options.simulated ? FOUR_CHANNELS : rememberedRoles(store, options, press.name);
    await holdTrial({
      store,
      reader,
      goOnWith: before?.trialId ?? null,
      assembly,
      press,
      roles,
      probes: rememberedProbes(store, options, press.name, { channels: roles.length }),
      ruleOptions: options,
      conditions: runConditions(options),
      statedUnit: options.unit ?? null,
      initials: options.initials ?? null,
      portPath: options.port ?? null,
      endAfterRuns:
        options.runs === undefined ? null : parseCount(options.runs, '--runs', { least: 1, most: 99 }),
      endAfterS: options.seconds === undefined ? null : parseDuration(options.seconds, '--seconds'),
      readyCheck: !isPlain(options),
      plain: isPlain(options),
      ascii: options.ascii === true,
      show: options.show,
      json: options.json === true,
    });
  } finally {
    store.close();
  }
}

/** A trial gets further runs only from the same kind of reader, named by the same press and assembly. */
function trialToGoOnWith(store: Store, id: string, options: TrialOptions): StoredTrial {
  const before = findTrial(store, id);
  if (before.simulated !== (options.simulated === true)) {
    throw new OptionError(
      `trial: ${before.trialId} is ${before.simulated ? 'simulated' : 'of a real reader'}`,
      'Simulated and measured runs never come into one trial; start a new one',
      'trial-of-another-kind',
    );
  }
  for (const [option, given, kept] of [
    ['--press', options.press, before.pressName],
    ['--assembly', options.assembly, before.assemblyName],
  ] as const) {
    if (given !== undefined && given !== kept)
      throw new OptionError(
        `trial: ${option} is "${neutralise(given)}", that of the trial is "${neutralise(kept)}"`,
        'Leave the option out, or start a new trial',
        'trial-of-another-kind',
      );
  }
  return before;
}

/** Without a terminal, and for a script, the trial goes by in plain lines. */
function isPlain({ plain, json }: TrialOptions): boolean {
  return plain === true || json === true || !canDraw();
}

async function trialReader(options: TrialOptions): Promise<TrialReader> {
  const host = createMonotonicClock();
  if (options.simulated) {
    if (options.port !== undefined)
      throw new OptionError('trial: came both --port and --simulated', 'Give one of the two');
    const { simulatedRate, simulatedTrialReader } = await import('../live/simulated-trial-reader.ts');
    return simulatedTrialReader({
      host,
      speed: parseNumber(options.speed, '--speed', { least: 0.1, most: 1000 }),
      runs: 5,
      closing: isPlain(options) ? 'by-itself' : 'by-hand',
      ...(options.rate === undefined ? {} : { rateHz: simulatedRate(options.rate) }),
    });
  }
  if (options.port === undefined) {
    throw new OptionError(
      'trial: no reader named',
      'Name its port: --port /dev/ttyACM0 (dwellwright readers lists them), or use --simulated',
      'reader-not-named',
    );
  }
  const { createSerialLink } = await import('../../adapters/serial/create-serial-link.ts');
  const rate =
    options.rate === undefined
      ? []
      : [rateCommand(parseNumber(options.rate, '--rate', { least: 0.1, most: 1000 }))];
  const link = createSerialLink({
    path: options.port,
    baudRate: parseCount(options.baud, '--baud', { least: 300, most: 4_000_000 }),
    clock: host,
    onOpenCommands: [identifyCommand(), ...rate, startCommand()],
  });
  return { link, clock: host, speed: 1, watchSleep: (onSlept) => createSleepWatch({ clock: host, onSlept }) };
}

/** The simulated press and assembly have sizes and set points: those of the demo's shop, where the store has none yet. */
function demoNamesIn(store: Store, assemblyName: string, pressName: string): void {
  const has = (all: readonly { readonly name: string }[], name: string) =>
    all.some((one) => one.name === name);
  if (pressName === DEMO_PRESS.name && !has(store.presses(), pressName)) store.savePress(DEMO_PRESS);
  if (assemblyName === DEMO_ASSEMBLY.name && !has(store.assemblies(), assemblyName))
    store.saveAssembly(DEMO_ASSEMBLY);
}

interface Known {
  readonly press: Press;
  readonly assembly: Assembly;
}

/** The press or assembly of this name. One that the store does not know is added only where it may be new, and told. */
function known<Kind extends keyof Known>(
  store: Store,
  kind: Kind,
  name: string,
  mayBeNew: boolean,
  tell: (line: string) => void,
): Known[Kind];
function known(
  store: Store,
  kind: keyof Known,
  name: string,
  mayBeNew: boolean,
  tell: (line: string) => void,
): Press | Assembly {
  const all: readonly (Press | Assembly)[] = kind === 'press' ? store.presses() : store.assemblies();
  const exact = all.find((one) => one.name === name);
  if (exact !== undefined) return exact;
  if (!mayBeNew) return named(all, name, kind, COMMAND_TEXT.orNew);
  const shown = neutralise(name);
  if (kind === 'press') {
    const press = newPress(name);
    store.savePress(press);
    tell(COMMAND_TEXT.newPress(shown));
    return press;
  }
  const assembly = newAssembly(name);
  store.saveAssembly(assembly);
  const { targetC, holdS } = assembly;
  tell(COMMAND_TEXT.newAssembly(shown, temperatureText(targetC), secondsText(holdS, 0)));
  return assembly;
}
