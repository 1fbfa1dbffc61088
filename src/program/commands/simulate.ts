import { join } from 'node:path';
import { closest } from 'fastest-levenshtein';
import { writeRecordingFile } from '../../adapters/files/write-recording-file.ts';
import { SHIPPED_SCENARIOS } from '../../core/simulator/shipped-scenarios.ts';
import { type SimulatedRecording, simulateRecording } from '../../core/simulator/simulate-recording.ts';
import { SHIPPED_PLATEN_RECORDINGS } from '../../core/simulator/warm-up-shipped.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { OptionError } from '../options/OptionError.ts';
import { parseCount } from '../options/parse-count.ts';
import { print } from '../output/print.ts';

interface SimulateOptions {
  readonly out?: string;
  readonly all?: string;
  readonly seed?: string;
}

interface Simulated {
  readonly name: string;
  readonly fileName: string;
  readonly about: string;
  readonly make: (seed?: number) => SimulatedRecording;
}

/** Runs, warm-ups and surveys, one list. */
const SIMULATED: readonly Simulated[] = [
  ...SHIPPED_SCENARIOS.map(({ fileName, scenario, expected }) => ({
    name: scenario.name,
    fileName,
    about: `${scenario.failure}; expected ${expected.verdict}`,
    make: (seed = scenario.seed) => simulateRecording({ ...scenario, seed }),
  })),
  ...SHIPPED_PLATEN_RECORDINGS,
];

/** `simulate`: lists the scenarios; `simulate NAME --out FILE` writes one; `simulate --all FOLDER` all that ship. */
export async function simulate(name: string | undefined, options: SimulateOptions): Promise<void> {
  if (options.all !== undefined) {
    for (const { fileName, make } of SIMULATED) writeSimulated(join(options.all, fileName), make());
    return print(COMMAND_TEXT.written(SIMULATED.length, options.all));
  }
  if (name === undefined) {
    return print(SIMULATED.map((one) => `${one.name.padEnd(34)} ${one.about}`).join('\n'));
  }
  const names = SIMULATED.map((one) => one.name);
  const found = SIMULATED.find((one) => one.name === name);
  if (found === undefined)
    throw new OptionError(
      `no scenario "${name}"`,
      `Did you mean "${closest(name, names)}"? List them: dwellwright simulate`,
    );
  const seed =
    options.seed === undefined
      ? undefined
      : parseCount(options.seed, '--seed', { least: 0, most: 999_999_999 });
  const path = options.out ?? found.fileName;
  writeSimulated(path, found.make(seed));
  print(`Written: ${path} (simulated)`);
}

function writeSimulated(path: string, { head, entries }: SimulatedRecording): void {
  writeRecordingFile(path, head, entries);
}
