/** Takes a recording's text piece by piece and gives the SHA-256 of its UTF-8 bytes; an adapter may bring a faster one. */
export interface Hasher {
  update(text: string): void;
  /** 64 lower-case hexadecimal digits of everything taken so far; nothing may be added after. */
  digestHex(): string;
}

export type CreateHasher = () => Hasher;
