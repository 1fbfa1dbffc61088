/** A drawing as plain data, in units of 1/96 in at full size; x to the right, y downwards. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  /** Short name, read out by screen readers. */
  readonly title: string;
  /** What the picture shows, in a sentence or two, for who cannot see it. */
  readonly description: string;
  readonly shapes: readonly Shape[];
}

export type Shape = PathShape | TextShape | ClippedShapes;

export interface PathShape {
  readonly kind: 'path';
  /** Path data of SVG. */
  readonly d: string;
  readonly stroke?: string;
  readonly strokeWidth?: number;
  /** Lengths of dashes and gaps; absent = solid. */
  readonly dash?: readonly number[];
  readonly fill?: string;
}

export interface TextShape {
  readonly kind: 'text';
  readonly x: number;
  /** Of the base line. */
  readonly y: number;
  readonly text: string;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly fill?: string;
  /** Turned by this many degrees about its own point. */
  readonly turned?: number;
}

/** Shapes of which only what lies inside the box is seen. */
export interface ClippedShapes {
  readonly kind: 'clipped';
  readonly box: Box;
  readonly shapes: readonly (PathShape | TextShape)[];
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}
