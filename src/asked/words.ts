/**
 * What words mean here: the trade's words and everyday ones, gathered by what is meant by them. A sense weighs as much as it
 * tells about the question: `how many` is said of everything, `whip stitch` of one thing.
 *
 * Forms with spaces are read as they stand; a plural s is taken off single words. `+` at the end: any ending of a verb.
 */

interface Sense {
  /** How much it tells: 0 nothing by itself, 1 something, 2 and more a good deal. */
  readonly weight: number;
  readonly forms: string;
}

const sense = (weight: number, forms: string): Sense => ({ weight, forms });

/** Forms are parted by commas. */
export const SENSES = {
  // What is asked.
  'how-many': sense(
    1,
    'how many, howmany, how may, number of, number, total number, what count of, no of, nr of, hm',
  ),
  'how-much': sense(1, 'how much, howmuch, amount of, amount, quantity, quantity of'),
  'how-far': sense(1.5, 'how far, how far along, how close, how near'),
  'how-long': sense(
    1.5,
    'how long, how many hours, how much time, time it takes, how many evenings, hours, length of, seam length, total length',
  ),
  'how-big': sense(
    1.5,
    'how big, how large, how wide, how tall, how small, what size, dimension, measurement, size, sized, sizing, come out at, finished size',
  ),
  which: sense(0.3, "which, what, whats, what's, which's"),
  why: sense(1, 'why, how come, reason'),
  where: sense(0.6, "where, where's, wheres"),
  when: sense(1, 'when, what day, what date'),
  who: sense(1, "who, who's, whos, whose"),
  need: sense(
    0.3,
    'need+, require+, necessary, take, takes, taking, required, want, wants, wanted, call for, calls for, buy, get, order, would it take',
  ),
  each: sense(0.2, 'each, apiece, per, every, a piece, one of them'),
  enough: sense(
    1.2,
    'enough, suffice, sufficient, run out, runs out, running out, ran short, run short, get me to, last me, do me, make it to, will do, be ok with',
  ),
  all: sense(
    0.5,
    'all of them, all of these, all of those, the whole blanket, whole blanket, the whole thing, the lot, the entire blanket, all my squares, all the squares, all my motifs, the whole lot, entire blanket, all of my squares',
  ),
  total: sense(
    0.3,
    'total, altogether, in all, all together, in total, overall, all in all, in the end, end up with',
  ),
  roughly: sense(
    1.2,
    'roughly, rough, approximately, approx, estimate+, ballpark, guess, guesstimate, ish, rough idea, give or take, more or less, about how much, roughly speaking, rough figure',
  ),
  // Things.
  motif: sense(
    1,
    "square, motif, granny, grannie, granny's, patch, tile, hexie, hexi, grannys, afghan square, granny square, hexagon, circle, octagon, triangle, diagonal square",
  ),
  // Shapes that do not lie side by side like squares.
  'odd-shape': sense(
    6,
    'hexie, hexi, hexagon, circle, octagon, triangle, pentagon, star, heart, round blanket',
  ),
  block: sense(0.8, 'block'),
  cluster: sense(1, 'cluster, shell, three-dc group'),
  blanket: sense(
    1,
    'blanket, throw, afghan, bedspread, lapghan, coverlet, blankie, blanky, bed cover, bedcover, counterpane, babyghan, blanky, lap blanket, baby blanket, pram blanket, quilt, rug, lap robe, wrap, blanky',
  ),
  piece: sense(0.5, 'piece, scarf, stole, shawl, panel, strip, cushion'),
  yarn: sense(
    1,
    'yarn, wool, thread, metres, meters, yards, yardage, meterage, metreage, fibre, fiber, grams of yarn, cotton, acrylic',
  ),
  ball: sense(1, 'ball, skein, hank, cake, cone, donut'),
  stitch: sense(1, 'stitch, stitche, stitches, st, sts, stich, stiches, loop'),
  row: sense(0.8, 'row'),
  round: sense(0.8, 'round, rnd, rounds, circuit'),
  hook: sense(1.2, 'hook, crochet hook, needle'),
  gauge: sense(1.5, 'gauge, tension, guage, gage'),
  swatch: sense(1.5, 'swatch, test piece, test square, tension square'),
  pattern: sense(0.5, 'pattern, recipe, designer, design'),
  border: sense(1.5, 'border, edging, edge, trim, boarder, frame, surround'),
  side: sense(
    0.4,
    'side, along, edge each, down each, on each side, per side, along each side, each edge, every side, a side',
  ),
  corner: sense(1, 'corner'),
  across: sense(
    0.3,
    'across, wide, width, along the top, column, columns, side by side, widthways, the top, in width',
  ),
  down: sense(
    0.3,
    'down, tall, long, high, height, length, deep, down the side, lengthways, the side, in length, in height',
  ),
  getting: sense(
    0.5,
    "i get, i only get, i just get, i keep getting, i'm only getting, i'm getting, im getting, getting, i got, mine is, i've got, i am at, i'm at, came out, came out at, i'm on, ive got, i have",
  ),
  wanted: sense(
    0.5,
    "wants, calls for, says, should be, supposed to be, asks for, instead of, aim, the pattern, ought to be, states, i need, meant to be, recommended, given, pattern is, pattern's, required, quotes, specifies",
  ),
  wish: sense(
    0.2,
    'but need, but i need, but needs, but it needs, and need, and i need, should have, must have, but want, and want, needs to be, have to get, want it to be',
  ),
  // Another thing than what was spoken of: “but I want to use …”.
  rather: sense(
    0.8,
    "but want to use, but i want to use, but would like to use, but i'd like to use, but like to use, but i'll use, but using, but i'm using, but will use, but i only have, but i have, but i've got, but have, but mine is, but my yarn is, and want to use, and i want to use, and would like to use, and i'd like to use",
  ),
  size: sense(0.4, 'size'),
  'tell-apart': sense(
    0.9,
    'difference, difference between, differences, different from, differ from, vs, versus, compared to, compared with, taller than, shorter than, taller, shorter, or is it',
  ),
  // What an edge does that has too many stitches or too few.
  ripples: sense(
    1.6,
    "ruffle+, ripple+, rippling, pucker+, flare+, flaring, frilly, wavy, cup+, curl+, won't lie flat, won't lay flat, wont lie flat, will not lie flat, doesn't lie flat, doesnt lie flat, does not lie flat, not lying flat, not lie flat, isn't flat, not flat",
  ),
  flat: sense(0.8, 'flat, ruffle+, ripple+, curl+, cup+, pucker+, flare+, frilly, wavy, lie flat, lay flat'),
  chain: sense(
    1.2,
    'chain, foundation chain, starting chain, foundation, start chain, ch, beginning chain, initial chain, set-up chain, cast on, start off with',
  ),
  repeat: sense(1.5, 'multiple, multiple of, repeat, stitch repeat, pattern repeat, multiples, mult'),
  evenly: sense(
    1.5,
    'evenly, even, spread, space, spacing, spaced, distribute+, equally, regular intervals, regularly',
  ),
  uneven: sense(
    1.6,
    'uneven, even up, even them up, evening up, even out, even them out, different sizes, all different sizes, unequal, not the same size, not all the same size, mismatched',
  ),
  increase: sense(
    1.5,
    'increase, increased, increases, increasing, inc, incs, add, adding, gain, work in extra, extra stitches',
  ),
  decrease: sense(
    1.5,
    'decrease, decreased, decreases, decreasing, dec, decs, lose, losing, reduce, reducing, get rid of, take away, take out, taking out, get down, down to',
  ),
  mistake: sense(
    1.2,
    "wrong, mistake, error, miscount+, off, mess+ up, go wrong, went wrong, wonky, problem, slip, fault, gone wrong, not right, isn't right, doesn't add up, goof+, screw+ up, correct, right",
  ),
  count: sense(0.8, 'count, counted, counting, counts'),
  check: sense(0.8, 'check, checking, verify, double check'),
  turned: sense(1, 'in the round, working in the round, worked in the round, joined round'),
  weigh: sense(
    1.2,
    'weigh+, on the scale, on my scale, kitchen scale, on the scales, weight of one, weight of a, weight of my, scales',
  ),
  weight: sense(
    0.7,
    'weight, heavy, thickness, thick, category, yarn weight, weights, yarn weights, weight yarn, ply',
  ),
  wraps: sense(1.5, 'wpi, wraps per inch, wrap, wraps'),
  left: sense(
    1,
    'left, remaining, remain, left over, leftover, to go, still to do, still to make, to be made, still has, still have, the rest, outstanding, leftovers, remains',
  ),
  substitute: sense(
    1.5,
    'substitute+, instead, instead of, replace+, different yarn, another yarn, other yarn, sub, subbing, swap+, swop+, alternative, new yarn, equivalent yarn, in place of, rather than, something else',
  ),
  join: sense(
    1.2,
    'join, joining, joins, sew, sewing, seam, seams, seaming, sew together, sew up, joined, seamed, connect, attach, stitch together, put together, assemble+, crochet together, joined together',
  ),
  whip: sense(
    1.5,
    'whip stitch, whipstitch, whip, whip-stitch, overcast, whipstitching, whip stitching, over sew, oversew',
  ),
  'slip-stitch': sense(1.2, 'slip stitch, slipstitch, slip-stitch, sl st, ss, slip stitches, slip stitching'),
  diamond: sense(
    2,
    "diamond, lopsided, skewed, skew, leaning, rhombus, slanted, kite, come out square, not square, isn't square, isnt square, aren't square, not a square",
  ),
  blocked: sense(
    1.2,
    "block to, blocked, blocking, after blocking, when blocked, block out, blocks to, when it's blocked",
  ),
  measure: sense(
    0.7,
    'measure+, come out, comes out, came out, turn out, turns out, turned out, on a side, per side, finishing at, works up, gives me, gives you, give me a side',
  ),
  mean: sense(
    1.2,
    "mean, means, meaning, meant, stand for, stands for, short for, explain, define, definition, called, what is a, what's a, translate, translation, the same as, same as, the same thing as, same thing as, understand, name for, known as, definition of, abbreviated, stand for",
  ),
  abbreviation: sense(1.5, 'abbreviation, acronym, abbr'),
  'round-it': sense(
    0,
    'round the edge of, around the edge of, round the outside of, around the outside of, round the, round my, round it, round a, all round, round this, round our',
  ),
  convert: sense(
    1.2,
    'convert, conversion, converting, equivalent, equal, equals, equal to, in metric, in mm, in millimetres, in millimeters, millimetre, millimeter, in us sizes, us size, uk size, mm, millimetres, millimeters, letter, metric, american size',
  ),
  uk: sense(0.5, "uk, british, english, britain, united kingdom, uk's"),
  us: sense(0.5, 'american, usa, america, u.s, united states, us, states'),
  terms: sense(
    1.2,
    'terms, terminology, stitch names, names of stitches, crochet terms, stitch name, wording',
  ),
  standard: sense(
    1.2,
    'standard, usual, usually, normal, normally, typical, typically, average, common, conventional, generally, regular, recommended size, supposed to be',
  ),
  bed: sense(0.7, 'bed, mattress'),
  hurt: sense(
    2.5,
    'hurt, hurts, hurting, pain, painful, ache, aching, aches, sore, rsi, carpal, cramp, numb, stiff, tendonitis, strain, tingle, tingling',
  ),
  hand: sense(1, 'hand, hands, wrist, thumb, finger, arm, shoulder'),
  safe: sense(
    1.5,
    'safe, safety, dangerous, danger, risk, risky, hazard, okay for, ok for, suitable, unsafe, choke, choking',
  ),
  baby: sense(
    1.2,
    "baby, babies, newborn, infant, cot, crib, baby's, pram, nursery, toddler, one year old, grandchild, baby shower, toddlers, grandbaby",
  ),
  sleep: sense(1.5, 'sleep, sleeping, asleep, bedtime, overnight'),
  iron: sense(
    2,
    'iron, ironing, ironed, steam, steaming, steamed, melt, melts, heat, hot iron, hot water, steam block, steamer',
  ),
  sell: sense(2, 'sell, selling, sold, sale, craft fair, market stall, etsy shop, give to charity'),
  rules: sense(1, 'rule, law, laws, legal, legally, regulation, allowed'),
  'dye-lot': sense(2.5, 'dye lot, dyelot, dye lots, dye-lot, same lot, dye batch, lot number'),
  button: sense(
    2,
    'button, pompom, pom pom, bead, small parts, bobble eye, safety eye, tassel, fringe, pom-pom, buttons',
  ),
  pickup: sense(1.6, 'pick up, picking up, pickup'),
  grow: sense(1.2, 'grow, grows, growing'),
  // What is saved, and what is done with it.
  mine: sense(0.3, 'my, mine, own, our'),
  saved: sense(1, 'saved, kept, stored, have saved, got saved, keep on'),
  save: sense(1.2, 'save, saving, define, store, record, remember, set up, keep, note down'),
  new: sense(0.8, 'new, start, begin, create, starting, another one, set up'),
  show: sense(
    0.7,
    "show, see, display, view, look at, tell me about, tell me, open up, pull up, bring up, what do you have, details, info, information, what is saved, describe, what's in, whats in, what is in",
  ),
  list: sense(1, 'list, all my, name all, what are the, give me all'),
  picture: sense(
    1.5,
    'picture, draw, drawing, image, look like, looks like, sketch, preview, visual, visualise, visualize, mock up, mockup, draw it, render',
  ),
  chart: sense(2, 'chart, diagram, symbol chart, stitch diagram, graph, symbols'),
  print: sense(2, 'print, printed, printing, printable, handout, hand out, pdf, on paper, sheet to print'),
  instructions: sense(
    1.8,
    'instructions, instruction, written, write out, row by row, written pattern, in words, step by step, write it out, line by line, pattern for',
  ),
  remove: sense(
    1.2,
    'remove, delete, get rid of, throw away, throw out, take out, bin, drop, scrap, discard, deleting, trash, erase, take the, take off, take away',
  ),
  restore: sense(
    1.8,
    'bring back, restore, get back, undelete, deleted, removed, recover, get it back, by accident, want it back',
  ),
  undo: sense(
    2,
    "undo, take back, revert, mistake undo, reverse, scrap that, that was wrong, wasn't meant, didn't mean to, pressed it twice, counted twice",
  ),
  choose: sense(
    1,
    "switch, switch to, choose, select, use, working on, work on, go to, change to, pick, current, make current, i'm on, move to, change over",
  ),
  'no-border': sense(
    1,
    'no border, without a border, without border, without the border, leave the border off, leave off the border, take the border off, drop the border',
  ),
  rename: sense(2, 'rename, name it, call it, new name, change the name'),
  change: sense(0.9, 'change, set, make, put, alter, edit, update, switch'),
  layout: sense(
    1.6,
    'layout, arrange, arranged, arrangement, lay out, laid out, lay, lay it out, lay my, setting, laying, placement, set out',
  ),
  scatter: sense(2, 'scatter, scattered, random, randomly, mixed up, jumbled, shuffle, no two alike'),
  checked: sense(2, 'checked, checkerboard, chequered, checkered, alternate, alternating, chequerboard'),
  striped: sense(1.5, 'in stripes, striped, kind a row'),
  place: sense(1, 'place, position, spot, places'),
  exchange: sense(1.6, 'swap, swop, exchange, trade places, switch around, switch, change about, swap over'),
  colour: sense(1.2, 'colour, color, shade'),
  cost: sense(1.8, 'cost, costs, price, costing, pay, spend, priced, expensive, cheap'),
  minute: sense(1, 'minute, minutes, min, mins, hour, hours'),
  shopping: sense(
    1.8,
    'shopping list, shopping, what to buy, have to buy, need to buy, materials, material list, buy for',
  ),
  stash: sense(
    1.4,
    "stash, yarn i have, yarn at hand, what i have, yarn i've got, i have got at home, at home, yarn at home, on hand, in hand, have in stock",
  ),
  biggest: sense(1.8, 'biggest, largest, how big a, how big can, how large a, max, maximum, as big as'),
  scale: sense(
    1.8,
    'scale, scale up, scale down, bigger, larger, smaller, enlarge, resize, upsize, other size, another size, different size, what if, would it be if, scaled',
  ),
  kind: sense(1.2, 'kind, type, sort, kinds, of each'),
  next: sense(
    1.4,
    'next, following, what now, what comes next, coming row, whats next, comes after, another, one more, onwards',
  ),
  done: sense(
    1.2,
    'done, finish, finished, complete, completed, completing, made, worked, finishing, just did, crocheted, have made, ticked off, did',
  ),
  ripped: sense(
    2.5,
    'rip+, ripped, ripped back, rip out, ripped out, frog, frogged, frogging, tinked, tink, unravel, unravelled, unraveled, pulled back, pull out, undid, go back, back one, back a, took out, pulled out, ripping',
  ),
  'where-am-i': sense(
    2.5,
    "where was i, where am i, where did i stop, where did i get to, where did i leave off, where i am, am i on, am i at, i up to, was i on, where i was, where i left off, where i'm at, how far am i, my progress, progress, did i stop, how far have i, how am i doing, am i up to, how far along am i, how far i am",
  ),
  'i-am-on': sense(
    1.5,
    "i am on, i'm on, im on, i am at, i'm at, im at, set me to, put me at, put me on, set me at, up to row, i've done, i have done, ive done, i did, on to row, finished row, start me at, got to row, reached row, completed row, done row, i've finished, i've worked, i have finished",
  ),
  // Many hands.
  group: sense(
    1.6,
    'group, group blanket, together blanket, everyone, everybody, we, us all, community, club, shared blanket, whole group, all of us, our blanket, charity blanket, bee, guild',
  ),
  // A make-along in parts.
  along: sense(
    2,
    'make-along, makealong, make-alongs, crochet-along, crochetalong, craft-along, class, workshop',
  ),
  part: sense(1.3, 'part'),
  'my-part': sense(
    2,
    "my part, my own part, my next part, my numbers, my own numbers, i need for part, i need for this part, this week's part, this weeks part, part for this week, my part this week",
  ),
  'this-week': sense(0.8, "this week, this week's, for this week"),
  'next-week': sense(1.2, 'next week, next time, next lesson'),
  stuck: sense(2, 'stuck, get stuck, got stuck, gets stuck, getting stuck, am stuck'),
  behind: sense(2, 'behind, fall behind, falling behind, fallen behind, lagging, catch up, caught up'),
  schedule: sense(1.2, 'plan, schedule, timetable, agenda'),
  calendar: sense(2, 'calendar, calendar file, ical, icalendar, ics'),
  others: sense(0.5, 'the others, other makers, the rest of the class'),
  'give-out': sense(1.5, 'give out, gives out, given out, giving out'),
  board: sense(2, "board, how are we doing, how is the group, how's the group"),
  claim: sense(
    2,
    "claim, claimed, pledge, pledged, promise, promised, put me down, sign me up for, reserve, i'll make, i'll do, i will make, i can make, i can do, i'll take, i will do, can i have, am i down for, i'm down for, commit, i would like to make, i'd like to make, i want to make, give me, ill make, ill do, spoken for, are mine, is mine, have i got to make, do i have to make, pledges, pledging, i could make, i could do, i'll crochet, can i make, i take",
  ),
  'open-for': sense(
    1.8,
    'left to claim, still open, up for grabs, still available, available, not taken, still free, unclaimed, still to claim, left to take, still needed, are open, is open, still going, to be claimed',
  ),
  'give-back': sense(
    2,
    "release, give back, can't make, cannot make, won't make, can't do, won't manage, let go of, hand back, unpledge, cancel, won't be able, can't manage, give up, can not make, not going to make, too many pledged, after all, unclaim, put back",
  ),
  'hand-in': sense(
    2,
    "hand in, handing in, handed in, hand over finished, turn in, turning in, ready to hand in, submit, deliver, drop off, here are, here's, here is, sending in, bring in, send in, dropping off, delivering, submitting, post you",
  ),
  accept: sense(
    2,
    'accept, accepted, approve, waiting, to be accepted, approved, sign off, check in, received, has come in',
  ),
  'send-back': sense(
    2,
    'send back, return, returned, returning, come back, came back, rejected, reject, sending back, sent back, refuse',
  ),
  share: sense(
    2,
    'share out, fair split, split, divide, divided, divvy, fairly, share, shared out, fair, sharing out, dividing, who should make, who makes how many',
  ),
  pace: sense(
    2,
    'on track, am i on track, am i on time, am i on schedule, in time, on time, on schedule, be finished, be done, will we finish, how fast, pace, coming in, behind schedule, make the deadline, get finished, meet the deadline, do we finish, finish in time, ready in time, coming along',
  ),
  deadline: sense(1, 'closing day, deadline, closing date, due, end date, closes, closing'),
  remind: sense(2.5, 'remind, nudge, poke, chase, chase up, reminder, ask how'),
  parcel: sense(
    2,
    'parcel, posting, post, posting day, posting list, arrived, mailing, mail, postage, packages, who has what, who holds what, who holds, who has, sent off, holds what',
  ),
  'goes-where': sense(
    2.5,
    'goes where, go where, where does each, which goes next to which, fit together, put the group blanket together, put it together, put together, assemble, assembly, assembled, put the blanket together, arrange the finished, lay out the finished',
  ),
  close: sense(1.8, 'close, shut, closed, stop taking'),
  reopen: sense(
    2,
    'reopen, re-open, open again, open up again, extend, new closing day, move the closing day, move the deadline, open the group blanket again, extend the deadline, postpone',
  ),
  open: sense(1.2, 'open, opening, launch, start a group, kick off'),
  'hand-over': sense(
    2,
    'hand over, hand it over, handing over, new organiser, new organizer, take over, takes over, pass on, the organiser, the organizer, make organiser, in charge, hand the',
  ),
  happened: sense(
    2,
    "happened, history, log, lately, recently, recent, what's been going on, events, activity",
  ),
  invite: sense(2.2, 'invite, invited, allow, let in, add to the group, inviting'),
  'bar-out': sense(1.5, 'kick, ban, banned, expel'),
  'let-back': sense(2.2, 'back in, in again, readmit'),
  leave: sense(
    1.8,
    'leave, leaving, quit, drop out, drop out of, opt out, take me out, take me off, step out, withdraw, pull out of, back out, out of the group',
  ),
  'take-part': sense(
    2,
    "count me in, sign me up, join in, take part, like to join, want to join, join the group, i'd love to join, taking part, participate, be part, i'll join, can i join, let me join, joining the group, want in, love to help, join you, join your",
  ),
  'per-week': sense(1.8, 'a week, per week, each week, every week, weekly, /week'),
  still: sense(
    0.8,
    'still stand, still stands, still want, still making, still going to, keep my, keep them for me, hold them for me, still on, keep them, hold my, still mean to, still intend',
  ),
  spare: sense(
    1.2,
    'spare, extra, spares, extras, to be safe, for safety, margin, buffer, on top, reserve, just in case',
  ),
  organiser: sense(0.8, 'organiser, organizer, host, in charge, leader'),
  // Ways of one's own.
  units: sense(
    1.6,
    'unit, units, inches, inch, centimetres, centimeters, centimetre, cm, imperial, metric, yards and ounces, grams, in cm',
  ),
  imperial: sense(1.8, 'imperial, inches, in inches, ounces, yards'),
  metric: sense(1.8, 'metric, centimetres, centimeters, cm, in cm, grams'),
  private: sense(
    2,
    'private, privately, only to me, only me, just me, hide, hidden, secret, nobody else, to myself, visible',
  ),
  public: sense(
    1.6,
    'publicly, everyone see, everybody see, let everyone, for everyone, public, visible to everyone, others see, visible to all',
  ),
  answers: sense(1, 'answer, answers, replies, reply, responses'),
  settings: sense(2, 'setting, settings, preferences, preference, options'),
  data: sense(
    2,
    'data, everything you have on me, everything you have about me, everything you keep, know about me, keep about me, everything about me, store about me, have on me, stored about me, forget me, about me, my account, forget everything, personal information',
  ),
  export: sense(2.5, 'export, download, take my data, back up, backup, copy of my data, as a file'),
  import: sense(2.5, 'import, upload, load my data, read back'),
  erase: sense(2, 'erase, delete, forget, wipe, clear, remove everything, get rid of'),
  help: sense(
    2,
    'help, what can you do, what can i ask, how does this work, how does this bot work, how do i use this, how do you work, commands, what do you do, how do i use you, what questions, instructions for this bot, what are you for, what can this bot do, help me, where do i start, how do i start, what can you help with, what can you tell me, how do i ask',
  ),
  // What is not answered here: said anywhere, it speaks against every question.
  shop: sense(
    3,
    'shop, where can i buy, where to buy, where do you buy, where do you all buy, brand, cheapest, cheap, discount, code, delivery, shipping, yarn store, yarn shop, order yarn, favourite yarn',
  ),
  charge: sense(
    4,
    'charge, how do i price, what should i charge, sell it for, commission, business, profit, how much should i sell, how much do you charge',
  ),
  opinion: sense(
    4,
    'favourite, favorite, the best, best yarn, best hook, best wool, best way, nicest, prefer, do you like, do you think, which of these, best brand, like best, look better, looks better, go together, match, go with, what do you think, recommend, recommendation, suggestions, any tips, thoughts, thoughts on, opinions, would you choose, which one do you',
  ),
  lesson: sense(
    2.5,
    'lesson, lessons, teach me, teach me something, teach me about, teach me how, teach me how to, something to practise, something to practice, i want to practise, i want to practice, exercise, exercises, quiz me, quiz me on, test me, test me on, learn, learn about, learn how, learn how to, learn to, lesson on, lesson about, lessons on, lessons about',
  ),
  // Matters of lessons that no other sense says.
  topic: sense(
    1,
    'read my stitches, reading stitches, read stitches, reading my stitches, count rows, count my rows, counting rows, corner to corner, c2c, weave in, weaving in, quota, quotas, widest row, which row, round by round',
  ),
  'my-answer': sense(2.5, 'my answer is, my answer:, my answer, the answer is, answer is'),
  hint: sense(2.5, 'hint, hints, clue'),
  'set-down': sense(2, 'stop, stop it, set it down, put it away, quit'),
  teach: sense(
    3,
    'tutorial, video, how do i crochet, how do i hold, how do i read, how do i start a crochet, how do i attach, how do i fix, how do i make a pompom, left handed, learn to crochet left handed, podcast, book, good pattern, free pattern, pattern recommendation, how to crochet, how do you crochet, a pattern for a',
  ),
  knitting: sense(4, 'knit+, knitting, knitted, purl, sock, sock heel, knitters'),
  wash: sense(
    3,
    'wash, washing, stain, felt, felting, tumble dry, dryer, laundry, clean, dry clean, washing machine, moth',
  ),
  chatting: sense(
    4,
    'lol, haha, good morning, good night, happy birthday, congrats, congratulations, thank you, thanks for, joke, weather, dinner, coffee, holiday, meeting, meetup, zoom, emoji, weekend, cake, photo, profile picture, channel, server, admin, mod, message, mute, library, tonight, music, timer, robot, podcast, capital of, currency, dollars to, euros, birthday, party, movie, episode, tv, netflix, football',
  ),
  'how-to': sense(
    0.6,
    'how do you do, how do i do, how to do, how is, how do you, how do i, how do you work, do you do, how does one',
  ),
  yours: sense(
    3,
    "your, yours, do you all, you all, you guys, you lot, you ladies, you folks, you have, you made, you own, have you, did you, you use, you do with, do you, would you, are you, you're",
  ),
} as const satisfies Record<string, Sense>;

