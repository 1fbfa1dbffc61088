/** Placeholder until the screens land. */
export async function trial(): Promise<void> { throw new Error('not yet'); }
