import { createReaderVoice, SIMULATED_RATES_HZ } from './create-reader-voice.ts';
import { type BenchEvent, createSimulatedBench, type SimulatedBench } from './create-simulated-bench.ts';
import { replyTo } from './reply-to.ts';
import type { Scenario } from './Scenario.ts';

/** Bytes as the reader sends them, with the moment of sending. */
export interface SentBytes {
  /** µs since power-up of the device. */
  readonly sentUs: number;
  readonly bytes: Uint8Array;
}

/** A reader with a press under it, speaking through bytes; time is moved from outside. */
export interface SimulatedDevice {
  /** Moves the device to this time, µs since power-up, and returns what it sent meanwhile. Time never goes back. */
  advanceTo(deviceTimeUs: number): readonly SentBytes[];
  /** Takes bytes from the host; returns the replies that they complete. */
  receive(bytes: Uint8Array): Uint8Array;
  closePress(): void;
  openPress(): void;
  /** What is true in the press, for tests and demonstrations. */
  readonly bench: SimulatedBench;
}

const LONGEST_COMMAND = 60;
const encoder = new TextEncoder();

/**
 * The simulated reader as a device: sends from power-up on, answers the host's commands, takes `closePress` and
 * `openPress` when the scenario is worked by hand. A plain reader sends only values and answers nothing.
 */
export function createSimulatedDevice(
  scenario: Scenario,
  by: 'schedule' | 'hand' = 'schedule',
): SimulatedDevice {
  const bench = createSimulatedBench(scenario, by);
  const voice = createReaderVoice(scenario);
  let sending = true;
  let heard = '';
  let poweredUp = false;

  function linesOf(event: BenchEvent): string | null {
    if (event.kind === 'sample' && !sending) {
      voice.skipSample();
      return null;
    }
    return voice.lineOf(event);
  }

  return {
    bench,
    advanceTo(deviceTimeUs) {
      const sent: SentBytes[] = [];
      if (!poweredUp) {
        poweredUp = true;
        sent.push({ sentUs: 0, bytes: linesToBytes(voice.restart(0, 'power-up')) });
      }
      for (const event of bench.advanceTo(deviceTimeUs / 1e6)) {
        const line = linesOf(event);
        if (line !== null) sent.push({ sentUs: Math.round(event.sentS * 1e6), bytes: linesToBytes([line]) });
      }
      return sent;
    },
    receive(bytes) {
      const replies: string[] = [];
      for (const byte of bytes) {
        if (byte !== 10 && byte !== 13) {
          // One character more than allowed is kept, so that an over-long command is seen as such.
          if (heard.length <= LONGEST_COMMAND) heard += String.fromCharCode(byte);
          continue;
        }
        if (heard !== '' && scenario.reader.layout === 'protocol') {
          const answer = replyTo(heard, { ratesHz: SIMULATED_RATES_HZ, channels: 4 });
          if (answer.sending !== null) sending = answer.sending;
          if (answer.rateHz !== null) {
            bench.setRate(answer.rateHz);
            voice.setRate(answer.rateHz);
          }
          if (answer.reply !== null) replies.push(answer.reply);
          const identity = answer.identity ? voice.identityLine() : null;
          if (identity !== null) replies.push(identity);
        }
        heard = '';
      }
      return linesToBytes(replies);
    },
    closePress: () => bench.closePress(),
    openPress: () => bench.openPress(),
  };
}

function linesToBytes(lines: readonly string[]): Uint8Array {
  return encoder.encode(lines.map((line) => `${line}\n`).join(''));
}