export type SenseName = keyof typeof SENSES;

/** Words that say nothing about what is meant; they are never taken for misspelt words of the trade. */
export const FUNCTION_WORDS: ReadonlySet<string> = new Set(
  `a an the this that these those it its it's i i'm i've i'd i'll im ive id ill me we we're we've you he she they them him her his their there here is are was were be been being am do does did
  don't doesn't didn't dont doesnt didnt can can't cant could couldn't would wouldn't should shouldn't will won't wont shall may might must have has had haven't hasn't having got get gets getting go goes going
  gone come comes came and or but so if then than as at by for from in into of off on onto out over to too up with within without about around round after before between through during until till
  while because since not no nor yes ok okay please pls plz just really very quite only also even still already again now today ever never always more most less least some any both few lot lots
  hi hello hey hiya oops whoops oh ah argh all everyone anybody anyone someone somebody something anything nothing thing things thanks thank cheers ta
  well right like kind sort make makes making made know known think thought want wants wanted wanting say says said see sees tell tells told ask asks asked give gives given keep use uses used using
  work works working worked try tries trying tried let lets let's put puts able another other others same different such own what when where which who whom whose why how many much
  my mine your yours our ours us am pm one ones bit little big small large long short new old good nice great lovely best better sure maybe probably actually basically currently
  mark marked tick ticked please figure figuring wonder wondering possible possibly way ways much each every per across down top bottom above below along wide tall high deep width height length`.split(
    /\s+/,
  ),
);
