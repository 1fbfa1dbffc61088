import { WB_212 } from './demo-assemblies.ts';
import { NORTH } from './demo-presses.ts';
import type { Closing, ProbeSetup, Scenario, SimulatedReaderSetup } from './Scenario.ts';

/** 350 °F. */
export const DEMO_TARGET_C = 176.667;

export const DEMO_READER: SimulatedReaderSetup = Object.freeze({
  rateHz: 10,
  sends: 'temperature',
  thermocoupleType: 'K',
  whiteNoiseC: 0.12,
  correlatedNoiseC: 0.05,
  correlation: 0.6,
  stepC: 0.25,
  coldJunctionC: 26.4,
  hasContact: true,
  driftPpm: 18,
  clockStartUs: 41_730_118,
  sequenceStart: 611,
  layout: 'protocol',
});

const BOND_LINE_PROBE: ProbeSetup = Object.freeze({ lagS: 0.3, conductionShare: 0 });
const PLATEN_PROBE: ProbeSetup = Object.freeze({ lagS: 2, conductionShare: 0 });

export const DEMO_CLOSING: Closing = Object.freeze({
  closedAtS: 12,
  openedAtS: 188,
  startC: 24,
  contactFactor: 1,
  edgeFactor: 1,
});

/** A good run of WB-212 on North, to be varied. */
export const DEMO_SCENARIO: Scenario = Object.freeze({
  name: 'wb-212-north',
  seed: 1,
  madeAt: '2026-03-02T08:00:00+01:00',
  press: NORTH,
  assembly: WB_212,
  reader: DEMO_READER,
  probes: [BOND_LINE_PROBE, BOND_LINE_PROBE, PLATEN_PROBE, PLATEN_PROBE],
  ambientC: 24,
  platenStartDifferenceC: 0,
  closings: [DEMO_CLOSING],
  endS: 196,
  targetC: DEMO_TARGET_C,
  holdS: 120,
  keys: { closedDelayS: null, openedDelayS: null },
  channelTroubles: [],
  wireTroubles: [],
  failure: 'none',
} as const);
