/**
 * What a piece of a screen row means; an adapter turns it into colour and weight.
 * No role is told apart by colour alone: the text differs as well.
 */
export type SegmentRole =
  | 'plain'
  | 'quiet'
  | 'strong'
  | 'axis'
  | 'target'
  | 'mark'
  | 'bond-line'
  | 'bond-line-inner'
  | 'bond-line-outer'
  | 'upper-platen'
  | 'lower-platen'
  | 'ambient'
  | 'band'
  | 'fault'
  | 'good'
  | 'caution'
  | 'key'
  | 'flash';

export interface Segment {
  readonly text: string;
  readonly role: SegmentRole;
}

/** One row of a screen, left to right. Every character is one column wide. */
export type StyledRow = readonly Segment[];
