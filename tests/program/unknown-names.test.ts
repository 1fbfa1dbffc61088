import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runProgram, temporaryFolder } from './run-program.ts';

function shop() {
  const environment = { DWELLWRIGHT_STORE: join(temporaryFolder(), 'store.db') };
  runProgram(['presses', 'North', '--bore', '200mm'], environment);
  runProgram(['assemblies', 'WB-212', '--target', '340F'], environment);
  const list = (what: string) => JSON.parse(runProgram([what, '--json'], environment).out)[what];
  return { run: (...args: readonly string[]) => runProgram(args, environment), list };
}

const TRIAL = ['trial', '--port', '/dev/no-such-port', '--plain'];

describe('a trial with a mistyped name', () => {
  it('is refused with the nearest known name, exit 2, and nothing is added', () => {
    const { run, list } = shop();
    const press = run(...TRIAL, '--assembly', 'WB-212', '--press', 'Nroth');
    expect(press.code).toBe(2);
    expect(press.err).toMatch(/no press "Nroth".*\n.*Did you mean "North"/);
    const assembly = run(...TRIAL, '--assembly', 'WB-21', '--press', 'North');
    expect(assembly.code).toBe(2);
    expect(assembly.err).toMatch(/no assembly "WB-21".*\n.*Did you mean "WB-212".*--new/);
    expect(run('trial', '--simulated', '--plain', '--press', 'Suoth', '--runs', '1').code).toBe(2);
    expect(list('presses')).toHaveLength(1);
    expect(list('assemblies')).toHaveLength(1);
    expect(list('trials')).toEqual([]);
  });

  it('takes a name in other letters of the same word: north is North', () => {
    const { run } = shop();
    const { err } = run(...TRIAL, '--assembly', 'wb-212', '--press', 'north');
    expect(err).toMatch(/no-such-port/);
    expect(err).not.toMatch(/no press/);
  });

  it('adds the names with --new, and says what they stand for; in an empty store the refusal tells how to add them', () => {
    const environment = { DWELLWRIGHT_STORE: join(temporaryFolder(), 'store.db') };
    const named = ['--assembly', 'WB-9', '--press', 'East'];
    const refused = runProgram([...TRIAL, ...named], environment);
    expect(refused.code).toBe(2);
    expect(refused.err).toMatch(/dwellwright presses "?East"?/);
    expect(refused.err).toMatch(/--new/);
    const added = runProgram(
      ['trial', '--simulated', '--plain', '--speed', '1000', '--runs', '1', '--new', ...named],
      environment,
    );
    expect(added.code).toBe(0);
    expect(`${added.out}${added.err}`).toMatch(/New assembly "WB-9": target 350 °F .*hold 120 s/);
    expect(JSON.parse(runProgram(['presses', '--json'], environment).out).presses).toMatchObject([
      { name: 'East' },
    ]);
  });
});

describe('a trial that cannot begin', () => {
  it('a port that cannot be opened leaves no trial and no recording', () => {
    const { run, list } = shop();
    const { code, err } = run(...TRIAL, '--assembly', 'WB-212', '--press', 'North');
    expect(code).toBe(2);
    expect(err).toMatch(/no-such-port/);
    expect(list('trials')).toEqual([]);
    expect(list('recordings')).toEqual([]);
  });

  it('--rate with --simulated is used: 50 readings a second; a rate that it has not is refused', () => {
    const { run, list } = shop();
    const refused = run('trial', '--simulated', '--plain', '--rate', '7', '--runs', '1');
    expect(refused.code).toBe(2);
    expect(refused.err).toMatch(/--rate/);
    expect(list('trials')).toEqual([]);
    expect(
      run('trial', '--simulated', '--plain', '--speed', '1000', '--rate', '50', '--runs', '1').code,
    ).toBe(0);
    const [{ recordingId }] = list('recordings');
    const text = run('recordings', recordingId).out;
    // The reader says its rate in its answer to `identify`, by the open protocol (firmware-protocol.md).
    expect(text).toMatch(/rate[ =:]50/);
  });
});
