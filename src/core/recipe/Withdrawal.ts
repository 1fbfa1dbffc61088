/** Who took a recipe version out of use, when and why. It stays on record; a new acceptance makes a new version. */
export interface Withdrawal {
  readonly withdrawnAt: string;
  readonly initials: string;
  readonly reason: string;
}
