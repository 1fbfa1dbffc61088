import type { ReadingColumns } from '../reading/ReadingColumns.ts';
import type { OperatorMark, Reading, RunConditions, StreamEvent } from '../reading/StreamEvent.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';
import { MARK_UNCERTAINTY_S } from './choose-press-closed.ts';
import type { OnsetEstimate } from './estimate-onset.ts';
import { FallWatch } from './FallWatch.ts';
import { finishRun } from './finish-run.ts';
import { isHandling } from './is-handling.ts';
import { LIMITS } from './limits.ts';
import { locateOnset } from './locate-onset.ts';
import { OnsetWatch, type RiseSeen } from './OnsetWatch.ts';
import { contactAgain, letGoIsOpening } from './pedal.ts';
import { ResolutionWatch } from './ResolutionWatch.ts';
import type { RunEvent, RunState } from './RunEvent.ts';
import type { RunTracker, RunTrackerOptions } from './RunTracker.ts';
import { type RunSurroundings, RunUnderWay } from './RunUnderWay.ts';
import { risesSteadily } from './rises-steadily.ts';
import { runState } from './run-state.ts';
import { sameClosing } from './same-closing.ts';
import { TraceBuffer } from './TraceBuffer.ts';

export type { RunTracker, RunTrackerOptions } from './RunTracker.ts';

const NOTHING: readonly RunEvent[] = Object.freeze([]);
const NOT_STATED: RunConditions = Object.freeze({ ring: null, coating: null, carrierId: null, probe: null });

/**
 * Follows press closed, crossing, hold and opening through a stream of readings and marks: a pure causal state machine
 * without clock or timer, so that live and replay agree to the last digit.
 */
export function createRunTracker(options: RunTrackerOptions): RunTracker {
  return new Tracker(options);
}

class Tracker implements RunTracker {
  readonly #around: RunSurroundings;
  readonly #onsets: OnsetWatch[];
  #run: RunUnderWay | null = null;
  #runs = 0;
  #latestS = Number.NEGATIVE_INFINITY;
  #previousEndS = Number.NEGATIVE_INFINITY;
  #conditions: RunConditions = NOT_STATED;
  #contactClosed = false;
  /** Set while a rise that was under way when the record began is left out: watches for its end. */
  #leftOut: FallWatch | null = null;
  #contactSinceS = Number.NEGATIVE_INFINITY;
  /** Notes of a run that an undo dropped: the next run has them. */
  #carriedNotes: string[] = [];
  #closedAtS: number | null;
  #out: RunEvent[] = [];

