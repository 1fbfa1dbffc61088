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

/**
 * Production may go without a probe at the bond line, a trial never: what is said for production is remembered apart, and
 * what was said for a trial serves there until then.
 */
export type ChannelUse = 'trial' | 'bonding';

const keyOf = (what: 'roles' | 'probes', use: ChannelUse, pressName: string): string =>
  use === 'trial' ? `${what}:${pressName}` : `bonding-${what}:${pressName}`;

/** What each channel is laid on: option, else what was used last at this press, else channel 1 on the bond line. The choice is remembered. */
export function rememberedRoles(
  store: Channels,
  { roles }: Pick<ChannelOptions, 'roles'>,
  pressName: string,
  use: ChannelUse = 'trial',
): readonly ChannelRole[] {
  const needed = { bondLine: use === 'trial' ? 'needed' : 'optional' } as const;
  if (roles !== undefined) {
    const parsed = parseRoles(roles, '--roles', needed);
    store.saveSetting(keyOf('roles', use, pressName), parsed.join(','));
    return parsed;
  }
  const before =
    store.setting(keyOf('roles', use, pressName)) ?? store.setting(keyOf('roles', 'trial', pressName));
  return before === undefined ? ['bond-line'] : parseRoles(before, COMMAND_TEXT.rolesRemembered, needed);
}

/** Probe on each channel: option, else what was used last at this press, else none known. The choice is remembered. */
export function rememberedProbes(
  store: Channels,
  options: Pick<ChannelOptions, 'probes' | 'simulated'>,
  pressName: string,
  { channels, use = 'trial' }: { readonly channels: number; readonly use?: ChannelUse },
): readonly (Probe | null)[] {
  if (options.probes !== undefined) {
    const probes = channelProbes(store, options.probes, channels);
    store.saveSetting(keyOf('probes', use, pressName), options.probes);
    return probes;
  }
  if (options.simulated) return [];
  // Probes of a trial's channels say nothing of channels that production has laid otherwise.
  const ownRoles = use === 'bonding' && store.setting(keyOf('roles', use, pressName)) !== undefined;
  const before =
    store.setting(keyOf('probes', use, pressName)) ??
    (ownRoles ? undefined : store.setting(keyOf('probes', 'trial', pressName)));
  return before === undefined ? [] : channelProbes(store, before);
}
