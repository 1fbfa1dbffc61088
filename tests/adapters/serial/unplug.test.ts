import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ListedPort } from '../../../src/adapters/serial/list-ports.ts';
import { formatSample } from '../../../src/core/wire/protocol/index.ts';
import { NO_PTY, type PtyReader, ptyReader } from './pty-reader.ts';
import { recordFromPort, until } from './record-from-port.ts';

const LIMIT_S = 0.5;
const lineOf = (sequence: number): string =>
  `${formatSample({ sequence: sequence % 65_536, deviceTimeUs: (sequence * 1000) % 2 ** 32, channels: [{ kind: 'temperature', temperatureC: 25 }] })}\r\n`;

/** Lines at a rate, or as fast as the port takes them. Returns what stops it. */
function flow(reader: PtyReader, linesPerS: number | 'full'): () => void {
  const startMs = performance.now();
  let sent = 0;
  const timer = setInterval(() => {
    let due = linesPerS === 'full' ? sent + 400 : ((performance.now() - startMs) / 1000) * linesPerS;
    if (reader.unsentBytes > 100_000) due = sent;
    let text = '';
    for (; sent < due; sent += 1) text += lineOf(sent);
    if (text !== '') reader.write(text);
  }, 4);
  return () => clearInterval(timer);
}

describe.skipIf(NO_PTY !== null)('unplugging a serial reader', () => {
  let reader: PtyReader;
  beforeEach(async () => {
    reader = ptyReader();
    await reader.plugIn();
  });
  afterEach(() => reader.remove());

  for (const { title, linesPerS, repetitions } of [
    { title: 'idle', linesPerS: 0, repetitions: 4 },
    { title: 'at 100 lines/s', linesPerS: 100, repetitions: 4 },
    { title: 'at 1,000 lines/s', linesPerS: 1000, repetitions: 6 },
    { title: 'at full speed', linesPerS: 'full', repetitions: 6 },
  ] as const)
    it(`is noticed within 0.5 s ${title}, and the reader is taken up again, ${repetitions} times`, async () => {
      const recording = recordFromPort(reader.path);
      await recording.open();
      const noticedS: number[] = [];
      for (let time = 1; time <= repetitions; time += 1) {
        const before = recording.entries.length;
        const stop = flow(reader, linesPerS);
        if (linesPerS === 0) reader.write(lineOf(0));
        await until('lines', () => recording.entries.length > before + (linesPerS === 0 ? 0 : 20));
        const unpluggedUs = recording.clock.nowUs();
        await reader.unplug();
        stop();
        await until(
          'the loss',
          () => recording.hostEvents().filter((event) => event === 'port-lost').length === time,
        );
        noticedS.push((recording.clock.nowUs() - unpluggedUs) / 1e6);
        await reader.plugIn();
        await until(
          'the return',
          () => recording.hostEvents().filter((event) => event === 'port-back').length === time,
        );
      }
      reader.write(`\n${lineOf(7)}`);
      await until(
        'a reading after the last return',
        () => recording.lines().at(-1)?.text.startsWith('sample 7 ') === true,
      );
      await recording.close();
      console.info(`unplug noticed ${title}: worst ${Math.max(...noticedS).toFixed(3)} s of ${repetitions}`);
      expect(Math.max(...noticedS)).toBeLessThanOrEqual(LIMIT_S);
      expect(recording.assembler.counts.unplugs).toBe(repetitions);
      expect(recording.gaps().filter((gap) => gap.kind === 'gap' && gap.cause === 'unplugged')).toHaveLength(
        repetitions,
      );
    });

  it('sends nothing later that was given while the reader was away', async () => {
    const recording = recordFromPort(reader.path);
    await recording.open();
    await reader.unplug();
    await until('the loss', () => recording.hostEvents().includes('port-lost'));
    recording.link.send('stop');
    await reader.plugIn();
    await until('the return', () => recording.hostEvents().includes('port-back'));
    recording.link.send('identify');
    await until('the later command', () => reader.received().includes('identify\n'));
    await recording.close();
    expect(reader.received()).toBe('identify\n');
  });

  it('never joins half a line from before with the first one after', async () => {
    const recording = recordFromPort(reader.path);
    await recording.open();
    reader.write(`${lineOf(0)}${lineOf(1)}${lineOf(2).slice(0, 12)}`);
    await until('two readings', () => recording.readings().length === 2);
    await new Promise((resolve) => setTimeout(resolve, 30));
    await reader.unplug();
    await until('the loss', () => recording.hostEvents().includes('port-lost'));
    await reader.plugIn();
    await until('the return', () => recording.hostEvents().includes('port-back'));
    reader.write(`${lineOf(3).slice(12)}${lineOf(4)}`);
    await until('the third reading', () => recording.readings().length === 3);
    await recording.close();
    expect(recording.assembler.counts).toMatchObject({ cutOff: 1, startUnknown: 1, readings: 3 });
  });

  it('takes the same reader under another path, by its serial number, and no other reader at the old path', async () => {
    const other = ptyReader();
    const listed = (path: string, serialNumber: string): ListedPort => ({
      path,
      serialNumber,
      stablePath: null,
      manufacturer: null,
      vendorId: '1209',
      productId: '0001',
    });
    let ports = [listed(reader.path, 'A17')];
    const recording = recordFromPort(reader.path, { list: async () => ports });
    await recording.open();
    await reader.unplug();
    await until('the loss', () => recording.hostEvents().includes('port-lost'));
    ports = [listed(reader.path, 'B03')];
    await reader.plugIn();
    await new Promise((resolve) => setTimeout(resolve, 700));
    expect(recording.hostEvents()).toEqual(['port-lost']);
    await other.plugIn();
    ports = [listed(reader.path, 'B03'), listed(other.path, 'A17')];
    await until('the return', () => recording.hostEvents().includes('port-back'));
    other.write(`\n${lineOf(1)}`);
    await until('a reading', () => recording.readings().length === 1);
    await recording.close();
    await other.remove();
  });

  it('closes while the reader is away, at once and for good', async () => {
    const recording = recordFromPort(reader.path);
    await recording.open();
    await reader.unplug();
    await until('the loss', () => recording.hostEvents().includes('port-lost'));
    await recording.close();
    await reader.plugIn();
    await new Promise((resolve) => setTimeout(resolve, 600));
    expect(recording.hostEvents()).toEqual(['port-lost']);
  });
});
