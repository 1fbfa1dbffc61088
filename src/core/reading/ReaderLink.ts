/** The host's monotonic clock, whole microseconds from an arbitrary start. */
export interface MonotonicClock {
  nowUs(): number;
}

/** What a link tells while it is open. Times are of the link's MonotonicClock. */
export interface ReaderLinkListener {
  /** Bytes as they came; chunks may split or join lines anywhere. */
  bytes(chunk: Uint8Array, arrivedUs: number): void;
  /** The port went away (unplugged or failed). The link tries to come back by itself. */
  lost(arrivedUs: number, cause: string): void;
  /** A new port was opened after `lost`; bytes that follow belong to a new connection. */
  back(arrivedUs: number): void;
}

/**
 * A connection to a reader: the serial adapter and the simulated reader implement it.
 * `open` resolves once bytes may flow; rejects with a DwellwrightError if the reader cannot be opened at all.
 */
export interface ReaderLink {
  /** For the status line, for example the port's path; already neutralised. */
  readonly name: string;
  readonly simulated: boolean;
  open(listener: ReaderLinkListener): Promise<void>;
  /** Sends a host command line (without line end); dropped, not queued, while the port is away. */
  send(command: string): void;
  close(): Promise<void>;
}
