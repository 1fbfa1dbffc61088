import { writeTextFile } from '../../adapters/files/write-text-file.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { MADE_FOR_KEY } from '../../core/warm-up/made-for-warm-up.ts';
import { OptionError } from '../options/OptionError.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';

interface RecordingsOptions extends StoreOptions {
  readonly out?: string;
  readonly json?: boolean;
}

/** `recordings`: lists the recordings. `recordings ID --out FILE`: writes one out, byte for byte as stored. */
export async function recordings(id: string | undefined, options: RecordingsOptions): Promise<void> {
  await readFromStore(options, (store) => {
    if (id === undefined) {
      const all = store.recordingIds().map((recordingId) => {
        const head = store.recording(recordingId)?.head;
        return {
          recordingId,
          madeAt: head?.madeAt ?? null,
          assembly: head?.assemblyName ?? null,
          press: head?.pressName ?? null,
          trialId: head?.trialId ?? null,
          madeFor: head?.further[MADE_FOR_KEY] ?? null,
        };
      });
      if (options.json) return printJson({ recordings: all });
      return print(
        all.length === 0
          ? COMMAND_TEXT.none.recording
          : all
              .map((one) =>
                neutralise(
                  `${one.recordingId}  ${one.madeAt}  ${one.assembly ?? one.madeFor ?? '?'} on ${one.press ?? '?'}`,
                ),
              )
              .join('\n'),
      );
    }
    const text = store.recordingText(id);
    if (text === undefined)
      throw new OptionError(
        `no recording "${neutralise(id)}" in the store`,
        'List them: dwellwright recordings',
        'recording-unknown',
      );
    if (options.out === undefined) for (const piece of text) process.stdout.write(piece);
    else {
      writeTextFile(options.out, text);
      print(`Written: ${options.out}`);
    }
  });
}
