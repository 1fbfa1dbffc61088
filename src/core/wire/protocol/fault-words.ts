import type { ChannelFault, ChannelValue } from '../WireEvent.ts';

/** What a reader writes in a channel's place when it has no value. */
export const FAULT_WORDS: Readonly<Record<ChannelFault, string>> = Object.freeze({
  'open-circuit': 'open-circuit',
  'short-to-ground': 'short-to-ground',
  'short-to-supply': 'short-to-supply',
  'over-range': 'over-range',
  'cold-junction': 'cold-junction',
  unspecified: 'fault',
});

export const MISSING_WORD = 'none';

const fault = (name: ChannelFault): ChannelValue => Object.freeze({ kind: 'fault', fault: name });

const VALUES: ReadonlyMap<string, ChannelValue> = new Map<string, ChannelValue>([
  ...(Object.keys(FAULT_WORDS) as ChannelFault[]).map((name) => [FAULT_WORDS[name], fault(name)] as const),
  [MISSING_WORD, Object.freeze({ kind: 'missing' })],
]);

const UNSPECIFIED = fault('unspecified');

/** A word of a later version that we do not know is a fault without a name; anything else is no word: null. */
export function channelWord(word: string): ChannelValue | null {
  return VALUES.get(word) ?? (/^[a-z][a-z-]{0,23}$/.test(word) ? UNSPECIFIED : null);
}
