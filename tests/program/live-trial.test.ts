import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createSimulatedDevice } from '../../src/core/simulator/create-simulated-device.ts';
import { DEMO_SCENARIO } from '../../src/core/simulator/demo-scenario.ts';
import { NO_PTY, type PtyReader, ptyReader } from '../adapters/serial/pty-reader.ts';
import { runProgram, startProgram, temporaryFolder, until } from './run-program.ts';

/** What the demo's reader sends in one closing of 190 s; the device clock tells the time, so it may be sent fast. */
const sent = createSimulatedDevice(DEMO_SCENARIO)
  .advanceTo(DEMO_SCENARIO.endS * 1e6)
  .map(({ bytes }) => Buffer.from(bytes).toString('latin1'));

describe.skipIf(NO_PTY !== null)('a trial over a pseudo-terminal', () => {
  let reader: PtyReader;
  let store: string;
  beforeEach(async () => {
    reader = ptyReader();
    await reader.plugIn();
    store = join(temporaryFolder(), 'store.db');
  });
  afterEach(() => reader.remove());

  const start = (...more: readonly string[]) =>
    startProgram([
      'trial',
      '--port',
      reader.path,
      '--assembly',
      'WB-212',
      '--press',
      'North',
      '--new',
      '--plain',
      '--store',
      store,
      '--roles',
      'bond-line,bond-line-outer,upper-platen,lower-platen',
      ...more,
    ]);
  const send = async (lines: readonly string[]): Promise<void> => {
    for (let at = 0; at < lines.length; at += 50) {
      reader.write(lines.slice(at, at + 50).join(''));
      await wait(4);
    }
  };
  const asked = (): Promise<void> =>
    until('the host’s start command', () => reader.received().includes('start#'));

  it('asks the reader to identify itself and start, records a run, and its replay gives the same to the last digit', async () => {
    const program = start('--runs', '1', '--json');
    await asked();
    expect(reader.received()).toContain('identify#');
    await send(sent);
    const { code, out } = await program.ended;
    expect(code).toBe(0);
    const live = JSON.parse(out);
    expect(live.runs).toHaveLength(1);
    expect(live.runs[0].verdict).toBe('good');
    // Simulator's truth: 12 s to press closed, about 53.5 s of soak.
    expect(live.runs[0].soakTimeS).toBeGreaterThan(52);
    expect(live.runs[0].soakTimeS).toBeLessThan(56);
    const replayed = JSON.parse(
      runProgram(['replay', '--trial', live.trialId, '--store', store, '--json']).out,
    );
    expect({ ...replayed.runs[0], source: '' }).toEqual({ ...live.runs[0], source: '' });
    expect(replayed.trial).toEqual(live.trial);
    expect(replayed.dwell).toEqual(live.dwell);
  });

  it.each(['SIGTERM', 'SIGINT', 'SIGHUP'] as const)(
    '%s in the middle of a run keeps it whole and closed',
    async (signal) => {
      const program = start();
      await asked();
      await send(sent.slice(0, 800));
      await until('the crossing', () => program.out.includes('crossing'));
      program.child.kill(signal);
      const { code, err } = await program.ended;
      expect(err).toBe('');
      expect([0, 1]).toContain(code);
      const [recording] = JSON.parse(runProgram(['recordings', '--store', store, '--json']).out).recordings;
      const out = join(temporaryFolder(), 'written.dwell.txt');
      runProgram(['recordings', recording.recordingId, '--store', store, '--out', out]);
      const { runs } = JSON.parse(runProgram(['replay', out, '--json']).out);
      expect(runs[0].crossingS).toBeGreaterThan(60);
      expect(runs[0].noteCodes).not.toContain('recording-not-closed');
    },
  );

  it('kill -9 in the middle of a run loses nothing older than 200 ms', async () => {
    const program = start();
    await asked();
    await send(sent.slice(0, 800));
    await until('the crossing', () => program.out.includes('crossing'));
    await wait(400);
    program.child.kill('SIGKILL');
    await program.ended;
    const [trial] = JSON.parse(runProgram(['trials', '--store', store, '--json']).out).trials;
    const { runs } = JSON.parse(
      runProgram(['replay', '--trial', trial.trialId, '--store', store, '--json']).out,
    );
    expect(runs[0].crossingS).toBeGreaterThan(60);
    expect(runs[0].noteCodes).toContain('recording-not-closed');
  });

  it('a reader unplugged and plugged in again after the crossing does not end the run', async () => {
    const program = start('--runs', '1', '--json');
    await asked();
    await send(sent.slice(0, 900));
    await until('the crossing', () => program.err.includes('crossing, final'));
    await reader.unplug();
    await until('the loss to be told', () => /lost|unplugged/i.test(program.err), 3000);
    await reader.plugIn();
    await asked();
    await send(sent.slice(900));
    const { code, out } = await program.ended;
    expect(code, out).toBe(0);
    const { runs } = JSON.parse(out);
    expect(runs).toHaveLength(1);
    expect(runs[0].verdict).toBe('good');
    expect(runs[0].noteCodes).toContain('gap');
    expect(runs[0].soakTimeS).toBeGreaterThan(52);
  });

  it('a plain reader that prints no unit is refused with the option to use, exit 2', async () => {
    const program = start();
    await until('the port to be opened', () => reader.received().includes('#'));
    for (let i = 0; i < 20; i += 1) reader.write(`${(24 + i / 10).toFixed(2)}\r\n`);
    const { code, err } = await program.ended;
    expect(code).toBe(2);
    expect(err).toMatch(/--unit/);
  });

  it('a port that does not exist: exit 2, in words', () => {
    const { code, err } = runProgram(['trial', '--port', '/dev/no-such-port', '--plain']);
    expect(code).toBe(2);
    expect(err).toMatch(/no-such-port/);
    expect(err).toMatch(/what to do/);
  });
});

describe('demo', () => {
  it('ends with a dwell and a saved recipe, without a terminal', () => {
    const store = join(temporaryFolder(), 'store.db');
    const { code, out } = runProgram(['demo', '--store', store]);
    expect(code).toBe(0);
    expect(out).toMatch(/common mean rule: 174 s/);
    expect(out).toMatch(/Recipe saved/);
    const { recipes } = JSON.parse(runProgram(['recipes', '--store', store, '--json']).out);
    expect(recipes).toHaveLength(1);
    expect(recipes[0]).toMatchObject({
      assemblyName: 'WB-212',
      pressName: 'North',
      version: 1,
      simulated: true,
    });
  });
});
