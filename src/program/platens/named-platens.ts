import { existsSync } from 'node:fs';
import type { Store } from '../../core/store/Store.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { OptionError } from '../options/OptionError.ts';
import { storePath } from '../options/store-path.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';

import { fileSha256, piecesSha256 } from '../reports/file-sha256.ts';
import { openSource } from '../sources/open-source.ts';
import { recordingSource } from '../sources/recording-source.ts';
import type { Source, SourceOptions } from '../sources/Source.ts';

/**
 * Opens what is named and hands it to `work`: a file, `-` for standard input, or a recording of the store by its id (or the only id
 * that begins so). A file of that name goes first. The source is good only inside `work`.
 */
export async function withNamedSource<Result>(
  name: string,
  options: SourceOptions & StoreOptions,
  work: (source: Source, sha256: () => string) => Result | Promise<Result>,
): Promise<Result> {
  if (name === '-' || existsSync(name) || !existsSync(storePath(options)))
    return work(await openSource(name, options), () => (name === '-' ? '' : fileSha256(name)));
  return readFromStore(options, (store) => {
    const id = findRecording(store, name);
    const recording = store.recording(id);
    if (recording === undefined) throw unknown(name);
    return work(recordingSource(id, recording, options), () => piecesSha256(store.recordingText(id) ?? []));
  });
}

/** The recording of this id, or of the only id that begins so. */
function findRecording(store: Store, name: string): string {
  const ids = store.recordingIds();
  if (ids.includes(name)) return name;
  const begun = ids.filter((id) => id.startsWith(name));
  if (begun.length === 1) return begun[0]!;
  throw begun.length === 0 ? unknown(name) : several(name, begun.length);
}

function unknown(name: string): OptionError {
  return new OptionError(
    `${neutralise(name)}: no file of this name, and no recording of the store`,
    'Name a file, or a recording by its id: dwellwright recordings lists them',
    'recording-unknown',
  );
}

function several(name: string, count: number): OptionError {
  return new OptionError(
    `${neutralise(name)}: ${count} recordings of the store begin so`,
    'Give more of the id: dwellwright recordings lists them',
    'recording-unknown',
  );
}
