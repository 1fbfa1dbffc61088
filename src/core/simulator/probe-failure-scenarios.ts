import { DEMO_SCENARIO } from './demo-scenario.ts';
import type { ProbeSetup, Scenario } from './Scenario.ts';
import type { ShippedScenario } from './ShippedScenario.ts';
import { shipped } from './shipped.ts';

const [, OUTER_EDGE, UPPER, LOWER] = DEMO_SCENARIO.probes;

function bondLineProbe(probe: ProbeSetup): Partial<Scenario> {
  return { probes: [probe, OUTER_EDGE, UPPER, LOWER] };
}

/** What goes wrong with the bond-line probe and its wire. */
export const PROBE_FAILURE_SCENARIOS: readonly ShippedScenario[] = Object.freeze([
  shipped({
    name: 'failure-probe-taped-over',
    seed: 9101,
    failure: 'probe tip taped over',
    verdict: 'suspect',
    reasonCodes: ['probe-not-at-bond-line'],
    change: bondLineProbe({ lagS: 8, conductionShare: 0.06 }),
    closing: { openedAtS: 212 },
  }),
  shipped({
    name: 'failure-probe-off-bond-line',
    seed: 9102,
    failure: 'probe tip not at the bond line',
    verdict: 'unusable',
    reasonCodes: ['target-never-reached'],
    change: bondLineProbe({ lagS: 12, conductionShare: 0.32 }),
  }),
  shipped({
    name: 'failure-probe-on-platen',
    seed: 9103,
    failure: 'probe touches a platen',
    verdict: 'unusable',
    reasonCodes: ['probe-on-platen'],
    change: { channelTroubles: [{ kind: 'touches-platen', channel: 1 }] },
  }),
  shipped({
    name: 'failure-wire-broken',
    seed: 9104,
    failure: 'wire broken',
    verdict: 'suspect',
    reasonCodes: ['probe-open-circuit'],
    change: {
      channelTroubles: [
        { kind: 'full-scale', channel: 1, atS: 41.7, samples: 3 },
        { kind: 'fault', channel: 1, fault: 'open-circuit', fromS: 42, toS: 1000 },
      ],
    },
  }),
  shipped({
    name: 'failure-both-probes-open',
    seed: 9105,
    failure: 'both bond-line probes broken',
    verdict: 'unusable',
    reasonCodes: ['probe-open-circuit'],
    change: {
      channelTroubles: [
        { kind: 'fault', channel: 1, fault: 'open-circuit', fromS: 38, toS: 1000 },
        { kind: 'fault', channel: 2, fault: 'open-circuit', fromS: 38, toS: 1000 },
      ],
    },
  }),
  shipped({
    name: 'failure-loose-plug-at-crossing',
    seed: 9106,
    failure: 'loose plug',
    verdict: 'unusable',
    reasonCodes: ['fault-at-crossing'],
    change: {
      channelTroubles: [
        { kind: 'full-scale', channel: 1, atS: 59.8, samples: 2 },
        { kind: 'fault', channel: 1, fault: 'open-circuit', fromS: 60, toS: 72 },
        { kind: 'fault', channel: 2, fault: 'open-circuit', fromS: 60, toS: 72 },
      ],
    },
  }),
  shipped({
    name: 'failure-plug-reversed',
    seed: 9107,
    failure: 'plug reversed',
    verdict: 'unusable',
    reasonCodes: ['plug-reversed'],
    change: { channelTroubles: [{ kind: 'plug-reversed', channel: 1 }] },
  }),
  shipped({
    name: 'failure-plug-reversed-emf',
    seed: 9108,
    failure: 'plug reversed',
    verdict: 'unusable',
    reasonCodes: ['plug-reversed'],
    reader: { sends: 'emf' },
    change: { channelTroubles: [{ kind: 'plug-reversed', channel: 1 }] },
  }),
  shipped({
    name: 'failure-wrong-thermocouple-type',
    seed: 9109,
    failure: 'wrong thermocouple type set',
    verdict: 'suspect',
    reasonCodes: ['wrong-thermocouple-type'],
    change: { channelTroubles: [{ kind: 'wire-type', channel: 1, wire: 'J' }] },
  }),
  shipped({
    name: 'failure-second-junction',
    seed: 9110,
    failure: 'lead crushed at the edge',
    verdict: 'suspect',
    reasonCodes: ['second-junction'],
    change: { channelTroubles: [{ kind: 'second-junction', channel: 1, share: 0.12 }] },
  }),
  shipped({
    name: 'failure-extension-reversed',
    seed: 9111,
    failure: 'extension lead reversed at both ends',
    verdict: 'suspect',
    reasonCodes: ['extension-reversed'],
    change: { channelTroubles: [{ kind: 'extension-reversed', channel: 1, headC: 41 }] },
  }),
  shipped({
    name: 'failure-ground-shift',
    seed: 9112,
    failure: 'grounded junction on a live platen',
    verdict: 'suspect',
    reasonCodes: ['ground-shift'],
    change: { channelTroubles: [{ kind: 'ground-shift', channel: 1, shiftC: 7 }] },
  }),
  shipped({
    name: 'failure-interference',
    seed: 9113,
    failure: 'interference from heaters switching',
    verdict: 'suspect',
    reasonCodes: ['interference'],
    change: {
      channelTroubles: [
        { kind: 'ripple', channel: 1, amplitudeC: 2.5, frequencyHz: 50.13 },
        { kind: 'spikes', channel: 1, heightC: 22, sharePerSample: 0.01 },
      ],
    },
  }),
]);
