/** What people come with, in plain words, and the questions that answer it, the first the likeliest. */
export interface Topic {
  /** The word that leads to it. */
  readonly word: string;
  /** What it is about, as a maker would say it. */
  readonly says: string;
  /** Other words for it. */
  readonly also: readonly string[];
  readonly paths: readonly string[];
}

export const TOPICS: readonly Topic[] = [
  {
    word: 'start',
    says: 'begin a motif or a blanket of my own',
    also: ['begin', 'new', 'first', 'save', 'beginner', 'how'],
    paths: ['motif define', 'blanket start', 'resize', 'progress next'],
  },
  {
    word: 'learn',
    says: 'lessons with tasks of my own, from reading stitches to the border',
    also: ['lesson', 'lessons', 'teach', 'learning', 'practise', 'practice', 'exercise', 'task', 'explain'],
    paths: ['lesson next', 'lesson list', 'lesson start'],
  },
  {
    word: 'size',
    says: 'how many motifs, how large it comes out, usual sizes',
    also: ['big', 'large', 'width', 'height', 'throw', 'bed', 'queen', 'motifs', 'many', 'squares', 'scale'],
    paths: ['resize', 'lookup size', 'gauge size', 'blanket scale'],
  },
  {
    word: 'yarn',
    says: 'how much yarn, how many balls, another yarn',
    also: ['wool', 'ball', 'balls', 'skein', 'yardage', 'enough', 'left', 'weigh', 'weight', 'grams'],
    paths: [
      'yardage weighed',
      'yardage swatch',
      'yardage rough',
      'yardage left',
      'yardage makes',
      'yardage swap',
      'lookup yarn',
    ],
  },
  {
    word: 'cost',
    says: 'what it costs and what there is to buy',
    also: ['price', 'money', 'buy', 'shopping', 'cheap', 'materials'],
    paths: ['blanket colours', 'blanket materials', 'yardage weighed'],
  },
  {
    word: 'count',
    says: 'how many stitches a row has, even spacing, repeats',
    also: ['stitches', 'stitch', 'row', 'rows', 'increase', 'decrease', 'spread', 'multiple'],
    paths: ['stitches row', 'stitches spread', 'stitches repeat', 'stitches which', 'stitches check'],
  },
  {
    word: 'lost',
    says: 'which row I am on, and where the count went wrong',
    also: ['wrong', 'mistake', 'stuck', 'miscount', 'frog', 'rip', 'missed', 'where'],
    paths: ['stitches which', 'stitches check', 'progress counted', 'progress show'],
  },
  {
    word: 'hook',
    says: 'hook sizes, my gauge against the pattern’s',
    also: ['hooks', 'gauge', 'tension', 'swatch', 'tight', 'loose', 'diamond', 'blocking', 'block'],
    paths: ['lookup hook', 'gauge compare', 'gauge shape', 'gauge size'],
  },
  {
    word: 'colours',
    says: 'colours, stripes, and how the motifs lie',
    also: ['colour', 'color', 'colors', 'stripe', 'stripes', 'layout', 'picture', 'turn', 'pattern', 'chart'],
    paths: ['blanket colours', 'blanket layout', 'blanket picture', 'motif chart'],
  },
  {
    word: 'join',
    says: 'seams and the yarn in them',
    also: ['joining', 'seam', 'seams', 'sew', 'whip', 'together'],
    paths: ['joining', 'blanket change'],
  },
  {
    word: 'border',
    says: 'a border that lies flat',
    also: ['edge', 'edging', 'corner', 'corners', 'ruffle', 'frame'],
    paths: ['border spacing', 'border rounds'],
  },
  {
    word: 'ends',
    says: 'ends to weave in, and the hours they take',
    also: ['end', 'weave', 'weaving', 'tails', 'time', 'hours'],
    paths: ['blanket materials', 'motif show', 'resize'],
  },
  {
    word: 'words',
    says: 'what a term or an abbreviation means, US and UK',
    also: ['term', 'terms', 'abbreviation', 'mean', 'means', 'uk', 'us', 'translate', 'lookup'],
    paths: ['lookup term', 'settings change'],
  },
  {
    word: 'group',
    says: 'a blanket that several people make',
    also: ['community', 'pledge', 'board', 'quota', 'people'],
    paths: ['together open', 'together join', 'together pledge', 'together handin', 'together board'],
  },
  {
    word: 'class',
    says: 'a make-along: everybody makes her own after a teacher’s',
    also: ['along', 'make-along', 'makealong', 'cal', 'teacher', 'course', 'pupil', 'part', 'parts'],
    paths: ['along join', 'along mine', 'along stuck', 'along open', 'along list'],
  },
  {
    word: 'print',
    says: 'instructions and charts to keep, and my own data',
    also: ['pdf', 'handout', 'paper', 'write', 'instructions', 'export', 'file', 'data', 'privacy'],
    paths: ['motif handout', 'motif words', 'motif chart', 'settings export'],
  },
  {
    word: 'safe',
    says: 'babies, hands, heat, selling',
    also: ['safety', 'baby', 'babies', 'care', 'hands', 'pain', 'heat', 'wash', 'sell', 'selling', 'iron'],
    paths: ['lookup care'],
  },
];

/** The topics that one of the words leads to. */
export const topicsOf = (words: readonly string[]): Topic[] =>
  TOPICS.filter(({ word, also }) => words.some((typed) => typed === word || also.includes(typed)));
