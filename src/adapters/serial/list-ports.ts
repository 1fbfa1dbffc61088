import { readdir, realpath } from 'node:fs/promises';
import { join } from 'node:path';
import { neutralise } from '../../core/text/neutralise.ts';

/** A serial port of this computer. Texts are fit for a terminal. null = not known. */
export interface ListedPort {
  readonly path: string;
  /** A path that stays the same whichever port comes up first, where the system has one. */
  readonly stablePath: string | null;
  readonly manufacturer: string | null;
  readonly serialNumber: string | null;
  readonly vendorId: string | null;
  readonly productId: string | null;
}

/** Names of USB readers' ports, and of ports under USB converters, in /dev. */
const DEVICE_NAME = /^(ttyACM|ttyUSB|rfcomm|cu\.usb|tty\.usb|cuaU|ttyU)\w*/;

/**
 * Lists the serial ports. Asks the serial library first; where that cannot (Linux without udev), looks through
 * `/dev` and `/dev/serial/by-id`. An empty list is a proper answer. Built-in ports of Linux (`ttyS0` …), of which
 * most are not there, are left out unless the system knows a maker for them.
 */
export async function listPorts(
  options: { readonly deviceFolder?: string; readonly askLibrary?: boolean } = {},
): Promise<readonly ListedPort[]> {
  const { deviceFolder = '/dev', askLibrary = true } = options;
  const stable = await stablePaths(join(deviceFolder, 'serial', 'by-id'));
  const listed = new Map<string, ListedPort>();
  if (askLibrary) {
    const { SerialPort } = await import('serialport');
    // Rejects where udevadm is missing; the folders below answer then.
    const found = await SerialPort.list().catch(() => []);
    for (const port of found) {
      if (/\/ttyS\d+$/.test(port.path) && port.manufacturer === undefined) continue;
      listed.set(port.path, {
        path: neutralise(port.path),
        stablePath: stable.get(port.path) ?? null,
        manufacturer: known(port.manufacturer),
        serialNumber: known(port.serialNumber),
        vendorId: known(port.vendorId),
        productId: known(port.productId),
      });
    }
  }
  for (const name of await names(deviceFolder)) {
    const path = join(deviceFolder, name);
    if (!DEVICE_NAME.test(name) || listed.has(path)) continue;
    const stablePath = stable.get(path) ?? null;
    listed.set(path, {
      path,
      stablePath,
      manufacturer: null,
      serialNumber: null,
      vendorId: null,
      productId: null,
    });
  }
  return [...listed.values()].sort((a, b) => a.path.localeCompare(b.path, 'en', { numeric: true }));
}

function known(text: string | undefined): string | null {
  return text === undefined || text === '' ? null : neutralise(text);
}

/** Device path → its link by maker and serial number. */
async function stablePaths(folder: string): Promise<ReadonlyMap<string, string>> {
  const links = new Map<string, string>();
  for (const name of await names(folder)) {
    const link = join(folder, name);
    // A link that points nowhere belongs to a port that just went.
    const target = await realpath(link).catch(() => null);
    if (target !== null) links.set(target, link);
  }
  return links;
}

/** No such folder: no such ports. */
function names(folder: string): Promise<readonly string[]> {
  return readdir(folder).catch(() => []);
}
