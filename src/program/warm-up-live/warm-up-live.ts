import { createMonotonicClock } from '../../adapters/host/create-monotonic-clock.ts';
import type { ChannelRole, RecordingHead } from '../../core/recording/RecordingEntry.ts';
import { WARM_UP_SCENARIOS } from '../../core/simulator/warm-up-scenarios.ts';
import { WARM_UP_LIVE_TEXT } from '../../core/text/warm-up-live-text.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { openPort } from '../bonding/open-reader.ts';
import { VERSION } from '../command-line/version.ts';
import type { WarmUpOptions } from '../commands/warm-up.ts';
import { waitForDisk } from '../live/wait-for-disk.ts';
import { OptionError } from '../options/OptionError.ts';
import { parseNumber } from '../options/parse-number.ts';
import { openNamedStore, type StoreOptions } from '../options/with-store.ts';
import { canDraw } from '../output/can-draw.ts';
import { print, printJson } from '../output/print.ts';
import { platenRoles } from '../platens/open-platens.ts';
import { warmUpRules } from '../platens/warm-up-rules.ts';
import { newRecordingId } from '../trials/new-trial-id.ts';
import { runWarmUpLive } from './run-warm-up-live.ts';
import { simulatedWarmUpReader } from './simulated-warm-up-reader.ts';

export interface WarmUpLiveOptions extends WarmUpOptions, StoreOptions {
  readonly port?: string;
  readonly simulated?: boolean;
  readonly speed?: string;
  readonly press?: string;
  readonly seconds?: string;
  readonly baud?: string;
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
    const scenario = WARM_UP_SCENARIOS.find((one) => one.pressName === press) ?? WARM_UP_SCENARIOS[0]!;
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
    const remembered = store.setting(`roles:${press}`);
    const roles = simulated
      ? SIMULATED_ROLES
      : platenRoles(options.roles ?? remembered ?? 'upper-platen,lower-platen');
    const platens = roles.flatMap((role, channel) =>
      role === 'upper-platen'
        ? [{ channel, label: 'upper platen', setPointC: setPointC.upper }]
        : role === 'lower-platen'
          ? [{ channel, label: 'lower platen', setPointC: setPointC.lower }]
          : [],
    );
    if (platens.length === 0)
      throw new OptionError(
        'warm-up --live: no channel is laid on a platen',
        'Say which, channel 1 first: --roles upper-platen,lower-platen',
        'no-platen',
      );
    const ended = new AbortController();
    const reader =
      port === undefined
        ? simulatedWarmUpReader({
            host: createMonotonicClock(),
            speed,
            scenario,
            onFinished: () => ended.abort(),
          })
        : await openPort(port, options.baud === undefined ? {} : { baud: options.baud });
    const head: RecordingHead = {
      recordingId: newRecordingId(),
      madeAt: new Date().toISOString(),
      program: `Dwellwright ${VERSION}`,
      roles,
      simulated,
      pressName: press,
      platenSetPointC: setPointC,
      further: { 'made-for': 'warm-up' },
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
      endSignal: ended.signal,
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
