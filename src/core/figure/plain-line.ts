import type { PathShape } from './Picture.ts';

/** A solid line along path data. */
export const plainLine = (d: string, stroke: string, strokeWidth: number): PathShape => ({
  kind: 'path',
  d,
  stroke,
  strokeWidth,
});
