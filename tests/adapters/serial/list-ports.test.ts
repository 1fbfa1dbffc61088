import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findPortAgain, identifyPort } from '../../../src/adapters/serial/find-port-again.ts';
import { type ListedPort, listPorts } from '../../../src/adapters/serial/list-ports.ts';

describe('listPorts', () => {
  let folder: string;
  beforeEach(() => {
    folder = realpathSync(mkdtempSync(join(tmpdir(), 'dwellwright-dev-')));
    for (const name of ['ttyACM0', 'ttyUSB10', 'ttyUSB2', 'ttyS0', 'tty1', 'null'])
      writeFileSync(join(folder, name), '');
    mkdirSync(join(folder, 'serial', 'by-id'), { recursive: true });
    symlinkSync(join(folder, 'ttyACM0'), join(folder, 'serial', 'by-id', 'usb-Bench_reader_A17-if00'));
    symlinkSync(join(folder, 'ttyACM9'), join(folder, 'serial', 'by-id', 'usb-gone'));
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  it('finds ports in the device folder where the library cannot list (no udev), in counting order', async () => {
    const ports = await listPorts({ deviceFolder: folder, askLibrary: false });
    expect(ports.map((port) => port.path)).toEqual(
      ['ttyACM0', 'ttyUSB2', 'ttyUSB10'].map((name) => join(folder, name)),
    );
    expect(ports[0]?.stablePath).toBe(join(folder, 'serial', 'by-id', 'usb-Bench_reader_A17-if00'));
    expect(ports[1]?.stablePath).toBeNull();
  });

  it('gives an empty list where there is no device folder', async () => {
    expect(await listPorts({ deviceFolder: join(folder, 'none'), askLibrary: false })).toEqual([]);
  });

  it('answers with the real library on this machine, udev or not', async () => {
    expect(Array.isArray(await listPorts())).toBe(true);
  });

  it('answers where the program that the library asks is missing', async () => {
    const path = process.env.PATH;
    process.env.PATH = folder;
    try {
      expect((await listPorts({ deviceFolder: folder })).map((port) => port.path)).toContain(
        join(folder, 'ttyACM0'),
      );
    } finally {
      process.env.PATH = path;
    }
  });
});

describe('a reader that comes back under another name', () => {
  const port = (path: string, serialNumber: string | null): ListedPort => ({
    path,
    serialNumber,
    stablePath: null,
    manufacturer: null,
    vendorId: '1209',
    productId: '0001',
  });

  it('is found by its serial number', async () => {
    const identity = await identifyPort('/dev/ttyACM0', async () => [port('/dev/ttyACM0', 'A17')]);
    expect(identity).toMatchObject({ serialNumber: 'A17' });
    if (identity === null) throw new Error('no identity');
    const later = async () => [port('/dev/ttyACM1', 'A17'), port('/dev/ttyACM2', 'B03')];
    expect(await findPortAgain(identity, '/dev/ttyACM0', later)).toBe('/dev/ttyACM1');
  });

  it('is not guessed without a serial number, nor when two would fit', async () => {
    expect(await identifyPort('/dev/ttyACM0', async () => [port('/dev/ttyACM0', null)])).toBeNull();
    const two = async () => [port('/dev/ttyACM1', 'A17'), port('/dev/ttyACM2', 'A17')];
    expect(await findPortAgain(port('', 'A17'), '/dev/ttyACM0', two)).toBeNull();
    expect(await findPortAgain(port('', 'A17'), '/dev/ttyACM0', async () => [])).toBeNull();
    expect(await findPortAgain(port('', 'A17'), '/dev/ttyACM2', two)).toBe('/dev/ttyACM2');
  });
});
