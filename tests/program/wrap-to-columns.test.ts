import { expect, it } from 'vitest';
import { wrapToColumns } from '../../src/program/output/wrap-to-columns.ts';

it('wraps between words, deeper than the line itself, and leaves what fits as it is', () => {
  expect(wrapToColumns('short   as it is\n  one two three four', 12)).toBe(
    'short as it\n  is\n  one two\n    three\n    four',
  );
  expect(wrapToColumns('a  b', 4)).toBe('a  b');
  expect(wrapToColumns('averyverylongword', 5)).toBe('averyverylongword');
  expect(wrapToColumns('', 5)).toBe('');
});
