import type { RuleOptions } from '../options/run-rules.ts';
import type { StoreOptions } from '../options/with-store.ts';
import type { SourceOptions } from '../sources/Source.ts';

/** What `import` was told. */
export interface ImportOptions extends RuleOptions, StoreOptions, SourceOptions {
  readonly trial?: string;
  readonly assembly?: string;
  readonly press?: string;
  readonly layout?: string;
  readonly saveLayout?: string;
  /** Probe on each channel, by name. */
  readonly probes?: string;
  readonly again?: boolean;
  readonly show: 'F' | 'C';
  readonly json?: boolean;
}
