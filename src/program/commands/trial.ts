import { createMonotonicClock } from '../../adapters/host/create-monotonic-clock.ts';
import { createSleepWatch } from '../../adapters/host/create-sleep-watch.ts';
import type { ChannelRole } from '../../core/recording/RecordingEntry.ts';
import type { Store, StoredTrial } from '../../core/store/Store.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
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
import { newPress } from './presses.ts';

export interface TrialOptions extends RuleOptions, StoreOptions, ConditionOptions {
  readonly port?: string;
  readonly simulated?: boolean;
  readonly speed: string;
  readonly assembly?: string;
  readonly press?: string;
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
    if (options.simulated) demoShopIn(store, assemblyName, pressName);
    const roles = options.simulated ? FOUR_CHANNELS : rememberedRoles(store, options, pressName);
    await holdTrial({
      store,
      reader,
      goOnWith: before?.trialId ?? null,
      assembly: known(store, 'assembly', assemblyName),
      press: known(store, 'press', pressName),
      roles,
      probes: rememberedProbes(store, options, pressName, { channels: roles.length }),
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
    const { simulatedTrialReader } = await import('../live/simulated-trial-reader.ts');
    return simulatedTrialReader({
      host,
      speed: parseNumber(options.speed, '--speed', { least: 0.1, most: 1000 }),
      runs: 5,
      closing: isPlain(options) ? 'by-itself' : 'by-hand',
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
function demoShopIn(store: Store, assemblyName: string, pressName: string): void {
  const has = (all: readonly { readonly name: string }[], name: string) =>
    all.some((one) => one.name === name);
  if (pressName === DEMO_PRESS.name && !has(store.presses(), pressName)) store.savePress(DEMO_PRESS);
  if (assemblyName === DEMO_ASSEMBLY.name && !has(store.assemblies(), assemblyName))
    store.saveAssembly(DEMO_ASSEMBLY);
}

/** The press or assembly of this name; a new name is added, so that a script can start with it. */
function known<Kind extends 'press' | 'assembly'>(store: Store, kind: Kind, name: string) {
  const all: readonly { readonly name: string }[] = kind === 'press' ? store.presses() : store.assemblies();
  const found = all.find((one) => one.name === name);
  if (found === undefined) {
    if (kind === 'press') store.savePress(newPress(name));
    else store.saveAssembly(newAssembly(name));
  }
  return (found ?? (kind === 'press' ? newPress(name) : newAssembly(name))) as Kind extends 'press'
    ? ReturnType<typeof newPress>
    : ReturnType<typeof newAssembly>;
}
