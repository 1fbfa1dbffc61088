import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { runProgram, temporaryFolder } from './run-program.ts';

const recordings = join(import.meta.dirname, '..', '..', 'recordings');
const folder = temporaryFolder();
const out = (name: string) => join(folder, name);
const run = (...args: readonly string[]) => runProgram([...args, '--store', join(folder, 'store.db')]);
const html = (name: string) => readFileSync(out(name), 'utf8');
const sha256 = (text: string) => createHash('sha256').update(text, 'utf8').digest('hex');

beforeAll(() => {
  expect(run('demo', '--plain', '--speed', '1000', '--runs', '3').code).toBe(0);
  const bond = ['bond', '--simulated', '--assembly', 'WB-212', '--press', 'North', '--plain'];
  expect(run(...bond, '--speed', '100', '--stop-after', '3', '--initials', 'CD').code).toBe(0);
}, 60_000);

describe('report --lot', () => {
  it('lists the cycles with the recipe, bond lines over its band and the hash of the recording', () => {
    const made = run('report', '--lot', 'L-2041', '--out', out('lot.html'));
    expect([made.code === 0 || made.code === 1, made.err]).toEqual([true, '']);
    const page = html('lot.html');
    for (const words of [
      'L-2041: assembly WB-212 on press North',
      'Recipe, version 1',
      '3 (numbers 1 to 3 of this assembly on this press)',
      'Recipe’s own runs, lowest to highest',
      'Checks after cooling',
      'SIMULATED',
    ])
      expect(page).toContain(words);
    const id = JSON.parse(run('bond', '--cycles', '--json').out).cycles[0].recordingId as string;
    expect(run('recordings', id, '--out', out('lot.dwell.txt')).code).toBe(0);
    expect(page).toContain(sha256(readFileSync(out('lot.dwell.txt'), 'utf8')));
  });

  it('gives the hash that the exported lines of these cycles have', () => {
    expect(run('report', '--lot', 'two', '--cycles', '2-3', '--out', out('two.html')).err).toBe('');
    const lines = run('export', 'cycles', '--format', 'csv').out.split('\r\n');
    expect(html('two.html')).toContain(sha256(`${[lines[0], lines[2], lines[3]].join('\r\n')}\r\n`));
    expect(html('two.html')).toContain('2 (numbers 2 to 3');
  });

  it('numbers cycles as bond --cycles does', () => {
    expect(
      run('bond', '--cycles')
        .out.split('\n')
        .map((line) => line.slice(0, 3)),
    ).toEqual(expect.arrayContaining(['1  ', '2  ', '3  ']));
  });

  it.each([
    ['another assembly', ['--assembly', 'WB-150'], 'no logged cycle fits'],
    ['a day long past', ['--to', '2001-01-01'], 'no logged cycle fits'],
    ['numbers the wrong way round', ['--cycles', '3-1'], 'lower number first'],
    ['no number', ['--cycles', 'all'], '--cycles'],
    ['no day', ['--from', 'yesterday'], 'a day or a moment'],
    ['a trial beside it', ['--trial', 'x'], 'both --lot and something else'],
    ['a name of blanks', [], 'came no name', ' '],
  ])('refuses %s with what to do, and writes nothing', (_, args, words, name = 'L') => {
    const { code, err } = run('report', '--lot', name, ...args, '--out', out('no.html'));
    expect([code, err]).toEqual([2, expect.stringContaining(words)]);
    expect(err).toContain('what to do');
    expect(existsSync(out('no.html'))).toBe(false);
  });

  it('does not ignore --cycles without --lot', () => {
    const { code, err } = run('report', '--trial', 'x', '--cycles', '1', '--out', out('no.html'));
    expect([code, err]).toEqual([2, expect.stringContaining('no --lot came')]);
  });
});

describe('report --recheck without files', () => {
  it('holds the recipe against every run of the store, old beside new, with dwell at other targets', () => {
    const {
      code,
      out: said,
      err,
    } = run(...['report', '--recheck', '--targets', '340F,350F,360F', '--out', out('recheck.html')]);
    expect([code, err]).toEqual([0, '']);
    expect(said).toContain('THE RECIPE HOLDS');
    const page = html('recheck.html');
    for (const words of [
      'Re-check of a recipe',
      'As stored',
      '3 runs were stored before and gave the same soak time and verdict then',
      'What these runs would suggest now',
      'Dwell at other targets',
      'Share of variance',
      'longest soak time with the whole hold',
      'Signatures',
    ])
      expect(page).toContain(words);
  });

  it('tells old from new where a what-if changes them: another target', () => {
    const { err } = run('report', '--recheck', '--target', '330F', '--out', out('other.html'));
    expect(err).toBe('');
    expect(html('other.html')).toMatch(/3 of the 3 runs that were stored before give another soak time/);
    expect(html('other.html')).toMatch(/Stored: [\d.]+ s, good; now: [\d.]+ s/);
  });
});

describe('report of a trial with --recheck', () => {
  it('analyses its stored runs again, each beside its stored result', () => {
    const id = JSON.parse(run('trials', '--json').out).trials.find(
      (one: { recordingIds: readonly string[] }) => one.recordingIds.length > 0,
    ).trialId as string;
    const { code, err } = run('report', '--trial', id, '--recheck', '--out', out('trial.html'));
    expect([code, err]).toEqual([0, '']);
    expect(html('trial.html')).toMatch(/<td>[\d.]+ s, good, rules \d+<\/td>/);
    expect(html('trial.html')).toContain('gave the same soak time and verdict then');
  });

  it('sets a file beside the stored result where the store holds the same recording', () => {
    const id = JSON.parse(run('trials', '--json').out).trials[0].recordingIds[0] as string;
    expect(run('recordings', id, '--out', out('own.dwell.txt')).code).toBe(0);
    expect(run('report', out('own.dwell.txt'), '--recheck', '--out', out('file.html')).err).toBe('');
    expect(html('file.html')).toMatch(/<td>[\d.]+ s, good, rules \d+<\/td>/);
    expect(html('file.html')).toContain('The recipe itself rests on');
  });
});

