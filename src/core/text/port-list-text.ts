/** What is known of a port; texts already neutralised. */
interface PortFacts {
  readonly path: string;
  readonly stablePath: string | null;
  readonly manufacturer: string | null;
  readonly serialNumber: string | null;
}

/** One line about a port: "/dev/ttyACM0  maker …, serial number …". */
export function portLine(port: PortFacts): string {
  const facts = [
    port.manufacturer === null ? null : `maker ${port.manufacturer}`,
    port.serialNumber === null ? null : `serial number ${port.serialNumber}`,
    port.stablePath === null ? null : `always at ${port.stablePath}`,
  ].filter((fact) => fact !== null);
  return facts.length === 0 ? port.path : `${port.path}  ${facts.join(', ')}`;
}