  constructor({ rules, roles, resolutionC = null, room }: RunTrackerOptions) {
    const known: readonly ChannelRole[] = roles.length === 0 ? ['bond-line'] : roles;
    const bondLineChannels = known.flatMap((role, channel) =>
      role.startsWith('bond-line') ? [channel] : [],
    );
    this.#around = {
      rules,
      roles: known,
      trace: new TraceBuffer(known.length, room ?? null),
      bondLineChannels,
      resolutions: known.map(() => new ResolutionWatch(resolutionC)),
    };
    this.#onsets = bondLineChannels.map(() => new OnsetWatch(rules.targetC));
    this.#closedAtS = rules.closedAtS;
  }

  accept(event: StreamEvent): readonly RunEvent[] {
    if (event.kind === 'reading') this.#reading(event.reading);
    else if (event.kind === 'contact') this.#contact(event.timeS, event.closed);
    else if (event.kind === 'mark') this.#mark(event.timeS, event.mark);
    else if (event.kind === 'gap')
      this.#run?.gaps.push({ fromS: event.fromS, toS: event.toS, cause: event.cause });
    return this.#take();
  }

  acceptRow(columns: ReadingColumns, row: number): readonly RunEvent[] {
    if (this.#isNext(columns.timesS[row]!)) {
      this.#around.trace.appendRow(columns, row);
      this.#appended();
    }
    return this.#take();
  }

  finish(): readonly RunEvent[] {
    const run = this.#run;
    if (run !== null && this.#runs > 1 && isHandling(run)) this.#dropRun(this.#latestS);
    else if (run !== null) this.#finishRun('end-of-record', this.#latestS);
    return this.#take();
  }

  get state(): RunState {
    return runState(this.#run, this.#runs, this.#latestS);
  }

  #take(): readonly RunEvent[] {
    if (this.#out.length === 0) return NOTHING;
    const out = this.#out;
    this.#out = [];
    return out;
  }

  #reading(reading: Reading): void {
    if (!this.#isNext(reading.timeS)) return;
    this.#around.trace.append(reading);
    this.#appended();
  }

  /** Time never runs back: such a reading is left out. */
  #isNext(timeS: number): boolean {
    if (!Number.isFinite(timeS) || timeS < this.#latestS) return false;
    this.#latestS = timeS;
    return true;
  }

  /** Looks at the newest reading of the trace. */
  #appended(): void {
    const { trace, bondLineChannels, resolutions } = this.#around;
    const timeS = this.#latestS;
    const index = trace.length - 1;
    for (let channel = 0; channel < trace.channels; channel++) {
      const valueC = trace.valueAt(channel, index);
      if (Number.isFinite(valueC)) resolutions[channel]!.add(valueC);
    }
    if (this.#closedAtS !== null && timeS >= this.#closedAtS) this.#closedByOption(this.#closedAtS);
    if (this.#leftOut !== null) this.#watchLeftOut(this.#leftOut, index, timeS);
    else if (this.#run?.onset == null)
      for (let at = 0; at < bondLineChannels.length; at++) {
        const channel = bondLineChannels[at]!;
        const valueC = trace.valueAt(channel, index);
        if (!Number.isFinite(valueC)) continue;
        const rise = this.#onsets[at]!.add(timeS, valueC, resolutions[channel]!.resolutionC);
        if (rise !== null) this.#rise(channel, rise);
        if (this.#run?.onset != null) break;
      }
    if (this.#run !== null) this.#runReading(this.#run, index, timeS);
    else if (trace.timeAt(0) < timeS - 1.25 * LIMITS.keptWhileWaitingS)
      trace.trimBefore(timeS - LIMITS.keptWhileWaitingS);
  }

  #runReading(run: RunUnderWay, index: number, timeS: number): void {
    run.accept(index, this.#out);
    if (run.opened !== null && timeS > Math.max(run.opened.timeS, run.opened.fedUntilS) + LIMITS.undoS)
      this.#finishRun('opened', run.opened.timeS);
    else if (!run.marked && run.fall.over) {
      if (isHandling(run)) this.#dropRun(timeS);
      else this.#finishRun('opened', run.fall.startedS!);
    }
  }

  #rise(channel: number, rise: RiseSeen): void {
    const at = this.#around.bondLineChannels.indexOf(channel);
    const onset = locateOnset(this.#around, channel, rise, this.#onsets[at]!.levels, {
      notBeforeS: this.#previousEndS,
      nowS: this.#latestS,
    });
    if (onset === null) return;
    if (this.#run === null && this.#isUnderWay(onset)) {
      this.#leftOut = new FallWatch();
      return;
    }
    const run = this.#run ?? this.#openRun(onset.timeS);
    run.onset = onset;
    const known = run.pressClosed !== null;
    run.mark('onset', { timeS: onset.timeS, standardUncertaintyS: onset.standardUncertaintyS });
    this.#out.push({
      kind: 'onset',
      onset: { timeS: onset.timeS, standardUncertaintyS: onset.standardUncertaintyS },
    });
    if (!known) {
      this.#out.push({ kind: 'press-closed', pressClosed: run.pressClosed! });
      this.#feedFrom(run, onset.timeS, this.#around.trace.length - 1);
    }
  }

  /** True where the record goes on after an interruption and shows no quiet baseline before the rise. */
  #isUnderWay({ timeS, baselineSeen }: OnsetEstimate): boolean {
    const { rules, trace } = this.#around;
    if (rules.riseUnderWay !== 'left-out' || this.#runs > 0) return false;
    return !baselineSeen || timeS - trace.timeAt(0) < LIMITS.leastBaselineS;
  }

  /** The bond line of a run that this record has not seen closed: from its fall on (or a mark) runs are looked for again. */
  #watchLeftOut(watch: FallWatch, index: number, timeS: number): void {
    const { trace, bondLineChannels } = this.#around;
    let hottestC = Number.NEGATIVE_INFINITY;
    for (const channel of bondLineChannels) {
      const valueC = trace.valueAt(channel, index);
      if (valueC > hottestC) hottestC = valueC;
    }
    if (hottestC > Number.NEGATIVE_INFINITY) watch.add(timeS, hottestC);
    if (watch.over) this.#endLeftOut(timeS);
  }

  #endLeftOut(timeS: number): void {
    this.#leftOut = null;
    for (const watch of this.#onsets) watch.forgetBefore(timeS);
  }

  /** Gives a run that was opened late the readings since its start; the newest one follows by itself. */
  #feedFrom(run: RunUnderWay, fromS: number, before: number): void {
    const { trace } = this.#around;
    for (let index = trace.indexFrom(fromS); index < before; index++) run.accept(index, this.#out);
  }

  #contact(timeS: number, closed: boolean): void {
    if (!Number.isFinite(timeS) || closed === this.#contactClosed) return;
    this.#contactClosed = closed;
    const run = this.#run;
    if (!closed) {
      if (run === null || run.opened !== null) return;
      const heldS = timeS - this.#contactSinceS;
      if (letGoIsOpening(run, heldS)) this.#opened(run, timeS, 'contact');
      else this.#letGo(run, timeS);
      return;
    }
    if (run?.opened?.by === 'contact' && !run.pedal && timeS - run.opened.timeS <= LIMITS.repeatS) {
      this.#takeBackOpened(run);
      return;
    }
    const contactS = run?.marks.contact?.timeS;
    if (run?.opened === null && contactS !== undefined && timeS - contactS <= LIMITS.repeatS) return;
    this.#contactSinceS = timeS;
    if (run === null || !contactAgain(run, timeS)) this.#closing('contact', timeS);
    else if (run.phase === 'hold-done') this.#opened(run, timeS, 'contact');
    else this.#out.push({ kind: 'contact-again', timeS });
  }

  #letGo(run: RunUnderWay, timeS: number): void {
    if (!run.pedal) this.#out.push({ kind: 'contact-let-go', timeS });
    run.pedal = true;
  }

  #mark(timeS: number, mark: OperatorMark): void {
    if (!Number.isFinite(timeS)) return;
    const run = this.#run;
    if (mark.kind === 'press-closed') {
      const closedS = timeS - (mark.agoS ?? 0);
      const previousS = run?.marks.key?.timeS;
      if (previousS !== undefined && Math.abs(closedS - previousS) <= LIMITS.repeatS) return;
      this.#closing('key', closedS);
    } else if (mark.kind === 'opened') {
      if (run !== null && run.opened === null) this.#opened(run, timeS - (mark.agoS ?? 0), 'key');
    } else if (mark.kind === 'spoilt') {
      if (run !== null) run.spoiltReason = mark.reason;
    } else if (mark.kind === 'note') {
      // Once only: what the ready check found is told again when press closed is marked anew.
      if (run !== null && !run.notes.includes(mark.text)) run.notes.push(mark.text);
    } else if (mark.kind === 'conditions') {
      this.#conditions = mark.conditions;
      if (run !== null) run.conditions = mark.conditions;
    } else if (run !== null) this.#undo(run, mark.what);
  }

  #undo(run: RunUnderWay, what: 'press-closed' | 'opened' | 'spoilt'): void {
    if (what === 'spoilt') run.spoiltReason = null;
    else if (what === 'opened') {
      if (run.opened !== null) this.#takeBackOpened(run);
    } else {
      const { marked } = run;
      run.mark(run.marks.key === null ? 'contact' : 'key', null);
      if (run.pressClosed !== null) {
        run.closingTakenBack ||= marked && !run.marked;
        return;
      }
      this.#carriedNotes = run.notes;
      this.#dropRun(this.#latestS);
    }
  }

  #takeBackOpened(run: RunUnderWay): void {
    const openedS = Math.max(run.opened!.timeS, run.opened!.fedUntilS);
    run.opened = null;
    const { trace } = this.#around;
    for (let index = trace.indexFrom(openedS); index < trace.length; index++)
      if (trace.timeAt(index) > openedS) run.accept(index, this.#out);
  }

  #opened(run: RunUnderWay, timeS: number, by: 'contact' | 'key'): void {
    run.opened = { timeS, by, fedUntilS: Math.max(timeS, this.#latestS) };
    this.#out.push({ kind: 'opened', timeS });
  }

  #closing(by: 'contact' | 'key', timeS: number): void {
    if (this.#leftOut !== null) this.#endLeftOut(timeS);
    const mark = { timeS, standardUncertaintyS: MARK_UNCERTAINTY_S[by] };
    const run = this.#run;
    if (run !== null && sameClosing(run, by, timeS)) {
      const late = !run.marked && run.onset !== null;
      run.mark(by, mark);
      if (late && !risesSteadily(this.#around, run, timeS)) this.#restartAt(run, timeS);
      this.#out.push({ kind: 'press-closed', pressClosed: this.#run!.pressClosed! });
      return;
    }
    if (run !== null)
      this.#finishRun(run.opened === null ? 'next-closing' : 'opened', run.opened?.timeS ?? timeS);
    const next = this.#openRun(timeS);
    next.mark(by, mark);
    for (const watch of this.#onsets) watch.forgetBefore(timeS - 10);
    this.#out.push({ kind: 'press-closed', pressClosed: next.pressClosed! });
    if (timeS < this.#latestS) this.#feedFrom(next, timeS, this.#around.trace.length);
  }

  /** What looked like the rise of an unmarked run was handling of the probe: the run begins at the mark. */
  #restartAt(run: RunUnderWay, timeS: number): void {
    const fresh = run.startedAnew(timeS);
    this.#run = fresh;
    for (const watch of this.#onsets) watch.forgetBefore(timeS - 5);
    this.#feedFrom(fresh, timeS, this.#around.trace.length);
  }

  #closedByOption(closedAtS: number): void {
    this.#closedAtS = null;
    const mark = { timeS: closedAtS, standardUncertaintyS: MARK_UNCERTAINTY_S.option };
    const known = this.#run !== null;
    const run = this.#run ?? this.#openRun(closedAtS);
    run.mark('option', mark);
    this.#out.push({ kind: 'press-closed', pressClosed: run.pressClosed! });
    if (!known) this.#feedFrom(run, closedAtS, this.#around.trace.length - 1);
  }

  #openRun(closedS: number): RunUnderWay {
    const { trace } = this.#around;
    const firstS = trace.length > 0 ? trace.timeAt(0) : closedS;
    const fromS = Math.max(this.#previousEndS, firstS, closedS - LIMITS.beforeClosingS);
    trace.trimBefore(fromS);
    this.#runs++;
    this.#run = new RunUnderWay(this.#around, this.#runs, fromS, this.#conditions);
    this.#run.notes.push(...this.#carriedNotes.splice(0));
    return this.#run;
  }

  #dropRun(atS: number): void {
    this.#run = null;
    this.#runs--;
    for (const watch of this.#onsets) watch.forgetBefore(atS);
  }

  #finishRun(endedBy: 'opened' | 'next-closing' | 'end-of-record', endS: number): void {
    const run = this.#run!;
    const endedS = Number.isFinite(endS) ? endS : run.fromS;
    run.settle(endedS, this.#out);
    const result = finishRun(run, run.opened === null ? endedBy : 'opened', endedS);
    this.#run = null;
    this.#previousEndS = endedS;
    for (const watch of this.#onsets) watch.forgetBefore(Math.max(endedS, this.#latestS));
    this.#out.push({ kind: 'run-finished', result });
  }
}
