import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { formatContact } from '../../src/core/wire/protocol/format-contact.ts';
import { formatSample } from '../../src/core/wire/protocol/format-sample.ts';
import { NO_PTY, type PtyReader, ptyReader } from '../adapters/serial/pty-reader.ts';
import { TerminalProgram } from '../adapters/terminal/terminal-program.ts';
import { PROGRAM, runProgram } from './run-program.ts';
import { shopWithRecipe } from './shop-with-recipe.ts';

describe.skipIf(NO_PTY !== null)('the production timer on a serial port', () => {
  const store = shopWithRecipe();
  let reader: PtyReader;
  let screen: TerminalProgram;
  let sending: NodeJS.Timeout;
  let values: (number | null)[] = [24, 232.2];
  const startMs = performance.now();
  const deviceTimeUs = () => Math.round((performance.now() - startMs) * 1000) + 1_000_000;
  let sequence = 0;

  beforeAll(async () => {
    reader = ptyReader();
    await reader.plugIn();
    const roles = ['--roles', 'bond-line,upper-platen'];
    const named = ['--assembly', 'WB-212', '--press', 'North'];
    const args = ['bond', ...named, '--port', reader.path, ...roles, '--store', store];
    screen = new TerminalProgram(PROGRAM, args, { cols: 80, rows: 24 });
    // Two readings a second, in the device's own time.
    sending = setInterval(() => {
      const channels = values.map((value) =>
        value === null
          ? ({ kind: 'fault', fault: 'open-circuit' } as const)
          : ({ kind: 'temperature', temperatureC: value } as const),
      );
      reader.write(`${formatSample({ sequence: sequence++, deviceTimeUs: deviceTimeUs(), channels })}\n`);
    }, 500);
    await screen.see(/read and understood/);
    await screen.key('\r');
  }, 30_000);
  afterAll(async () => {
    clearInterval(sending);
    screen.kill();
    await reader.remove();
  });

  it('shows readings at two a second without calling them old', async () => {
    await screen.see(/[12]\.\d readings\/s/);
    await screen.see(/Upper platen 450 °F/);
    expect(screen.screen).not.toMatch(/as it was/);
  });

  it('starts with the contact, shows an open probe as a fault, an unplugged reader as lost, and goes on', async () => {
    reader.write(`${formatContact({ closed: true, deviceTimeUs: deviceTimeUs() })}\n`);
    await screen.see(/Closed for [1-9]/);
    values = [null, 232.2];
    await screen.see(/bond line: open circuit/);
    values = [40, 232.2];
    await screen.see(/bond line, target 350 °F/);
    await reader.unplug();
    await screen.see(/READER LOST\. The timer goes on/);
    const before = /Closed for (\d+) s/.exec(screen.screen)?.[1];
    await screen.until(
      'time going on',
      ({ screen: text }) => Number(/Closed for (\d+) s/.exec(text)?.[1]) > Number(before),
    );
    await reader.plugIn();
    await screen.see(/readings\/s/);
    await screen.see(/bond line, target 350 °F/);
  }, 40_000);

  it('logs the closing as opened early, hold not verified, with its recording', async () => {
    await screen.key('o');
    await screen.see(/OPENED EARLY/);
    await screen.see(/Logged: OPENED EARLY/, 20_000);
    await screen.key('q');
    await screen.until('left', ({ exit }) => exit !== null);
    const { cycles } = JSON.parse(runProgram(['bond', '--cycles', '--json', '--store', store]).out);
    expect(cycles).toMatchObject([
      { result: 'opened-early', closedBy: 'contact', hold: 'not-verified', simulated: false },
    ]);
    expect(cycles[0].recordingId).toBeTypeOf('string');
    expect(cycles[0].platensAtClosingC.upper).toBeCloseTo(232.2, 1);
    expect(runProgram(['verify', '--store', store]).code).toBe(0);
  }, 40_000);
});
