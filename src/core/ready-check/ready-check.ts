import { checkAgreement } from './check-agreement.ts';
import { checkCarrier } from './check-carrier.ts';
import { checkConfirmed } from './check-confirmed.ts';
import { checkGauge } from './check-gauge.ts';
import { checkNoise } from './check-noise.ts';
import { checkPlatens } from './check-platens.ts';
import { checkProbes } from './check-probes.ts';
import { checkReader } from './check-reader.ts';
import {
  READY_ITEMS,
  type ReadyFacts,
  type ReadyFinding,
  type ReadyItem,
  type ReadyItemName,
} from './ReadyCheck.ts';

const CHECKS: Readonly<Record<ReadyItemName, (facts: ReadyFacts) => ReadyFinding>> = {
  reader: checkReader,
  probes: checkProbes,
  agreement: checkAgreement,
  noise: checkNoise,
  platens: checkPlatens,
  carrier: checkCarrier,
  gauge: checkGauge,
  placement: (facts) => checkConfirmed(facts, 'placement'),
  bell: (facts) => checkConfirmed(facts, 'bell'),
};

/** Every item of the ready check, each with how it stands now. A ready check advises; it holds no press back. */
export function readyCheck(facts: ReadyFacts): readonly ReadyItem[] {
  return READY_ITEMS.map((name) => ({
    name,
    ...CHECKS[name](facts),
    overridden: facts.overridden[name] ?? null,
  }));
}

/** True when the item holds nothing up: in order, not to be measured here, or gone on with for a reason. */
export function isSettled({ state, overridden }: ReadyItem): boolean {
  return state === 'ready' || state === 'not-checked' || overridden !== null;
}
