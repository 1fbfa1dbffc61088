import type { PortFacts } from '../../core/screen-home/HomeFacts.ts';

const EVERY_MS = 2000;

/**
 * Tells the ports at once and whenever they change. The serial library is asked the first time, and again where the
 * system has no folder of devices to look through.
 */
export function watchPorts(tell: (ports: readonly PortFacts[]) => void): { stop(): void } {
  let stopped = false;
  let before = '';
  let timer: NodeJS.Timeout | undefined;
  let known: readonly PortFacts[] = [];
  const look = async (first: boolean): Promise<void> => {
    const { listPorts } = await import('../../adapters/serial/list-ports.ts');
    const askLibrary = first || process.platform === 'win32';
    const listed = await listPorts({ askLibrary });
    const ports = listed.map(({ path, manufacturer }) => ({
      path,
      maker: manufacturer ?? known.find((port) => port.path === path)?.maker ?? null,
    }));
    if (stopped) return;
    known = ports;
    const now = JSON.stringify(ports);
    if (first || now !== before) tell(ports);
    before = now;
    timer = setTimeout(() => void look(false), EVERY_MS);
  };
  // After the first drawing: the library takes longer to load than the screen.
  timer = setTimeout(() => void look(true), 50);
  return {
    stop() {
      stopped = true;
      clearTimeout(timer);
    },
  };
}
