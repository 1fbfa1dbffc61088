import type { ReadingValue } from '../../../src/core/reading/StreamEvent.ts';
import type { RunEvent } from '../../../src/core/run/RunEvent.ts';
import type { RunResult, RunRules } from '../../../src/core/run/RunResult.ts';
import { startTrialScreen } from '../../../src/core/screen/start-trial-screen.ts';
import { stateName } from '../../../src/core/screen/state-name.ts';
import type { TrialIntent } from '../../../src/core/screen/TrialIntent.ts';
import type { TrialScreenEvent } from '../../../src/core/screen/TrialScreenEvent.ts';
import type { TrialScreenState } from '../../../src/core/screen/TrialScreenState.ts';
import { trialScreenReducer } from '../../../src/core/screen/trial-screen-reducer.ts';
import { createRunStage } from '../../../src/core/session/create-run-stage.ts';
import { RULES, ScriptedTrial, SETUP } from './ScriptedTrial.ts';

const EMPTY = new ScriptedTrial().session;

/** What a reader sends at a moment: °C, a fault, or null for no line at all. */
export type Sent = number | 'fault' | null;

/** Bond line of a press closed at 10 s: the brief's curve T(t) = Tp − (Tp − T0)·exp(−(t − d)/τ), opened (falling) later. */
export function heatingC(timeS: number, closedS = 10, openedS = Number.POSITIVE_INFINITY): number {
  if (timeS > openedS) return 24 + (heatingC(openedS, closedS) - 24) * Math.exp(-(timeS - openedS) / 60);
  const sinceS = timeS - closedS - 3;
  return sinceS <= 0 ? 24 : 232 - 208 * Math.exp(-sinceS / 40.5);
}

/** The screen's reducer on the real run tracker: marks that the screen wishes for go to the tracker, as in the program. */
export class DrivenTrial {
  state: TrialScreenState;
  timeS = 0;
  /** After each reading: the state's name, and the crossing that the hold counts from. */
  readonly names: string[] = [];
  readonly crossings: (number | null)[] = [];
  readonly intents: TrialIntent[] = [];
  readonly results: RunResult[] = [];
  readonly #stage;
  readonly #sent: (timeS: number) => Sent;
  readonly #stepS: number;
  #latest: { readonly timeS: number; readonly value: ReadingValue } | null = null;

  constructor(
    sent: (timeS: number) => Sent,
    { rules = {}, stepS = 0.2 }: { readonly rules?: Partial<RunRules>; readonly stepS?: number } = {},
  ) {
    const allRules = { ...RULES, ...rules };
    this.#sent = sent;
    this.#stepS = stepS;
    this.#stage = createRunStage({
      rules: allRules,
      roles: ['bond-line'],
      clock: () => ({ driftPpm: null, standardUncertaintyPpm: null, overS: 0 }),
    });
    this.state = startTrialScreen({ ...SETUP, roles: ['bond-line'], rules: allRules }, 0);
    this.#send({ kind: 'link', link: { kind: 'open' }, atUs: 0 });
  }

  /** Readings, and the screen's own ticks, up to a moment. */
  until(endS: number): this {
    while (this.timeS < endS - 1e-9) {
      const timeS = Math.round((this.timeS + this.#stepS) * 1000) / 1000;
      this.timeS = timeS;
      const sent = this.#sent(timeS);
      if (sent === null) this.#send({ kind: 'tick', atUs: timeS * 1e6 });
      else {
        const value: ReadingValue =
          sent === 'fault'
            ? { kind: 'fault', fault: 'open-circuit' }
            : { kind: 'temperature', temperatureC: sent };
        this.#latest = { timeS, value };
        const reading = { timeS, arrivedUs: timeS * 1e6, values: [value] };
        this.#told(this.#stage.accept({ kind: 'reading', reading }));
      }
      this.names.push(stateName(this.state));
      this.crossings.push(this.state.session?.run.provisionalCrossing?.timeS ?? null);
    }
    return this;
  }

  key(character: string): this {
    const atUs = this.timeS * 1e6;
    this.#send({ kind: 'input', input: { kind: 'character', character, atUs }, atUs });
    this.#send({ kind: 'tick', atUs: atUs + 60_000 });
    return this;
  }

  named(name: 'enter' | 'escape'): this {
    const atUs = this.timeS * 1e6;
    this.#send({ kind: 'input', input: { kind: 'named', name, atUs }, atUs });
    return this;
  }

  contact(closed: boolean): this {
    this.#told(this.#stage.accept({ kind: 'contact', timeS: this.timeS, closed }));
    return this;
  }

  finish(): this {
    this.#told(this.#stage.finish());
    return this;
  }

  get name(): string {
    return stateName(this.state);
  }

  #told(events: readonly RunEvent[]): void {
    for (const event of events) if (event.kind === 'run-finished') this.results.push(event.result);
    const { timeS, value } = this.#latest ?? { timeS: 0, value: null };
    const reading = value === null ? null : { timeS, arrivedUs: timeS * 1e6, values: [value] };
    const same = this.state.latest?.timeS === timeS ? this.state.latest : reading;
    const session = { ...EMPTY, run: this.#stage.state, latestReading: same };
    this.#send({ kind: 'session', state: session, events, atUs: this.timeS * 1e6 });
  }

  #send(event: TrialScreenEvent): void {
    const [next, intents] = trialScreenReducer(this.state, event);
    this.state = next;
    this.intents.push(...intents);
    for (const intent of intents)
      if (intent.kind === 'mark')
        this.#told(
          this.#stage.accept({
            kind: 'mark',
            timeS: Math.max(this.#latest?.timeS ?? 0, intent.atUs / 1e6),
            mark: intent.mark,
          }),
        );
  }
}
