import type { ChannelFault, ThermocoupleType } from '../wire/WireEvent.ts';
import type { StackLayer } from './create-conduction-stack.ts';
import type { PlatenSetup } from './create-platen.ts';

/** A press of the simulator. Times in s, temperatures in °C. */
export interface SimulatedPressSetup {
  readonly name: string;
  readonly upper: PlatenSetup;
  readonly lower: PlatenSetup;
  /** Contact resistances as the ram at its right pressure gives them, m²K/W. */
  readonly lowerContactM2KPerW: number;
  readonly upperContactM2KPerW: number;
}

export interface SimulatedAssembly {
  readonly name: string;
  readonly carrier: StackLayer;
  readonly ring: StackLayer;
  /** The adhesive between them. */
  readonly bondFilmM2KPerW: number;
  /** Face that takes heat from each platen, m². */
  readonly faceM2: number;
  /** The outer edge heats this much more easily than mid-width (contact resistance factor, below 1: sooner). */
  readonly edgeContactFactor: number;
}

/** One closing of the press, in seconds of the simulation. */
export interface Closing {
  readonly closedAtS: number;
  readonly openedAtS: number;
  /** Temperature of the part as it is laid in. */
  readonly startC: number;
  /** Contact against its usual value; above 1 is worse (ram low). */
  readonly contactFactor: number;
  /** The outer edge's contact against mid-width; above 1 is a gap at the edge (taper). */
  readonly edgeFactor: number;
}

export interface ProbeSetup {
  readonly lagS: number;
  /** Share of the difference to ambient that leaks away along the wire. */
  readonly conductionShare: number;
}

/** Electrical or laying faults of a channel. `channel` counts from 1; times in seconds of the simulation. */
export type ChannelTrouble =
  | { readonly kind: 'touches-platen'; readonly channel: number }
  | {
      readonly kind: 'fault';
      readonly channel: number;
      readonly fault: ChannelFault;
      readonly fromS: number;
      readonly toS: number;
    }
  | { readonly kind: 'full-scale'; readonly channel: number; readonly atS: number; readonly samples: number }
  | { readonly kind: 'plug-reversed'; readonly channel: number }
  /** The wire is of this type, the reader is set to another. */
  | { readonly kind: 'wire-type'; readonly channel: number; readonly wire: ThermocoupleType }
  /** Lead crushed at the ring's edge once the press is closed: this share of the platen's excess is added at once. */
  | { readonly kind: 'second-junction'; readonly channel: number; readonly share: number }
  /** Extension lead reversed at both ends; `headC` is where probe and extension meet. */
  | { readonly kind: 'extension-reversed'; readonly channel: number; readonly headC: number }
  /** The value shifts while the lower platen's heater is on. */
  | { readonly kind: 'ground-shift'; readonly channel: number; readonly shiftC: number }
  | {
      readonly kind: 'ripple';
      readonly channel: number;
      readonly amplitudeC: number;
      readonly frequencyHz: number;
    }
  /** Spikes when either heater switches, and at random. */
  | {
      readonly kind: 'spikes';
      readonly channel: number;
      readonly heightC: number;
      readonly sharePerSample: number;
    };

export interface SimulatedReaderSetup {
  readonly rateHz: number;
  readonly sends: 'temperature' | 'emf';
  readonly thermocoupleType: ThermocoupleType;
  readonly whiteNoiseC: number;
  /** AR(1) noise: its own standard deviation and its correlation from one reading to the next. */
  readonly correlatedNoiseC: number;
  readonly correlation: number;
  /** Step of a value in °C (0: none). */
  readonly stepC: number;
  readonly coldJunctionC: number;
  readonly hasContact: boolean;
  /** Device clock against true time, parts per million. */
  readonly driftPpm: number;
  /** Device clock at the start of the simulation, µs, and sequence number of the first sample. */
  readonly clockStartUs: number;
  readonly sequenceStart: number;
  /** 'protocol': the reader protocol. 'plain': prints `T1: 231.2 C  T2: …`. */
  readonly layout: 'protocol' | 'plain';
}

/** Trouble between reader and host. Times in seconds of the simulation. */
export type WireTroubleSetup =
  | { readonly kind: 'lost-lines'; readonly atS: number; readonly lines: number }
  | { readonly kind: 'damaged-lines'; readonly atS: number; readonly lines: number }
  | { readonly kind: 'garbage'; readonly atS: number; readonly text: string }
  | { readonly kind: 'reader-restarted'; readonly atS: number; readonly awayS: number }
  /** The device clock begins anew, the sequence goes on. */
  | { readonly kind: 'clock-reset'; readonly atS: number }
  | { readonly kind: 'unplugged'; readonly fromS: number; readonly toS: number }
  /** The host's monotonic clock stands still while it sleeps. */
  | { readonly kind: 'host-asleep'; readonly fromS: number; readonly toS: number };

export interface Scenario {
  /** Distinguishes recordings; part of the recording's id. */
  readonly name: string;
  readonly seed: number;
  /** Wall time in the recording's head, ISO 8601; a label only. */
  readonly madeAt: string;
  readonly press: SimulatedPressSetup;
  readonly assembly: SimulatedAssembly;
  readonly reader: SimulatedReaderSetup;
  /** Bond line, bond line outer edge, upper platen, lower platen. */
  readonly probes: readonly [ProbeSetup, ProbeSetup, ProbeSetup, ProbeSetup];
  readonly ambientC: number;
  /** Platens at the start, against their set point (negative: not recovered). */
  readonly platenStartDifferenceC: number;
  readonly closings: readonly Closing[];
  readonly endS: number;
  readonly targetC: number;
  readonly holdS: number;
  /** Key presses: seconds after the true moment; null: no such key. */
  readonly keys: { readonly closedDelayS: number | null; readonly openedDelayS: number | null };
  readonly channelTroubles: readonly ChannelTrouble[];
  readonly wireTroubles: readonly WireTroubleSetup[];
  /** What went wrong, in a word or two of the trade; 'none'. */
  readonly failure: string;
}
