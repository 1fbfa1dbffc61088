import { formatRecording } from '../recording/format-recording.ts';
import { SHIPPED_SCENARIOS } from './shipped-scenarios.ts';
import { simulateRecording } from './simulate-recording.ts';

/** The text of every shipped recording, made anew; byte for byte what lies in `recordings/`. */
export function* shippedRecordings(): Generator<{ readonly fileName: string; readonly text: string }> {
  for (const { fileName, scenario } of SHIPPED_SCENARIOS) {
    const { head, entries } = simulateRecording(scenario);
    yield { fileName, text: [...formatRecording(head, entries)].join('') };
  }
}
