const ERASE_SCROLLBACK = '\u001b[3J';

/**
 * The stream without "erase scrollback": when a window becomes lower than the last frame, ink clears the terminal
 * with all that was written before the program started.
 */
export function keepScrollback(stdout: NodeJS.WriteStream): NodeJS.WriteStream {
  const write = (data: string | Uint8Array, ...rest: unknown[]): boolean => {
    const kept = typeof data === 'string' ? data.replaceAll(ERASE_SCROLLBACK, '') : data;
    return (stdout.write as (...all: unknown[]) => boolean).call(stdout, kept, ...rest);
  };
  return new Proxy(stdout, {
    get(target, name) {
      if (name === 'write') return write;
      const value: unknown = Reflect.get(target, name, target);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
}
