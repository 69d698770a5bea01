/** How a question is asked in plain words: declared beside its options, read by whatever reads plain words. */

/** What marks an option in a phrase. Senses are named as in the list of words, parted by spaces. */
export interface Mark {
  /** How it is asked for where it is missing: a whole question. */
  readonly asks?: string;
  /** What the option takes, where its kind alone does not say: `row`, `hook`, `saved-motif`. */
  readonly takes?: string;
  /** Senses of what the number counts: `motif block`. A number that counts something else is not this option’s. */
  readonly nouns?: string;
  /** Senses that speak for this option where they stand near. */
  readonly near?: string;
  /** Senses that speak against it where they stand near. */
  readonly not?: string;
  /** True where nothing is taken without a noun or a sense near it. */
  readonly only?: boolean;
  /** Words that say there is none of it: the value is 0. */
  readonly none?: RegExp;
  /** Reads the value off the phrase in its first group. */
  readonly capture?: RegExp;
  /** Each choice with the senses that mean it. */
  readonly choices?: Readonly<Record<string, string>>;
  /** True where a phrase never fills this option: a confirmation, a file. */
  readonly never?: true;
  /** Words of which the option is not read, though they are names of what it takes. */
  readonly not_words?: string;
  /** Words that stand right before the number; an underline stands for a space. */
  readonly lead?: string;
  /** True where the number is taken behind one of those words only. */
  readonly led?: true;
  /** True where “a”, “one” and “another” are numbers. */
  readonly loose?: true;
  /** True where the number is not taken if “how many” asks for what it counts: what is asked for was not given. */
  readonly unasked?: true;
  /** The sense without which a choice is not taken. */
  readonly with?: string;
}

export interface Asked {
  /**
   * The ways of asking: senses that must all be said, alternatives parted by `|`. `?stitch` is what is asked for: the noun
   * behind “how many”. `<ball>` is a piece that an option could take.
   */
  readonly ways: readonly string[];
  /** Senses that belong to the matter: said or not, they tell nothing against it. */
  readonly also?: string;
  /** Senses that speak of another matter. */
  readonly not?: string;
  /** True where saying it is asking it: “I finished a square”. */
  readonly reports?: true;
  /** Options of a question that changes something without which it only looks; none: it never changes what counts. */
  readonly changesBy?: readonly string[];
  /** What it takes back: where only “undo” is said, the question is meant that takes back what was done last. */
  readonly undoes?: 'count' | 'motif' | 'blanket';
  /** The question that only looks, where this one is inquired after: “what is my next row”. */
  readonly looksLike?: string;
  /** What must be saved for an answer to have sense. */
  readonly saved?: 'motif' | 'blanket' | 'group' | 'along' | 'motif-removed' | 'blanket-removed';
  readonly marks?: Readonly<Record<string, Mark>>;
  /** Options that take both halves of a size, or of columns and rows. */
  readonly pairs?: {
    readonly dims?: readonly [string, string];
    readonly grid?: readonly [string, string];
    /** Two counts side by side: “the sides have 90 and 110 stitches”. */
    readonly counts?: readonly [string, string];
    /** Two options that take another size, and the sense that marks it. */
    readonly other?: readonly [string, string, string];
  };
  /** Options that are taken from the current motif or blanket where a phrase leaves them out. */
  readonly fills?: readonly string[];
  /** Amounts that are no options of the question but make one: read like options, then settled. */
  readonly extras?: Readonly<Record<string, Mark>>;
  /** Makes options of the extras; both are text. */
  readonly settle?: (
    options: Readonly<Record<string, string>>,
    extras: Readonly<Record<string, string>>,
  ) => Readonly<Record<string, string>>;
  /** Options that are needed though the question can be asked without: the first of each list that is not given is asked for. */
  readonly needs?: readonly (readonly string[])[];
  /** A handful of phrases, as people say it. */
  readonly phrases: readonly string[];
}
