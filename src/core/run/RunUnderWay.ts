import { CureCounter } from '../cure/CureCounter.ts';
import type { RunConditions } from '../reading/StreamEvent.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';
import { CrossingWatch } from './CrossingWatch.ts';
import { type ClosingMarks, choosePressClosed } from './choose-press-closed.ts';
import type { EstimatedCrossing } from './estimate-crossing.ts';
import type { OnsetEstimate } from './estimate-onset.ts';
import { FallWatch } from './FallWatch.ts';
import { HoldCounter } from './HoldCounter.ts';
import { intervalBefore } from './interval-before.ts';
import type { ResolutionWatch } from './ResolutionWatch.ts';
import type { RunEvent, RunPhase } from './RunEvent.ts';
import type { Gap } from './RunFacts.ts';
import type { ClosingSource, Crossing, PressClosed, RunRules, TimeEstimate } from './RunResult.ts';
import type { TraceBuffer } from './TraceBuffer.ts';

/** What the run shares with the tracker: the trace and what is known of the channels. */
export interface RunSurroundings {
  readonly rules: RunRules;
  readonly roles: readonly ChannelRole[];
  readonly trace: TraceBuffer;
  readonly bondLineChannels: readonly number[];
  readonly resolutions: readonly ResolutionWatch[];
}

/** A bond-line channel without a reading for this long no longer holds up the crossing, s. Judgement. */
const SILENT_S = 5;

/** One run from its first mark (or onset) until it is finished: takes readings, keeps what they mean so far. */
export class RunUnderWay {
  readonly around: RunSurroundings;
  readonly number: number;
  readonly fromS: number;
  marks: ClosingMarks = { contact: null, key: null, option: null, onset: null };
  onset: OnsetEstimate | null = null;
  readonly watches: readonly CrossingWatch[];
  readonly fall = new FallWatch();
  hold: HoldCounter | null = null;
  cure: CureCounter | null = null;
  provisional: Crossing | null = null;
  firstProvisional: Crossing | null = null;
  final: Crossing | null = null;
  /** `fedUntilS`: readings up to here had been taken when the opening was told. */
  opened: { readonly timeS: number; readonly by: 'contact' | 'key'; readonly fedUntilS: number } | null =
    null;
  /** The contact let go at once: a pedal, whose letting go says nothing. */
  pedal = false;
  spoiltReason: string | null = null;
  /** The only mark of the closing was taken back while the run went on: it is timed from the onset and does not count. */
  closingTakenBack = false;
  readonly gaps: Gap[] = [];
  readonly notes: string[] = [];
  conditions: RunConditions;
  #dipped = false;
  #news = false;
  #chosen: PressClosed | null = null;
  #chosenFrom: ClosingMarks | null = null;

  constructor(around: RunSurroundings, number: number, fromS: number, conditions: RunConditions) {
    this.around = around;
    this.number = number;
    this.fromS = fromS;
    this.conditions = conditions;
    this.watches = around.bondLineChannels.map(
      (channel) => new CrossingWatch(around.trace, channel, around.rules.targetC),
    );
  }

  /** Worked out anew only when a mark has changed. */
  get pressClosed(): PressClosed | null {
    if (this.#chosenFrom !== this.marks) {
      this.#chosenFrom = this.marks;
      this.#chosen = choosePressClosed(this.marks);
    }
    return this.#chosen;
  }

  /** The same run begun at a mark, its onset forgotten: what looked like the rise was not. */
  startedAnew(timeS: number): RunUnderWay {
    const fresh = new RunUnderWay(this.around, this.number, this.fromS, this.conditions);
    fresh.marks = { ...this.marks, onset: null };
    fresh.spoiltReason = this.spoiltReason;
    fresh.closingTakenBack = this.closingTakenBack;
    fresh.notes.push(...this.notes);
    fresh.gaps.push(...this.gaps.filter((gap) => gap.toS > timeS));
    return fresh;
  }

  get phase(): RunPhase {
    if (this.opened !== null) return 'opened';
    if (this.hold === null) return 'heating';
    if (this.hold.done) return 'hold-done';
    return this.#dipped ? 'dipped' : 'crossed';
  }

  /** True where a hand or a contact marked the closing. */
  get marked(): boolean {
    return this.marks.contact !== null || this.marks.key !== null;
  }

  mark(by: ClosingSource, mark: TimeEstimate | null): void {
    this.marks = { ...this.marks, [by]: mark };
    if (this.marked) this.closingTakenBack = false;
  }

  /** Where the rise began as far as known: the crossing's window must not reach before it. */
  get riseFromS(): number {
    return this.onset?.timeS ?? this.pressClosed?.timeS ?? this.fromS;
  }

  /** The press is known or hinted to be open from here on. */
  get closedUntilS(): number {
    const { opened } = this;
    const { startedS } = this.fall;
    if (opened === null) return startedS ?? Number.POSITIVE_INFINITY;
    return startedS === null ? opened.timeS : Math.min(opened.timeS, startedS);
  }

