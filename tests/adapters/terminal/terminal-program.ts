import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type IPty, spawn } from '@lydell/node-pty';
import { build } from 'esbuild';
import { terminalPicture } from './terminal-picture.ts';

/** Bundles a fixture as the program itself is bundled (production React); returns its path and how to remove it. */
export async function bundleFixture(
  name: string,
  fixtures = fileURLToPath(new URL('./fixtures', import.meta.url)),
): Promise<{ readonly path: string; remove(): void }> {
  const folder = mkdtempSync(join(tmpdir(), 'dwellwright-screen-'));
  await build({
    entryPoints: [join(fixtures, `${name}.ts`)],
    bundle: true,
    splitting: true,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    outdir: folder,
    outExtension: { '.js': '.mjs' },
    external: ['react-devtools-core'],
    define: { 'process.env.NODE_ENV': '"production"' },
    banner: { js: "import{createRequire}from'node:module';const require=createRequire(import.meta.url);" },
    logLevel: 'error',
  });
  return {
    path: join(folder, `${name}.mjs`),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** A fixture on a real pseudo-terminal. */
export class TerminalProgram {
  output = '';
  exit: { readonly exitCode: number } | null = null;
  readonly pty: IPty;

  constructor(
    path: string,
    args: readonly string[] = [],
    size = { cols: 80, rows: 24 },
    env: Record<string, string> = {},
  ) {
    const { CI: _ci, CONTINUOUS_INTEGRATION: _integration, ...rest } = process.env;
    this.pty = spawn(process.execPath, [path, ...args], {
      ...size,
      env: { ...rest, TERM: 'xterm-256color', LC_ALL: 'C.UTF-8', ...env } as Record<string, string>,
    });
    this.pty.onData((data) => {
      this.output += data;
    });
    this.pty.onExit((exit) => {
      this.exit = exit;
    });
  }

  /** What the window shows now, without colours. */
  get rows(): readonly string[] {
    // From the last time the window was cleared: all before is gone.
    const from = Math.max(0, this.output.lastIndexOf('\u001b[2J'));
    return terminalPicture(this.output.slice(from), this.pty.rows);
  }

  get screen(): string {
    return this.rows.join('\n');
  }

  /** Waits until the screen (or all output) fits; fails with the screen it saw. */
  async until(what: string, fits: (program: this) => boolean, withinMs = 15_000): Promise<void> {
    const endMs = Date.now() + withinMs;
    while (!fits(this)) {
      if (Date.now() > endMs) throw new Error(`not seen within ${withinMs} ms: ${what}\n${this.screen}`);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
  }

  see(pattern: RegExp, withinMs?: number): Promise<void> {
    return this.until(String(pattern), (program) => pattern.test(program.screen), withinMs);
  }

  /** Presses a key and gives it the time that tells it from a scan. */
  async key(key: string): Promise<void> {
    this.pty.write(key);
    await new Promise((resolve) => setTimeout(resolve, 150));
  }

  async ended(): Promise<number> {
    await this.until('end of the program', () => this.exit !== null);
    return this.exit?.exitCode ?? -1;
  }

  /** True when the cursor is shown and the first page is back after everything drawn. */
  get terminalRestored(): boolean {
    const last = (sequence: string) => this.output.lastIndexOf(sequence);
    return last('\u001b[?25h') > last('\u001b[?25l') && last('\u001b[?1049l') > last('\u001b[?1049h');
  }

  kill(): void {
    if (this.exit === null) this.pty.kill('SIGKILL');
  }
}
