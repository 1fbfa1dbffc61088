import { expect, it } from 'vitest';
import { recordFromPort, until } from './record-from-port.ts';

const port = process.env.DWELLWRIGHT_TEST_PORT;
if (port === undefined) console.warn('skipped: DWELLWRIGHT_TEST_PORT names no port with a real reader');

it.skipIf(port === undefined)(
  'takes ten readings from the real reader at DWELLWRIGHT_TEST_PORT',
  async () => {
    const recording = recordFromPort(port as string);
    await recording.open();
    await until('ten readings', () => recording.readings().length >= 10, 20_000);
    await recording.close();
    const times = recording.readings().map((reading) => reading.timeS);
    expect(times).toEqual([...times].sort((a, b) => a - b));
  },
);