  /** Takes the reading at an index of the trace. */
  accept(index: number, out: RunEvent[]): void {
    const { trace, bondLineChannels } = this.around;
    const timeS = trace.timeAt(index);
    if (this.opened !== null && timeS > this.opened.timeS) return;
    let hottestC = Number.NEGATIVE_INFINITY;
    let coldestC = Number.POSITIVE_INFINITY;
    for (let at = 0; at < bondLineChannels.length; at++) {
      const channel = bondLineChannels[at]!;
      const valueC = trace.valueAt(channel, index);
      if (Number.isFinite(valueC)) {
        hottestC = Math.max(hottestC, valueC);
        coldestC = Math.min(coldestC, valueC);
      }
      if (this.#watch(at, timeS, valueC, out)) this.#news = true;
    }
    if (hottestC > Number.NEGATIVE_INFINITY && this.fall.add(timeS, hottestC))
      out.push({ kind: 'opening-hinted', timeS: this.fall.startedS! });
    if (coldestC < Number.POSITIVE_INFINITY) this.#cure(index, coldestC);
    const before = this.hold;
    // With one channel nothing changes without news of it; among several, one that falls silent changes the slowest.
    if (this.#news || this.watches.length > 1) this.#combine(timeS, out);
    if (this.hold !== null && this.hold === before && coldestC < Number.POSITIVE_INFINITY)
      this.#count(timeS, coldestC, out);
  }

  /** Settles crossings that still wait for readings. */
  settle(endS: number, out: RunEvent[]): void {
    this.watches.forEach((watch, at) => {
      const channel = this.around.bondLineChannels[at]!;
      const news = watch.settle(
        Math.min(endS, this.closedUntilS),
        this.riseFromS,
        this.around.resolutions[channel]!.resolutionC,
      );
      if (news === 'final')
        out.push({ kind: 'crossing-final', crossing: plain(watch.final!), channel: channel + 1 });
      else if (news === 'withdrawn')
        out.push({ kind: 'crossing-final', crossing: null, channel: channel + 1 });
    });
    this.#combine(endS, out);
  }

  /** Live figure only; the result works it out again from the whole trace. */
  #cure(index: number, coldestC: number): void {
    const { trace, rules } = this.around;
    if (rules.cure == null) return;
    const timeS = trace.timeAt(index);
    if (this.pressClosed === null || timeS < this.pressClosed.timeS) return;
    this.cure ??= new CureCounter(rules.cure, intervalBefore(trace, timeS));
    this.cure.add(timeS, coldestC);
  }

  /** True where the channel's crossing has become another. */
  #watch(at: number, timeS: number, valueC: number, out: RunEvent[]): boolean {
    const channel = this.around.bondLineChannels[at]!;
    const watch = this.watches[at]!;
    if (watch.final !== null) {
      watch.seen(timeS, valueC);
      return false;
    }
    const news = watch.add(
      timeS,
      valueC,
      this.riseFromS,
      this.around.resolutions[channel]!.resolutionC,
      this.closedUntilS,
    );
    if (news === null) return false;
    if (news === 'provisional')
      out.push({ kind: 'crossing-provisional', crossing: plain(watch.provisional!), channel: channel + 1 });
    else
      out.push({
        kind: 'crossing-final',
        crossing: news === 'final' ? plain(watch.final!) : null,
        channel: channel + 1,
      });
    return true;
  }

  /** The run has crossed when every bond-line channel that still speaks has; its time is the slowest one's. */
  #combine(timeS: number, out: RunEvent[]): void {
    this.#news = false;
    const provisional = slowest(this.watches, 'provisional', timeS);
    if (provisional?.timeS !== this.provisional?.timeS) {
      this.provisional = provisional === null ? null : plain(provisional);
      this.hold = provisional === null ? null : this.#startHold(provisional.timeS, out);
      this.firstProvisional = this.provisional ?? this.firstProvisional;
    }
    const final = slowest(this.watches, 'final', timeS);
    if (final?.timeS !== this.final?.timeS) this.final = final === null ? null : plain(final);
  }

  #startHold(crossingS: number, out: RunEvent[]): HoldCounter {
    const { trace, bondLineChannels, rules } = this.around;
    this.#dipped = false;
    const hold = new HoldCounter(crossingS, intervalBefore(trace, crossingS), rules);
    this.hold = hold;
    for (let index = trace.indexFrom(crossingS); index < trace.length; index++) {
      let coldestC = Number.POSITIVE_INFINITY;
      for (const channel of bondLineChannels) {
        const valueC = trace.valueAt(channel, index);
        if (valueC < coldestC) coldestC = valueC;
      }
      if (coldestC < Number.POSITIVE_INFINITY) this.#count(trace.timeAt(index), coldestC, out);
    }
    return hold;
  }

  #count(timeS: number, coldestC: number, out: RunEvent[]): void {
    const news = this.hold!.add(timeS, coldestC);
    if (news === 'dip') out.push({ kind: 'dip', fromS: timeS });
    else if (news === 'done') out.push({ kind: 'hold-done', timeS });
    this.#dipped = this.hold!.inDip;
  }
}

function slowest(
  watches: readonly CrossingWatch[],
  which: 'provisional' | 'final',
  nowS: number,
): EstimatedCrossing | null {
  let latest: EstimatedCrossing | null = null;
  for (let at = 0; at < watches.length; at++) {
    const watch = watches[at]!;
    const crossing = which === 'final' ? watch.final : watch.provisional;
    if (crossing === null) {
      const silent = watch.latestValidS === null || watch.latestValidS < nowS - SILENT_S;
      if (silent && watch.provisional === null) continue;
      return null;
    }
    if (latest === null || crossing.timeS > latest.timeS) latest = crossing;
  }
  return latest;
}

/** Only what a result shows of a crossing. */
export function plain(crossing: EstimatedCrossing): Crossing {
  return {
    timeS: crossing.timeS,
    standardUncertaintyS: crossing.standardUncertaintyS,
    slopeCPerS: crossing.slopeCPerS,
  };
}
