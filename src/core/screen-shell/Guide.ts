/** One answer that can be given by a single key. */
export interface GuideChoice {
  readonly key: string;
  readonly word: string;
  readonly detail: string;
  readonly value: string;
}

export type GuideQuestion =
  | {
      readonly kind: 'text';
      readonly id: string;
      /** In block letters. */
      readonly title: string;
      readonly ask: string;
      readonly hints: readonly string[];
      /** Taken by Enter alone; '' where an answer is needed, or may stay open. */
      readonly initial: string;
      /** Why the answer cannot be taken; null when it can. */
      readonly problem: (text: string) => string | null;
    }
  | {
      readonly kind: 'choice';
      readonly id: string;
      readonly title: string;
      readonly ask: string;
      readonly choices: readonly GuideChoice[];
      /** Value that Enter takes; null: none. */
      readonly initial: string | null;
    };

export type Answers = Readonly<Record<string, string>>;

/** Leads by the hand: one question at a time, each may depend on the answers before. */
export interface Guide {
  readonly title: string;
  /** Null once everything is known. */
  readonly next: (answers: Answers) => GuideQuestion | null;
}

export interface GuideState {
  readonly guide: Guide;
  readonly answers: Answers;
  /** Ids in the order they were answered, for going back. */
  readonly answered: readonly string[];
  readonly question: GuideQuestion;
  readonly text: string;
  readonly trouble: string | null;
}
