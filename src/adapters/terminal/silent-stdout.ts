/**
 * The stream as ink sees it: size, resizes and kind of terminal are the real ones, but what ink writes goes nowhere.
 * The rows are drawn by the frame painter; ink keeps keys, life cycle and layout.
 */
export function silentStdout(stdout: NodeJS.WriteStream): NodeJS.WriteStream {
  const write = (_data: unknown, ...rest: readonly unknown[]): boolean => {
    const written = rest.at(-1);
    if (typeof written === 'function') written();
    return true;
  };
  return new Proxy(stdout, {
    get(target, name) {
      if (name === 'write') return write;
      const value: unknown = Reflect.get(target, name, target);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
}
