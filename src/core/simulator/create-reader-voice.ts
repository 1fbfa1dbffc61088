import {
  formatContact,
  formatIdentity,
  formatSample,
  formatStarted,
  PROTOCOL_CLOCK_WRAP_US,
  PROTOCOL_SEQUENCE_WRAP,
} from '../wire/protocol/index.ts';
import type { ChannelValue, ReaderIdentity } from '../wire/WireEvent.ts';
import type { BenchEvent } from './create-simulated-bench.ts';
import type { Scenario } from './Scenario.ts';

/** Rates the simulated reader offers, Hz. */
export const SIMULATED_RATES_HZ: readonly number[] = Object.freeze([1, 2, 5, 10, 50]);
/** Device clock when a reader that restarts sends its first line, µs. */
const BOOT_US = 212_000;

/** Writes the simulated reader's lines: keeps its sequence number and its own, slightly wrong, clock. */
export interface ReaderVoice {
  /** null: a plain reader has no line for this event. */
  lineOf(event: BenchEvent): string | null;
  /** null for a plain reader. */
  identityLine(): string | null;
  /** The reader restarts at this moment: clock and sequence begin anew. The lines of its power-up. */
  restart(timeS: number, why: string): readonly string[];
  /** The clock begins anew, the sequence goes on. */
  resetClock(timeS: number): void;
  /** A sample was taken but not sent: its number is used up. */
  skipSample(): void;
  setRate(rateHz: number): void;
}

export function createReaderVoice(scenario: Scenario): ReaderVoice {
  const { reader } = scenario;
  let clockFromS = 0;
  let clockStartUs = reader.clockStartUs;
  let sequence = reader.sequenceStart;
  let rateHz = reader.rateHz;

  const deviceTimeUs = (timeS: number): number => {
    const runUs = (timeS - clockFromS) * 1e6 * (1 + reader.driftPpm * 1e-6);
    return (clockStartUs + Math.round(runUs)) % PROTOCOL_CLOCK_WRAP_US;
  };

  const skipSample = (): void => {
    sequence = (sequence + 1) % PROTOCOL_SEQUENCE_WRAP;
  };

  function lineOf(event: BenchEvent): string | null {
    if (event.kind === 'sample') {
      const number = sequence;
      skipSample();
      if (reader.layout === 'plain') return plainLine(event.channels);
      return formatSample({
        sequence: number,
        deviceTimeUs: deviceTimeUs(event.timeS),
        channels: event.channels,
      });
    }
    if (reader.layout === 'plain') return null;
    return formatContact({ closed: event.closed, deviceTimeUs: deviceTimeUs(event.timeS) });
  }

  function identityLine(): string | null {
    return reader.layout === 'plain' ? null : formatIdentity({ ...identityOf(scenario), rateHz });
  }

  function resetClock(timeS: number): void {
    clockFromS = timeS;
    clockStartUs = BOOT_US;
  }

  return {
    lineOf,
    identityLine,
    skipSample,
    resetClock,
    restart(timeS, why) {
      resetClock(timeS);
      sequence = 0;
      rateHz = reader.rateHz;
      const identity = identityLine();
      return identity === null ? ['', 'thermometer ready'] : ['', formatStarted(why), identity];
    },
    setRate(hz) {
      rateHz = hz;
    },
  };
}

/** The demo's four-channel board (invented). */
function identityOf({ reader }: Scenario): ReaderIdentity {
  return {
    name: 'simulated-reader',
    firmwareVersion: '1.0',
    serialNumber: '0001',
    channels: [1, 2, 3, 4].map((number) => ({
      number,
      name: null,
      thermocoupleType: reader.thermocoupleType,
      sends: reader.sends,
      resolutionC: reader.sends === 'emf' || reader.stepC <= 0 ? null : reader.stepC,
    })),
    ratesHz: SIMULATED_RATES_HZ,
    hasContact: reader.hasContact,
  };
}

function plainLine(channels: readonly ChannelValue[]): string {
  return channels
    .map((value, index) => {
      const text = value.kind === 'temperature' ? `${value.temperatureC.toFixed(1)} C` : 'nan C';
      return `T${index + 1}: ${text}`;
    })
    .join('  ');
}
