import type { SegmentRole } from '../../core/chart/StyledRow.ts';

/**
 * SGR codes per role, from the 16 colours every terminal has, none of them white, black or yellow text,
 * so that light and dark backgrounds both work. Roles differ in words or signs too.
 */
export const COLOUR_STYLE: Readonly<Record<SegmentRole, string>> = {
  plain: '',
  quiet: '2',
  strong: '1',
  axis: '2',
  target: '35',
  mark: '36',
  'bond-line': '1;31',
  'bond-line-inner': '31',
  'bond-line-outer': '35',
  'upper-platen': '34',
  'lower-platen': '36',
  ambient: '2',
  band: '2',
  fault: '1;31',
  good: '1;32',
  caution: '1;35',
  key: '7',
  flash: '1;7',
};

/** The same without colour: weight and reverse only. */
export const PLAIN_STYLE: Readonly<Record<SegmentRole, string>> = {
  plain: '',
  quiet: '2',
  strong: '1',
  axis: '2',
  target: '',
  mark: '',
  'bond-line': '1',
  'bond-line-inner': '',
  'bond-line-outer': '',
  'upper-platen': '',
  'lower-platen': '',
  ambient: '2',
  band: '2',
  fault: '1;7',
  good: '1',
  caution: '1;4',
  key: '7',
  flash: '1;7',
};
