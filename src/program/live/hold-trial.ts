import { inhibitSleep } from '../../adapters/host/inhibit-sleep.ts';
import { cureHeadLines, HIGHEST_PEAK_KEY } from '../../core/cure/head-cure.ts';
import { DwellwrightError } from '../../core/DwellwrightError.ts';
import type { Assembly, Press } from '../../core/press/Press.ts';
import { PressureError } from '../../core/press/PressureError.ts';
import type { PressureResult } from '../../core/press/PressureResult.ts';
import { probeHeadLines } from '../../core/probe/head-probes.ts';
import type { Probe } from '../../core/probe/Probe.ts';
import type { RunConditions } from '../../core/reading/StreamEvent.ts';
import { gaugeFor } from '../../core/ready-check/gauge-for.ts';
import { AMBIENT_KEY } from '../../core/recording/head-ambient.ts';
import { DIP_KEY } from '../../core/recording/head-dip.ts';
import { RISE_UNDER_WAY_KEY } from '../../core/recording/head-rise-under-way.ts';
import type { ChannelRole, RecordingHead } from '../../core/recording/RecordingEntry.ts';
import type { TrialScreenSetup } from '../../core/screen/TrialScreenState.ts';
import type { Store } from '../../core/store/Store.ts';
import { FAILURE_TEXT } from '../../core/text/command-text.ts';
import { VERSION } from '../command-line/version.ts';
import { type RuleOptions, runRules } from '../options/run-rules.ts';
import { refuseUnreadable } from '../sources/refuse-unreadable.ts';
import { newRecordingId, newTrialId } from '../trials/new-trial-id.ts';
import { CAUTIONS_SETTING, cautionsAcknowledged } from './cautions-of-shift.ts';
import { endSignals } from './end-signals.ts';
import { plainFront } from './plain-front.ts';
import { runTrial } from './run-trial.ts';
import type { FrontOptions, TrialFront } from './TrialFront.ts';
import type { TrialReader } from './TrialReader.ts';

export interface HoldTrialOptions {
  /** A trial of the store that gets a further recording; null or absent: a new trial. */
  readonly goOnWith?: string | null;
  readonly store: Store;
  readonly reader: TrialReader;
  readonly assembly: Assembly;
  readonly press: Press;
  readonly roles: readonly ChannelRole[];
  /** Probe on each channel, channel 1 first; null where not known. */
  readonly probes?: readonly (Probe | null)[];
  readonly ruleOptions: RuleOptions;
  readonly conditions: RunConditions;
  readonly statedUnit: 'C' | 'F' | 'K' | null;
  readonly initials: string | null;
  readonly portPath: string | null;
  readonly endAfterRuns: number | null;
  readonly endAfterS: number | null;
  /** Ends the trial when aborted from outside (end of the simulation). */
  readonly endSignal?: AbortSignal;
  /** True where a person works the press: the ready check comes before each run. */
  readonly readyCheck: boolean;
  readonly plain: boolean;
  readonly ascii: boolean;
  readonly show: 'F' | 'C';
  readonly json: boolean;
}

