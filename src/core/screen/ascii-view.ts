import { asciiText } from './ascii-text.ts';
import type { TrialView } from './TrialView.ts';

/** The view with all its words in ASCII, before it is laid out, so that columns stay in line. */
export function asciiView(view: TrialView): TrialView {
  const { chart, ...words } = view;
  return { ...(plain(words) as Omit<TrialView, 'chart'>), chart };
}

function plain(value: unknown): unknown {
  if (typeof value === 'string') return asciiText(value);
  if (Array.isArray(value)) return value.map(plain);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, plain(inner)]));
}
