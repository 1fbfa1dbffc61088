import { join } from 'node:path';
import { bareParserLinesPerS, plainScriptLinesPerS, wholePathLinesPerS } from './lines-through-the-path.ts';
import { costAt1000LinesPerS, heapGrowthOverAnHourMB } from './paced-recording.ts';
import { replaySecondsPer1000Runs } from './replay-of-1000-runs.ts';
import { medianMs } from './start-up.ts';

/** Prints what the program costs, each figure beside its floor from the same run. Asserts nothing about time. */
const root = join(import.meta.dirname, '..');
const program = join(root, 'dist', 'dwellwright.js');
const recording = join(root, 'recordings', 'wb-212-north-run-1.dwell.txt');
const LINES = 600_000;
const say = (text: string): void => console.log(text);
const thousands = (value: number): string => Math.round(value).toLocaleString('en');

say('Lines a second (four channels, about 55 bytes a line)');
const bare = await bareParserLinesPerS(LINES);
say(`  bare readline parser                          ${thousands(bare)}`);
const plain = await plainScriptLinesPerS(LINES);
say(
  `  plain script: parser, split, sum, FULL commits ${thousands(plain)}   ${(plain / bare).toFixed(2)} of the bare parser`,
);
const whole = await wholePathLinesPerS(LINES);
say(
  `  whole path: checksum, detection, durable store ${thousands(whole.linesPerS)}   ${(whole.linesPerS / bare).toFixed(2)} of the bare parser, ${(whole.linesPerS / plain).toFixed(2)} of the plain script; heap ${whole.heapGrowthMB.toFixed(1)} MB more after ${thousands(LINES)} lines`,
);

say('1,000 lines a second in real time, 10 s');
const cost = await costAt1000LinesPerS(10);
say(
  `  ${(cost.coreShare * 100).toFixed(1)} % of a core; on disk after ${cost.onDiskP99Ms.toFixed(0)} ms (99th percentile), worst ${cost.onDiskWorstMs.toFixed(0)} ms`,
);

say('An hour of 10 Hz recording');
say(`  heap ${(await heapGrowthOverAnHourMB()).toFixed(2)} MB more at the end`);

say('Replay of 1,000 runs from their lines');
const replay = replaySecondsPer1000Runs();
say(
  `  ${replay.seconds.toFixed(1)} s, ${thousands((replay.linesPerRun * 1000) / replay.seconds)} lines a second`,
);

say('Start-up, median of 11');
const node = medianMs(['-e', '0']);
const against = (ms: number): string => `${ms.toFixed(0)} ms   ${(ms / node).toFixed(2)} × bare Node`;
say(`  bare Node                    ${node.toFixed(0)} ms`);
say(`  --help                       ${against(medianMs([program, '--help']))}`);
say(`  replay of one recording      ${against(medianMs([program, 'replay', recording]))}`);
