/** The story that the demo tells: an invented society of allotment gardeners makes one throw, from swatch to border. */

export type Scene =
  /** Somebody tells what is going on. */
  | { readonly tell: string }
  /** So many days later. */
  | { readonly days: number }
  /** A line as it is typed; a leading name says who types it. `working` shows what the answer rests on. */
  | { readonly ask: string; readonly working?: boolean };

const tell = (text: string): Scene => ({ tell: text });
const later = (days: number): Scene => ({ days });
const ask = (line: string): Scene => ({ ask: line });
const askWhy = (line: string): Scene => ({ ask: line, working: true });

export const STORY: readonly Scene[] = [
  tell(
    'The Long Hedge allotment society wants a throw for the bench in its shed. Willow tries a swatch first.',
  ),
  askWhy('willow: /gauge compare have:13x10 want:14x11 hook:5.5mm'),
  tell(
    'She likes the cloth as it is and keeps her 13 by 10. What will a square worked corner to corner come to?',
  ),
  askWhy('willow: /gauge shape gauge:13x10 size:12'),

  tell('How many such squares make a throw of about 70 by 85 cm, with room for a border?'),
  ask('willow: /resize width:70cm height:85cm gauge:13x10 size:12 border:4cm row_step:1'),

  tell('Two kinds of square, their stripes typed as one would say them.'),
  ask(
    'willow: /motif define name:furrow shape:diagonal size:12 gauge:13x10 hook:5.5mm colours:"4 rows moss, 2 rows sand, three times, then 6 rows moss"',
  ),
  ask(
    'willow: /motif define name:trellis shape:diagonal size:12 gauge:13x10 hook:5.5mm colours:"12 rows plum, 12 rows sand"',
  ),
  ask('willow: /motif words name:furrow'),
  ask('willow: /motif chart name:furrow'),
  ask('willow: /motif handout name:furrow'),

  tell('The first furrow is off the hook, blocked, and on the kitchen scale.'),
  askWhy('willow: /motif weigh name:furrow weight:18g side:15.2cm ball:170m/100g'),
  ask('willow: /motif weigh name:trellis weight:18g side:15.2cm ball:170m/100g'),

  tell(
    'The throw itself: four across and five down, laid as a pinwheel, which is an old setting of split squares.',
  ),
  ask(
    'willow: /blanket start name:"Bean rows" kinds:"furrow, trellis" columns:4 rows:5 joining:whip join_colour:sand border:"sc sc sc" border_colours:"sand, moss, plum"',
  ),
  ask('willow: /blanket layout name:"Bean rows" setting:pinwheel'),
  ask('willow: /blanket colours colour:moss hex:#5f7340 ball:170m/100g price:4.5 balls:2'),
  ask('willow: /blanket colours colour:sand hex:#d9c7a0 ball:170m/100g price:4.5 balls:1.5'),
  ask('willow: /blanket colours colour:plum hex:#6b3a5b ball:170m/100g price:4.5 balls:1'),
  ask('willow: /blanket materials minutes:50'),
  ask('willow: /blanket fit'),
  ask('willow: /blanket picture'),

  tell('She starts on the next furrow; a row, another, and then a count that does not agree.'),
  ask('willow: /progress at row:3 motif:furrow'),
  ask('willow: /progress next motif:furrow'),
  ask('willow: /progress next motif:furrow'),
  askWhy('willow: /progress counted counts:12 motif:furrow'),
  tell('Found, undone and worked again. An evening later that square is done.'),
  ask('willow: /progress finished motif:furrow'),
  ask('willow: /progress show motif:furrow'),

  tell('Twenty squares are a long winter for one. The society makes it together.'),
  later(1),
  ask(
    'willow: /together open blanket:"Bean rows" name:"Bean row throw" spares:1 side:15.2cm closes:2026-04-30',
  ),
  ask('willow: /together join per_week:2'),
  ask('fern: /together join per_week:3 colours:"moss, sand"'),
  ask('sorrel: /together join per_week:1 terms:UK'),
  ask('willow: /host shares'),
  ask('fern: /together pledge kind:furrow motifs:6'),
  ask('sorrel: /together pledge kind:trellis motifs:3'),
  ask('willow: /together pledge kind:trellis motifs:4'),
  ask('fern: /together yarn'),

  tell('A week goes by, and the first parcels come. One square has grown.'),
  later(7),
  ask('fern: /together handin kind:furrow motifs:3 side:15.3cm'),
  ask('sorrel: /together handin kind:trellis motifs:1 side:16.3cm'),
  ask('willow: /together handin kind:trellis motifs:2 side:15.1cm'),
  ask('willow: /host accept'),
  ask('willow: /host accept motifs:"1-3 5-6"'),
  ask('willow: /host return motifs:4 reason:"a centimetre large; a smaller hook will do it"'),
  ask('sorrel: /together mine'),

  later(7),
  ask('fern: /together handin kind:furrow motifs:3 side:15.2cm'),
  ask('willow: /together handin kind:trellis motifs:2 side:15.2cm'),
  ask('willow: /host accept motifs:"7-11"'),
  ask('willow: /together pace'),
  ask('willow: /together board'),
  ask('willow: /host parcels'),

  tell('Spring. The last squares are in, and the throw can be put together.'),
  later(21),
  ask('fern: /together pledge kind:furrow motifs:4'),
  ask('sorrel: /together pledge kind:trellis motifs:4'),
  ask('fern: /together handin kind:furrow motifs:4 side:15.2cm'),
  ask('sorrel: /together giveback kind:trellis motifs:1'),
  ask('sorrel: /together handin kind:trellis motifs:6 side:15.2cm'),
  ask('willow: /host accept motifs:"12-21"'),
  ask('willow: /host assemble'),
  ask('willow: /together board'),

  tell('And the border, so that it lies flat.'),
  ask('willow: /joining columns:4 rows:5 side:15.2cm method:whip'),
  askWhy('willow: /border spacing width:60.8cm height:76cm gauge:13 columns:4 rows:5'),
  ask('willow: /border rounds across:79 down:99 corner:3 rounds:"sc sc sc"'),
  tell('The throw lies on the bench in the shed. Nobody has said yet who may sit on it.'),

  tell(
    'The second act. In autumn six of them want to learn it, each a throw of her own, and Willow teaches.',
  ),
  ask(
    'willow: /along open blanket:"Bean rows" name:"Bean row class" starts:2031-09-01 every:week hour:18 zone:Europe/London',
  ),
  ask('fern: /along join gauge:13x10 ball:170m/100g colours:"rust, cream, ink"'),
  ask('sorrel: /along join gauge:15x12 ball:150m/50g hook:5mm named:yes'),
  ask('rowan: /along join gauge:11x8.5 ball:120m/100g hook:6.5mm colours:"pine, oat, slate"'),
  ask('hazel: /along join gauge:18x13 ball:200m/50g hook:4mm width:90cm height:110cm'),
  ask('bryony: /along join gauge:14x11 ball:230m/100g minutes:40'),
  ask('tansy: /along join ball:180m/100g named:yes'),
  ask('rowan: /along mine part:2'),
  ask('hazel: /along mine part:2'),
  ask('tansy: /along done part:1'),
  ask('sorrel: /along done part:1'),
  tell('Hazel is stuck at row 7.'),
  ask('hazel: /along stuck part:2 row:7 counts:"11 13 14"'),
  ask('willow: /along troubles'),
  ask('willow: /along show'),
  ask('fern: /along calendar'),
  tell('Hazel finds the increase that she missed, at the last stitch of the row.'),
];
