import { spawn } from 'node:child_process';

/** What keeps this system awake while a program waits for our process to end; null where we know of nothing. */
const COMMANDS: Readonly<Partial<Record<NodeJS.Platform, (pid: number) => readonly [string, ...string[]]>>> =
  {
    linux: (pid) => [
      'systemd-inhibit',
      '--what=sleep:idle',
      '--who=Dwellwright',
      '--why=recording at the press',
      'tail',
      `--pid=${pid}`,
      '-f',
      '/dev/null',
    ],
    darwin: (pid) => ['caffeinate', '-i', '-w', String(pid)],
  };

/**
 * Asks the system not to sleep while a recording runs, where it has a command for that (Linux with systemd, macOS;
 * on Windows nothing is done). The helper ends by itself when this process does, however it ends. Where the command is
 * missing or refuses, recording goes on; a sleep is then noticed and becomes a gap.
 */
export function inhibitSleep(platform: NodeJS.Platform = process.platform): () => void {
  const command = COMMANDS[platform]?.(process.pid);
  if (command === undefined) return () => undefined;
  const [name, ...args] = command;
  const child = spawn(name, args, { stdio: 'ignore', detached: false });
  // Not there, or not allowed: see above.
  child.on('error', () => undefined);
  child.unref();
  return () => {
    child.kill();
  };
}
