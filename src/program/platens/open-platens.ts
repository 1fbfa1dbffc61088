import { headProbes } from '../../core/probe/head-probes.ts';
import { probeCorrection } from '../../core/probe/probe-correction.ts';
import { CHANNEL_ROLES, type ChannelRole, type RecordingHead } from '../../core/recording/RecordingEntry.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { gatherPlatens, type PlatenRecord } from '../../core/warm-up/gather-platens.ts';
import { OptionError } from '../options/OptionError.ts';
import type { StoreOptions } from '../options/with-store.ts';
import { refuseUnreadable } from '../sources/refuse-unreadable.ts';
import type { SourceOptions } from '../sources/Source.ts';
import { withNamedSource } from './named-platens.ts';

export interface OpenPlatens {
  readonly name: string;
  readonly head: RecordingHead | null;
  readonly record: PlatenRecord;
  /** False when the recording was cut short or altered. */
  readonly sound: boolean;
  /** Of the recording's or file's bytes; '' for standard input. */
  readonly sha256: string;
}

/**
 * Reads the wanted channels of a recording (file, or id in the store) or of another logger's file, corrected by the calibrations of
 * the probes that its head names. `--roles` goes before what the file says.
 */
export function openPlatens(
  name: string,
  { roles, ...others }: SourceOptions & StoreOptions,
  wanted?: (role: ChannelRole) => boolean,
): Promise<OpenPlatens> {
  const reading: SourceOptions & StoreOptions = {
    ...others,
    ...(roles === undefined ? {} : { roles, bondLine: 'optional' }),
  };
  return withNamedSource(name, reading, (source, sha256) => {
    const { head } = source;
    if (head === null && roles === undefined) {
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
      head === null ? [] : headProbes(head).map((probe) => (probe === null ? null : probeCorrection(probe))),
    );
    refuseUnreadable(source.name, record);
    const sound = source.soundness().kind === 'sound';
    return { name: source.name, head, record, sound, sha256: sha256() };
  });
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