/** Holds one trial from the first reading to its printed outcome. Returns the trial's id. */
export async function holdTrial(options: HoldTrialOptions): Promise<string> {
  const { store, reader, assembly, press, show, json } = options;
  const rules = runRules(options.ruleOptions, {
    targetC: assembly.targetC,
    holdS: assembly.holdS,
    platenSetPointC: press.platenSetPointC,
    cure: assembly.cure,
    highestPeakC: assembly.highestPeakC,
    // The run that was cut off is no run of the new recording, whose clock has not seen it closed.
    riseUnderWay: options.goOnWith == null ? undefined : 'left-out',
  });
  const startedAt = new Date();
  const trialId = options.goOnWith ?? newTrialId(startedAt);
  const simulated = reader.link.simulated;
  if (options.goOnWith != null)
    (await import('../trials/store-interrupted-runs.ts')).storeInterruptedRuns(store, trialId);
  const head: RecordingHead & { readonly trialId: string } = {
    recordingId: newRecordingId(),
    madeAt: startedAt.toISOString(),
    program: `Dwellwright ${VERSION}`,
    roles: options.roles,
    simulated,
    pressName: press.name,
    assemblyName: assembly.name,
    trialId,
    targetC: rules.targetC,
    holdS: rules.holdS,
    further: {
      [DIP_KEY]: rules.dip,
      ...(rules.riseUnderWay === undefined ? {} : { [RISE_UNDER_WAY_KEY]: rules.riseUnderWay }),
      ...probeHeadLines(options.probes ?? []),
      ...cureHeadLines(rules.cure),
      ...(rules.highestPeakC == null ? {} : { [HIGHEST_PEAK_KEY]: String(rules.highestPeakC) }),
      ...(rules.ambientC === null ? {} : { [AMBIENT_KEY]: String(Math.round(rules.ambientC * 100) / 100) }),
    },
    ...(rules.platenSetPointC === null ? {} : { platenSetPointC: rules.platenSetPointC }),
    ...(options.initials === null ? {} : { operatorInitials: options.initials }),
    ...(options.portPath === null ? {} : { portPath: options.portPath }),
    ...(options.statedUnit === null ? {} : { statedUnit: options.statedUnit }),
  };
  const initialsSetting = `initials:${press.name}`;
  const setup: TrialScreenSetup = {
    assemblyName: assembly.name,
    pressName: press.name,
    roles: options.roles,
    rules,
    simulated,
    readerName: reader.link.name,
    storePath: store.path,
    unit: show,
    marginS: 0,
    timerStepS: press.timerStepS,
    timerOffsetS: press.timerOffsetS,
    cautionsAcknowledged: cautionsAcknowledged(store, startedAt),
    speed: Math.max(1, reader.speed),
    recordingId: head.recordingId,
    readyCheck: options.readyCheck,
    gauge: knownGauge(press, assembly),
    initials: options.initials ?? store.setting(initialsSetting) ?? null,
  };
  const { controller, off } = endSignals();
  options.endSignal?.addEventListener('abort', () => controller.abort(), { once: true });
  const timer =
    options.endAfterS === null ? undefined : setTimeout(() => controller.abort(), options.endAfterS * 1000);
  const makeFront = options.plain ? plainMaker(options) : (await import('./screen-front.ts')).screenFront;
  // A simulation may sleep with its computer.
  const letSleep = simulated ? () => undefined : inhibitSleep();
  try {
    const state = await runTrial({
      store,
      link: reader.link,
      clock: reader.clock,
      head,
      rules,
      conditions: options.conditions,
      begin: () => {
        if (options.goOnWith == null)
          store.startTrial({
            trialId,
            assemblyName: assembly.name,
            pressName: press.name,
            startedAt: startedAt.toISOString(),
            simulated,
          });
        if (options.plain) plainStream(options).write(`Trial ${trialId}, store ${store.path}\n`);
      },
      endAfterRuns: options.endAfterRuns,
      controller,
      watchSleep: reader.watchSleep,
      speed: reader.speed,
      ...(reader.hand === undefined ? {} : { hand: reader.hand }),
      cautionsSetting: CAUTIONS_SETTING,
      initialsSetting,
      makeFront: (onIntent) =>
        makeFront({
          setup,
          nowUs: () => reader.clock.nowUs(),
          onIntent,
          signal: controller.signal,
          ascii: options.ascii,
        }),
    });
    refuseUnreadable(reader.link.name, state);
  } catch (error) {
    if (!(error instanceof DwellwrightError)) {
      process.stderr.write(`${FAILURE_TEXT.dataIn(store.path)}\n`);
      process.stderr.write(`${FAILURE_TEXT.goOn(trialId)}\n`);
    }
    throw error;
  } finally {
    letSleep();
    clearTimeout(timer);
    off();
  }
  // Only needed now: what the first picture does not need does not hold it up.
  const [{ showTrial }, { keepTrace }] = await Promise.all([
    import('../commands/trials.ts'),
    import('../recheck/keep-trace.ts'),
  ]);
  showTrial(store, trialId, { show, json });
  keepTrace(store, head.recordingId);
  return trialId;
}

/** With `--json` standard output belongs to the result: progress goes to standard error. */
const plainStream = ({ json }: HoldTrialOptions) => (json ? process.stderr : process.stdout);

function plainMaker(options: HoldTrialOptions): (front: FrontOptions) => TrialFront {
  return (front) => plainFront(front, (line) => plainStream(options).write(`${line}\n`));
}

/** Gauge pressure for the ready check; sizes that no press can have are told by the command `pressure`, not here. */
function knownGauge(press: Press, assembly: Assembly): PressureResult | null {
  try {
    return gaugeFor(press, assembly);
  } catch (error) {
    if (error instanceof PressureError) return null;
    throw error;
  }
}
