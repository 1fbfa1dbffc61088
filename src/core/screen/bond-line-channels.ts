import type { ChannelRole } from '../recording/RecordingEntry.ts';

/** Places (0 = channel 1) of the channels that lie on the bond line, the main one first. */
export function bondLineChannels(roles: readonly ChannelRole[]): readonly number[] {
  const main = roles.flatMap((role, i) => (role === 'bond-line' ? [i] : []));
  return [
    ...main,
    ...roles.flatMap((role, i) => (role === 'bond-line-inner' || role === 'bond-line-outer' ? [i] : [])),
  ];
}
