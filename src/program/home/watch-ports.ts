import { existsSync } from 'node:fs';
import { basename } from 'node:path';
import type { PortFacts } from '../../core/screen-home/HomeFacts.ts';
import { neutralise } from '../../core/text/neutralise.ts';

const EVERY_MS = 2000;
/** The screen comes first. */
const FIRST_AFTER_MS = 150;

/**
 * Tells the ports soon and whenever they change. The serial library is asked only where the system has no folder of
 * devices to look through: loading it would hold up keys. `usedLast`: a path that counts as there while it exists, also
 * where the list does not hold it (a link to a port, a pseudo-terminal).
 */
export function watchPorts(
  tell: (ports: readonly PortFacts[]) => void,
  usedLast: () => string | null = () => null,
): { stop(): void } {
  let stopped = false;
  let before: string | null = null;
  let timer: NodeJS.Timeout | undefined;
  const look = async (): Promise<void> => {
    const { listPorts } = await import('../../adapters/serial/list-ports.ts');
    const listed = await listPorts({ askLibrary: process.platform === 'win32' });
    const ports = listed.map(({ path, manufacturer, stablePath }) => ({
      path,
      maker: manufacturer ?? (stablePath === null ? null : neutralise(basename(stablePath))),
    }));
    if (stopped) return;
    const last = usedLast();
    if (last !== null && !ports.some(({ path }) => path === last) && existsSync(last))
      ports.push({ path: last, maker: null });
    const now = JSON.stringify(ports);
    if (now !== before) tell(ports);
    before = now;
    timer = setTimeout(() => void look(), EVERY_MS);
  };
  timer = setTimeout(() => void look(), FIRST_AFTER_MS);
  return {
    stop() {
      stopped = true;
      clearTimeout(timer);
    },
  };
}
