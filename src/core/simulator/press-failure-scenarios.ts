import type { ShippedScenario } from './ShippedScenario.ts';
import { shipped } from './shipped.ts';

const KEYS_ONLY = { hasContact: false } as const;

/** What goes wrong with part, platens, ram and the operator's marks. */
export const PRESS_FAILURE_SCENARIOS: readonly ShippedScenario[] = Object.freeze([
  shipped({
    name: 'failure-carrier-warm',
    seed: 9201,
    failure: 'carrier still warm',
    verdict: 'suspect',
    reasonCodes: ['carrier-warm'],
    closing: { startC: 68 },
  }),
  shipped({
    name: 'failure-ram-low',
    seed: 9202,
    failure: 'ram low',
    verdict: 'suspect',
    reasonCodes: ['slow-rise'],
    closing: { contactFactor: 2.1, openedAtS: 232 },
  }),
  shipped({
    name: 'failure-platen-low',
    seed: 9203,
    failure: 'platen not recovered',
    verdict: 'suspect',
    reasonCodes: ['platen-low'],
    closing: { openedAtS: 206 },
    change: { platenStartDifferenceC: -24 },
  }),
  shipped({
    name: 'failure-taper-mismatch',
    seed: 9204,
    failure: 'taper mismatch',
    verdict: 'suspect',
    reasonCodes: ['uneven-bond-line'],
    closing: { edgeFactor: 1.27, openedAtS: 200 },
  }),
  shipped({
    name: 'failure-opened-early',
    seed: 9205,
    failure: 'press opened early',
    verdict: 'suspect',
    reasonCodes: ['opened-early'],
    closing: { openedAtS: 132 },
  }),
  shipped({
    name: 'failure-opened-early-not-marked',
    seed: 9206,
    failure: 'press opened early, opening not marked',
    verdict: 'suspect',
    reasonCodes: ['opened-early'],
    closing: { openedAtS: 126 },
    reader: KEYS_ONLY,
    change: { keys: { closedDelayS: 0.15, openedDelayS: null }, endS: 160 },
  }),
  shipped({
    name: 'failure-late-mark',
    seed: 9207,
    failure: 'closing marked late',
    verdict: 'suspect',
    reasonCodes: ['late-mark'],
    reader: KEYS_ONLY,
    change: { keys: { closedDelayS: 7, openedDelayS: 0.2 } },
  }),
  shipped({
    name: 'failure-marks-disagree',
    seed: 9208,
    failure: 'key pressed late beside the contact',
    verdict: 'suspect',
    reasonCodes: ['marks-disagree'],
    change: { keys: { closedDelayS: 5, openedDelayS: 0.2 } },
  }),
  shipped({
    name: 'no-mark-of-closing',
    seed: 9209,
    failure: 'closing not marked',
    verdict: 'good',
    reasonCodes: ['from-onset'],
    reader: KEYS_ONLY,
  }),
]);
