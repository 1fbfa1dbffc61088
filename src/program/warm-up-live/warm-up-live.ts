import { createMonotonicClock } from '../../adapters/host/create-monotonic-clock.ts';
import { probeHeadLines } from '../../core/probe/head-probes.ts';
import type { Probe } from '../../core/probe/Probe.ts';
import type { ChannelRole, RecordingHead } from '../../core/recording/RecordingEntry.ts';
import { WARM_UP_SCENARIOS } from '../../core/simulator/warm-up-scenarios.ts';
import type { Store } from '../../core/store/Store.ts';
import { WARM_UP_LIVE_TEXT } from '../../core/text/warm-up-live-text.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { MADE_FOR_KEY, MADE_FOR_WARM_UP, madeForWarmUp } from '../../core/warm-up/made-for-warm-up.ts';
import { openPort } from '../bonding/open-reader.ts';
import { VERSION } from '../command-line/version.ts';
import type { WarmUpOptions } from '../commands/warm-up.ts';
import { waitForDisk } from '../live/wait-for-disk.ts';
import { channelProbes } from '../options/channel-probes.ts';
import { OptionError } from '../options/OptionError.ts';
import { parseNumber } from '../options/parse-number.ts';
import { openNamedStore } from '../options/with-store.ts';
import { canDraw } from '../output/can-draw.ts';
import { print, printJson } from '../output/print.ts';
import { platenRoles } from '../platens/open-platens.ts';
import { warmUpRules } from '../platens/warm-up-rules.ts';
import { newRecordingId } from '../trials/new-trial-id.ts';
import { runWarmUpLive } from './run-warm-up-live.ts';
import { simulatedWarmUpReader } from './simulated-warm-up-reader.ts';

export interface WarmUpLiveOptions extends WarmUpOptions {
  readonly port?: string;
  readonly simulated?: boolean;
  readonly speed?: string;
  readonly press?: string;
  readonly seconds?: string;
  readonly afterReady?: string;
  readonly baud?: string;
  readonly rate?: string;
  readonly probes?: string;
  readonly plain?: boolean;
  readonly ascii?: boolean;
}

const SIMULATED_ROLES: readonly ChannelRole[] = ['ambient', 'unused', 'upper-platen', 'lower-platen'];

/** `warm-up --live`: records the platens from cold to READY. Ends with 1 when READY was not reached. */
export async function warmUpLive(options: WarmUpLiveOptions): Promise<void> {
  const { port, simulated = false, press } = options;
  if ((port === undefined) === !simulated)
    throw new OptionError(
      'warm-up --live: expected one reader',
      'Give --port /dev/ttyACM0 (dwellwright readers lists them) or --simulated',
      'reader-not-named',
    );
  if (press === undefined)
    throw new OptionError('warm-up --live: no press named', 'Name it: --press North', 'press-not-named');
  const speed = parseNumber(options.speed ?? '1', '--speed', { least: 0.1, most: 10_000 });
  const endAfterS = options.seconds === undefined ? null : parseDuration(options.seconds, '--seconds');
  const store = await openNamedStore(options, waitForDisk);
  try {
    const scenario = nextScenario(store, press);
    const known =
      store.presses().find(({ name }) => name === press)?.platenSetPointC ??
      (simulated ? { upper: scenario.upper.setPointC, lower: scenario.lower.setPointC } : null);
    const rules = warmUpRules(options, null);
    const setPointC = rules.setPointC ?? known;
    if (setPointC == null)
      throw new OptionError(
        'warm-up --live: the platen set point is not known',
        'State it: --platens 450F, or save it with the press',
        'set-point-unknown',
      );
    const { roles, probes } = channelsOf(store, options, press);
    const platens = roles.flatMap((role, channel) => {
      if (role !== 'upper-platen' && role !== 'lower-platen') return [];
      const side = role === 'upper-platen' ? setPointC.upper : setPointC.lower;
      return [{ channel, role, label: labelOf(roles, channel), setPointC: side }];
    });
    if (platens.length === 0)
      throw new OptionError(
        'warm-up --live: no channel is laid on a platen',
        'Say which, channel 1 first: --roles upper-platen,lower-platen',
        'no-platen',
      );
    const ended = new AbortController();
    const simulation = simulated
      ? simulatedWarmUpReader({
          host: createMonotonicClock(),
          speed,
          scenario,
          onFinished: () => ended.abort(),
        })
      : null;
    const reader =
      simulation ??
      (await openPort(port!, {
        baud: options.baud ?? '115200',
        ...(options.rate === undefined ? {} : { rate: options.rate }),
      }));
    const head: RecordingHead = {
      recordingId: newRecordingId(),
      madeAt: new Date().toISOString(),
      program: `Dwellwright ${VERSION}`,
      roles,
      simulated,
      pressName: press,
      platenSetPointC: setPointC,
      further: { [MADE_FOR_KEY]: MADE_FOR_WARM_UP, ...probeHeadLines(probes) },
      ...(port === undefined ? {} : { portPath: port }),
      ...(options.unit === undefined ? {} : { statedUnit: options.unit }),
    };
    const plain = options.plain === true || options.json === true || !canDraw();
    const result = await runWarmUpLive({
      store,
      reader,
      head,
      rule: rules.ready,
      platens,
      endAfterS,
      afterReadyS: parseDuration(options.afterReady ?? '30s', '--after-ready'),
      endSignal: ended.signal,
      ...(simulation === null ? {} : { onHeatersOn: simulation.onHeatersOn }),
      plain,
      ascii: options.ascii === true,
      show: options.show,
      write: (line) => {
        if (plain) (options.json ? process.stderr : process.stdout).write(`${line}\n`);
      },
    });
    const reached = result.firstReadyAtS !== null;
    if (options.json)
      printJson({
        recordingId: head.recordingId,
        press,
        simulated,
        bandC: rules.ready.bandC,
        forS: rules.ready.forS,
        ready: reached,
        firstReadyAtS: result.firstReadyAtS,
        endedAtS: result.timeS,
      });
    else print(WARM_UP_LIVE_TEXT.ended(head.recordingId, reached));
    if (!reached) process.exitCode = 1;
  } finally {
    store.close();
  }
}

