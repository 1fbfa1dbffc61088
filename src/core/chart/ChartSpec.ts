import type { TemperatureUnit } from '../text/units-text.ts';
import type { SegmentRole } from './StyledRow.ts';

/** How a line is drawn, so that lines differ without colour. */
export type LineStyle = 'solid' | 'dashed' | 'dotted';

/** A stretch of a channel: lowest, highest and last temperature between two times. Null = nothing measured. */
export interface ChartPoint {
  readonly fromS: number;
  readonly toS: number;
  readonly lowC: number;
  readonly highC: number;
  readonly lastC: number;
  readonly measured: boolean;
  readonly faulted: boolean;
}

export interface ChartTrace {
  /** One letter, written at the line's end and used for the line itself without braille. */
  readonly letter: string;
  readonly role: SegmentRole;
  readonly line: LineStyle;
  /** In order of time. */
  readonly points: readonly ChartPoint[];
}

export interface ChartMark {
  readonly timeS: number;
  readonly label: string;
}

/** Lowest and highest of earlier runs at a time, drawn as a shade behind the traces. */
export interface ChartBandPoint {
  readonly timeS: number;
  readonly lowC: number;
  readonly highC: number;
}

export interface ChartSpec {
  readonly columns: number;
  readonly rows: number;
  readonly fromS: number;
  readonly toS: number;
  /** Time that the axis counts from (press closed), s. */
  readonly zeroS: number;
  readonly lowC: number;
  readonly highC: number;
  readonly unit: TemperatureUnit;
  readonly ascii: boolean;
  readonly targetC: number | null;
  /** Drawn in this order; an earlier one stays on top. */
  readonly traces: readonly ChartTrace[];
  readonly marks: readonly ChartMark[];
  readonly band: readonly ChartBandPoint[];
  /** A longer silence between two points is left open. */
  readonly longestBridgedS: number;
}
