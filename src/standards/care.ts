/** What an answer must say where the work can hurt someone, or cost her money. Each with the source that says it. */
export const CARE_TOPICS = [
  'baby',
  'hands',
  'heat',
  'small-parts',
  'selling',
  'dye-lot',
  'rough-estimate',
] as const;
export type CareTopic = (typeof CARE_TOPICS)[number];

export interface Care {
  /** What to do or leave, in one or two sentences. */
  readonly text: string;
  /** Who says so, short enough to stand in an answer. */
  readonly source: string;
  /** What else is known of it, for who asks. */
  readonly more: readonly string[];
}

export const CARE: Readonly<Record<CareTopic, Care>> = {
  baby: {
    text: 'Keep loose blankets out of the sleeping space of a child under 12 months. Weave ends in firmly, and leave off buttons, pompoms and long fringes.',
    source: 'AAP 2022, Pediatrics 150(1):e2022057990',
    more: [
      'A child under one year sleeps on its back on a firm, flat surface, without blankets, pillows or soft bedding, and not too warm (AAP 2022, Pediatrics 150(1):e2022057990). Nothing weighted on or near a sleeping infant (AAP 2022, as reported).',
      'Advice in the UK differs: no duvet or pillow under one year; where a blanket is used, feet to the foot of the cot, tucked in, no higher than the shoulders, and light. One blanket doubled counts as two (Scottish Cot Death Trust).',
      'Holes can catch small fingers: a close stitch is kinder than lace (common practice).',
    ],
  },
  hands: {
    text: 'Work in short spells with breaks, hold the hook loosely, and stop at pain: if it stays, see a professional.',
    source: 'NHS, repetitive strain injury',
    more: [
      'Small frequent breaks do more good than one long one; posture counts, and hobbies count as a cause (NHS, repetitive strain injury).',
      'Stretch, vary the hook sizes, loosen the grip, and break at any discomfort (a UK crochet magazine, 2013, insidecrochet.co.uk).',
      'Heavy joins and borders strain more than single motifs: put the blanket on a table rather than hold it up (common practice).',
    ],
  },
  heat: {
    text: 'Steam or an iron stretches acrylic for good: block it wet or cold.',
    source: 'Drycleaning & Laundry Institute, stretching acrylic knits',
    more: [
      'Heat under tension stretches acrylic for good; dry it at no more than 49 °C (120 °F) and keep steam away (Drycleaning & Laundry Institute).',
      'Try the ball band’s wash on the swatch first: felted or stretched, a swatch is all that is lost (common practice).',
    ],
  },
  'small-parts': {
    text: 'For a child under three, nothing that can come off and be swallowed: embroider eyes and buttons instead of sewing them on.',
    source: '16 CFR 1501.4; a charity’s rule against buttons on baby blankets, projectlinusoregon.org',
    more: [
      'In the US an article for under-threes fails if it, or a piece that comes off, fits wholly into the test cylinder, 1.25 in wide and up to 2.25 in long; yarn, fabric, fuzz, elastic and string that come off are excluded from that test (16 CFR 1501.4).',
      'Excluded from the test does not mean harmless: loose ends can still wind round fingers (common practice).',
    ],
  },
  selling: {
    text: 'Whether it may be sold or given to children is decided by the product-safety and flammability rules where you live, not by this answer.',
    source: 'common practice',
    more: [
      'Ask the authority for product safety where it is sold; rules for children’s things are stricter, and a pattern’s own terms may limit selling too (common practice).',
    ],
  },
  'dye-lot': {
    text: 'Buy all balls of a colour from one dye lot, and keep the receipt.',
    source: 'common practice',
    more: [
      'The dye lot stands on the band beside the colour. With two lots, change over row by row or use the second for the border (common practice).',
    ],
  },
  'rough-estimate': {
    text: 'A rough figure can be a quarter out either way: weigh one finished motif before buying, take a reserve from one dye lot, and keep the receipt.',
    source: 'common practice',
    more: [
      'There is no published standard for the yarn in a crochet stitch: hands differ more than stitches do. One motif on a kitchen scale beats every estimate (common practice).',
    ],
  },
};

/** One caution as a line of an answer: what to do, and who says so. */
export const caution = (topic: CareTopic): string => `${CARE[topic].text} (${CARE[topic].source})`;
