import { statfs } from 'node:fs/promises';
import { dirname } from 'node:path';
import { onReference } from '../../core/conditions/on-reference.ts';
import { DwellwrightError } from '../../core/DwellwrightError.ts';
import type { MonotonicClock, ReaderLink } from '../../core/reading/ReaderLink.ts';
import type { RunConditions } from '../../core/reading/StreamEvent.ts';
import type { RecordingHead } from '../../core/recording/RecordingEntry.ts';
import type { RunRules } from '../../core/run/RunResult.ts';
import type { TrialIntent } from '../../core/screen/TrialIntent.ts';
import type { TrialScreenEvent } from '../../core/screen/TrialScreenEvent.ts';
import type { SessionState } from '../../core/session/Session.ts';
import type { Store } from '../../core/store/Store.ts';
import { RECORDS_TEXT } from '../../core/text/records-text.ts';
import { trialStatistics } from '../../core/trial/trial-statistics.ts';
import { identifyCommand } from '../../core/wire/protocol/commands.ts';
import { acceptStored } from '../trials/accept-stored.ts';
import { storedOutcome } from '../trials/stored-outcome.ts';
import { earlierRuns } from './earlier-runs.ts';
import { END_SIGNAL } from './end-signals.ts';
import { type LiveTrial, type LiveTrialOptions, startLiveTrial } from './live-trial.ts';
import type { TrialFront } from './TrialFront.ts';
import type { TrialReader } from './TrialReader.ts';

export interface RunTrialOptions {
  readonly store: Store;
  readonly link: ReaderLink;
  readonly clock: MonotonicClock;
  readonly head: RecordingHead & { readonly trialId: string };
  readonly rules: RunRules;
  /** Called once the reader is open: the trial begins in the store. */
  readonly begin: () => void;
  readonly conditions: RunConditions;
  /** Ends the trial by itself once so many runs are finished; null: the person ends it. */
  readonly endAfterRuns: number | null;
  readonly controller: AbortController;
  readonly makeFront: (onIntent: (intent: TrialIntent) => void) => TrialFront;
  readonly cautionsSetting: string;
  /** Where the initials of an acceptance are remembered, to be offered at the next one. */
  readonly initialsSetting: string;
  readonly watchSleep: LiveTrialOptions['watchSleep'];
  readonly speed: number;
  /** A simulated press worked by the keys that mark it. */
  readonly hand?: TrialReader['hand'];
}

const STATUS_EVERY_MS = 1000;
/** A reader that was still starting up may have missed the first question. */
const ASK_AGAIN_MS = 2000;

/** Runs a live trial to its end: everything is in the store when it resolves, with the session's last state. */
export async function runTrial(options: RunTrialOptions): Promise<SessionState> {
  const { store, link, clock, head, rules, conditions, endAfterRuns, controller } = options;
  let live: LiveTrial | null = null;
  let trouble: string | null = null;
  const front = options.makeFront((intent) => obey(intent));

  const standing = (): void => {
    const { runs } = onReference(store.trialRuns(head.trialId), rules.targetC);
    const { outcome } = storedOutcome(store, head.trialId, {});
    front.show({
      kind: 'standing',
      standing: { runs, statistics: trialStatistics(runs), outcome },
      atUs: clock.nowUs(),
    });
    if (endAfterRuns !== null && runs.length >= endAfterRuns) controller.abort();
  };
  const notice = (text: string, tone: 'quiet' | 'good' | 'caution'): void =>
    front.show({ kind: 'notice', text, tone, atUs: clock.nowUs() });

  function obey(intent: TrialIntent): void {
    try {
      if (intent.kind === 'mark') mark(intent);
      else if (intent.kind === 'decide-run') decide(intent);
      else if (intent.kind === 'accept-recipe') {
        const reason = intent.ruleReason === null ? {} : { reason: intent.ruleReason };
        const { rule, initials, note, gaugePsi } = intent;
        const recipe = acceptStored(store, head.trialId, {
          rule,
          initials,
          note,
          ...reason,
          ...(gaugePsi === null ? {} : { gaugePsi, gaugeBy: 'confirmed' as const }),
          acceptedAt: new Date().toISOString(),
        });
        store.saveSetting(options.initialsSetting, initials);
        notice(RECORDS_TEXT.recipeAccepted(recipe), 'good');
      } else if (intent.kind === 'cautions-acknowledged')
        store.saveSetting(options.cautionsSetting, new Date().toISOString());
      else if (intent.kind === 'unit') store.saveSetting('unit', intent.unit);
    } catch (error) {
      if (!(error instanceof DwellwrightError)) throw error;
      notice(error.message, 'caution');
    }
  }

  function mark({ mark: wanted, by, atUs }: Extract<TrialIntent, { kind: 'mark' }>): void {
    live?.mark(wanted, by ?? 'key', atUs);
    if (wanted.kind === 'press-closed') options.hand?.closePress();
    else if (wanted.kind === 'opened') options.hand?.openPress();
  }

  function decide(intent: Extract<TrialIntent, { kind: 'decide-run' }>): void {
    const run = store.trialRuns(head.trialId)[intent.run];
    if (run === undefined) return;
    const { recordingId, result } = run;
    store.decideRun({
      recordingId,
      runNumber: result.runNumber,
      kind: intent.decision,
      reason: intent.reason,
      decidedAt: new Date().toISOString(),
    });
    standing();
  }

  const tell = (event: TrialScreenEvent): void => {
    front.show(event);
    if (event.kind === 'session' && event.events.some((one) => one.kind === 'run-finished')) standing();
    if (event.kind === 'session' && event.state.refusal !== null && event.state.counts.readings === 0)
      controller.abort();
  };
  const status = async (): Promise<void> => {
    const freeBytes = await statfs(dirname(store.path)).then(
      ({ bavail, bsize }) => bavail * bsize,
      () => null,
    );
    const delay = live?.commitDelay();
    front.show({
      kind: 'store',
      store: { p99Ms: delay === undefined || delay.commits === 0 ? null : delay.p99Ms, freeBytes, trouble },
      atUs: clock.nowUs(),
    });
  };

  try {
    await front.drawn;
    const before = earlierRuns(store, head.trialId);
    if (before.length > 0) {
      front.show({ kind: 'earlier-runs', runs: before, atUs: clock.nowUs() });
      standing();
    }
    live = await startLiveTrial({
      store,
      link,
      clock,
      head,
      rules,
      watchSleep: options.watchSleep,
      speed: options.speed,
      begin: options.begin,
      tell,
      onCommit: (error) => {
        trouble = error === null ? null : error instanceof Error ? error.message : String(error);
      },
    });
  } catch (error) {
    controller.abort();
    await front.left;
    throw error;
  }
  live.mark({ kind: 'conditions', conditions }, 'command');
  const askAgain = setInterval(() => {
    if (live?.state.identity === null && live.state.recognised === null) link.send(identifyCommand());
  }, ASK_AGAIN_MS);
  const statusTimer = setInterval(() => void status(), STATUS_EVERY_MS);
  // A screen that failed cuts the trial short as well.
  let cutShort = true;
  try {
    cutShort = (await front.left) === 'interrupted' || controller.signal.reason === END_SIGNAL;
  } finally {
    clearInterval(askAgain);
    clearInterval(statusTimer);
    await live.stop();
    // A trial that was cut short stays open: the next start offers to go on with it.
    if (!cutShort) store.closeTrial(head.trialId, new Date().toISOString());
  }
  return live.state;
}
