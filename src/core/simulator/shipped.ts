import type { RunReasonCode, Verdict } from '../run/RunResult.ts';
import { DEMO_CLOSING, DEMO_READER, DEMO_SCENARIO } from './demo-scenario.ts';
import { variedClosing } from './good-scenarios.ts';
import type { Closing, Scenario, SimulatedReaderSetup } from './Scenario.ts';
import type { ShippedScenario } from './ShippedScenario.ts';

export interface ShippedVariation {
  readonly name: string;
  readonly seed: number;
  readonly failure: string;
  readonly verdict: Verdict;
  readonly reasonCodes: readonly RunReasonCode[];
  readonly change?: Partial<Scenario>;
  readonly closing?: Partial<Closing>;
  readonly reader?: Partial<SimulatedReaderSetup>;
}

/** A run of WB-212 on North with one thing changed. */
export function shipped(variation: ShippedVariation): ShippedScenario {
  const { name, seed, failure, verdict, reasonCodes, change, closing, reader } = variation;
  const usual = variedClosing(seed, DEMO_CLOSING.closedAtS, 178);
  const own = { ...usual, ...closing };
  const scenario: Scenario = {
    ...DEMO_SCENARIO,
    name,
    seed,
    madeAt: '2026-03-09T08:00:00+01:00',
    reader: { ...DEMO_READER, ...reader },
    closings: [own],
    endS: own.openedAtS + 7,
    failure,
    ...change,
  };
  return { fileName: `${name}.dwell.txt`, scenario, expected: { verdict, reasonCodes } };
}