describe('two presses by trials of one assembly', () => {
  const files = (press: string) =>
    [1, 2, 3, 4, 5].map((at) => join(recordings, `wb-212-${press}-run-${at}.dwell.txt`));
  const apart = ['--store', join(folder, 'presses.db')];

  it('report --against takes the margins kept before, and draws both presses against the recipe', () => {
    for (const press of ['north', 'south'])
      expect(runProgram(['import', ...files(press), '--trial', press, ...apart]).code).toBe(0);
    expect(runProgram(['accept', 'north', '--rule', 'next-run', '--initials', 'AB', ...apart]).code).toBe(0);
    const against = ['report', '--trial', 'north', '--against', 'south', ...apart];
    expect(runProgram([...against, '--out', out('none.html')]).err).toBe('');
    expect(html('none.html')).toContain('No margins were stated');
    const margins = ['--presses', 'North,South', '--slower', '3s', '--faster', '5s'];
    expect(runProgram(['margins', '--assembly', 'WB-212', ...margins, ...apart]).code).toBe(0);
    expect(runProgram([...against, '--out', out('kept.html')]).err).toBe('');
    expect(html('kept.html')).toContain('Margins stated on');
    expect(html('kept.html')).toContain('−5.0 to +3.0 s');
    expect(html('kept.html')).toContain('longest soak time with the whole hold');
  });

  it('chart --view presses draws the same, and asks for the second trial', () => {
    const chart = ['chart', '--trial', 'north', '--view', 'presses', '--out', out('presses.svg'), ...apart];
    expect(runProgram([...chart, '--against', 'south']).err).toBe('');
    expect(readFileSync(out('presses.svg'), 'utf8')).toMatch(/South: mean [\d.]+ s, next run below/);
    expect(runProgram(chart)).toMatchObject({ code: 2, err: expect.stringContaining('second trial') });
  });
});

describe('report --survey', () => {
  const south = join(recordings, 'survey-south-lower.dwell.txt');

  it('shows the map, the spread over its limit (exit 1), probes and hash', () => {
    const { code, err } = run('report', south, '--survey', '--out', out('survey.html'));
    expect([code, err]).toEqual([1, '']);
    const page = html('survey.html');
    for (const words of ['Platen survey', 'OVER the limit of 10 °F', 'mm from the front edge', 'Lock out'])
      expect(page).toContain(words);
    expect(page).toContain(sha256(readFileSync(south, 'utf8')));
  });

  it('asks for a recording', () => {
    expect(run('report', '--survey', '--out', out('no.html'))).toMatchObject({
      code: 2,
      err: expect.stringContaining('no recording named'),
    });
  });
});

describe('chart of what the desk looks at', () => {
  const survey = join(recordings, 'survey-north-lower.dwell.txt');
  it.each([
    ['a platen survey', [survey, '--view', 'survey'], 'mm from the left edge'],
    ['a re-check', ['--view', 'recheck'], 'runs the recipe rests on'],
    ['dwell against target', ['--view', 'what-if', '--targets', '340F,350F,360F'], 'Dwell, s'],
    ['a lot', ['--view', 'lot'], 'dwell 17'],
    ['a lot less the band', ['--view', 'difference'], 'Difference, °F'],
    ['times closed', ['--view', 'closed'], 'Number of the cycle'],
  ])('writes %s as SVG and PNG', (name, args, words) => {
    const [svg, png] = [out(`${name}.svg`), out(`${name}.png`)];
    expect([run('chart', ...args, '--out', svg).err, run('chart', ...args, '--out', png).err]).toEqual([
      '',
      '',
    ]);
    const text = readFileSync(svg, 'utf8');
    expect(text).toContain(words);
    expect(text).not.toMatch(/NaN|Infinity|undefined/);
    expect(readFileSync(png).subarray(1, 4).toString()).toBe('PNG');
  });

  it('refuses one target alone, and files beside a lot', () => {
    const one = run('chart', '--view', 'what-if', '--targets', '350F', '--out', out('no.svg'));
    expect([one.code, one.err]).toEqual([2, expect.stringContaining('two targets or more')]);
    const files = run('chart', survey, '--view', 'lot', '--out', out('no.svg'));
    expect([files.code, files.err]).toEqual([2, expect.stringContaining('files came')]);
  });
});

describe('recipes', () => {
  it('says what asks for a new proof: the assembly’s hold is longer now', () => {
    expect(run('recipes').out).not.toContain('TO BE RE-PROVED');
    expect(run('assemblies', 'WB-212', '--hold', '150s').code).toBe(0);
    expect(run('recipes').out).toContain(
      "TO BE RE-PROVED: the assembly's hold is 150 s now, the recipe's 120 s",
    );
    const { recipes } = JSON.parse(run('recipes', '--json').out);
    expect(recipes[0].reProveReasons).toEqual([{ code: 'hold-longer', thenS: 120, nowS: 150 }]);
    expect(run('report', '--recheck', '--out', out('again.html')).err).toBe('');
    expect(html('again.html')).toContain('TO BE RE-PROVED');
  });

  it('remembers the shop’s interval, and refuses none', () => {
    expect(run('recipes', '--re-prove-after', '365d').code).toBe(0);
    expect(run('recipes', '--re-prove-after', 'never').code).toBe(0);
    expect(run('recipes', '--re-prove-after', '0')).toMatchObject({
      code: 2,
      err: expect.stringContaining('--re-prove-after'),
    });
  });
});
