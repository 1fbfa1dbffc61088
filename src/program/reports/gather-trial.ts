import { OptionError } from '../options/OptionError.ts';
import type { DwellOptions } from '../options/outcome-settings.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';
import type { AnalyseOptions } from '../sources/analyse-source.ts';
import type { SourceOptions } from '../sources/Source.ts';
import type { GatheredTrial } from './GatheredTrial.ts';

export interface GatherOptions extends AnalyseOptions, SourceOptions, DwellOptions, StoreOptions {
  readonly trial?: string;
  readonly assembly?: string;
  readonly press?: string;
  readonly gauge?: string;
  /** Names of probes by channel; they go before what the files say. */
  readonly probes?: string;
}

/** A trial with its traces, from recordings and loggers' files or, with --trial, from the store. */
export async function gatherTrial(
  command: string,
  files: readonly string[],
  options: GatherOptions,
): Promise<GatheredTrial> {
  if (options.trial !== undefined) {
    if (files.length > 0)
      throw new OptionError(`${command}: came both files and --trial`, 'Give one of the two');
    const { gatherStored } = await import('./gather-stored.ts');
    return gatherStored(options.trial, options);
  }
  if (files.length === 0) {
    throw new OptionError(
      `${command}: no file and no --trial given`,
      `Name recordings, or a trial of the store: dwellwright ${command} --trial ID (dwellwright trials lists them)`,
    );
  }
  const { gatherFiles } = await import('./gather-files.ts');
  if (options.probes === undefined) return gatherFiles(files, options);
  const { channelProbes } = await import('../options/channel-probes.ts');
  const names = options.probes;
  const none = names.split(',').every((name) => name.trim() === '-');
  const probeList = none ? [] : await readFromStore(options, (store) => channelProbes(store, names));
  return gatherFiles(files, { ...options, probeList });
}
