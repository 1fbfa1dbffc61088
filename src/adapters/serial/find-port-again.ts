import { realpath } from 'node:fs/promises';
import { type ListedPort, listPorts } from './list-ports.ts';

/** What tells one USB reader from another when it comes back under another name. */
export type PortIdentity = Pick<ListedPort, 'serialNumber' | 'vendorId' | 'productId'>;

/** Identity of the port at a path; null where the system knows no serial number for it. */
export async function identifyPort(
  path: string,
  list: typeof listPorts = listPorts,
): Promise<PortIdentity | null> {
  const device = await realpath(path).catch(() => path);
  const port = (await list()).find((listed) => listed.path === device || listed.path === path);
  return port?.serialNumber ? port : null;
}

/**
 * Path of the port with this identity now: the old path if it is (still) that reader's, else another one. Null when it is
 * not there, when another reader took the old path, or when two others would fit (some converters share a number).
 */
export async function findPortAgain(
  identity: PortIdentity,
  oldPath: string,
  list: typeof listPorts = listPorts,
): Promise<string | null> {
  const fitting = (await list()).filter(
    (port) =>
      port.serialNumber === identity.serialNumber &&
      port.vendorId === identity.vendorId &&
      port.productId === identity.productId,
  );
  const oldDevice = await realpath(oldPath).catch(() => oldPath);
  if (fitting.some((port) => port.path === oldPath || port.path === oldDevice)) return oldPath;
  return fitting.length === 1 ? (fitting[0] as ListedPort).path : null;
}
