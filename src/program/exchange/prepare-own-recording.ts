import { createHash } from 'node:crypto';
import { basename } from 'node:path';
import { readRecordingFile } from '../../adapters/files/read-recording-file.ts';
import { textFilePieces } from '../../adapters/files/text-file-pieces.ts';
import { ExchangeError } from '../../core/exchange/ExchangeError.ts';
import { recordingParts } from '../../core/exchange/recording-parts.ts';
import type { Store } from '../../core/store/Store.ts';
import { exchangeRefusals } from '../../core/text/exchange-text.ts';
import { analyseSource } from '../sources/analyse-source.ts';
import { recordingSource } from '../sources/recording-source.ts';
import type { ImportContext } from './ImportContext.ts';
import type { ImportOptions } from './ImportOptions.ts';
import type { PreparedImport } from './PreparedImport.ts';

/** Options that say how another logger's file is read; a recording of our own carries all that. */
const NOT_FOR_OWN = {
  target: '--target',
  hold: '--hold',
  platens: '--platens',
  ambient: '--ambient',
  dip: '--dip',
  closedAt: '--closed-at',
  unit: '--unit',
  timeColumn: '--time-column',
  temperatureColumn: '--temperature-column',
  timeUnit: '--time-unit',
  interval: '--interval',
  rows: '--rows',
  roles: '--roles',
  probes: '--probes',
  highestPeak: '--highest-peak',
  activationEnergy: '--activation-energy',
  cureReference: '--cure-reference',
  cureRange: '--cure-range',
  layout: '--layout',
  saveLayout: '--save-layout',
} as const satisfies Partial<Record<keyof ImportOptions, string>>;

/**
 * Reads a recording of our own to bring it in, byte for byte. Refuses one that was altered or cannot be read to its end;
 * `alreadyThere` where the store holds the same under its id.
 */
export async function prepareOwnRecording(
  path: string,
  fileSha256: string,
  { store, options, trials, importedAt }: ImportContext,
): Promise<PreparedImport | { readonly alreadyThere: string }> {
  const given = Object.entries(NOT_FOR_OWN).flatMap(([key, flag]) =>
    options[key as keyof typeof NOT_FOR_OWN] === undefined ? [] : [flag],
  );
  if (given.length > 0)
    throw new ExchangeError('import-options-not-used', exchangeRefusals.optionsNotUsed(path, given));
  const recording = readRecordingFile(path);
  const { head, soundness } = recording;
  if (soundness.kind === 'altered') {
    const { expected, came } = soundness;
    throw new ExchangeError('import-altered', exchangeRefusals.altered(path, expected, came), 1);
  }
  if (soundness.kind === 'broken')
    throw new ExchangeError(
      'import-broken',
      exchangeRefusals.broken(path, soundness.lineNumber, soundness.text),
      1,
    );
  const parts = () => recordingParts(textFilePieces(path));
  if (sameAsStored(store, head.recordingId, path, parts)) return { alreadyThere: head.recordingId };
  const common = {
    path,
    head,
    file: { fileSha256, fileName: basename(path), readAs: '', importedAt },
    contentSha256: null,
    parts,
    soundness,
    layoutOptions: null,
  };
  if (!head.roles.some((role) => role.startsWith('bond-line')))
    return { ...common, trial: null, results: [], recognised: null };
  const wish = { path, head };
  const names = await trials.names(wish);
  const source = recordingSource(path, recording, {});
  const { results, rules, state } = analyseSource(source, {});
  return { ...common, trial: trials.choose(wish, names, rules), results, recognised: state.recognised };
}

/** True where the store holds this very text; throws where it holds another under the same id. */
function sameAsStored(
  store: Store,
  recordingId: string,
  path: string,
  parts: () => Iterable<{ readonly text: string }>,
): boolean {
  const stored = store.recordingText(recordingId);
  if (stored === undefined) return false;
  const storedHash = createHash('sha256');
  for (const piece of stored) storedHash.update(piece, 'utf8');
  const fileHash = createHash('sha256');
  for (const { text } of parts()) fileHash.update(text, 'utf8');
  if (storedHash.digest('hex') === fileHash.digest('hex')) return true;
  throw new ExchangeError(
    'import-recording-differs',
    exchangeRefusals.recordingDiffers(path, recordingId),
    1,
  );
}
