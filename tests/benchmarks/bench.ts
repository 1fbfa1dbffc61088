import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { analysisOf1000Runs, plainScriptSeconds } from './analysis-of-1000-runs.ts';
import { printCrossingTable } from './crossing-table.ts';
import { drawCost } from './draw-cost.ts';
import { firstPicture } from './first-picture.ts';
import { bareParserLinesPerS, plainScriptLinesPerS, wholePathLinesPerS } from './lines-through-the-path.ts';
import { costAt1000LinesPerS, heapGrowthOverAnHourMB } from './paced-recording.ts';
import { recheckFigures } from './recheck-of-1000-runs.ts';
import { replaySecondsPer1000Runs } from './replay-of-1000-runs.ts';
import { medianMs } from './start-up.ts';

/** Prints what the program costs, each figure beside its floor from the same run. Asserts nothing about time. */
const root = join(import.meta.dirname, '..');
const program = join(root, 'dist', 'dwellwright.js');
const recording = join(root, 'recordings', 'wb-212-north-run-1.dwell.txt');
const LINES = 600_000;
/** `npm run bench -- 400` for fewer runs a case of the crossing's table, `npm run bench -- 4000 crossing` for that table alone. */
const RUNS = Number(process.argv[2] ?? 4000);
const CROSSING_ONLY = process.argv[3] === 'crossing';
const say = (text: string): void => console.log(text);
const thousands = (value: number): string => Math.round(value).toLocaleString('en');

printCrossingTable(RUNS, say);
if (!CROSSING_ONLY) await printCosts();

async function printCosts(): Promise<void> {
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

  const analysis = analysisOf1000Runs();
  say(
    `Analysis of 1,000 decoded runs, ${thousands(analysis.samples)} samples of ${analysis.channels} channels`,
  );
  say(`  first time ${analysis.firstS.toFixed(2)} s, again ${analysis.againS.toFixed(2)} s`);
  const python = plainScriptSeconds(analysis.traces);
  say(
    python === null
      ? '  no plain script to compare with: python3 here has no pandas and scipy'
      : `  plain pandas and scipy script, one channel, smoothing filter: ${python.toFixed(2)} s`,
  );

  say('Re-check of 1,000 runs of about 1,200 samples, the whole command');
  const recheck = recheckFigures(program);
  say(
    `  from the store: first time ${recheck.first.s.toFixed(1)} s (decoded once), then ${recheck.again.s.toFixed(1)} s; from files ${recheck.fromFiles.s.toFixed(1)} s, at most ${recheck.fromFiles.peakMB.toFixed(0)} MB`,
  );
  say(`  a plain script that only reads the files: ${recheck.readOnlyS.toFixed(2)} s`);

  say('Drawing ten times a second, 100 × 30');
  const drawn = await drawCost(root, 20);
  say(
    `  in real time ${(drawn.coreShare * 100).toFixed(1)} % of a core (wanted: under 6 %), ${drawn.msPerDraw.toFixed(1)} ms a draw, ${drawn.framesPerS.toFixed(1)} frames/s sent`,
  );
  const hours = await drawCost(root, 45, 60);
  say(
    `  ${hours.hoursDrawn.toFixed(1)} h drawn 60 times as fast: ${(hours.coreShare * 100).toFixed(1)} % of a core in real time; heap ${hours.heapMb[0].toFixed(1)} MB at a quarter, ${hours.heapMb[1].toFixed(1)} MB at the end`,
  );

  say('Start-up, median of 11');
  const node = medianMs(['-e', '0']);
  const against = (ms: number): string => `${ms.toFixed(0)} ms   ${(ms / node).toFixed(2)} × bare Node`;
  say(`  bare Node                    ${node.toFixed(0)} ms`);
  say(`  --help                       ${against(medianMs([program, '--help']))}`);
  say(`  replay of one recording      ${against(medianMs([program, 'replay', recording]))}`);

  say('First picture over a pseudo-terminal, median of 15, in turn with a bare Node');
  const folder = mkdtempSync(join(tmpdir(), 'dwellwright-bench-'));
  const store = (round: number | string): string => join(folder, `${round}.db`);
  const pictures = [
    ['trial --simulated', (round: number) => ['trial', '--simulated', '--store', store(round)], /SIMULATED/],
    ['home', () => ['home', '--store', store('home')], /store/],
  ] as const;
  for (const [name, args, seen] of pictures) {
    const { medianMs: tookMs, bareMs } = await firstPicture((round) => [program, ...args(round)], seen);
    say(
      `  ${name.padEnd(28)} ${tookMs.toFixed(0)} ms   ${(tookMs / bareMs).toFixed(2)} × bare Node (${bareMs.toFixed(0)} ms)`,
    );
  }
  rmSync(folder, { recursive: true });
}
