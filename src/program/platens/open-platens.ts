import { CHANNEL_ROLES, type ChannelRole, type RecordingHead } from '../../core/recording/RecordingEntry.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { gatherPlatens, type PlatenRecord } from '../../core/warm-up/gather-platens.ts';
import { OptionError } from '../options/OptionError.ts';
import { openSource } from '../sources/open-source.ts';
import { refuseUnreadable } from '../sources/refuse-unreadable.ts';
import type { SourceOptions } from '../sources/Source.ts';

export interface OpenPlatens {
  readonly name: string;
  readonly head: RecordingHead | null;
  readonly record: PlatenRecord;
  /** False when the recording was cut short or altered. */
  readonly sound: boolean;
}

/** Reads the wanted channels of a recording or another logger's file. `--roles` goes before what the file says. */
export async function openPlatens(
  path: string,
  options: SourceOptions,
  wanted?: (role: ChannelRole) => boolean,
): Promise<OpenPlatens> {
  const { roles, ...others } = options;
  const source = await openSource(path, others);
  if (source.head === null && roles === undefined) {
    throw new OptionError(
      `${neutralise(source.name)}: another logger’s file does not say what its columns are laid on`,
      'Name columns and places in one order: --temperature-column 2 --temperature-column 3 --roles upper-platen,lower-platen',
    );
  }
  const record = gatherPlatens(
    source.entries(),
    source.decoder,
    roles === undefined ? source.roles : platenRoles(roles),
    wanted,
  );
  refuseUnreadable(source.name, record);
  return { name: source.name, head: source.head, record, sound: source.soundness().kind === 'sound' };
}

/** `unused,unused,upper-platen,lower-platen`: channel 1 first. No channel need be on the bond line. */
export function platenRoles(text: string): readonly ChannelRole[] {
  const roles = text.split(',').map((part) => part.trim());
  for (const role of roles) {
    if ((CHANNEL_ROLES as readonly string[]).includes(role)) continue;
    throw new OptionError(
      `--roles: "${neutralise(role)}" is no place for a probe`,
      `Use ${CHANNEL_ROLES.join(', ')}; channel 1 first, parted by commas`,
    );
  }
  return roles as ChannelRole[];
}
