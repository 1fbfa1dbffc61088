import type { ShippedScenario } from './ShippedScenario.ts';
import { shipped } from './shipped.ts';

/** 2^32 µs less 40 s: the counter wraps 40 s into the simulation. */
const WRAPS_AT_40_S_US = 2 ** 32 - 40_000_000;

/** What goes wrong between reader and host, and the other ways a reader may speak. */
export const WIRE_FAILURE_SCENARIOS: readonly ShippedScenario[] = Object.freeze([
  shipped({
    name: 'failure-unplugged-at-crossing',
    seed: 9301,
    failure: 'reader unplugged at the crossing',
    verdict: 'unusable',
    reasonCodes: ['gap-at-crossing'],
    change: { wireTroubles: [{ kind: 'unplugged', fromS: 58, toS: 76 }] },
  }),
  shipped({
    name: 'unplugged-away-from-crossing',
    seed: 9302,
    failure: 'reader unplugged away from the crossing',
    verdict: 'good',
    reasonCodes: ['gap'],
    change: { wireTroubles: [{ kind: 'unplugged', fromS: 28, toS: 33 }] },
  }),
  shipped({
    name: 'failure-lines-lost-near-crossing',
    seed: 9303,
    failure: 'lines lost near the crossing',
    verdict: 'suspect',
    reasonCodes: ['gap-near-crossing'],
    change: { wireTroubles: [{ kind: 'lost-lines', atS: 64, lines: 25 }] },
  }),
  shipped({
    name: 'reader-restarted',
    seed: 9304,
    failure: 'reader rebooted',
    verdict: 'good',
    reasonCodes: ['reader-restarted'],
    change: { wireTroubles: [{ kind: 'reader-restarted', atS: 100, awayS: 2.4 }] },
  }),
  shipped({
    name: 'clock-reset',
    seed: 9305,
    failure: 'reader clock reset',
    verdict: 'good',
    reasonCodes: ['reader-restarted'],
    change: { wireTroubles: [{ kind: 'clock-reset', atS: 110 }] },
  }),
  shipped({
    name: 'counter-wrapped',
    seed: 9306,
    failure: 'device counters wrapped',
    verdict: 'good',
    reasonCodes: [],
    reader: { clockStartUs: WRAPS_AT_40_S_US, sequenceStart: 65_100 },
  }),
  shipped({
    name: 'host-asleep',
    seed: 9307,
    failure: 'host asleep',
    verdict: 'good',
    reasonCodes: ['gap'],
    change: { wireTroubles: [{ kind: 'host-asleep', fromS: 105, toS: 119 }] },
  }),
  shipped({
    name: 'trouble-on-the-wire',
    seed: 9308,
    failure: 'lines lost, damaged and foreign',
    verdict: 'good',
    reasonCodes: [],
    change: {
      wireTroubles: [
        { kind: 'garbage', atS: 5, text: '\u0000\u00ff~x\u001b[2J' },
        { kind: 'damaged-lines', atS: 24, lines: 2 },
        { kind: 'lost-lines', atS: 31, lines: 1 },
        { kind: 'damaged-lines', atS: 96, lines: 1 },
        { kind: 'lost-lines', atS: 140, lines: 4 },
      ],
    },
  }),
  shipped({
    name: 'reader-sends-emf',
    seed: 9309,
    failure: 'none',
    verdict: 'good',
    reasonCodes: [],
    reader: { sends: 'emf' },
  }),
  shipped({
    name: 'plain-reader',
    seed: 9310,
    failure: 'none',
    verdict: 'good',
    reasonCodes: [],
    reader: { layout: 'plain', hasContact: false },
    change: { keys: { closedDelayS: 0.15, openedDelayS: 0.2 } },
  }),
]);