/** The simulated press has three days, taken in turn: repeated warm-ups differ as real ones do. A press of another name is like the first. */
function nextScenario(store: Store, press: string) {
  const own = WARM_UP_SCENARIOS.filter((one) => one.pressName === press);
  const days = own.length > 0 ? own : WARM_UP_SCENARIOS.slice(0, 1);
  const before = store.recordingIds().filter((id) => {
    const head = store.recording(id)?.head;
    return head?.pressName === press && head.simulated && madeForWarmUp(head) === true;
  });
  return days[before.length % days.length]!;
}

/** Where several probes lie on one platen, the channel tells them apart. */
function labelOf(roles: readonly ChannelRole[], channel: number): string {
  const role = roles[channel]!;
  const name = role.replace('-', ' ');
  return roles.filter((one) => one === role).length > 1 ? `${name} (channel ${channel + 1})` : name;
}

/**
 * What each channel is laid on, and by which probe: option, else what the last warm-up of this press used, else what its
 * trials use. The choice is remembered for the press's warm-ups; trials keep their own.
 */
function channelsOf(
  store: Store,
  options: WarmUpLiveOptions,
  press: string,
): { readonly roles: readonly ChannelRole[]; readonly probes: readonly (Probe | null)[] } {
  if (options.simulated)
    return { roles: SIMULATED_ROLES, probes: probesOf(store, options.probes, SIMULATED_ROLES) };
  const own = {
    roles: store.setting(`warm-up-roles:${press}`),
    probes: store.setting(`warm-up-probes:${press}`),
  };
  const trials = { roles: store.setting(`roles:${press}`), probes: store.setting(`probes:${press}`) };
  const before = own.roles === undefined ? trials : own;
  const roles = platenRoles(options.roles ?? before.roles ?? 'upper-platen,lower-platen');
  const text =
    options.probes ??
    (options.roles === undefined || options.roles === before.roles ? before.probes : undefined);
  const probes = probesOf(store, text, roles);
  if (options.roles !== undefined) store.saveSetting(`warm-up-roles:${press}`, options.roles);
  if (options.probes !== undefined) {
    store.saveSetting(`warm-up-roles:${press}`, roles.join(','));
    store.saveSetting(`warm-up-probes:${press}`, options.probes);
  }
  return { roles, probes };
}

function probesOf(store: Store, text: string | undefined, roles: readonly ChannelRole[]) {
  return text === undefined ? [] : channelProbes(store, text, roles.length);
}
