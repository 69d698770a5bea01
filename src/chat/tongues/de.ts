/**
 * German. Trade words as they are usual among those who crochet and read patterns in German (common practice): Maschenprobe for gauge,
 * spannen for blocking, Rapport for a repeat. Names of quilt settings stay English, as quilters say them.
 */
import type { Tongue } from './tongue.ts';

export const de: Tongue = {
  locales: ['de'],
  commands: {
    lesson: 'lektion',
    ask: 'fragen',
    stitches: 'maschen',
    gauge: 'maschenprobe',
    yardage: 'garnmenge',
    resize: 'deckengröße',
    border: 'rand',
    joining: 'verbinden',
    motif: 'motiv',
    blanket: 'decke',
    progress: 'fortschritt',
    settings: 'einstellungen',
    lookup: 'nachschlagen',
    together: 'gemeinsam',
    host: 'leitung',
    help: 'hilfe',
    along: 'mitmachen',
  },
  questions: {
    answer: 'antwort',
    hint: 'hinweis',
    where: 'wo',
    stop: 'weglegen',
    row: 'reihe',
    which: 'welche',
    check: 'prüfen',
    spread: 'verteilen',
    repeat: 'rapport',
    compare: 'vergleichen',
    shape: 'form',
    size: 'größe',
    weighed: 'gewogen',
    swatch: 'probestück',
    rough: 'geschätzt',
    left: 'übrig',
    swap: 'tauschen',
    spacing: 'verteilung',
    rounds: 'runden',
    even: 'angleichen',
    define: 'anlegen',
    show: 'zeigen',
    list: 'liste',
    choose: 'wählen',
    words: 'anleitung',
    chart: 'häkelschrift',
    weigh: 'wiegen',
    remove: 'entfernen',
    undo: 'rückgängig',
    start: 'beginnen',
    kinds: 'sorten',
    layout: 'anordnung',
    colours: 'farben',
    change: 'ändern',
    materials: 'material',
    fit: 'vorrat',
    scale: 'andere_größe',
    picture: 'bild',
    next: 'weiter',
    back: 'zurück',
    at: 'stand',
    counted: 'gezählt',
    finished: 'fertig',
    server: 'server',
    export: 'exportieren',
    import: 'importieren',
    erase: 'löschen',
    term: 'begriff',
    hook: 'nadel',
    yarn: 'garn',
    care: 'vorsicht',
    open: 'eröffnen',
    board: 'tafel',
    join: 'mitmachen',
    leave: 'aufhören',
    pledge: 'zusagen',
    giveback: 'zurückgeben',
    mine: 'meine',
    maker: 'person',
    keep: 'behalten',
    handin: 'abgeben',
    pace: 'tempo',
    handover: 'übergeben',
    history: 'verlauf',
    accept: 'annehmen',
    return: 'zurückschicken',
    invite: 'einladen',
    shares: 'anteile',
    remind: 'erinnern',
    parcels: 'pakete',
    assemble: 'zusammensetzen',
    close: 'schließen',
    reopen: 'wieder_öffnen',
    bar: 'ausschließen',
    handout: 'handzettel',
    announce: 'ankündigen',
    calendar: 'kalender',
    plan: 'plan',
    part: 'teil',
    done: 'fertig',
    stuck: 'festgefahren',
    troubles: 'hürden',
    save: 'speichern',
    due: 'fällig',
    motif: 'motiv',
    makes: 'ergibt',
  },
  options: {
    border_stitch: 'randmasche',
    kinds: 'sorten',
    as: 'als',
    lesson: 'lektion',
    practice: 'übung',
    words: 'worte',
    other: 'anderes',
    seen_by: 'sichtbar_für',
    shape: 'form',
    size: 'größe',
    row: 'reihe',
    other_size: 'andere_größe',
    stitch: 'masche',
    stitches: 'maschen',
    counts: 'zahlen',
    from_row: 'ab_reihe',
    from: 'von',
    to: 'auf',
    worked: 'arbeitsweise',
    multiple: 'teiler',
    plus: 'plus',
    near: 'nahe',
    width: 'breite',
    gauge: 'maschenprobe',
    have: 'meine',
    want: 'anleitung',
    hook: 'nadel',
    side: 'seite',
    motif: 'motiv',
    ball: 'knäuel',
    motifs: 'motive',
    reserve: 'reserve',
    swatch_width: 'probe_breite',
    swatch_height: 'probe_höhe',
    weight: 'gewicht',
    height: 'höhe',
    for: 'zweck',
    yarn: 'garn',
    left: 'übrig',
    each: 'je_motiv',
    done_row: 'fertige_reihe',
    balls: 'knäuelzahl',
    new_ball: 'neues_knäuel',
    border: 'rand',
    row_step: 'reihenschritt',
    ends: 'fadenenden',
    corner: 'ecke',
    columns: 'spalten',
    rows: 'reihen',
    across: 'entlang_breite',
    down: 'entlang_höhe',
    rounds: 'runden',
    sides: 'seiten',
    wanted: 'wunsch',
    method: 'methode',
    name: 'name',
    colours: 'farben',
    blocked: 'gespannt',
    keep: 'behalten',
    replace: 'ersetzen',
    step: 'schritt',
    confirm: 'bestätigen',
    arrange: 'verteilung',
    setting: 'muster',
    map: 'plan',
    seed: 'zufallszahl',
    joining: 'verbinden',
    join_colour: 'verbindfarbe',
    border_colours: 'randfarben',
    add: 'dazu',
    drop: 'weg',
    turnings: 'drehungen',
    a: 'a',
    b: 'b',
    colour: 'farbe',
    price: 'preis',
    hex: 'hex',
    forget: 'vergessen',
    new_name: 'neuer_name',
    no_border: 'ohne_rand',
    minutes: 'minuten',
    stretch: 'spielraum',
    made: 'fertig',
    from_made: 'bisher_fertig',
    minutes_each: 'minuten_je_motiv',
    units: 'einheiten',
    terms: 'begriffe',
    answers: 'antworten',
    tell: 'mitteilen',
    craft: 'handwerk',
    own: 'eigenes',
    where: 'wo',
    file: 'datei',
    photo: 'foto',
    term: 'begriff',
    topic: 'thema',
    blanket: 'decke',
    spares: 'ersatz',
    closes: 'schluss',
    tolerance: 'toleranz',
    who: 'wer',
    here: 'hier',
    per_week: 'je_woche',
    kind: 'sorte',
    maker: 'person',
    answer: 'antwort',
    last: 'letzte',
    reason: 'grund',
    apply: 'anwenden',
    shown: 'gezeigt',
    do: 'tun',
    try: 'versuch',
    about: 'worüber',
    paper: 'papier',
    print: 'druck',
    hand: 'hand',
    thread: 'thread',
    event: 'event',
    starts: 'beginnt',
    every: 'alle',
    shares: 'anteile',
    list: 'liste',
    hour: 'stunde',
    zone: 'zeitzone',
    part: 'teil',
    title: 'titel',
    rest: 'übrige',
    asks: 'aufgabe',
    work: 'arbeit',
    post: 'beitrag',
    named: 'mit_namen',
    help: 'hilfe',
  },
  menus: {
    'Work this out': 'Ausrechnen',
    'Check these counts': 'Diese Zahlen prüfen',
    'Motifs in this group': 'Motive in dieser Gruppe',
  },
  choices: {
    yes: 'ja',
    no: 'nein',
    everyone: 'alle',
    'only me': 'nur ich',
    diagonal: 'diagonal',
    blocks: 'Blöcke',
    clusters: 'Gruppen',
    'solid-square': 'volles Quadrat',
    circle: 'Kreis',
    hexagon: 'Sechseck',
    flat: 'flach',
    'US sc (UK dc)': 'feste Masche (US sc, UK dc)',
    'US hdc (UK htr)': 'halbes Stäbchen (US hdc, UK htr)',
    'US dc (UK tr)': 'Stäbchen (US dc, UK tr)',
    'US tr (UK dtr)': 'Doppelstäbchen (US tr, UK dtr)',
    round: 'in der Runde',
    whip: 'überwendlich',
    'slip-stitch': 'Kettmaschen',
    'single-crochet': 'feste Maschen',
    'plain: one kind everywhere': 'einfach: überall eine Sorte',
    'checked: kinds in turn, along every row and column': 'kariert: Sorten im Wechsel, je Reihe und Spalte',
    'stripes: a kind a row, in turn': 'Streifen: je Reihe eine Sorte',
    'scattered: as few alike side by side as can be': 'verstreut: möglichst wenig Gleiche beieinander',
    Upright: 'Upright',
    'Barn Raising': 'Barn Raising',
    'Straight Furrow': 'Straight Furrow',
    'Streak of Lightning': 'Streak of Lightning',
    'Light and Dark': 'Light and Dark',
    Pinwheel: 'Pinwheel',
    'Broken Dishes': 'Broken Dishes',
    Zigzag: 'Zigzag',
    'Flying Geese': 'Flying Geese',
    'metric (cm, m, g)': 'metrisch (cm, m, g)',
    'imperial (in, yd, oz)': 'angloamerikanisch (in, yd, oz)',
    US: 'US',
    UK: 'UK',
    'as is usual there': 'wie dort üblich',
    'by a mention in its channel': 'durch Erwähnung in ihrem Kanal',
    'by a direct message': 'per Direktnachricht',
    'not at all': 'gar nicht',
    'everyone in the channel': 'alle im Kanal',
    'only whoever asks': 'nur wer fragt',
    'as is usual': 'wie üblich',
    'in the whole server': 'im ganzen Server',
    'in this channel only': 'nur in diesem Kanal',
    babies: 'Babys',
    hands: 'Hände',
    heat: 'Hitze',
    'small parts': 'Kleinteile',
    selling: 'Verkauf',
    'dye lots': 'Farbpartien',
    'rough estimates': 'grobe Schätzungen',
    anyone: 'alle',
    'only whom the organiser names': 'nur wen die Leitung nennt',
    'US terms': 'US-Begriffe',
    'UK terms': 'UK-Begriffe',
    'yes, I will run it': 'ja, ich leite sie',
    'no, thank you': 'nein, danke',
    ask: 'nachfragen',
    'offer the pledges again': 'Zusagen wieder anbieten',
    'keep out': 'ausschließen',
    'let in again': 'wieder zulassen',
    A4: 'A4',
    Letter: 'Letter',
    usual: 'üblich',
    large: 'groß',
    right: 'rechts',
    left: 'links',
    change: 'ändern',
    add: 'hinzufügen',
    remove: 'entfernen',
    swatch: 'Probestück',
    first: 'erstes Motiv',
    motifs: 'Motive',
    ends: 'Fäden vernähen',
    'laying-out': 'auslegen',
    joining: 'verbinden',
    border: 'Rand',
    own: 'eigenes',
    'take it back': 'zurücknehmen',
    'post it anew': 'neu ausgeben',
    close: 'schließen',
    'open it again': 'wieder öffnen',
  },
  forms: {
    'Take part': 'Mitmachen',
    'Where are you stuck?': 'Wo hängst du fest?',
    'Joining and border': 'Verbinden und Rand',
    'Start a blanket': 'Eine Decke beginnen',
    'Your answer': 'Deine Antwort',
    'Weigh or measure a finished motif': 'Ein fertiges Motiv wiegen oder messen',
    'Check my counts': 'Meine Zahlen prüfen',
    'Check these counts': 'Diese Zahlen prüfen',
    'Hand in finished motifs': 'Fertige Motive abgeben',
    like: 'etwa',
  },
  says: {
    'The stitch of the border’s first round; sc if not given':
      'Die Masche der ersten Randrunde; ohne Angabe sc',
    'Saved motifs, commas between; the first is A, the next B':
      'Gespeicherte Motive, mit Kommas dazwischen; das erste ist A, das nächste B',
    'Lessons with tasks of your own: shown, tried, and told which slip it was':
      'Lektionen mit eigenen Aufgaben: gezeigt, versucht, und gesagt, welcher Fehler es war',
    'All lessons in their order, what each needs first, and how it stands with you':
      'Alle Lektionen der Reihe nach, was jede voraussetzt, und wie du mit ihnen stehst',
    'Begins a lesson: its idea, an example, and a task with numbers of your own':
      'Beginnt eine Lektion: ihr Gedanke, ein Beispiel, eine Aufgabe mit eigenen Zahlen',
    'Which lesson, by its name': 'Welche Lektion, mit ihrem Namen',
    'Only another task, without the idea and the example':
      'Nur noch eine Aufgabe, ohne Gedanken und Beispiel',
    'Your answer to the task: whether it is right, and if not, what probably happened':
      'Deine Antwort auf die Aufgabe: ob sie stimmt, und wenn nicht, was wohl geschah',
    'What you found, a number or a stitch: 19, 18.3cm, dc':
      'Was herauskam, eine Zahl oder eine Masche: 19, 18.3cm, dc',
    'The lesson that is best done now: what is to be practised again, else what comes next':
      'Die Lektion, die jetzt dran ist: was wieder zu üben ist, sonst was als Nächstes kommt',
    'A hint for the task that is open: the first step, then the formula':
      'Ein Hinweis zur offenen Aufgabe: der erste Schritt, dann die Formel',
    'Which task is open, what you know, and what comes back when':
      'Welche Aufgabe offen ist, was du kannst, und was wann wiederkommt',
    'Sets the open task down; the lesson stays where it is':
      'Legt die offene Aufgabe weg; die Lektion bleibt, wo sie ist',
    'Ask in plain words, as you would ask a friend who crochets':
      'In eigenen Worten fragen, wie man jemanden fragt, der häkelt',
    'What you would like to know, in your own words': 'Was du wissen möchtest, in deinen eigenen Worten',
    'yes offers what else those words may mean': 'ja zeigt, was die Worte noch bedeuten können',
    'Who sees the answer; your setting if not given': 'Wer die Antwort sieht; ohne Angabe deine Einstellung',
    'Stitch counts: a row, which row you are on, a check of your counts, even spacing, repeats':
      'Maschenzahlen: eine Reihe, welche Reihe du hast, Zählfehler, gleichmäßig verteilen, Rapporte',
    'How many stitches a row has, how far along that is, and the total':
      'Wie viele Maschen eine Reihe hat, wie weit das ist, und die Summe',
    'The motif’s shape': 'Die Form des Motivs',
    'Rising rows of a diagonal square, blocks along a side, rounds, or stitches of a flat piece':
      'Zunahmereihen des diagonalen Quadrats, Blöcke einer Seite, Runden, oder Maschen eines flachen Teils',
    'The row or round; the last one if not given': 'Die Reihe oder Runde; ohne Angabe die letzte',
    'Blocks along the other side, or rows of a flat piece':
      'Blöcke der anderen Seite, oder Reihen eines flachen Teils',
    'The stitch': 'Die Masche',
    'Which row you are on, from the stitches that you counted in it':
      'In welcher Reihe du bist, nach den Maschen, die du darin gezählt hast',
    'Stitches counted in the row, or blocks': 'In der Reihe gezählte Maschen oder Blöcke',
    'Rising rows of a diagonal square or blocks along a side; shapes in rounds need none':
      'Zunahmereihen eines diagonalen Quadrats oder Blöcke einer Seite; in Runden nicht nötig',
    'Blocks along the other side of a rectangle': 'Blöcke der anderen Seite eines Rechtecks',
    'A motif you saved, instead of shape and size': 'Ein gespeichertes Motiv, statt Form und Größe',
    'Where your counts leave the pattern, what probably happened, and how to mend it':
      'Wo deine Zahlen vom Muster abweichen, was wohl geschah und wie man es behebt',
    'What you counted, row by row, like 3 5 7 8': 'Was du gezählt hast, Reihe für Reihe, wie 3 5 7 8',
    'The row of the first count; 1 if not given': 'Die Reihe der ersten Zahl; ohne Angabe 1',
    'Increases or decreases spread evenly over a row or round, as an instruction to work':
      'Zu- oder Abnahmen gleichmäßig auf eine Reihe oder Runde verteilt, als Anleitung',
    'Stitches there are': 'Maschen, die da sind',
    'Stitches there should be': 'Maschen, die da sein sollen',
    'Flat in rows, or in the round; flat if not given':
      'Flach in Reihen oder in der Runde; ohne Angabe flach',
    'The stitch counts that suit a pattern repeat near a wish, and the chain to begin with':
      'Maschenzahlen, die zu einem Rapport nahe am Wunsch passen, und die Anschlagkette',
    'Stitches in one repeat: the 8 of “multiple of 8 plus 2”':
      'Maschen eines Rapports: die 8 in „teilbar durch 8 plus 2“',
    'What is added once: the 2 of “multiple of 8 plus 2”; 0 if not given':
      'Was einmal dazukommt: die 2 in „teilbar durch 8 plus 2“; ohne Angabe 0',
    'The count you have in mind; or give width and gauge':
      'Die Zahl, an die du denkst; oder Breite und Maschenprobe',
    'The width you have in mind, with gauge': 'Die Breite, an die du denkst, mit Maschenprobe',
    'Stitches x rows over 10 cm, like 13x10, or 13x10 over 4in':
      'Maschen x Reihen auf 10 cm, wie 13x10, oder 13x10 over 4in',
    'The stitch of the first row': 'Die Masche der ersten Reihe',
    'Your own stitch and row against the pattern’s': 'Deine eigene Maschenprobe gegen die der Anleitung',
    'How far off a piece would be with your own gauge, which way, and the hook to try':
      'Wie weit ein Teil mit deiner Maschenprobe abwiche, wohin, und welche Nadel zu versuchen ist',
    'Your swatch: stitches x rows over 10 cm, like 14x10, or 14x10 over 4in':
      'Dein Probestück: Maschen x Reihen auf 10 cm, wie 14x10, oder 14x10 over 4in',
    'The pattern’s: stitches x rows over 10 cm, like 13x10':
      'Die der Anleitung: Maschen x Reihen auf 10 cm, wie 13x10',
    'The hook the swatch was worked with: 5mm, or a US size like H-8':
      'Die Nadel des Probestücks: 5mm, oder eine US-Größe wie H-8',
    'The width the pattern means, like 120cm or 48in': 'Die Breite nach Anleitung, wie 120cm oder 48in',
    'Why a diagonal square comes off the hook as a diamond, what it blocks to, how to make it square':
      'Warum ein diagonales Quadrat zur Raute wird, was Spannen ergibt, wie es quadratisch wird',
    'Rising rows of the diagonal square': 'Zunahmereihen des diagonalen Quadrats',
    'Which size of diagonal square comes out at the side you wish, at your own gauge':
      'Welche Größe des diagonalen Quadrats bei deiner Maschenprobe die gewünschte Seite hat',
    'Your own: stitches x rows over 10 cm, like 13x10, or 13x10 over 4in':
      'Deine eigene: Maschen x Reihen auf 10 cm, wie 13x10, oder 13x10 over 4in',
    'The side that one blocked motif should have': 'Die Seite, die ein gespanntes Motiv haben soll',
    'The pattern’s own size in rising rows, to compare':
      'Die Größe der Anleitung in Zunahmereihen, zum Vergleich',
    'How much yarn: from a weighed motif or swatch, a rough guess, what is left, another yarn':
      'Wie viel Garn: nach Gewicht, Probestück, grob geschätzt, was übrig ist, anderes Garn',
    'How much yarn and how many balls, from one finished motif on the scale':
      'Wie viel Garn und wie viele Knäuel, nach einem fertigen Motiv auf der Waage',
    'What one finished motif weighs': 'Was ein fertiges Motiv wiegt',
    'Length and weight of a ball, like 170m/100g or 364yd/198g':
      'Länge und Gewicht eines Knäuels, wie 170m/100g oder 364yd/198g',
    'How many motifs, or all of the current blanket; one if not given':
      'Wie viele Motive, oder alle der aktuellen Decke; ohne Angabe eins',
    'Per cent to buy beyond the sum; 10 if not given': 'Prozent über den Bedarf hinaus; ohne Angabe 10',
    'How much yarn a whole blanket takes, from a weighed swatch, before any motif is made':
      'Wie viel Garn eine ganze Decke braucht, nach einem gewogenen Probestück, vor dem ersten Motiv',
    'How wide the swatch is': 'Wie breit das Probestück ist',
    'How high the swatch is': 'Wie hoch das Probestück ist',
    'What the swatch weighs': 'Was das Probestück wiegt',
    'How wide the blanket is to be; or give for': 'Wie breit die Decke werden soll; oder zweck angeben',
    'How high the blanket is to be': 'Wie hoch die Decke werden soll',
    'What it is for, instead of width and height: throw, queen, crib, UK king':
      'Wofür, statt Breite und Höhe: throw, queen, crib, UK king',
    'A rough guess at the yarn, from the stitches, the hook and the thickness of the yarn':
      'Garn grob geschätzt, nach Maschen, Nadel und Stärke des Garns',
    'The hook: 5mm, or a US size like H-8; a usual one for the yarn if not given':
      'Die Nadel: 5mm, oder US-Größe wie H-8; ohne Angabe eine übliche zum Garn',
    'Your gauge, like 13x10: much surer than hook and yarn':
      'Deine Maschenprobe, wie 13x10: viel sicherer als Nadel und Garn',
    'How thick: a category 0 to 7, its name, or wraps per inch like 11wpi; else read off the ball':
      'Wie dick: Kategorie 0 bis 7, ihr Name, oder Wicklungen wie 11wpi; sonst nach dem Knäuel',
    'How far the yarn that is left will go: the last row that can be finished':
      'Wie weit das übrige Garn reicht: die letzte Reihe, die fertig wird',
    'The last row already finished; 0, nothing yet, if not given':
      'Die letzte fertige Reihe; ohne Angabe 0, noch nichts',
    'How many balls of another yarn, by length': 'Wie viele Knäuel eines anderen Garns, nach der Länge',
    'Balls that the pattern asks for': 'Knäuel, die die Anleitung verlangt',
    'The pattern’s ball, like 170m/100g or 364yd/198g':
      'Das Knäuel der Anleitung, wie 170m/100g oder 364yd/198g',
    'The new yarn’s ball, like 125m/50g': 'Das Knäuel des neuen Garns, wie 125m/50g',
    'How many motifs, and how large, make a blanket of a wished size or number':
      'Wie viele Motive, wie groß, für eine Decke der gewünschten Größe oder Zahl',
    'The width you wish for': 'Die gewünschte Breite',
    'The height you wish for': 'Die gewünschte Höhe',
    'A number of motifs, in place of a size or beside it':
      'Eine Zahl von Motiven, statt einer Größe oder dazu',
    'The side of one finished motif, or give gauge and size':
      'Die Seite eines fertigen Motivs, oder Maschenprobe und Größe',
    'With size: stitches x rows over 10 cm, like 13x10': 'Mit Größe: Maschen x Reihen auf 10 cm, wie 13x10',
    'With gauge: rising rows of the diagonal square':
      'Mit Maschenprobe: Zunahmereihen des diagonalen Quadrats',
    'How wide the border is': 'Wie breit der Rand ist',
    'With size: rows by which the motif may grow or shrink, like a stripe':
      'Mit Größe: Reihen, um die das Motiv wachsen oder schrumpfen darf, wie ein Streifen',
    'With gauge and size: the motif’s shape; only diagonal is reckoned from rows':
      'Mit Maschenprobe und Größe: die Form; nur diagonale werden nach Reihen berechnet',
    'Ends of yarn that each motif leaves; 2 if not given': 'Fadenenden, die jedes Motiv lässt; ohne Angabe 2',
    'A border that lies flat: stitches along each side, and round by round':
      'Ein Rand, der flach liegt: Maschen je Seite, und Runde für Runde',
    'How many border stitches each side takes, shared evenly over the motifs':
      'Wie viele Randmaschen jede Seite braucht, gleichmäßig auf die Motive verteilt',
    'The width of the edge, before the border': 'Die Breite der Kante, vor dem Rand',
    'The height of the edge, before the border': 'Die Höhe der Kante, vor dem Rand',
    'The border’s stitches over 10 cm, like 14, or 14 over 4in':
      'Randmaschen auf 10 cm, wie 14, oder 14 over 4in',
    'Stitches in each corner; 3 if not given': 'Maschen in jeder Ecke; ohne Angabe 3',
    'The border pattern’s multiple; 1 if not given': 'Teiler des Randmusters; ohne Angabe 1',
    'The border pattern’s plus; 0 if not given': 'Was im Randmuster dazukommt; ohne Angabe 0',
    'Motifs along the width, to share the stitches over': 'Motive entlang der Breite, auf die verteilt wird',
    'Motifs along the height': 'Motive entlang der Höhe',
    'The motif’s shape, with size: what its edges take from its rows':
      'Die Form, mit Größe: was die Kanten nach ihren Reihen brauchen',
    'The stitch of the motif': 'Die Masche des Motivs',
    'A saved motif, instead of shape and size': 'Ein gespeichertes Motiv, statt Form und Größe',
    'How the border grows, round by round, and whether its corners will lie flat':
      'Wie der Rand wächst, Runde für Runde, und ob die Ecken flach liegen',
    'Stitches along the width in the first round, between corners':
      'Maschen der ersten Runde entlang der Breite, zwischen den Ecken',
    'Stitches along the height in the first round, between corners':
      'Maschen der ersten Runde entlang der Höhe, zwischen den Ecken',
    'One stitch a round, like hdc dc hdc': 'Eine Masche je Runde, wie hdc dc hdc',
    'Motifs of different size made to meet: which to pin out, which to edge, which to leave out':
      'Ungleich große Motive angleichen: welche spannen, welche umhäkeln, welche weglassen',
    'The measured side of every motif, like 14.2 15 15 15.6cm':
      'Die gemessene Seite jedes Motivs, wie 14.2 15 15 15.6cm',
    'The side that all are to have; one of theirs, where most of them meet, if not given':
      'Die Seite, die alle haben sollen; ohne Angabe die, bei der sich die meisten treffen',
    'The edge’s stitches over 10 cm, like 13': 'Kantenmaschen auf 10 cm, wie 13',
    'The hook for the edging': 'Die Nadel für die Kante',
    'How thick: a category 0 to 7, its name, or wraps per inch like 11wpi':
      'Wie dick: Kategorie 0 bis 7, ihr Name, oder Wicklungen wie 11wpi',
    'How long the seams are, how much yarn they take, and in which order to join':
      'Wie lang die Nähte sind, wie viel Garn sie brauchen, in welcher Folge man verbindet',
    'Motifs side by side': 'Motive nebeneinander',
    'Motifs under each other': 'Motive untereinander',
    'The side of one finished motif': 'Die Seite eines fertigen Motivs',
    'How they are joined': 'Wie sie verbunden werden',
    'The hook: 5mm, or a US size like H-8': 'Die Nadel: 5mm, oder eine US-Größe wie H-8',
    'Motifs of your own: saved, in words, drawn, weighed':
      'Deine Motive: gespeichert, in Worten, gezeichnet, gewogen',
    'Saves a motif of your own: its shape, size, stitch, gauge and colours':
      'Speichert ein eigenes Motiv: Form, Größe, Masche, Maschenprobe und Farben',
    'What you call it': 'Wie du es nennst',
    'The colours by row, like: 4 rows moss, 2 rows sand, three times, then 6 rows moss':
      'Farben nach Reihen (englisch): 4 rows moss, 2 rows sand, three times, then 6 rows moss',
    'Whether the gauge was counted on a blocked piece':
      'Ob die Maschenprobe an einem gespannten Stück gezählt ist',
    'no only shows how it would be; it is kept if not given':
      'nein zeigt nur, wie es wäre; sonst wird gespeichert',
    'yes replaces a motif of the same name': 'ja ersetzt ein Motiv gleichen Namens',
    'The motif’s name; the current one if not given': 'Der Name des Motivs; ohne Angabe das aktuelle',
    'Your saved motifs, and which one is current': 'Deine gespeicherten Motive, und welches das aktuelle ist',
    'Makes a saved motif the current one, which all questions mean if none is named':
      'Macht ein gespeichertes Motiv zum aktuellen, das ohne Namen immer gemeint ist',
    'The motif’s name': 'Der Name des Motivs',
    'The instructions row by row, in your own terms, with the count at the end of each row':
      'Die Anleitung Reihe für Reihe, in deinen Begriffen, mit der Zahl am Ende jeder Reihe',
    'Draws the motif: stitch by stitch while that can be read, else row by row with its counts':
      'Zeichnet das Motiv: Masche für Masche, solange lesbar, sonst Reihe für Reihe mit Zahlen',
    'What lies on the scale weighs: one finished motif, or several together':
      'Was auf der Waage liegt, wiegt: ein fertiges Motiv, oder mehrere zusammen',
    'How many finished motifs lie on the scale together':
      'Wie viele fertige Motive zusammen auf der Waage liegen',
    'The steps that the scale shows; whole grams if not given':
      'Die Schritte der Waage; ohne Angabe ganze Gramm',
    'Forget what was weighed of it before': 'Vergessen, was davor gewogen wurde',
    'How long a side of it is': 'Wie lang eine Seite davon ist',
    'The hook it was worked with': 'Die Nadel, mit der es gehäkelt ist',
    'Removes a saved motif; asks first, and it can be undone for a day':
      'Entfernt ein gespeichertes Motiv; fragt zuerst, einen Tag lang umkehrbar',
    'yes removes it; without it you are asked': 'ja entfernt es; sonst wirst du gefragt',
    'Brings back a motif that was removed or replaced within the last day':
      'Holt ein Motiv zurück, das binnen eines Tages entfernt oder ersetzt wurde',
    'Its name; the last one removed if not given': 'Sein Name; ohne Angabe das zuletzt entfernte',
    'A blanket of your own: its layout, what it takes, how far your yarn goes, another size':
      'Deine Decke: Anordnung, was sie braucht, wie weit das Garn reicht, andere Größe',
    'Starts a blanket from saved motifs: its kinds, columns and rows, layout, joining, border':
      'Beginnt eine Decke aus gespeicherten Motiven: Sorten, Maße, Anordnung, Verbinden, Rand',
    'How kinds are spread over the places': 'Wie die Sorten auf die Plätze kommen',
    'How motifs are turned; for squares split corner to corner':
      'Wie Motive gedreht sind; für diagonal geteilte Quadrate',
    'How many of each kind, scattered: A 12, B 8': 'Wie viele je Sorte, verstreut: A 12, B 8',
    'A map of your own: letters, rows parted by /; a digit turns: A0B1/B2A3':
      'Ein eigener Plan: Buchstaben, Reihen mit /; eine Ziffer dreht: A0B1/B2A3',
    'Another number scatters kinds another way': 'Eine andere Zahl verstreut die Sorten anders',
    'How motifs are joined; whip if not given': 'Wie Motive verbunden werden; ohne Angabe überwendlich',
    'The colour they are joined with': 'Die Farbe, mit der verbunden wird',
    'The border, one stitch a round from the inside': 'Der Rand, eine Masche je Runde, von innen',
    'One colour for the whole border, or one a round': 'Eine Farbe für den ganzen Rand, oder eine je Runde',
    'Stitches in each corner of the border; 3 if not given': 'Maschen in jeder Ecke des Rands; ohne Angabe 3',
    'Yarn to buy beyond what the sum says; 10 % if not given':
      'Garn über den Bedarf hinaus; ohne Angabe 10 %',
    'Everything that is kept of a blanket: kinds, layout, size, border, colours, how far it is':
      'Alles, was von einer Decke gespeichert ist: Sorten, Plan, Größe, Rand, Farben, Stand',
    'The blanket’s name; the current one if not given': 'Der Name der Decke; ohne Angabe die aktuelle',
    'The kinds of motif in a blanket and how many of each to make; adds or drops one':
      'Die Motivsorten einer Decke und wie viele von jeder; fügt eine hinzu oder nimmt sie weg',
    'Saved motifs to add, commas between': 'Motive, die dazukommen, mit Kommas',
    'Kinds to take out, commas between': 'Sorten, die wegfallen, mit Kommas',
    'Lays the motifs: which kind where, and how it is turned; shows the layout if nothing is asked':
      'Legt die Motive: welche Sorte wohin, wie gedreht; zeigt sonst die Anordnung',
    'Instead of a setting: quarter turns by kind, A 0, B 1, C 2; or random, with seed':
      'Statt eines Musters: Vierteldrehungen je Sorte, A 0, B 1, C 2; oder random, mit zufallszahl',
    'Another number of columns': 'Eine andere Zahl von Spalten',
    'Another number of rows': 'Eine andere Zahl von Reihen',
    'yes lays a map of another size; without it you are asked':
      'ja legt einen Plan anderer Größe; sonst wirst du gefragt',
    'Changes two places of the layout about, by their numbers':
      'Tauscht zwei Plätze der Anordnung, nach ihren Nummern',
    'The one place; numbered row by row from the top left':
      'Der eine Platz; reihenweise nummeriert, von oben links',
    'The other place': 'Der andere Platz',
    'The colours of a blanket: how each looks, its ball, price, and how many are at hand':
      'Die Farben einer Decke: Aussehen, Knäuel, Preis, und wie viele da sind',
    'The colour to say something of; all are shown if not given': 'Um welche Farbe es geht; ohne Angabe alle',
    'Price of one ball, in your own money, like 4.50': 'Preis eines Knäuels, in deinem Geld, wie 4.50',
    'Balls at hand; a part of a ball counts as a part': 'Vorhandene Knäuel; ein Teil zählt als Teil',
    'How it looks, as #rrggbb': 'Wie sie aussieht, als #rrggbb',
    'yes forgets ball, price, balls and look of this colour':
      'ja vergisst Knäuel, Preis, Vorrat und Aussehen der Farbe',
    'Changes a blanket’s name, joining, border or reserve':
      'Ändert Namen, Verbinden, Rand oder Reserve einer Decke',
    'Another name for it': 'Ein anderer Name',
    'yes takes the border away': 'ja nimmt den Rand weg',
    'What a blanket takes, colour by colour: yarn, balls to buy, weight, cost, ends, hours':
      'Was eine Decke braucht, je Farbe: Garn, Knäuel, Gewicht, Kosten, Fäden, Stunden',
    'Another reserve than the blanket’s own': 'Eine andere Reserve als die der Decke',
    'The largest blanket that the yarn at hand makes, and which colour runs out first':
      'Die größte Decke aus dem vorhandenen Garn, und welche Farbe zuerst ausgeht',
    'How far its proportions may change, per cent': 'Um wie viel Prozent sich die Maße verschieben dürfen',
    'yes counts motifs alone, without seams and border': 'ja zählt Motive allein, ohne Nähte und Rand',
    'The same blanket at another size: setting continued, make-counts, border, yarn, before and after':
      'Dieselbe Decke in anderer Größe: Muster, Stückzahlen, Rand, Garn, vorher und nachher',
    'The new number of motifs side by side': 'Die neue Zahl von Motiven nebeneinander',
    'The new number of motifs under each other': 'Die neue Zahl von Motiven untereinander',
    'Or about how wide it should be': 'Oder etwa wie breit sie sein soll',
    'Or about how high it should be': 'Oder etwa wie hoch sie sein soll',
    'yes keeps the new size': 'ja behält die neue Größe',
    'Draws the blanket: colours, turnings, numbers, border, legend, size; what is made filled in':
      'Zeichnet die Decke: Farben, Drehungen, Nummern, Rand, Legende, Größe; Fertiges gefüllt',
    'no draws the plan even where motifs are made': 'nein zeichnet den Plan, auch wo Motive fertig sind',
    'All the blankets you saved, and which is the current one':
      'Alle deine gespeicherten Decken, und welche die aktuelle ist',
    'Makes a saved blanket the current one, which all questions mean if none is named':
      'Macht eine gespeicherte Decke zur aktuellen, die ohne Namen immer gemeint ist',
    'The blanket’s name': 'Der Name der Decke',
    'Removes a saved blanket; asks first, and it can be undone for a day':
      'Entfernt eine gespeicherte Decke; fragt zuerst, einen Tag lang umkehrbar',
    'Takes back the last change of a blanket, its removal among them, within a day':
      'Nimmt die letzte Änderung einer Decke zurück, auch ihr Entfernen, binnen eines Tages',
    'Its name, if it was not the last one': 'Ihr Name, wenn es nicht die letzte war',
    'Where you are: rows, motifs, what comes next, what is still to come':
      'Wo du bist: Reihen, Motive, was als Nächstes kommt, was noch bleibt',
    'One more row is done: counts it, and says what the coming row is':
      'Noch eine Reihe ist fertig: zählt sie und sagt, wie die nächste geht',
    'Only if this is the last row done: so that nothing is counted twice':
      'Nur wenn dies die letzte fertige Reihe ist: damit nichts doppelt zählt',
    'One row fewer is done: it was ripped back, or counted too soon':
      'Eine Reihe weniger: aufgeribbelt, oder zu früh gezählt',
    'Sets where you are: the last row done, and how many motifs are made':
      'Setzt, wo du bist: die letzte fertige Reihe und wie viele Motive fertig sind',
    'The last row that is done; 0 before the first': 'Die letzte fertige Reihe; 0 vor der ersten',
    'How many of this motif are made; as before if not given':
      'Wie viele dieses Motivs fertig sind; ohne Angabe wie bisher',
    'Holds what you counted against the row you are at, and says what to do where it differs':
      'Hält deine Zählung gegen die Reihe, bei der du bist, und sagt, was bei Abweichung hilft',
    'The count of the last row done, or of several, the last row last':
      'Die Zahl der letzten fertigen Reihe, oder mehrerer, die letzte zuletzt',
    'A motif is finished: one more is made, and the next begins with its first row':
      'Ein Motiv ist fertig: eines mehr, und das nächste beginnt mit seiner ersten Reihe',
    'Only if so many were made before: so that nothing is counted twice':
      'Nur wenn vorher so viele fertig waren: damit nichts doppelt zählt',
    'yes counts one that is only half made by its rows; without it you are asked':
      'ja zählt eines, das nach seinen Reihen halb fertig ist; sonst wirst du gefragt',
    'How far you are, how much yarn is still to come, and whether what is left will do':
      'Wie weit du bist, wie viel Garn noch kommt, und ob der Rest reicht',
    'What the yarn that is left weighs': 'Was das übrige Garn wiegt',
    'Which colour that is, where there are several': 'Welche Farbe das ist, wo es mehrere gibt',
    'Takes back the last thing that was counted of a motif':
      'Nimmt zurück, was von einem Motiv zuletzt gezählt wurde',
    'Your units and terms, and everything that is kept about you':
      'Deine Einheiten und Begriffe, und alles, was von dir gespeichert ist',
    'Your units, your terms, who sees your answers, and what is kept of you':
      'Deine Einheiten, Begriffe, wer Antworten sieht, und was von dir gespeichert ist',
    'Sets your units, your terms, or who sees your answers':
      'Setzt deine Einheiten, deine Begriffe, oder wer deine Antworten sieht',
    'Centimetres, metres and grams, or inches, yards and ounces':
      'Zentimeter, Meter und Gramm, oder inches, yards und ounces',
    'Whose names of stitches you read and type': 'Wessen Maschennamen du liest und schreibst',
    'Who sees answers to you in a server': 'Wer in einem Server deine Antworten sieht',
    'How you hear of what concerns you in a group blanket, at most once a day':
      'Wie du erfährst, was dich in einer Gruppendecke angeht, höchstens einmal am Tag',
    'Manager of a server: who sees answers there, in all of it or in one channel':
      'Serververwaltung: wer dort Antworten sieht, im ganzen Server oder in einem Kanal',
    'Who sees answers about the craft: stitches, gauge, yarn, sizes':
      'Wer Antworten über das Handwerk sieht: Maschen, Maschenprobe, Garn, Größen',
    'Who sees answers about what is the asker’s own: motifs, blankets, progress':
      'Wer Antworten über Eigenes sieht: Motive, Decken, Fortschritt',
    'Where it is to be so; in the whole server if not given':
      'Wo es so sein soll; ohne Angabe im ganzen Server',
    'Everything that is kept about you, as one file': 'Alles, was von dir gespeichert ist, als eine Datei',
    'Takes back a file that /settings export made, in place of what is kept':
      'Nimmt eine Datei von /settings export zurück, statt des Gespeicherten',
    'The file that /settings export made': 'Die Datei, die /settings export gemacht hat',
    'Whether to replace what is kept of you now': 'Ob sie ersetzt, was jetzt von dir gespeichert ist',
    'Erases everything that is kept about you; asks first':
      'Löscht alles, was von dir gespeichert ist; fragt zuerst',
    'Whether to erase it now; without it you see what would go':
      'Ob jetzt gelöscht wird; sonst siehst du, was wegfiele',
    'Published tables: terms, hooks, yarn weights, usual sizes, and what to take care of':
      'Veröffentlichte Tabellen: Begriffe, Nadeln, Garnstärken, übliche Größen, und Vorsicht',
    'What a stitch name or abbreviation means, US to UK and back; two of them told apart':
      'Was ein Maschenname oder eine Abkürzung heißt, US nach UK und zurück; zwei im Vergleich',
    'A name or abbreviation, or two to tell apart: dc, UK tr, sc vs dc':
      'Ein Name oder eine Abkürzung, oder zwei im Vergleich: dc, UK tr, sc vs dc',
    'Hook sizes in millimetres, US letters and numbers, old UK numbers and steel, both ways':
      'Nadelstärken in Millimetern, US-Buchstaben und -Nummern, alte UK-Nummern und Stahl',
    'A size in any system: 5mm, H-8, 7, UK 6, steel 7':
      'Eine Stärke in jedem System: 5mm, H-8, 7, UK 6, steel 7',
    'Yarn weight categories 0 to 7: stitches, hooks, wraps; by number, name, wraps or ball band':
      'Garnkategorien 0 bis 7: Maschen, Nadeln, Wicklungen; nach Nummer, Name, wpi oder Banderole',
    'A category 0 to 7, a name, wraps like 12wpi, or a ball like 170m/100g; all if left out':
      'Kategorie 0 bis 7, ein Name, Wicklungen wie 12wpi, oder ein Knäuel wie 170m/100g; sonst alle',
    'Sizes that beds, cribs and blankets usually have, each with who says so':
      'Übliche Größen von Betten, Gitterbetten und Decken, je mit Quelle',
    'What it is for: queen, crib, lap, throw, UK king; the list of names if left out':
      'Wofür: queen, crib, lap, throw, UK king; ohne Angabe die Liste',
    'What to take care of: babies, hands, heat, small parts, selling, dye lots, rough estimates':
      'Worauf zu achten ist: Babys, Hände, Hitze, Kleinteile, Verkauf, Partien, grobe Schätzung',
    'What it is about; everything if left out': 'Worum es geht; ohne Angabe alles',
    'A blanket made by a group: quotas, pledges, hand-ins, a board that is never wrong':
      'Eine Decke, die eine Gruppe macht: Sollzahlen, Zusagen, Abgaben, eine Tafel, die stimmt',
    'Opens a group blanket from a saved one: quotas by kind, spares, a closing day; posts the board':
      'Eröffnet eine Gruppendecke aus einer gespeicherten: Sollzahlen, Ersatz, Schlusstag; mit Tafel',
    'A blanket you saved; the current one if not given': 'Eine deiner Decken; ohne Angabe die aktuelle',
    'What the group blanket is called; the saved one’s name if not given':
      'Wie die Gruppendecke heißt; ohne Angabe wie die gespeicherte',
    'Motifs of each kind beyond what the layout needs':
      'Motive jeder Sorte, die über den Bedarf hinaus gemacht werden',
    'The day by which motifs are wanted': 'Der Tag, bis zu dem Motive gewünscht sind',
    'What one motif should measure; reckoned from the motif if not given':
      'Was ein Motiv messen soll; ohne Angabe aus dem Motiv berechnet',
    'How far off a side may be before it is flagged':
      'Wie weit eine Seite abweichen darf, bevor es angemerkt wird',
    'Who may join': 'Wer mitmachen darf',
    'How far the group blanket is: a picture, and made, pledged and open by kind':
      'Wie weit die Gruppendecke ist: ein Bild, je Sorte fertig, zugesagt und offen',
    'Which group blanket; this channel’s if not given': 'Welche Gruppendecke; ohne Angabe die dieses Kanals',
    'Organiser: move the board into this channel': 'Leitung: die Tafel in diesen Kanal holen',
    'The group blankets of this server': 'Die Gruppendecken dieses Servers',
    'Take part, or change what you said: motifs a week, colours at hand, terms':
      'Mitmachen, oder deine Angaben ändern: Motive je Woche, Farben, Begriffe',
    'How many motifs a week you can make': 'Wie viele Motive du je Woche schaffst',
    'Colours you have, with commas between; all of them if not given':
      'Farben, die du hast, mit Kommas; ohne Angabe alle',
    'Whose stitch names you read': 'Wessen Maschennamen du liest',
    'Leave; what you pledged and have not made is open to others again':
      'Aufhören; was du zugesagt und nicht gemacht hast, wird wieder frei',
    'Promise motifs of a kind; they are yours to make and nobody else’s':
      'Motive einer Sorte zusagen; du machst sie und sonst niemand',
    'Which kind of motif': 'Welche Sorte',
    'How many; all of that kind are meant by all': 'Wie viele; all meint alle dieser Sorte',
    'Give back motifs you pledged and will not make': 'Zugesagte Motive zurückgeben, die du nicht machst',
    'What you hold: pledged, handed in, accepted, sent back':
      'Was du hast: zugesagt, abgegeben, angenommen, zurückgekommen',
    'What one of the makers has of the group blanket: pledged, handed in, accepted':
      'Was jemand von der Gruppendecke hat: zugesagt, abgegeben, angenommen',
    'Whose motifs': 'Wessen Motive',
    'Say that what you pledged still stands': 'Sagen, dass deine Zusage weiter gilt',
    'Hand in finished motifs, with their measured side': 'Fertige Motive abgeben, mit gemessener Seite',
    'Their measured side, blocked if you blocked them':
      'Ihre gemessene Seite, gespannt, wenn du sie gespannt hast',
    'What they weigh, all of them together on the scale': 'Was sie wiegen, alle zusammen auf der Waage',
    'A picture of them, shown to everybody in the group’s channel':
      'Ein Bild davon, allen im Kanal der Gruppe gezeigt',
    'The hook you used, to be told which to try': 'Deine Nadel, damit du erfährst, welche zu versuchen ist',
    'yes hands in more than you pledged; without it you are asked':
      'ja gibt mehr ab als zugesagt; sonst wirst du gefragt',
    'How fast motifs come in, what the closing day needs, and when it will be done':
      'Wie schnell Motive kommen, was der Schlusstag verlangt, und wann es fertig ist',
    'Shopping lists: your pledges, and the whole group’s, bought by each or together':
      'Einkaufslisten: für deine Zusagen und für die ganze Gruppe, einzeln oder zusammen',
    'Organiser: ask somebody to run the blanket, who says yes or no with answer':
      'Leitung: jemanden bitten, die Decke zu leiten; die Antwort kommt mit antwort',
    'Whom: somebody who takes part or was named': 'Wen; die Person macht mit oder ist genannt',
    'Your answer, where you were asked to run it': 'Deine Antwort, wenn du gebeten wurdest, sie zu leiten',
    'Takes back your last pledge or hand-in; for the organiser, the latest thing that happened':
      'Nimmt deine letzte Zusage oder Abgabe zurück; für die Leitung das Letzte, was geschah',
    'What happened to the blanket, the latest first': 'Was mit der Decke geschah, das Letzte zuerst',
    'How many': 'Wie viele',
    'For whoever runs a group blanket: accept motifs, share out, remind, put together':
      'Für die Leitung einer Gruppendecke: annehmen, aufteilen, erinnern, zusammensetzen',
    'Organiser: accept motifs that were handed in; without numbers, lists those that wait':
      'Leitung: abgegebene Motive annehmen; ohne Nummern eine Liste der wartenden',
    'Their numbers, like 3 5 7-9, or all that wait': 'Ihre Nummern, wie 3 5 7-9, oder all für alle wartenden',
    'yes accepts those too whose side is off; without it you are asked':
      'ja nimmt auch an, was im Maß abweicht; sonst wirst du gefragt',
    'Organiser: send motifs back with a reason; they are their makers’ again':
      'Leitung: Motive mit Grund zurückschicken; sie gehören wieder ihren Machern',
    'Their numbers, like 3 5 7-9': 'Ihre Nummern, wie 3 5 7-9',
    'Why, in a friendly sentence': 'Warum, in einem freundlichen Satz',
    'Organiser: name somebody who may join': 'Leitung: jemanden nennen, der mitmachen darf',
    'A fair split of what is still open, by what each can make by the day; shown first, then applied':
      'Teilt Offenes gerecht auf, nach dem, was jeder bis zum Tag schafft; erst gezeigt, dann vergeben',
    'Organiser: pledge these shares now': 'Leitung: diese Anteile jetzt zusagen',
    'Share out the spares as well': 'Auch den Ersatz aufteilen',
    'The number under the shares that were shown: apply those, or none':
      'Die Nummer unter den gezeigten Anteilen: diese vergeben, oder keine',
    'Organiser: ask a quiet maker whether the pledges stand; a week later offer them again':
      'Leitung: fragen, ob Zusagen noch gelten; eine Woche später wieder anbieten',
    Whom: 'Wen',
    'Ask, or offer the pledges to others once the week is over':
      'Nachfragen, oder nach der Woche die Zusagen anderen anbieten',
    'Who holds what and what has arrived: a list for posting day, and as a CSV file':
      'Wer was hat und was angekommen ist: Liste für den Posttag, auch als CSV-Datei',
    'Which motif goes where so that neighbours fit, the joining, and the border’s counts':
      'Welches Motiv wohin, damit Nachbarn passen, das Verbinden, und die Zahlen des Rands',
    'Another number gives another arrangement': 'Eine andere Zahl ergibt eine andere Anordnung',
    'Organiser: close the blanket to new pledges; what is pledged can still be handed in':
      'Leitung: keine neuen Zusagen mehr; Zugesagtes kann noch abgegeben werden',
    'Organiser: open a closed blanket again, or move its closing day':
      'Leitung: eine geschlossene Decke wieder öffnen, oder den Schlusstag verlegen',
    'The new closing day': 'Der neue Schlusstag',
    'Organiser: keep a maker from taking part and give back what is held, or let a maker in again':
      'Leitung: alles zurückgeben, was jemand hat, und ausschließen, oder wieder zulassen',
    'Why, in a friendly sentence; the maker sees it, and so does whoever reads the history':
      'Warum, freundlich; die Person sieht es, und alle, die den Verlauf lesen',
    'Keep from taking part, or let in again': 'Vom Mitmachen ausschließen, oder wieder zulassen',
    'What can be asked here, and how': 'Was man hier fragen kann, und wie',
    'A word for what you want to know, like yarn, or a question, like stitches row':
      'Ein Wort für das, was du suchst, wie yarn, oder eine Frage, wie stitches row',
    'Whose names of stitches; your own if not given': 'Wessen Maschennamen; ohne Angabe die eigenen',
    'The motif to print (PDF): yarn, rows in words with boxes to tick, chart, colours, cautions':
      'Das Motiv zum Drucken (PDF): Garn, Reihen mit Kästchen, Häkelschrift, Farben, Vorsicht',
    'The paper; Letter for who measures in inches, else A4': 'Das Papier; Letter bei Zoll, sonst A4',
    'large prints in letters of 18 points': 'groß druckt in Buchstaben von 18 Punkt',
    'The colours of a motif and how they are drawn; hex says how one looks':
      'Die Farben eines Motivs und wie sie gezeichnet werden; hex sagt, wie eine aussieht',
    'yes forgets the look of this colour': 'ja vergisst, wie diese Farbe aussieht',
    'The hand that holds your hook: charts and directions are mirrored for the left':
      'Die Hand mit der Häkelnadel: für die linke werden Häkelschriften und Richtungen gespiegelt',
    'Organiser: give the blanket a thread with its board pinned, or an event for its closing day':
      'Leitung: der Decke einen Thread mit angehefteter Tafel geben, oder ein Event zum Schlusstag',
    'yes makes a thread of this channel for it; no takes the board back':
      'ja macht einen Thread dieses Kanals für sie; nein holt die Tafel zurück',
    'yes puts its closing day among the server’s events; no takes it out':
      'ja setzt den Schlusstag unter die Events des Servers; nein nimmt ihn heraus',
    'Everything that is kept of a motif: its rows, colours, ends, weight, side and time':
      'Alles, was von einem Motiv gespeichert ist: Reihen, Farben, Fäden, Gewicht, Seite, Zeit',
    'Keeps what a finished motif weighs, measures and takes in time, and what that says of yarn and size':
      'Merkt, was ein fertiges Motiv wiegt, misst und an Zeit braucht, und was daraus für Garn folgt',
    'Minutes that one takes you, for the hours of a blanket':
      'Minuten, die du für eines brauchst, für die Stunden einer Decke',
    'Minutes that one motif takes you, of the first kind or kind by kind, for the hours':
      'Minuten für ein Motiv, der ersten Sorte oder je Sorte, für die Stunden',
    'Minutes that one motif takes you; as kept, or from your own rows, if not given':
      'Minuten für ein Motiv; ohne Angabe wie gemerkt oder nach deinen Reihen',
    'The closing day as a calendar file, for any calendar that reads iCalendar':
      'Der Schlusstag als Kalenderdatei, für jeden Kalender, der iCalendar liest',
    'A make-along in parts: everybody makes her own, with her own numbers, after a teacher’s':
      'Gemeinsam häkeln in Teilen: alle machen ihre eigene, mit eigenen Zahlen, nach einer Vorlage',
    'Opens a make-along from a saved blanket or motif: parts with their days, each maker’s own numbers':
      'Eröffnet ein Mitmachen aus einer Decke oder einem Motiv: Teile mit Tagen, Zahlen für jede',
    'A blanket you saved; the current one if neither is given':
      'Eine gespeicherte Decke; ohne Angabe die jetzige',
    'A motif you saved, where one motif is all': 'Ein gespeichertes Motiv, wenn es nur um eines geht',
    'The day of the first part': 'Der Tag des ersten Teils',
    'How often a part is given out: week, 2 weeks, 10 days':
      'Wie oft ein Teil ausgegeben wird: week, 2 weeks, 10 days',
    'What the make-along is called; the saved one’s name if not given':
      'Wie das Mitmachen heißt; ohne Angabe wie das Gespeicherte',
    'How many parts the motifs are shared over; by their stitches if not given':
      'Auf wie viele Teile die Motive verteilt werden; ohne Angabe nach ihren Maschen',
    'Your own parts instead, each with its day: 2031-01-06 swatch; 2031-01-13 first square':
      'Stattdessen eigene Teile, je mit Tag: 2031-01-06 swatch; 2031-01-13 first square',
    'The hour of the day at which a part is given out': 'Die Stunde, zu der ein Teil ausgegeben wird',
    'The time zone of that hour, like Europe/Berlin': 'Die Zeitzone dieser Stunde, wie Europe/Berlin',
    'The parts of a make-along with their days; one of them whole, with buttons for everyone':
      'Die Teile mit ihren Tagen; einer davon ganz, mit Knöpfen für alle',
    'Which part, by its number; all of them if not given':
      'Welcher Teil, mit seiner Nummer; ohne Angabe alle',
    'Which make-along; this channel’s if not given': 'Welches Mitmachen; ohne Angabe das dieses Kanals',
    'Teacher: change, move, add or remove a part, take it back or post it anew; set the hour':
      'Leitung: einen Teil ändern, verschieben, dazunehmen, entfernen, zurücknehmen; die Stunde',
    'Which part, by its number': 'Welcher Teil, mit seiner Nummer',
    'What to do with it': 'Was damit geschehen soll',
    'What it is called': 'Wie er heißt',
    'The day it is given out': 'Der Tag, an dem er ausgegeben wird',
    'Whether the parts after it move by as many days': 'Ob die Teile danach um ebenso viele Tage rücken',
    'What it asks, beside what follows from the work': 'Was zu tun ist, neben dem, was aus der Arbeit folgt',
    'What is done in a part that is added; read off its title if not given':
      'Was in einem neuen Teil getan wird; ohne Angabe aus seinem Titel gelesen',
    'A part that was given out: take it back, or post it anew':
      'Ein ausgegebener Teil: zurücknehmen oder neu ausgeben',
    'The hour of the day at which parts are given out': 'Die Stunde, zu der Teile ausgegeben werden',
    'The make-alongs of this server, with how far each is':
      'Die Mitmachen dieses Servers, und wie weit jedes ist',
    'Take part with your own yarn, gauge, hook, colours and size; or say any of them anew':
      'Mitmachen mit eigenem Garn, eigener Maschenprobe, Nadel, Farben, Größe; oder neu angeben',
    'Your gauge in the first motif’s stitch, like 15x12; later, if you have none yet':
      'Deine Maschenprobe in der Masche des ersten Motivs, wie 15x12; auch später',
    'Your hook': 'Deine Nadel',
    'Your yarn: length and weight of a ball, like 170m/100g':
      'Dein Garn: Länge und Gewicht eines Knäuels, wie 170m/100g',
    'Your colours for the pattern’s, in their order, or moss=teal, sand=cream':
      'Deine Farben für die der Vorlage, in deren Folge, oder moss=teal, sand=cream',
    'How wide yours is to be; the pattern’s columns if not given':
      'Wie breit deine werden soll; ohne Angabe die Spalten der Vorlage',
    'How high yours is to be': 'Wie hoch deine werden soll',
    'What one finished motif of yours measures, where you have one':
      'Was ein fertiges Motiv von dir misst, wenn du eines hast',
    'Minutes that one motif takes you': 'Minuten, die du für ein Motiv brauchst',
    'Whether the others may see by name how far you are':
      'Ob die anderen mit Namen sehen dürfen, wie weit du bist',
    'Leave a make-along; your part in it goes with you':
      'Ein Mitmachen verlassen; was von dir ist, geht mit dir',
    'Your own numbers for a part: rows, counts, side, yarn by colour, balls, hours':
      'Deine eigenen Zahlen für einen Teil: Reihen, Maschen, Seite, Garn je Farbe, Knäuel, Stunden',
    'Which part, by its number; the one you have before you if not given':
      'Welcher Teil, mit seiner Nummer; ohne Angabe der, den du vor dir hast',
    'Keeps your own blanket of it with its motifs, so that progress, handouts, yardage work on it':
      'Speichert deine eigene Decke mit ihren Motiven, für Fortschritt, Handzettel, Garn',
    'What yours is to be called; as the make-along is, if not given':
      'Wie deine heißen soll; ohne Angabe wie das Mitmachen',
    'yes puts it in the place of a blanket of that name': 'Mit Ja anstelle einer Decke dieses Namens',
    'Say that you are done with a part': 'Sagen, dass du mit einem Teil fertig bist',
    'Say where you are stuck, by row and counts or in words; it is answered at once, and counted':
      'Sagen, wo du festhängst, mit Reihe und Maschen oder in Worten; es wird gleich beantwortet',
    'The row you are stuck at, or the last one counted':
      'Die Reihe, in der du festhängst, oder die zuletzt gezählte',
    'What you counted, the count of that row last': 'Was du gezählt hast, diese Reihe zuletzt',
    'What is wrong, in your own words': 'Was nicht stimmt, in deinen Worten',
    'Whether the teacher may see, by your name, that you want help':
      'Ob die Leitung mit deinem Namen sehen darf, dass du Hilfe möchtest',
    'Which kind of motif; the one of the part if not given': 'Welche Sorte Motiv; ohne Angabe die des Teils',
    'Where everybody is: who is done with each part, stuck, not begun, in numbers':
      'Wo alle sind: fertig, festgefahren, nicht begonnen, in Zahlen je Teil',
    'How the class comes along, how far you are yourself, and the hours you have left':
      'Wie die Gruppe vorankommt, wie weit du bist, und wie viele Stunden dir bleiben',
    'The days of the parts as a calendar file, for any calendar that reads iCalendar':
      'Die Tage der Teile als Kalenderdatei, für jeden Kalender, der iCalendar liest',
    'Teacher: where the class got stuck most, in numbers; who asked for help; what to show next':
      'Leitung: wo die meisten festhängen, in Zahlen; wer Hilfe möchte; was als Nächstes zu zeigen',
    'Gives out the parts whose time has come, each once; in a server it says what is posted when':
      'Gibt fällige Teile aus, jeden einmal; auf einem Server: was wann ausgegeben wird',
    'Teacher: ask somebody to lead it; whoever is asked says yes by naming nobody':
      'Leitung: jemanden bitten zu leiten; wer gefragt ist, sagt ohne Namen ja',
    'Whom: mention her with @; in the terminal, her name. Left out, you say yes yourself':
      'Wen: mit @ erwähnen; im Terminal der Name. Ohne Angabe sagst du selbst ja',
    'Teacher: close a make-along, so that no more parts are given out, or open it again':
      'Leitung: ein Mitmachen schließen, sodass nichts mehr ausgegeben wird, oder wieder öffnen',
    'Close it, or open it again': 'Schließen oder wieder öffnen',
    'Takes back what you said last: done, stuck; of the teacher, a change of the parts as well':
      'Nimmt dein Letztes zurück: fertig, festgefahren; der Leitung auch eine Änderung der Teile',
    'What happened to the parts and who leads it, the latest first':
      'Was mit den Teilen geschah und wer leitet, das Neueste zuerst',
    'How many of the latest things': 'Wie viele der neuesten Dinge',
    'The blanket to print (PDF): yarn, layout, joining, border round by round, every motif’s rows':
      'Die Decke zum Drucken (PDF): Garn, Anordnung, Verbinden, Rand Runde für Runde, alle Reihen',
    'The group blanket to print (PDF): a sheet for the wall, and a slip for each maker':
      'Die gemeinsame Decke zum Drucken (PDF): ein Blatt für die Wand und ein Zettel für jede',
    'A kind of the group blanket to make: its rows in your own terms, its chart, a handout':
      'Eine Sorte der gemeinsamen Decke: Reihen in den eigenen Begriffen, Häkelschrift, Handzettel',
    'What the yarn left weighs, or how many balls of it there are':
      'Was das übrige Garn wiegt, oder wie viele Knäuel es sind',
    'How many whole motifs the yarn at hand makes, from one on the scale':
      'Wie viele ganze Motive das vorhandene Garn ergibt, nach einem auf der Waage',
    'What the yarn at hand weighs, or how many balls of it there are':
      'Was das vorhandene Garn wiegt, oder wie viele Knäuel es sind',
  },
};
