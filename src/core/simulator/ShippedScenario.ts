import type { RunReasonCode, Verdict } from '../run/RunResult.ts';
import type { Scenario } from './Scenario.ts';

/** A recording that ships with the program, and what the tool must say of it. */
export interface ShippedScenario {
  readonly fileName: string;
  readonly scenario: Scenario;
  readonly expected: {
    readonly verdict: Verdict;
    /** Each of these must be among the run's reasons; others may be. */
    readonly reasonCodes: readonly RunReasonCode[];
  };
}
