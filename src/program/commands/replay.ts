import type { Probe } from '../../core/probe/Probe.ts';
import { OptionError } from '../options/OptionError.ts';
import type { RuleOptions } from '../options/run-rules.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';
import { analyseSource } from '../sources/analyse-source.ts';
import { openSource } from '../sources/open-source.ts';
import { type ReplayedSource, type ReplayReportOptions, reportReplay } from '../sources/report-replay.ts';
import type { SourceOptions } from '../sources/Source.ts';

interface ReplayOptions extends RuleOptions, SourceOptions, StoreOptions, ReplayReportOptions {
  readonly trial?: string;
  readonly probes?: string;
}

/** `replay FILE…`: recordings and other loggers' files through the one pipeline, to runs, trial and dwell. */
export async function replay(files: readonly string[], options: ReplayOptions): Promise<void> {
  const read =
    options.probes === undefined
      ? options
      : { ...options, probeList: await probeList(options.probes, options) };
  if (options.trial !== undefined) {
    if (files.length > 0) throw new OptionError('replay: came both files and --trial', 'Give one of the two');
    const { replayStored } = await import('./replay-stored.ts');
    return replayStored(options.trial, read);
  }
  if (files.length === 0) {
    throw new OptionError(
      'replay: no file given',
      'Name one or more recordings, for example: dwellwright replay recordings/*.dwell.txt',
    );
  }
  const replayed: ReplayedSource[] = [];
  for (const file of files) {
    const source = await openSource(file, options);
    replayed.push({ source, analysis: analyseSource(source, read) });
  }
  reportReplay(replayed, options);
}

/** Probes that the user says were on the channels: they go before what a recording's head says. */
async function probeList(names: string, options: StoreOptions): Promise<readonly (Probe | null)[]> {
  if (names.split(',').every((name) => name.trim() === '-')) return [];
  const { channelProbes } = await import('../options/channel-probes.ts');
  return readFromStore(options, (store) => channelProbes(store, names));
}
