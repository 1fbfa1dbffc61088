import { StoreError } from './StoreError.ts';

/** What `read` finds wrong, or the message of the StoreError that it throws; null where all is well. */
export function unreadable(read: () => unknown): string | null {
  try {
    const found = read();
    return typeof found === 'string' ? found : null;
  } catch (error) {
    if (error instanceof StoreError) return error.message;
    throw error;
  }
}
