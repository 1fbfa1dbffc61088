import type { Probe } from '../../core/probe/Probe.ts';
import type { ChannelRole } from '../../core/recording/RecordingEntry.ts';
import type { Store } from '../../core/store/Store.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { channelProbes } from './channel-probes.ts';
import { parseRoles } from './run-rules.ts';

/** What is said of a reader's channels at a press. */
export interface ChannelOptions {
  readonly roles?: string;
  readonly probes?: string;
  readonly simulated?: boolean;
}

type Channels = Pick<Store, 'setting' | 'saveSetting' | 'probes'>;

/** What each channel is laid on: option, else what was used last at this press, else channel 1 on the bond line. The choice is remembered. */
export function rememberedRoles(
  store: Channels,
  { roles }: Pick<ChannelOptions, 'roles'>,
  pressName: string,
): readonly ChannelRole[] {
  const setting = `roles:${pressName}`;
  if (roles !== undefined) {
    const parsed = parseRoles(roles, '--roles');
    store.saveSetting(setting, parsed.join(','));
    return parsed;
  }
  const before = store.setting(setting);
  return before === undefined ? ['bond-line'] : parseRoles(before, COMMAND_TEXT.rolesRemembered);
}

/** Probe on each channel: option, else what was used last at this press, else none known. The choice is remembered. */
export function rememberedProbes(
  store: Channels,
  options: Pick<ChannelOptions, 'probes' | 'simulated'>,
  pressName: string,
  channels: number,
): readonly (Probe | null)[] {
  const setting = `probes:${pressName}`;
  if (options.probes !== undefined) {
    const probes = channelProbes(store, options.probes, channels);
    store.saveSetting(setting, options.probes);
    return probes;
  }
  const before = options.simulated ? undefined : store.setting(setting);
  return before === undefined ? [] : channelProbes(store, before);
}
