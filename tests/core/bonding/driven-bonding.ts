import type {
  BondingEvent,
  BondingIntent,
  BondingJob,
  BondingState,
} from '../../../src/core/bonding/BondingState.ts';
import { bondingReducer } from '../../../src/core/bonding/bonding-reducer.ts';
import { startBonding } from '../../../src/core/bonding/start-bonding.ts';
import { rowText } from '../../../src/core/chart/row-text.ts';
import type { RecordingEntry } from '../../../src/core/recording/RecordingEntry.ts';
import type { RunEvent } from '../../../src/core/run/RunEvent.ts';
import { bondingView } from '../../../src/core/screen-bonding/bonding-view.ts';
import { shellFrame } from '../../../src/core/screen-shell/shell-frame.ts';
import { createSession } from '../../../src/core/session/create-session.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';
import { formatContact } from '../../../src/core/wire/protocol/format-contact.ts';
import { formatSample } from '../../../src/core/wire/protocol/format-sample.ts';
import { RULES } from '../screen/ScriptedTrial.ts';
import { RECIPE } from '../screen-home/shop.ts';

/** WB-212 on North: dwell 175 s, hold 120 s at 350 °F, platens 450 °F ±5 °F, on a reader with bond line and both platens. */
export const JOB: BondingJob = {
  recipe: { ...RECIPE, simulated: false },
  gaugePsi: 94,
  platenSetPointC: { upper: 232.2, lower: 232.2 },
  platenBandC: 5 / 1.8,
  band: Array.from({ length: 401 }, (_, i) => ({
    timeS: i / 2,
    lowC: bondLineC(i / 2) - 3,
    highC: bondLineC(i / 2) + 3,
  })),
  bandToleranceC: 10 / 1.8,
  roles: ['bond-line', 'upper-platen', 'lower-platen'],
  readerName: '/dev/ttyACM0',
  simulated: false,
  speed: 1,
};

/** First-order curve of the domain brief: 24 °C, platens 232 °C, time constant 40.5 s. */
export function bondLineC(sinceClosedS: number): number {
  return sinceClosedS <= 0 ? 24 : 232 - 208 * Math.exp(-sinceClosedS / 40.5);
}

const CYCLE = {
  cycleId: 'cycle-1',
  assemblyName: 'WB-212',
  pressName: 'North',
  recipeVersion: 2,
  recordingId: 'r9',
  simulated: false,
  initials: null,
  closedAt: '2026-11-25T11:08:00.000Z',
};

export interface Driven {
  /** Bond line, °C; null = open circuit. */
  readonly bondC?: (timeS: number) => number | null;
  readonly upperC?: (timeS: number) => number;
  readonly job?: BondingJob;
  readonly intervalS?: number;
}

/** The production timer behind the real readings' path: samples and contact edges as a reader sends them, keys as a hand gives them. */
export class DrivenBonding {
  state: BondingState;
  readonly intents: BondingIntent[] = [];
  timeS = 0;
  private readonly session;
  private sequence = 0;
  private sampledS = 0;

  private readonly driven: Driven;

  constructor(driven: Driven = {}) {
    this.driven = driven;
    const job = driven.job ?? JOB;
    this.state = startBonding({
      choices: [RECIPE],
      cautionsAcknowledged: true,
      unit: 'F',
      storePath: '/shop/store.db',
      nowUs: 0,
    });
    this.session = createSession({
      decoder: createReaderDecoder({}),
      roles: job.roles ?? [],
      rules: RULES,
    });
    this.send({ kind: 'link', link: { kind: 'open' }, atUs: 0 });
    this.send({ kind: 'prepared', job, atUs: 0 });
  }

  send(event: BondingEvent): this {
    const [next, wishes] = bondingReducer(this.state, event);
    this.state = next;
    for (const wish of wishes) {
      this.intents.push(wish);
      // What the program does: a cycle is logged, a mark goes the readings' way too.
      if (wish.kind === 'log-cycle') {
        const cycle = { ...CYCLE, ...wish.facts };
        this.send({ kind: 'logged', cycle, atUs: this.timeS * 1e6 });
      }
      if (wish.kind === 'mark')
        this.take({ kind: 'mark', arrivedUs: wish.atUs, by: wish.by, mark: { kind: wish.what } });
      if (wish.kind === 'undo')
        this.take({ kind: 'mark', arrivedUs: wish.atUs, by: 'key', mark: { kind: 'undo', what: wish.what } });
    }
    return this;
  }

  /** Lets time go on; samples come unless silent. */
  until(timeS: number, { silent = false } = {}): this {
    const { intervalS = 0.1 } = this.driven;
    while (this.timeS + 0.05 <= timeS + 1e-9) {
      this.timeS = Math.round((this.timeS + 0.05) * 1000) / 1000;
      if (!silent && this.timeS - this.sampledS >= intervalS - 1e-9) {
        this.sampledS = this.timeS;
        this.sample();
      }
      this.send({ kind: 'tick', atUs: this.timeS * 1e6 });
    }
    return this;
  }

  key(character: string): this {
    const atUs = this.timeS * 1e6;
    this.send({ kind: 'input', input: { kind: 'character', character, atUs }, atUs });
    return this.until(this.timeS + 0.1);
  }

  contact(closed: boolean): this {
    return this.line(formatContact({ closed, deviceTimeUs: Math.round(this.timeS * 1e6) }));
  }

  /** One word a wish, in order. */
  get did(): readonly string[] {
    return this.intents.map((one) => ('what' in one ? `${one.kind} ${one.what}` : one.kind));
  }

  get cycles() {
    return this.intents.flatMap((one) => (one.kind === 'log-cycle' ? [one.facts] : []));
  }

  rows(columns = 80, rows = 24, ascii = false) {
    return shellFrame(bondingView(this.state), { columns, rows, ascii });
  }

  text(columns = 80, rows = 24, ascii = false): string {
    return this.rows(columns, rows, ascii).map(rowText).join('\n');
  }

  private sample(): void {
    const { bondC = () => 24, upperC = () => 232.2, job = JOB } = this.driven;
    const values = (job.roles ?? []).map((role) =>
      role === 'upper-platen' ? upperC(this.timeS) : role === 'lower-platen' ? 232.2 : bondC(this.timeS),
    );
    this.line(
      formatSample({
        sequence: this.sequence++,
        deviceTimeUs: Math.round(this.timeS * 1e6),
        channels: values.map((value) =>
          value === null
            ? { kind: 'fault', fault: 'open-circuit' }
            : { kind: 'temperature', temperatureC: value },
        ),
      }),
    );
  }

  private line(text: string): this {
    return this.take({ kind: 'line', arrivedUs: this.timeS * 1e6, text, wholeness: 'whole' });
  }

  private take(entry: RecordingEntry): this {
    const events: readonly RunEvent[] = this.session.accept(entry);
    return this.send({
      kind: 'session',
      state: this.session.state,
      events,
      atUs: this.timeS * 1e6,
    });
  }
}
