import type { Probe } from '../../core/probe/Probe.ts';
import type { Store } from '../../core/store/Store.ts';
import { named } from '../commands/named.ts';
import { OptionError } from './OptionError.ts';

/** `K-07,K-08,-`: the probe on each channel, channel 1 first, by name from the store; `-` for none. */
export function channelProbes(
  store: Pick<Store, 'probes'>,
  text: string,
  channels: number | null = null,
): readonly (Probe | null)[] {
  const names = text.split(',').map((name) => name.trim());
  if (channels !== null && names.length > channels) {
    throw new OptionError(
      `--probes: expected at most ${channels} names, one a channel, came ${names.length}`,
      'Channel 1 first, parted by commas; - for a channel without a known probe',
    );
  }
  const all = store.probes();
  return names.map((name) => (name === '-' || name === '' ? null : named(all, name, 'probe')));
}
