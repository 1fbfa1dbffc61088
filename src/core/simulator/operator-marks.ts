import type { OperatorMark } from '../reading/StreamEvent.ts';
import type { ClosingTruth } from './create-closing-truth.ts';
import type { Scenario } from './Scenario.ts';

export interface TimedMark {
  readonly timeS: number;
  readonly mark: OperatorMark;
}

/** The keys an operator presses during a scenario, in seconds of the simulation. */
export function operatorMarks(scenario: Scenario, closings: readonly ClosingTruth[]): readonly TimedMark[] {
  const { closedDelayS, openedDelayS } = scenario.keys;
  const marks: TimedMark[] = [];
  for (const closing of closings) {
    if (closedDelayS !== null) {
      marks.push({ timeS: closing.pressClosedS + closedDelayS, mark: { kind: 'press-closed' } });
    }
    if (openedDelayS !== null && closing.openedS !== null) {
      marks.push({ timeS: closing.openedS + openedDelayS, mark: { kind: 'opened' } });
    }
  }
  return marks;
}
