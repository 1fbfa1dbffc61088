import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { simulateWarmUpRecording } from '../../src/core/simulator/warm-up-recording.ts';
import { WARM_UP_SCENARIOS } from '../../src/core/simulator/warm-up-scenarios.ts';
import { NO_PTY, type PtyReader, ptyReader } from '../adapters/serial/pty-reader.ts';
import { TerminalProgram } from '../adapters/terminal/terminal-program.ts';
import { PROGRAM, runProgram, startProgram, temporaryFolder, until } from './run-program.ts';

/** What the reader of a simulated warm-up of North sends; the device clock tells the time, so it may be sent fast. */
const sent = simulateWarmUpRecording(WARM_UP_SCENARIOS[0]!).entries.flatMap((entry) =>
  entry.kind === 'line' ? [`${entry.text}\n`] : [],
);
/** READY of this warm-up by its own truth: the lower platen stays inside from 1296 s after power-on at 30 s, and 300 s more. */
const TRUE_READY_S = 30 + 1296 + 300;

describe.skipIf(NO_PTY !== null)('warm-up --live over a pseudo-terminal', () => {
  let reader: PtyReader;
  let store: string;
  let screen: TerminalProgram | null = null;
  beforeEach(async () => {
    reader = ptyReader();
    await reader.plugIn();
    store = join(temporaryFolder(), 'store.db');
  });
  afterEach(async () => {
    screen?.kill();
    screen = null;
    await reader.remove();
  });

  const argumentsOf = () => [
    'warm-up',
    '--live',
    '--port',
    reader.path,
    '--press',
    'North',
    '--platens',
    '450F',
    '--roles',
    'ambient,unused,upper-platen,lower-platen',
    '--store',
    store,
  ];
  const plain = (...more: readonly string[]) => startProgram([...argumentsOf(), '--plain', ...more]);
  const onScreen = () => {
    screen = new TerminalProgram(PROGRAM, argumentsOf(), { cols: 80, rows: 24 });
    return screen;
  };
  const send = async (lines: readonly string[]): Promise<void> => {
    for (let at = 0; at < lines.length; at += 100) {
      reader.write(lines.slice(at, at + 100).join(''));
      await wait(4);
    }
  };
  const asked = (): Promise<void> =>
    until('the host’s start command', () => reader.received().includes('start#'));
  const recordings = () =>
    JSON.parse(runProgram(['recordings', '--store', store, '--json']).out).recordings as {
      readonly recordingId: string;
    }[];
  const kept = (id: string) => [...runProgram(['recordings', id, '--store', store]).out.split('\n')];
  const analysed = (id: string) =>
    JSON.parse(runProgram(['warm-up', id, '--store', store, '--json']).out).warmUps[0];

  it('asks for the rate, records to READY, and the stored recording by its id tells the same', async () => {
    const program = plain('--json', '--rate', '10');
    await asked();
    expect(reader.received()).toContain('identify#');
    expect(reader.received()).toContain('rate 10#');
    await send(sent);
    const { code, out, err } = await program.ended;
    expect(code, err).toBe(0);
    const live = JSON.parse(out);
    expect(Math.abs(live.firstReadyAtS - TRUE_READY_S)).toBeLessThan(30);
    const warmUp = analysed(live.recordingId);
    expect(warmUp.sound).toBe(true);
    expect(warmUp.powerOnS + warmUp.readyAtS).toBeCloseTo(live.firstReadyAtS, 6);
  });

  it('unplugged half-way and plugged in again: told, taken up by itself, the gap kept, READY reached', async () => {
    const program = plain();
    await asked();
    await send(sent.slice(0, 1000));
    await until('half the rise', () => program.out.includes('HEATING'));
    await wait(200);
    await reader.unplug();
    await until('the loss to be told', () => program.out.includes('READER LOST'));
    await reader.plugIn();
    await asked();
    await send(sent.slice(1060));
    const { code, out } = await program.ended;
    expect(out).toMatch(/READY\. READY: every platen inside/);
    expect(code).toBe(0);
    const [{ recordingId }] = recordings() as [{ recordingId: string }];
    expect(analysed(recordingId).cautions).toContain('gaps');
  });

  it('a reader that says nothing: after some seconds the plain lines say so, and what to do', async () => {
    const program = plain();
    await asked();
    await until('words about the silence', () => program.out.includes('Nothing has come from'));
    expect(program.out).toMatch(/See its power, its cable and --baud/);
    expect(program.out).toContain('sniff');
    program.child.kill('SIGTERM');
    const { code, err } = await program.ended;
    expect(code).toBe(1);
    expect(err).toBe('');
  });

  it('readings without a unit are refused with the option to use: exit 2', async () => {
    const program = plain();
    await asked();
    for (let i = 0; i < 20; i += 1) reader.write(`${(24 + i / 10).toFixed(2)}\r\n`);
    const { code, err } = await program.ended;
    expect(code).toBe(2);
    expect(err).toMatch(/--unit/);
  });

  it('a channel that the reader does not have is named', async () => {
    const program = startProgram([
      ...argumentsOf().map((arg) =>
        arg.startsWith('ambient') ? 'ambient,unused,unused,unused,lower-platen' : arg,
      ),
      '--plain',
    ]);
    await asked();
    await send(sent.slice(0, 200));
    await until('words about the channel', () => program.out.includes('channel 5 gives no reading'));
    program.child.kill('SIGTERM');
    await program.ended;
  });

  it.each(['SIGTERM', 'SIGINT', 'SIGHUP'] as const)(
    '%s keeps everything, whole and closed',
    async (signal) => {
      const program = plain();
      await asked();
      await send(sent.slice(0, 800));
      await until('the rise', () => program.out.includes('HEATING'));
      await wait(300);
      program.child.kill(signal);
      const { err } = await program.ended;
      expect(err).toBe('');
      const [{ recordingId }] = recordings() as [{ recordingId: string }];
      expect(analysed(recordingId)).toMatchObject({ sound: true });
      // Contact and identity lines among them; at most the last batch was on its way.
      expect(kept(recordingId).filter((line) => line.includes('sample')).length).toBeGreaterThan(690);
    },
  );

  it('on the screen: cautions, P marks the heaters, U takes back; Q and Y leave', async () => {
    const page = onScreen();
    await page.see(/Platens burn at once/);
    await page.key('\r');
    await asked();
    await page.see(/Waiting for the first reading/);
    await send(sent.slice(0, 25));
    await page.see(/P {2}heaters on/);
    await page.key('p');
    await page.see(/heaters on for 0:0\d min/);
    await wait(1000);
    await page.key('u');
    await page.see(/Heaters on: taken back/);
    await wait(100);
    await page.key('p');
    await page.see(/Heaters on: marked/);
    await send(sent.slice(25, 700));
    await page.see(/READY in about \d+ min/);
    await page.key('h');
    await page.see(/Records every platen from cold to READY/);
    await page.key('h');
    await page.key('q');
    await page.see(/Leave the warm-up\?/);
    await page.key('y');
    expect(await page.ended()).toBe(1);
    expect(page.terminalRestored).toBe(true);
    const [{ recordingId }] = recordings() as [{ recordingId: string }];
    const notes = kept(recordingId).filter((line) => line.includes('note'));
    expect(notes.map((line) => line.replace(/^.*note /, ''))).toEqual([
      'cautions read and understood',
      'heaters on',
      'taken back: heaters on',
      'heaters on',
    ]);
    expect(analysed(recordingId)).toMatchObject({ powerOnBy: 'note', sound: true });
    // Once a shift: the next start asks no more.
    const again = onScreen();
    await again.see(/Waiting for the first reading|OLD READING|COLD/);
    expect(again.screen).not.toContain('Read these once a shift');
  });

  it('on the screen: unplugged, NO READER; plugged in again, figures come back', async () => {
    const page = onScreen();
    await page.see(/read and understood/);
    await page.key('\r');
    await asked();
    await send(sent.slice(0, 500));
    await page.see(/READY in about|Time to READY/);
    await reader.unplug();
    await page.see(/READER LOST/);
    expect(page.screen).toMatch(/LOST .*reader/);
    await reader.plugIn();
    await asked();
    await send(sent.slice(500, 520));
    await page.until('the loss to be over', ({ screen: now }) => !now.includes('READER LOST'));
  });

  it.each([
    ['Ctrl-C', (page: TerminalProgram) => page.pty.write('\u0003')],
    ['a closed terminal', (page: TerminalProgram) => page.pty.kill('SIGHUP')],
    ['SIGTERM', (page: TerminalProgram) => page.pty.kill('SIGTERM')],
  ] as const)('on the screen, %s keeps everything, closed', async (_, leave) => {
    const page = onScreen();
    await page.see(/read and understood/);
    await page.key('\r');
    await asked();
    await send(sent.slice(0, 400));
    await page.see(/HEATING|READY in about|Time to READY/);
    await wait(300);
    leave(page);
    await page.ended();
    const [{ recordingId }] = recordings() as [{ recordingId: string }];
    expect(analysed(recordingId).sound).toBe(true);
    expect(kept(recordingId).filter((line) => line.includes('sample')).length).toBeGreaterThan(390);
  });
});
