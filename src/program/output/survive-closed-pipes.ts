/** `dwellwright … | head` closes our output early: that is the reader's choice, not a failure. */
export function surviveClosedPipes(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') process.exit(process.exitCode ?? 0);
      throw error;
    });
  }
}
