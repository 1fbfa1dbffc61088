import type { RecordingEntry, RecordingHead } from '../recording/RecordingEntry.ts';
import { createArrivals } from './create-arrivals.ts';
import { createReaderVoice } from './create-reader-voice.ts';
import { createSimulatedBench } from './create-simulated-bench.ts';
import { createWireTroubles, type SentLine } from './create-wire-troubles.ts';
import { operatorMarks } from './operator-marks.ts';
import type { Scenario } from './Scenario.ts';
import { simulatedHead } from './simulated-head.ts';

export interface SimulatedRecording {
  readonly head: RecordingHead;
  readonly entries: readonly RecordingEntry[];
}

/**
 * The recording that a host would have made of this scenario: lines of the reader with their arrival, key presses,
 * host events; in the head what really happened, in seconds from the recording's first reading.
 * The same scenario gives the same recording to the last byte.
 */
export function simulateRecording(scenario: Scenario): SimulatedRecording {
  const bench = createSimulatedBench(scenario);
  const voice = createReaderVoice(scenario);
  const troubles = createWireTroubles(scenario, voice);
  const sent: SentLine[] = [];
  let firstReadingS: number | null = null;
  for (const event of bench.advanceTo(scenario.endS)) {
    for (const line of troubles.send(event)) {
      sent.push(line);
      if (line.readingS !== null) firstReadingS ??= line.readingS;
    }
  }
  const entries = createArrivals(scenario).entriesOf(sent, operatorMarks(scenario, bench.truths()));
  return { head: simulatedHead(scenario, bench.truths(), firstReadingS ?? 0), entries };
}
