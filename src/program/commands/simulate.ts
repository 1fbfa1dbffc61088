import { join } from 'node:path';
import { closest } from 'fastest-levenshtein';
import { writeRecordingFile } from '../../adapters/files/write-recording-file.ts';
import { SHIPPED_SCENARIOS } from '../../core/simulator/shipped-scenarios.ts';
import { simulateRecording } from '../../core/simulator/simulate-recording.ts';
import { OptionError } from '../options/OptionError.ts';
import { parseCount } from '../options/parse-count.ts';
import { print } from '../output/print.ts';

interface SimulateOptions {
  readonly out?: string;
  readonly all?: string;
  readonly seed?: string;
}

/** `simulate`: lists the scenarios; `simulate NAME --out FILE` writes one; `simulate --all FOLDER` all that ship. */
export async function simulate(name: string | undefined, options: SimulateOptions): Promise<void> {
  if (options.all !== undefined) {
    for (const { fileName, scenario } of SHIPPED_SCENARIOS)
      writeSimulated(join(options.all, fileName), scenario);
    return print(`Written: ${SHIPPED_SCENARIOS.length} recordings in ${options.all}`);
  }
  if (name === undefined) {
    return print(
      SHIPPED_SCENARIOS.map(
        ({ scenario, expected }) =>
          `${scenario.name.padEnd(34)} ${scenario.failure}; expected ${expected.verdict}`,
      ).join('\n'),
    );
  }
  const names = SHIPPED_SCENARIOS.map(({ scenario }) => scenario.name);
  const found = SHIPPED_SCENARIOS.find(({ scenario }) => scenario.name === name);
  if (found === undefined)
    throw new OptionError(
      `no scenario "${name}"`,
      `Did you mean "${closest(name, names)}"? List them: dwellwright simulate`,
    );
  const seed =
    options.seed === undefined
      ? found.scenario.seed
      : parseCount(options.seed, '--seed', { least: 0, most: 999_999_999 });
  const path = options.out ?? found.fileName;
  writeSimulated(path, { ...found.scenario, seed });
  print(`Written: ${path} (simulated)`);
}

function writeSimulated(path: string, scenario: Parameters<typeof simulateRecording>[0]): void {
  const { head, entries } = simulateRecording(scenario);
  writeRecordingFile(path, head, entries);
}
