import type { StreamEvent } from '../../../src/core/reading/StreamEvent.ts';
import type { ChannelRole } from '../../../src/core/recording/RecordingEntry.ts';
import { createRunTracker } from '../../../src/core/run/create-run-tracker.ts';
import type { RunEvent } from '../../../src/core/run/RunEvent.ts';
import type { RunResult, RunRules } from '../../../src/core/run/RunResult.ts';
import { RULES } from './make-heating.ts';

/** Runs events through a tracker; each run event with the time of the reading that brought it. */
export function track(
  events: readonly StreamEvent[],
  rules: Partial<RunRules> = {},
  roles: readonly ChannelRole[] = ['bond-line'],
): { results: RunResult[]; told: { atS: number; event: RunEvent }[] } {
  const tracker = createRunTracker({ rules: { ...RULES, ...rules }, roles });
  const told: { atS: number; event: RunEvent }[] = [];
  let atS = 0;
  for (const event of events) {
    if (event.kind === 'reading') atS = event.reading.timeS;
    for (const one of tracker.accept(event)) told.push({ atS, event: one });
  }
  for (const one of tracker.finish()) told.push({ atS, event: one });
  return {
    results: told.flatMap(({ event }) => (event.kind === 'run-finished' ? [event.result] : [])),
    told,
  };
}
