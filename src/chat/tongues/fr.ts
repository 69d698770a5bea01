/**
 * French. Trade words as they are usual among those who crochet and read patterns in French (common practice): échantillon for gauge,
 * bloquer for blocking, maille serrée and bride for the stitches. Names of quilt settings stay English, as quilters say them.
 */
import type { Tongue } from './tongue.ts';

export const fr: Tongue = {
  locales: ['fr'],
  commands: {
    lesson: 'leçon',
    ask: 'demander',
    stitches: 'mailles',
    gauge: 'échantillon',
    yardage: 'métrage',
    resize: 'dimensions',
    border: 'bordure',
    joining: 'assemblage',
    motif: 'motif',
    blanket: 'couverture',
    progress: 'avancée',
    settings: 'réglages',
    lookup: 'tables',
    together: 'ensemble',
    host: 'organisation',
    help: 'aide',
    along: 'ensemble',
  },
  questions: {
    answer: 'réponse',
    hint: 'indice',
    where: 'où',
    stop: 'poser',
    row: 'rang',
    which: 'lequel',
    check: 'vérifier',
    spread: 'répartir',
    repeat: 'répétition',
    compare: 'comparer',
    shape: 'forme',
    size: 'taille',
    weighed: 'pesé',
    swatch: 'échantillon',
    rough: 'estimation',
    left: 'reste',
    swap: 'échanger',
    spacing: 'espacement',
    rounds: 'tours',
    even: 'accorder',
    define: 'définir',
    show: 'montrer',
    list: 'liste',
    choose: 'choisir',
    words: 'explications',
    chart: 'diagramme',
    weigh: 'peser',
    remove: 'supprimer',
    undo: 'annuler',
    start: 'commencer',
    kinds: 'sortes',
    layout: 'disposition',
    colours: 'couleurs',
    change: 'changer',
    materials: 'fournitures',
    fit: 'réserve',
    scale: 'autre_taille',
    picture: 'image',
    next: 'suivant',
    back: 'retour',
    at: 'position',
    counted: 'compté',
    finished: 'fini',
    server: 'serveur',
    export: 'exporter',
    import: 'importer',
    erase: 'effacer',
    term: 'terme',
    hook: 'crochet',
    yarn: 'fil',
    care: 'précautions',
    open: 'ouvrir',
    board: 'tableau',
    join: 'participer',
    leave: 'partir',
    pledge: 'promettre',
    giveback: 'rendre',
    maker: 'personne',
    mine: 'les_miens',
    keep: 'maintenir',
    handin: 'remettre',
    pace: 'rythme',
    handover: 'confier',
    history: 'historique',
    accept: 'accepter',
    return: 'renvoyer',
    invite: 'inviter',
    shares: 'parts',
    remind: 'rappeler',
    parcels: 'colis',
    assemble: 'assembler',
    close: 'fermer',
    reopen: 'rouvrir',
    bar: 'écarter',
    handout: 'fiche',
    announce: 'annoncer',
    calendar: 'calendrier',
    plan: 'programme',
    part: 'partie',
    done: 'fini',
    stuck: 'bloquée',
    troubles: 'difficultés',
    save: 'garder',
    due: 'échéance',
    motif: 'motif',
    makes: 'donne',
  },
  options: {
    border_stitch: 'maille_bordure',
    kinds: 'sortes',
    as: 'nom_choisi',
    lesson: 'leçon',
    practice: 'exercice',
    words: 'mots',
    other: 'autres',
    seen_by: 'visible_par',
    shape: 'forme',
    size: 'taille',
    row: 'rang',
    other_size: 'autre_taille',
    stitch: 'maille',
    stitches: 'mailles',
    counts: 'comptes',
    from_row: 'dès_le_rang',
    from: 'de',
    to: 'à',
    worked: 'façon',
    multiple: 'multiple',
    plus: 'plus',
    near: 'près_de',
    width: 'largeur',
    gauge: 'échantillon',
    have: 'le_mien',
    want: 'modèle',
    hook: 'crochet',
    side: 'côté',
    motif: 'motif',
    ball: 'pelote',
    motifs: 'motifs',
    reserve: 'réserve',
    swatch_width: 'largeur_échantillon',
    swatch_height: 'hauteur_échantillon',
    weight: 'poids',
    height: 'hauteur',
    for: 'usage',
    yarn: 'fil',
    left: 'reste',
    each: 'par_motif',
    done_row: 'rang_fini',
    balls: 'pelotes',
    new_ball: 'nouvelle_pelote',
    border: 'bordure',
    row_step: 'pas_de_rangs',
    ends: 'bouts',
    corner: 'coin',
    columns: 'colonnes',
    rows: 'rangées',
    across: 'sur_largeur',
    down: 'sur_hauteur',
    rounds: 'tours',
    sides: 'côtés',
    wanted: 'souhait',
    method: 'méthode',
    name: 'nom',
    colours: 'couleurs',
    blocked: 'bloqué',
    keep: 'garder',
    replace: 'remplacer',
    step: 'pas',
    confirm: 'confirmer',
    arrange: 'répartition',
    setting: 'pose',
    map: 'plan',
    seed: 'tirage',
    joining: 'assemblage',
    join_colour: 'couleur_assemblage',
    border_colours: 'couleurs_bordure',
    add: 'ajouter',
    drop: 'ôter',
    turnings: 'rotations',
    a: 'a',
    b: 'b',
    colour: 'couleur',
    price: 'prix',
    hex: 'hex',
    forget: 'oublier',
    new_name: 'nouveau_nom',
    no_border: 'sans_bordure',
    minutes: 'minutes',
    stretch: 'souplesse',
    made: 'faits',
    from_made: 'déjà_faits',
    minutes_each: 'minutes_par_motif',
    units: 'unités',
    terms: 'termes',
    answers: 'réponses',
    tell: 'prévenir',
    craft: 'métier',
    own: 'personnel',
    where: 'où',
    file: 'fichier',
    photo: 'photo',
    term: 'terme',
    topic: 'sujet',
    blanket: 'couverture',
    spares: 'rechanges',
    closes: 'clôture',
    tolerance: 'tolérance',
    who: 'qui',
    here: 'ici',
    per_week: 'par_semaine',
    kind: 'sorte',
    maker: 'personne',
    answer: 'réponse',
    last: 'dernières',
    reason: 'raison',
    apply: 'appliquer',
    shown: 'montré',
    do: 'action',
    try: 'essai',
    about: 'sujet',
    paper: 'papier',
    print: 'impression',
    hand: 'main',
    thread: 'fil_de_discussion',
    event: 'événement',
    starts: 'commence',
    every: 'tous_les',
    shares: 'parts',
    list: 'liste',
    hour: 'heure',
    zone: 'fuseau',
    part: 'partie',
    title: 'titre',
    rest: 'suivantes',
    asks: 'consigne',
    work: 'travail',
    post: 'message',
    named: 'par_nom',
    help: 'aide',
  },
  menus: {
    'Work this out': 'Calculer',
    'Check these counts': 'Vérifier ces nombres',
    'Motifs in this group': 'Motifs dans ce groupe',
  },
  choices: {
    yes: 'oui',
    no: 'non',
    everyone: 'tout le monde',
    'only me': 'moi seulement',
    diagonal: 'diagonale',
    blocks: 'blocs',
    clusters: 'groupes',
    'solid-square': 'carré plein',
    circle: 'cercle',
    hexagon: 'hexagone',
    flat: 'à plat',
    'US sc (UK dc)': 'maille serrée (US sc, UK dc)',
    'US hdc (UK htr)': 'demi-bride (US hdc, UK htr)',
    'US dc (UK tr)': 'bride (US dc, UK tr)',
    'US tr (UK dtr)': 'double bride (US tr, UK dtr)',
    round: 'en rond',
    whip: 'surjet',
    'slip-stitch': 'mailles coulées',
    'single-crochet': 'mailles serrées',
    'plain: one kind everywhere': 'uni : une sorte partout',
    'checked: kinds in turn, along every row and column': 'damier : sortes alternées, par rangée et colonne',
    'stripes: a kind a row, in turn': 'rayures : une sorte par rangée',
    'scattered: as few alike side by side as can be': 'dispersé : le moins de semblables voisins',
    Upright: 'Upright',
    'Barn Raising': 'Barn Raising',
    'Straight Furrow': 'Straight Furrow',
    'Streak of Lightning': 'Streak of Lightning',
    'Light and Dark': 'Light and Dark',
    Pinwheel: 'Pinwheel',
    'Broken Dishes': 'Broken Dishes',
    Zigzag: 'Zigzag',
    'Flying Geese': 'Flying Geese',
    'metric (cm, m, g)': 'métriques (cm, m, g)',
    'imperial (in, yd, oz)': 'impériales (in, yd, oz)',
    US: 'US',
    UK: 'UK',
    'as is usual there': 'comme d’usage là-bas',
    'by a mention in its channel': 'par une mention dans son salon',
    'by a direct message': 'par message privé',
    'not at all': 'pas du tout',
    'everyone in the channel': 'tout le salon',
    'only whoever asks': 'seulement qui demande',
    'as is usual': 'comme d’usage',
    'in the whole server': 'sur tout le serveur',
    'in this channel only': 'ce salon seulement',
    babies: 'bébés',
    hands: 'mains',
    heat: 'chaleur',
    'small parts': 'petites pièces',
    selling: 'vente',
    'dye lots': 'bains de teinture',
    'rough estimates': 'estimations',
    anyone: 'tout le monde',
    'only whom the organiser names': 'seulement les personnes nommées',
    'US terms': 'termes US',
    'UK terms': 'termes UK',
    'yes, I will run it': 'oui, je m’en charge',
    'no, thank you': 'non, merci',
    ask: 'demander',
    'offer the pledges again': 'rouvrir ses promesses',
    'keep out': 'écarter',
    'let in again': 'laisser revenir',
    A4: 'A4',
    Letter: 'Letter',
    usual: 'habituelle',
    large: 'grande',
    right: 'droite',
    left: 'gauche',
    change: 'modifier',
    add: 'ajouter',
    remove: 'retirer',
    swatch: 'échantillon',
    first: 'premier motif',
    motifs: 'motifs',
    ends: 'rentrer les fils',
    'laying-out': 'disposer',
    joining: 'assembler',
    border: 'bordure',
    own: 'autre',
    'take it back': 'le reprendre',
    'post it anew': 'le republier',
    close: 'fermer',
    'open it again': 'rouvrir',
  },
  forms: {
    'Take part': 'Participer',
    'Where are you stuck?': 'Où bloques-tu ?',
    'Joining and border': 'Assemblage et bordure',
    'Start a blanket': 'Commencer une couverture',
    'Your answer': 'Ta réponse',
    'Weigh or measure a finished motif': 'Peser ou mesurer un motif fini',
    'Check my counts': 'Vérifier mes comptes',
    'Check these counts': 'Vérifier ces comptes',
    'Hand in finished motifs': 'Remettre des motifs finis',
    like: 'comme',
  },
  says: {
    'The stitch of the border’s first round; sc if not given':
      'La maille du premier tour de bordure ; sc sinon',
    'Saved motifs, commas between; the first is A, the next B':
      'Motifs enregistrés, séparés par des virgules ; le premier est A, le suivant B',
    'Lessons with tasks of your own: shown, tried, and told which slip it was':
      'Leçons avec vos propres exercices : montrer, essayer, dire quelle erreur c’était',
    'All lessons in their order, what each needs first, and how it stands with you':
      'Toutes les leçons dans l’ordre, ce que chacune demande avant, et où vous en êtes',
    'Begins a lesson: its idea, an example, and a task with numbers of your own':
      'Commence une leçon : son idée, un exemple, un exercice avec vos propres nombres',
    'Which lesson, by its name': 'Quelle leçon, par son nom',
    'Only another task, without the idea and the example':
      'Seulement un autre exercice, sans l’idée ni l’exemple',
    'Your answer to the task: whether it is right, and if not, what probably happened':
      'Votre réponse : si elle est juste, et sinon ce qui s’est sans doute passé',
    'What you found, a number or a stitch: 19, 18.3cm, dc':
      'Ce que vous trouvez, un nombre ou une maille : 19, 18.3cm, dc',
    'The lesson that is best done now: what is to be practised again, else what comes next':
      'La leçon à faire maintenant : ce qui est à revoir, sinon ce qui suit',
    'A hint for the task that is open: the first step, then the formula':
      'Un indice pour l’exercice en cours : le premier pas, puis la formule',
    'Which task is open, what you know, and what comes back when':
      'Quel exercice est en cours, ce que vous savez, et ce qui revient quand',
    'Sets the open task down; the lesson stays where it is':
      'Pose l’exercice en cours ; la leçon reste où elle est',
    'Ask in plain words, as you would ask a friend who crochets':
      'Demander avec ses mots, comme à une amie qui crochète',
    'What you would like to know, in your own words': 'Ce que vous voulez savoir, avec vos mots',
    'yes offers what else those words may mean': 'oui propose ce que ces mots peuvent encore vouloir dire',
    'Who sees the answer; your setting if not given': 'Qui voit la réponse ; sinon votre réglage',
    'Stitch counts: a row, which row you are on, a check of your counts, even spacing, repeats':
      'Nombres de mailles : un rang, à quel rang vous êtes, vos comptes, répartition, répétitions',
    'How many stitches a row has, how far along that is, and the total':
      'Combien de mailles dans un rang, où l’on en est, et le total',
    'The motif’s shape': 'La forme du motif',
    'Rising rows of a diagonal square, blocks along a side, rounds, or stitches of a flat piece':
      'Rangs montants du carré diagonal, blocs d’un côté, tours, ou mailles d’une pièce plate',
    'The row or round; the last one if not given': 'Le rang ou le tour ; le dernier par défaut',
    'Blocks along the other side, or rows of a flat piece':
      'Blocs de l’autre côté, ou rangs d’une pièce plate',
    'The stitch': 'La maille',
    'Which row you are on, from the stitches that you counted in it':
      'À quel rang vous êtes, d’après les mailles que vous y avez comptées',
    'Stitches counted in the row, or blocks': 'Mailles comptées dans le rang, ou blocs',
    'Rising rows of a diagonal square or blocks along a side; shapes in rounds need none':
      'Rangs montants d’un carré diagonal ou blocs d’un côté ; inutile pour les tours',
    'Blocks along the other side of a rectangle': 'Blocs de l’autre côté d’un rectangle',
    'A motif you saved, instead of shape and size':
      'Un motif enregistré, au lieu de la forme et de la taille',
    'Where your counts leave the pattern, what probably happened, and how to mend it':
      'Où vos comptes quittent le modèle, ce qui a dû arriver, et comment y remédier',
    'What you counted, row by row, like 3 5 7 8': 'Ce que vous avez compté, rang par rang, comme 3 5 7 8',
    'The row of the first count; 1 if not given': 'Le rang du premier compte ; 1 par défaut',
    'Increases or decreases spread evenly over a row or round, as an instruction to work':
      'Augmentations ou diminutions réparties également sur un rang ou un tour, en consigne',
    'Stitches there are': 'Mailles qu’il y a',
    'Stitches there should be': 'Mailles qu’il faudrait',
    'Flat in rows, or in the round; flat if not given': 'À plat en rangs, ou en rond ; à plat par défaut',
    'The stitch counts that suit a pattern repeat near a wish, and the chain to begin with':
      'Les nombres de mailles qui vont à une répétition, près du souhait, et la chaînette',
    'Stitches in one repeat: the 8 of “multiple of 8 plus 2”':
      'Mailles d’une répétition : le 8 de « multiple de 8 plus 2 »',
    'What is added once: the 2 of “multiple of 8 plus 2”; 0 if not given':
      'Ce qu’on ajoute une fois : le 2 de « multiple de 8 plus 2 » ; 0 par défaut',
    'The count you have in mind; or give width and gauge':
      'Le nombre visé ; ou donnez largeur et échantillon',
    'The width you have in mind, with gauge': 'La largeur visée, avec l’échantillon',
    'Stitches x rows over 10 cm, like 13x10, or 13x10 over 4in':
      'Mailles x rangs sur 10 cm, comme 13x10, ou 13x10 over 4in',
    'The stitch of the first row': 'La maille du premier rang',
    'Your own stitch and row against the pattern’s': 'Votre échantillon face à celui du modèle',
    'How far off a piece would be with your own gauge, which way, and the hook to try':
      'L’écart d’une pièce avec votre échantillon, dans quel sens, et le crochet à essayer',
    'Your swatch: stitches x rows over 10 cm, like 14x10, or 14x10 over 4in':
      'Votre échantillon : mailles x rangs sur 10 cm, comme 14x10, ou 14x10 over 4in',
    'The pattern’s: stitches x rows over 10 cm, like 13x10':
      'Celui du modèle : mailles x rangs sur 10 cm, comme 13x10',
    'The hook the swatch was worked with: 5mm, or a US size like H-8':
      'Le crochet de l’échantillon : 5mm, ou une taille US comme H-8',
    'The width the pattern means, like 120cm or 48in': 'La largeur prévue par le modèle, comme 120cm ou 48in',
    'Why a diagonal square comes off the hook as a diamond, what it blocks to, how to make it square':
      'Pourquoi un carré diagonal sort en losange, sa taille bloquée, comment le rendre carré',
    'Rising rows of the diagonal square': 'Rangs montants du carré diagonal',
    'Which size of diagonal square comes out at the side you wish, at your own gauge':
      'Quelle taille de carré diagonal donne le côté souhaité, avec votre échantillon',
    'Your own: stitches x rows over 10 cm, like 13x10, or 13x10 over 4in':
      'Le vôtre : mailles x rangs sur 10 cm, comme 13x10, ou 13x10 over 4in',
    'The side that one blocked motif should have': 'Le côté que doit avoir un motif bloqué',
    'The pattern’s own size in rising rows, to compare':
      'La taille du modèle en rangs montants, pour comparer',
    'How much yarn: from a weighed motif or swatch, a rough guess, what is left, another yarn':
      'Combien de fil : d’après le poids, l’échantillon, à peu près, le reste, un autre fil',
    'How much yarn and how many balls, from one finished motif on the scale':
      'Combien de fil et de pelotes, d’après un motif fini sur la balance',
    'What one finished motif weighs': 'Ce que pèse un motif fini',
    'Length and weight of a ball, like 170m/100g or 364yd/198g':
      'Longueur et poids d’une pelote, comme 170m/100g ou 364yd/198g',
    'How many motifs, or all of the current blanket; one if not given':
      'Combien de motifs, ou tous ceux de la couverture actuelle ; un par défaut',
    'Per cent to buy beyond the sum; 10 if not given': 'Pour cent à acheter en plus ; 10 par défaut',
    'How much yarn a whole blanket takes, from a weighed swatch, before any motif is made':
      'Combien de fil pour toute une couverture, d’après un échantillon pesé, avant tout motif',
    'How wide the swatch is': 'La largeur de l’échantillon',
    'How high the swatch is': 'La hauteur de l’échantillon',
    'What the swatch weighs': 'Ce que pèse l’échantillon',
    'How wide the blanket is to be; or give for': 'La largeur de la couverture ; ou donnez usage',
    'How high the blanket is to be': 'La hauteur de la couverture',
    'What it is for, instead of width and height: throw, queen, crib, UK king':
      'À quoi elle sert, sans largeur ni hauteur : throw, queen, crib, UK king',
    'A rough guess at the yarn, from the stitches, the hook and the thickness of the yarn':
      'Le fil à peu près, d’après les mailles, le crochet et l’épaisseur du fil',
    'The hook: 5mm, or a US size like H-8; a usual one for the yarn if not given':
      'Le crochet : 5mm, ou une taille US comme H-8 ; sinon l’usuel du fil',
    'Your gauge, like 13x10: much surer than hook and yarn':
      'Votre échantillon, comme 13x10 : bien plus sûr que crochet et fil',
    'How thick: a category 0 to 7, its name, or wraps per inch like 11wpi; else read off the ball':
      'Épaisseur : catégorie 0 à 7, son nom, ou des tours comme 11wpi ; sinon d’après la pelote',
    'How far the yarn that is left will go: the last row that can be finished':
      'Jusqu’où va le fil qui reste : le dernier rang qu’on peut finir',
    'The last row already finished; 0, nothing yet, if not given':
      'Le dernier rang fini ; 0 par défaut, rien encore',
    'How many balls of another yarn, by length': 'Combien de pelotes d’un autre fil, d’après la longueur',
    'Balls that the pattern asks for': 'Pelotes que demande le modèle',
    'The pattern’s ball, like 170m/100g or 364yd/198g': 'La pelote du modèle, comme 170m/100g ou 364yd/198g',
    'The new yarn’s ball, like 125m/50g': 'La pelote du nouveau fil, comme 125m/50g',
    'How many motifs, and how large, make a blanket of a wished size or number':
      'Combien de motifs, et de quelle taille, pour une couverture souhaitée',
    'The width you wish for': 'La largeur souhaitée',
    'The height you wish for': 'La hauteur souhaitée',
    'A number of motifs, in place of a size or beside it':
      'Un nombre de motifs, au lieu d’une taille ou avec elle',
    'The side of one finished motif, or give gauge and size':
      'Le côté d’un motif fini, ou donnez échantillon et taille',
    'With size: stitches x rows over 10 cm, like 13x10':
      'Avec taille : mailles x rangs sur 10 cm, comme 13x10',
    'With gauge: rising rows of the diagonal square': 'Avec échantillon : rangs montants du carré diagonal',
    'How wide the border is': 'La largeur de la bordure',
    'With size: rows by which the motif may grow or shrink, like a stripe':
      'Avec taille : rangs dont le motif peut grandir ou rapetisser, comme une rayure',
    'With gauge and size: the motif’s shape; only diagonal is reckoned from rows':
      'Avec échantillon et taille : la forme ; seule la diagonale se calcule par rangs',
    'Ends of yarn that each motif leaves; 2 if not given':
      'Bouts de fil que laisse chaque motif ; 2 par défaut',
    'A border that lies flat: stitches along each side, and round by round':
      'Une bordure bien plate : mailles le long de chaque côté, et tour par tour',
    'How many border stitches each side takes, shared evenly over the motifs':
      'Combien de mailles de bordure par côté, réparties également sur les motifs',
    'The width of the edge, before the border': 'La largeur du bord, avant la bordure',
    'The height of the edge, before the border': 'La hauteur du bord, avant la bordure',
    'The border’s stitches over 10 cm, like 14, or 14 over 4in':
      'Les mailles de la bordure sur 10 cm, comme 14, ou 14 over 4in',
    'Stitches in each corner; 3 if not given': 'Mailles dans chaque coin ; 3 par défaut',
    'The border pattern’s multiple; 1 if not given': 'Le multiple du motif de bordure ; 1 par défaut',
    'The border pattern’s plus; 0 if not given': 'Le plus du motif de bordure ; 0 par défaut',
    'Motifs along the width, to share the stitches over': 'Motifs sur la largeur, entre lesquels répartir',
    'Motifs along the height': 'Motifs sur la hauteur',
    'The motif’s shape, with size: what its edges take from its rows':
      'La forme, avec taille : ce que ses bords prennent de ses rangs',
    'The stitch of the motif': 'La maille du motif',
    'A saved motif, instead of shape and size': 'Un motif enregistré, au lieu de forme et taille',
    'How the border grows, round by round, and whether its corners will lie flat':
      'Comment la bordure grandit, tour par tour, et si ses coins resteront plats',
    'Stitches along the width in the first round, between corners':
      'Mailles du premier tour sur la largeur, entre les coins',
    'Stitches along the height in the first round, between corners':
      'Mailles du premier tour sur la hauteur, entre les coins',
    'One stitch a round, like hdc dc hdc': 'Une maille par tour, comme hdc dc hdc',
    'Motifs of different size made to meet: which to pin out, which to edge, which to leave out':
      'Motifs inégaux à accorder : lesquels épingler, border, ou laisser de côté',
    'The measured side of every motif, like 14.2 15 15 15.6cm':
      'Le côté mesuré de chaque motif, comme 14.2 15 15 15.6cm',
    'The side that all are to have; one of theirs, where most of them meet, if not given':
      'Le côté que tous doivent avoir ; sinon celui où la plupart se rejoignent',
    'The edge’s stitches over 10 cm, like 13': 'Les mailles du bord sur 10 cm, comme 13',
    'The hook for the edging': 'Le crochet pour le bord',
    'How thick: a category 0 to 7, its name, or wraps per inch like 11wpi':
      'Épaisseur : catégorie 0 à 7, son nom, ou des tours comme 11wpi',
    'How long the seams are, how much yarn they take, and in which order to join':
      'Longueur des coutures, fil qu’elles prennent, et dans quel ordre assembler',
    'Motifs side by side': 'Motifs côte à côte',
    'Motifs under each other': 'Motifs l’un sous l’autre',
    'The side of one finished motif': 'Le côté d’un motif fini',
    'How they are joined': 'Comment ils sont assemblés',
    'The hook: 5mm, or a US size like H-8': 'Le crochet : 5mm, ou une taille US comme H-8',
    'Motifs of your own: saved, in words, drawn, weighed':
      'Vos motifs : enregistrés, en mots, dessinés, pesés',
    'Saves a motif of your own: its shape, size, stitch, gauge and colours':
      'Enregistre un motif à vous : forme, taille, maille, échantillon et couleurs',
    'What you call it': 'Comment vous l’appelez',
    'The colours by row, like: 4 rows moss, 2 rows sand, three times, then 6 rows moss':
      'Les couleurs par rang (en anglais) : 4 rows moss, 2 rows sand, three times',
    'Whether the gauge was counted on a blocked piece': 'Si l’échantillon a été compté sur une pièce bloquée',
    'no only shows how it would be; it is kept if not given': 'non montre seulement ; sinon c’est gardé',
    'yes replaces a motif of the same name': 'oui remplace un motif du même nom',
    'The motif’s name; the current one if not given': 'Le nom du motif ; l’actuel par défaut',
    'Your saved motifs, and which one is current': 'Vos motifs enregistrés, et lequel est l’actuel',
    'Makes a saved motif the current one, which all questions mean if none is named':
      'Fait d’un motif enregistré l’actuel, celui de toutes les questions sans nom',
    'The motif’s name': 'Le nom du motif',
    'The instructions row by row, in your own terms, with the count at the end of each row':
      'Les explications rang par rang, dans vos termes, avec le compte à la fin de chaque rang',
    'Draws the motif: stitch by stitch while that can be read, else row by row with its counts':
      'Dessine le motif : maille par maille si c’est lisible, sinon rang par rang avec comptes',
    'What lies on the scale weighs: one finished motif, or several together':
      'Ce que pèse ce qui est sur la balance : un motif fini, ou plusieurs ensemble',
    'How many finished motifs lie on the scale together':
      'Combien de motifs finis sont ensemble sur la balance',
    'The steps that the scale shows; whole grams if not given':
      'Les pas de la balance ; grammes entiers par défaut',
    'Forget what was weighed of it before': 'Oublier ce qui en a été pesé avant',
    'How long a side of it is': 'La longueur d’un de ses côtés',
    'The hook it was worked with': 'Le crochet avec lequel il est fait',
    'Removes a saved motif; asks first, and it can be undone for a day':
      'Supprime un motif enregistré ; demande d’abord, réversible un jour',
    'yes removes it; without it you are asked': 'oui le supprime ; sinon on vous demande',
    'Brings back a motif that was removed or replaced within the last day':
      'Rend un motif supprimé ou remplacé depuis moins d’un jour',
    'Its name; the last one removed if not given': 'Son nom ; le dernier supprimé par défaut',
    'A blanket of your own: its layout, what it takes, how far your yarn goes, another size':
      'Votre couverture : disposition, fournitures, jusqu’où va le fil, autre taille',
    'Starts a blanket from saved motifs: its kinds, columns and rows, layout, joining, border':
      'Commence une couverture avec des motifs enregistrés : sortes, taille, pose, bordure',
    'How kinds are spread over the places': 'Comment les sortes sont réparties',
    'How motifs are turned; for squares split corner to corner':
      'Comment les motifs tournent ; carrés coupés en diagonale',
    'How many of each kind, scattered: A 12, B 8': 'Combien de chaque sorte, dispersés : A 12, B 8',
    'A map of your own: letters, rows parted by /; a digit turns: A0B1/B2A3':
      'Votre plan : lettres, rangées séparées par / ; un chiffre tourne : A0B1/B2A3',
    'Another number scatters kinds another way': 'Un autre nombre disperse autrement',
    'How motifs are joined; whip if not given': 'Comment les motifs sont assemblés ; surjet par défaut',
    'The colour they are joined with': 'La couleur de l’assemblage',
    'The border, one stitch a round from the inside': 'La bordure, une maille par tour, de l’intérieur',
    'One colour for the whole border, or one a round': 'Une couleur pour toute la bordure, ou une par tour',
    'Stitches in each corner of the border; 3 if not given': 'Mailles par coin de la bordure ; 3 par défaut',
    'Yarn to buy beyond what the sum says; 10 % if not given': 'Fil à acheter en plus ; 10 % par défaut',
    'Everything that is kept of a blanket: kinds, layout, size, border, colours, how far it is':
      'Tout ce qui est gardé d’une couverture : sortes, plan, taille, bordure, couleurs, avancée',
    'The blanket’s name; the current one if not given': 'Le nom de la couverture ; l’actuelle par défaut',
    'The kinds of motif in a blanket and how many of each to make; adds or drops one':
      'Les sortes de motifs d’une couverture et combien de chaque ; en ajoute ou en ôte une',
    'Saved motifs to add, commas between': 'Motifs à ajouter, entre virgules',
    'Kinds to take out, commas between': 'Sortes à ôter, entre virgules',
    'Lays the motifs: which kind where, and how it is turned; shows the layout if nothing is asked':
      'Pose les motifs : quelle sorte où, et tournée comment ; sinon montre la disposition',
    'Instead of a setting: quarter turns by kind, A 0, B 1, C 2; or random, with seed':
      'Ou des quarts de tour par sorte, A 0, B 1, C 2 ; ou random, avec tirage',
    'Another number of columns': 'Un autre nombre de colonnes',
    'Another number of rows': 'Un autre nombre de rangées',
    'yes lays a map of another size; without it you are asked':
      'oui pose un plan d’une autre taille ; sinon on vous demande',
    'Changes two places of the layout about, by their numbers':
      'Échange deux places de la disposition, par leurs numéros',
    'The one place; numbered row by row from the top left':
      'L’une ; numérotée rangée par rangée, d’en haut à gauche',
    'The other place': 'L’autre place',
    'The colours of a blanket: how each looks, its ball, price, and how many are at hand':
      'Les couleurs d’une couverture : aspect, pelote, prix, et combien vous en avez',
    'The colour to say something of; all are shown if not given':
      'De quelle couleur il s’agit ; toutes par défaut',
    'Price of one ball, in your own money, like 4.50': 'Prix d’une pelote, dans votre monnaie, comme 4.50',
    'Balls at hand; a part of a ball counts as a part': 'Pelotes en réserve ; une part compte en part',
    'How it looks, as #rrggbb': 'Son aspect, en #rrggbb',
    'yes forgets ball, price, balls and look of this colour':
      'oui oublie pelote, prix, réserve et aspect de la couleur',
    'Changes a blanket’s name, joining, border or reserve':
      'Change nom, assemblage, bordure ou réserve d’une couverture',
    'Another name for it': 'Un autre nom',
    'yes takes the border away': 'oui enlève la bordure',
    'What a blanket takes, colour by colour: yarn, balls to buy, weight, cost, ends, hours':
      'Ce que prend une couverture, par couleur : fil, pelotes, poids, coût, bouts, heures',
    'Another reserve than the blanket’s own': 'Une autre réserve que celle de la couverture',
    'The largest blanket that the yarn at hand makes, and which colour runs out first':
      'La plus grande couverture avec le fil en réserve, et la couleur qui manque d’abord',
    'How far its proportions may change, per cent': 'De combien ses proportions peuvent changer, en %',
    'yes counts motifs alone, without seams and border':
      'oui compte les motifs seuls, sans coutures ni bordure',
    'The same blanket at another size: setting continued, make-counts, border, yarn, before and after':
      'La même couverture à une autre taille : pose, nombres, bordure, fil, avant et après',
    'The new number of motifs side by side': 'Le nouveau nombre de motifs côte à côte',
    'The new number of motifs under each other': 'Le nouveau nombre de motifs l’un sous l’autre',
    'Or about how wide it should be': 'Ou sa largeur approchée',
    'Or about how high it should be': 'Ou sa hauteur approchée',
    'yes keeps the new size': 'oui garde la nouvelle taille',
    'Draws the blanket: colours, turnings, numbers, border, legend, size; what is made filled in':
      'Dessine la couverture : couleurs, sens, numéros, bordure, légende, taille ; le fait rempli',
    'no draws the plan even where motifs are made': 'non dessine le plan même où des motifs sont faits',
    'All the blankets you saved, and which is the current one':
      'Toutes vos couvertures enregistrées, et laquelle est l’actuelle',
    'Makes a saved blanket the current one, which all questions mean if none is named':
      'Fait d’une couverture enregistrée l’actuelle, celle de toutes les questions sans nom',
    'The blanket’s name': 'Le nom de la couverture',
    'Removes a saved blanket; asks first, and it can be undone for a day':
      'Supprime une couverture enregistrée ; demande d’abord, réversible un jour',
    'Takes back the last change of a blanket, its removal among them, within a day':
      'Annule le dernier changement d’une couverture, sa suppression aussi, sous un jour',
    'Its name, if it was not the last one': 'Son nom, si ce n’est pas la dernière',
    'Where you are: rows, motifs, what comes next, what is still to come':
      'Où vous en êtes : rangs, motifs, la suite, et ce qui reste à faire',
    'One more row is done: counts it, and says what the coming row is':
      'Un rang de plus est fait : le compte, et dit comment est le suivant',
    'Only if this is the last row done: so that nothing is counted twice':
      'Seulement si c’est le dernier rang fait : pour ne rien compter deux fois',
    'One row fewer is done: it was ripped back, or counted too soon':
      'Un rang de moins : il a été défait, ou compté trop tôt',
    'Sets where you are: the last row done, and how many motifs are made':
      'Fixe où vous en êtes : le dernier rang fait, et combien de motifs sont faits',
    'The last row that is done; 0 before the first': 'Le dernier rang fait ; 0 avant le premier',
    'How many of this motif are made; as before if not given':
      'Combien de ce motif sont faits ; comme avant par défaut',
    'Holds what you counted against the row you are at, and says what to do where it differs':
      'Compare votre compte au rang où vous êtes, et dit quoi faire s’il diffère',
    'The count of the last row done, or of several, the last row last':
      'Le compte du dernier rang fait, ou de plusieurs, le dernier à la fin',
    'A motif is finished: one more is made, and the next begins with its first row':
      'Un motif est fini : un de plus, et le suivant commence à son premier rang',
    'Only if so many were made before: so that nothing is counted twice':
      'Seulement si tant étaient faits avant : pour ne rien compter deux fois',
    'yes counts one that is only half made by its rows; without it you are asked':
      'oui en compte un qui n’est qu’à moitié fait ; sinon on vous demande',
    'How far you are, how much yarn is still to come, and whether what is left will do':
      'Où vous en êtes, combien de fil encore, et si ce qui reste suffira',
    'What the yarn that is left weighs': 'Ce que pèse le fil qui reste',
    'Which colour that is, where there are several': 'Quelle couleur, s’il y en a plusieurs',
    'Takes back the last thing that was counted of a motif': 'Annule la dernière chose comptée d’un motif',
    'Your units and terms, and everything that is kept about you':
      'Vos unités et vos termes, et tout ce qui est gardé de vous',
    'Your units, your terms, who sees your answers, and what is kept of you':
      'Vos unités, vos termes, qui voit vos réponses, et ce qui est gardé de vous',
    'Sets your units, your terms, or who sees your answers':
      'Fixe vos unités, vos termes, ou qui voit vos réponses',
    'Centimetres, metres and grams, or inches, yards and ounces':
      'Centimètres, mètres et grammes, ou inches, yards et ounces',
    'Whose names of stitches you read and type': 'Quels noms de mailles vous lisez et écrivez',
    'Who sees answers to you in a server': 'Qui voit vos réponses sur un serveur',
    'How you hear of what concerns you in a group blanket, at most once a day':
      'Comment vous apprenez ce qui vous touche dans un groupe, au plus une fois par jour',
    'Manager of a server: who sees answers there, in all of it or in one channel':
      'Gestion du serveur : qui y voit les réponses, partout ou dans un salon',
    'Who sees answers about the craft: stitches, gauge, yarn, sizes':
      'Qui voit les réponses sur le métier : mailles, échantillon, fil, tailles',
    'Who sees answers about what is the asker’s own: motifs, blankets, progress':
      'Qui voit les réponses sur ce qui est à soi : motifs, couvertures, avancée',
    'Where it is to be so; in the whole server if not given': 'Où ce sera ainsi ; tout le serveur par défaut',
    'Everything that is kept about you, as one file': 'Tout ce qui est gardé de vous, en un fichier',
    'Takes back a file that /settings export made, in place of what is kept':
      'Reprend un fichier de /settings export, à la place de ce qui est gardé',
    'The file that /settings export made': 'Le fichier que /settings export a fait',
    'Whether to replace what is kept of you now': 'S’il faut remplacer ce qui est gardé de vous',
    'Erases everything that is kept about you; asks first':
      'Efface tout ce qui est gardé de vous ; demande d’abord',
    'Whether to erase it now; without it you see what would go':
      'S’il faut effacer maintenant ; sinon vous voyez ce qui partirait',
    'Published tables: terms, hooks, yarn weights, usual sizes, and what to take care of':
      'Tables publiées : termes, crochets, grosseurs de fil, tailles usuelles, précautions',
    'What a stitch name or abbreviation means, US to UK and back; two of them told apart':
      'Ce que veut dire un nom de maille ou une abréviation, US vers UK et retour ; deux comparés',
    'A name or abbreviation, or two to tell apart: dc, UK tr, sc vs dc':
      'Un nom ou une abréviation, ou deux à comparer : dc, UK tr, sc vs dc',
    'Hook sizes in millimetres, US letters and numbers, old UK numbers and steel, both ways':
      'Tailles de crochet en millimètres, lettres et numéros US, anciens UK et acier',
    'A size in any system: 5mm, H-8, 7, UK 6, steel 7':
      'Une taille dans tout système : 5mm, H-8, 7, UK 6, steel 7',
    'Yarn weight categories 0 to 7: stitches, hooks, wraps; by number, name, wraps or ball band':
      'Catégories de fil 0 à 7 : mailles, crochets, tours ; par numéro, nom, wpi ou étiquette',
    'A category 0 to 7, a name, wraps like 12wpi, or a ball like 170m/100g; all if left out':
      'Catégorie 0 à 7, un nom, des tours comme 12wpi, ou une pelote comme 170m/100g ; sinon toutes',
    'Sizes that beds, cribs and blankets usually have, each with who says so':
      'Tailles usuelles des lits, berceaux et couvertures, chacune avec sa source',
    'What it is for: queen, crib, lap, throw, UK king; the list of names if left out':
      'Pour quoi : queen, crib, lap, throw, UK king ; la liste par défaut',
    'What to take care of: babies, hands, heat, small parts, selling, dye lots, rough estimates':
      'Précautions : bébés, mains, chaleur, petites pièces, vente, bains, estimations',
    'What it is about; everything if left out': 'De quoi il s’agit ; tout par défaut',
    'A blanket made by a group: quotas, pledges, hand-ins, a board that is never wrong':
      'Une couverture faite en groupe : quotas, promesses, remises, un tableau toujours juste',
    'Opens a group blanket from a saved one: quotas by kind, spares, a closing day; posts the board':
      'Ouvre une couverture de groupe : quotas par sorte, rechanges, jour de clôture ; affiche le tableau',
    'A blanket you saved; the current one if not given': 'Une de vos couvertures ; l’actuelle par défaut',
    'What the group blanket is called; the saved one’s name if not given':
      'Son nom dans le groupe ; celui de l’enregistrée par défaut',
    'Motifs of each kind beyond what the layout needs':
      'Motifs de chaque sorte au-delà de ce que demande le plan',
    'The day by which motifs are wanted': 'Le jour où les motifs sont voulus',
    'What one motif should measure; reckoned from the motif if not given':
      'Ce que doit mesurer un motif ; calculé du motif par défaut',
    'How far off a side may be before it is flagged': 'L’écart permis d’un côté avant qu’il soit signalé',
    'Who may join': 'Qui peut participer',
    'How far the group blanket is: a picture, and made, pledged and open by kind':
      'Où en est le groupe : une image, et par sorte fait, promis et libre',
    'Which group blanket; this channel’s if not given':
      'Quelle couverture de groupe ; celle du salon par défaut',
    'Organiser: move the board into this channel': 'Organisation : amener le tableau dans ce salon',
    'The group blankets of this server': 'Les couvertures de groupe de ce serveur',
    'Take part, or change what you said: motifs a week, colours at hand, terms':
      'Participer, ou changer vos indications : motifs par semaine, couleurs, termes',
    'How many motifs a week you can make': 'Combien de motifs vous faites par semaine',
    'Colours you have, with commas between; all of them if not given':
      'Vos couleurs, entre virgules ; toutes par défaut',
    'Whose stitch names you read': 'Quels noms de mailles vous lisez',
    'Leave; what you pledged and have not made is open to others again':
      'Partir ; ce que vous aviez promis et pas fait redevient libre',
    'Promise motifs of a kind; they are yours to make and nobody else’s':
      'Promettre des motifs d’une sorte ; ils sont à vous et à personne d’autre',
    'Which kind of motif': 'Quelle sorte de motif',
    'How many; all of that kind are meant by all': 'Combien ; all veut dire tous ceux de la sorte',
    'Give back motifs you pledged and will not make': 'Rendre des motifs promis que vous ne ferez pas',
    'What you hold: pledged, handed in, accepted, sent back':
      'Ce que vous avez : promis, remis, accepté, renvoyé',
    'What one of the makers has of the group blanket: pledged, handed in, accepted':
      'Ce qu’une personne a de la couverture du groupe : promis, remis, accepté',
    'Whose motifs': 'Les motifs de qui',
    'Say that what you pledged still stands': 'Dire que vos promesses tiennent toujours',
    'Hand in finished motifs, with their measured side': 'Remettre des motifs finis, avec leur côté mesuré',
    'Their measured side, blocked if you blocked them': 'Leur côté mesuré, bloqué si vous les avez bloqués',
    'What they weigh, all of them together on the scale': 'Ce qu’ils pèsent, tous ensemble sur la balance',
    'A picture of them, shown to everybody in the group’s channel':
      'Une image, montrée à tous dans le salon du groupe',
    'The hook you used, to be told which to try': 'Votre crochet, pour savoir lequel essayer',
    'yes hands in more than you pledged; without it you are asked':
      'oui remet plus que promis ; sinon on vous demande',
    'How fast motifs come in, what the closing day needs, and when it will be done':
      'À quelle vitesse viennent les motifs, ce qu’exige la clôture, et quand ce sera fini',
    'Shopping lists: your pledges, and the whole group’s, bought by each or together':
      'Listes d’achats : pour vos promesses, et pour tout le groupe, séparés ou ensemble',
    'Organiser: ask somebody to run the blanket, who says yes or no with answer':
      'Organisation : prier quelqu’un de prendre la suite ; on répond par réponse',
    'Whom: somebody who takes part or was named': 'Qui ; la personne participe ou a été nommée',
    'Your answer, where you were asked to run it': 'Votre réponse, si on vous a priée de prendre la suite',
    'Takes back your last pledge or hand-in; for the organiser, the latest thing that happened':
      'Annule votre dernière promesse ou remise ; pour l’organisation, la dernière chose arrivée',
    'What happened to the blanket, the latest first': 'Ce qui est arrivé à la couverture, le dernier d’abord',
    'How many': 'Combien',
    'For whoever runs a group blanket: accept motifs, share out, remind, put together':
      'Pour qui organise une couverture de groupe : accepter, partager, rappeler, assembler',
    'Organiser: accept motifs that were handed in; without numbers, lists those that wait':
      'Organisation : accepter des motifs remis ; sans numéros, la liste de ceux qui attendent',
    'Their numbers, like 3 5 7-9, or all that wait': 'Leurs numéros, comme 3 5 7-9, ou all pour tous',
    'yes accepts those too whose side is off; without it you are asked':
      'oui accepte aussi ceux dont le côté s’écarte ; sinon on vous demande',
    'Organiser: send motifs back with a reason; they are their makers’ again':
      'Organisation : renvoyer des motifs avec une raison ; ils sont de nouveau à qui les a faits',
    'Their numbers, like 3 5 7-9': 'Leurs numéros, comme 3 5 7-9',
    'Why, in a friendly sentence': 'Pourquoi, en une phrase aimable',
    'Organiser: name somebody who may join': 'Organisation : nommer quelqu’un qui peut participer',
    'A fair split of what is still open, by what each can make by the day; shown first, then applied':
      'Un partage juste de ce qui est libre, selon ce que chacun peut faire ; montré, puis appliqué',
    'Organiser: pledge these shares now': 'Organisation : promettre ces parts maintenant',
    'Share out the spares as well': 'Partager aussi les rechanges',
    'The number under the shares that were shown: apply those, or none':
      'Le numéro sous les parts montrées : appliquer celles-là, ou aucune',
    'Organiser: ask a quiet maker whether the pledges stand; a week later offer them again':
      'Organisation : demander si des promesses tiennent ; une semaine après, les rouvrir',
    Whom: 'Qui',
    'Ask, or offer the pledges to others once the week is over':
      'Demander, ou rouvrir les promesses à d’autres la semaine passée',
    'Who holds what and what has arrived: a list for posting day, and as a CSV file':
      'Qui a quoi et ce qui est arrivé : une liste pour l’envoi, et un fichier CSV',
    'Which motif goes where so that neighbours fit, the joining, and the border’s counts':
      'Quel motif va où pour que les voisins s’accordent, l’assemblage, les comptes de la bordure',
    'Another number gives another arrangement': 'Un autre nombre donne une autre disposition',
    'Organiser: close the blanket to new pledges; what is pledged can still be handed in':
      'Organisation : fermer aux promesses ; ce qui est promis peut encore être remis',
    'Organiser: open a closed blanket again, or move its closing day':
      'Organisation : rouvrir une couverture fermée, ou déplacer sa clôture',
    'The new closing day': 'Le nouveau jour de clôture',
    'Organiser: keep a maker from taking part and give back what is held, or let a maker in again':
      'Organisation : rendre tout ce qu’a quelqu’un et l’écarter, ou le laisser revenir',
    'Why, in a friendly sentence; the maker sees it, and so does whoever reads the history':
      'Pourquoi, en une phrase aimable ; vue par la personne et par qui lit l’historique',
    'Keep from taking part, or let in again': 'Écarter de la participation, ou laisser revenir',
    'What can be asked here, and how': 'Ce qu’on peut demander ici, et comment',
    'A word for what you want to know, like yarn, or a question, like stitches row':
      'Un mot pour ce que vous cherchez, comme yarn, ou une question, comme stitches row',
    'Whose names of stitches; your own if not given':
      'Les noms de mailles de quel pays ; les vôtres si rien n’est dit',
    'The motif to print (PDF): yarn, rows in words with boxes to tick, chart, colours, cautions':
      'Le motif à imprimer (PDF) : fil, rangs à cocher, diagramme, couleurs, précautions',
    'The paper; Letter for who measures in inches, else A4':
      'Le papier ; Letter si vous mesurez en pouces, sinon A4',
    'large prints in letters of 18 points': 'grande imprime en lettres de 18 points',
    'The colours of a motif and how they are drawn; hex says how one looks':
      'Les couleurs d’un motif et leur dessin ; hex dit l’aspect de l’une d’elles',
    'yes forgets the look of this colour': 'oui oublie l’aspect de cette couleur',
    'The hand that holds your hook: charts and directions are mirrored for the left':
      'La main qui tient le crochet : pour la gauche, diagrammes et directions sont inversés',
    'Organiser: give the blanket a thread with its board pinned, or an event for its closing day':
      'Organisation : un fil avec le tableau épinglé, ou un événement pour le jour de clôture',
    'yes makes a thread of this channel for it; no takes the board back':
      'oui lui fait un fil de ce salon ; non ramène le tableau',
    'yes puts its closing day among the server’s events; no takes it out':
      'oui met le jour de clôture parmi les événements du serveur ; non l’en retire',
    'Everything that is kept of a motif: its rows, colours, ends, weight, side and time':
      'Tout ce qui est gardé d’un motif : rangs, couleurs, bouts, poids, côté et temps',
    'Keeps what a finished motif weighs, measures and takes in time, and what that says of yarn and size':
      'Garde ce qu’un motif fini pèse, mesure et prend de temps, et ce que cela dit du fil',
    'Minutes that one takes you, for the hours of a blanket':
      'Minutes que l’un vous prend, pour les heures d’une couverture',
    'Minutes that one motif takes you, of the first kind or kind by kind, for the hours':
      'Minutes pour un motif, de la première sorte ou par sorte, pour les heures',
    'Minutes that one motif takes you; as kept, or from your own rows, if not given':
      'Minutes pour un motif ; sinon comme gardé, ou d’après vos rangs',
    'The closing day as a calendar file, for any calendar that reads iCalendar':
      'Le jour de clôture en fichier d’agenda, pour tout agenda qui lit iCalendar',
    'A make-along in parts: everybody makes her own, with her own numbers, after a teacher’s':
      'Un ouvrage en parties : chacune fait le sien, avec ses propres chiffres, d’après un modèle',
    'Opens a make-along from a saved blanket or motif: parts with their days, each maker’s own numbers':
      'Ouvre un ouvrage suivi, d’une couverture ou d’un motif : parties, jours, chiffres de chacune',
    'A blanket you saved; the current one if neither is given':
      'Une couverture enregistrée ; sans indication, l’actuelle',
    'A motif you saved, where one motif is all': 'Un motif enregistré, s’il n’y en a qu’un',
    'The day of the first part': 'Le jour de la première partie',
    'How often a part is given out: week, 2 weeks, 10 days':
      'À quel rythme une partie paraît : week, 2 weeks, 10 days',
    'What the make-along is called; the saved one’s name if not given':
      'Le nom de l’ouvrage suivi ; sans indication, celui du modèle',
    'How many parts the motifs are shared over; by their stitches if not given':
      'En combien de parties répartir les motifs ; sans indication, d’après leurs mailles',
    'Your own parts instead, each with its day: 2031-01-06 swatch; 2031-01-13 first square':
      'Vos propres parties, chacune avec son jour : 2031-01-06 swatch; 2031-01-13 first square',
    'The hour of the day at which a part is given out': 'L’heure à laquelle une partie paraît',
    'The time zone of that hour, like Europe/Berlin': 'Le fuseau de cette heure, comme Europe/Berlin',
    'The parts of a make-along with their days; one of them whole, with buttons for everyone':
      'Les parties avec leurs jours ; l’une d’elles entière, avec des boutons pour toutes',
    'Which part, by its number; all of them if not given':
      'Quelle partie, par son numéro ; sans indication, toutes',
    'Which make-along; this channel’s if not given':
      'Quel ouvrage suivi ; sans indication, celui de ce salon',
    'Teacher: change, move, add or remove a part, take it back or post it anew; set the hour':
      'Meneuse : modifier, déplacer, ajouter, retirer ou reprendre une partie ; régler l’heure',
    'Which part, by its number': 'Quelle partie, par son numéro',
    'What to do with it': 'Ce qu’il faut en faire',
    'What it is called': 'Son titre',
    'The day it is given out': 'Le jour où elle paraît',
    'Whether the parts after it move by as many days':
      'Si les parties suivantes sont décalées d’autant de jours',
    'What it asks, beside what follows from the work': 'Ce qu’elle demande, outre ce qui découle du travail',
    'What is done in a part that is added; read off its title if not given':
      'Le travail d’une partie ajoutée ; sans indication, lu dans son titre',
    'A part that was given out: take it back, or post it anew':
      'Une partie déjà parue : la reprendre, ou la republier',
    'The hour of the day at which parts are given out': 'L’heure à laquelle les parties paraissent',
    'The make-alongs of this server, with how far each is':
      'Les ouvrages suivis de ce serveur, et où ils en sont',
    'Take part with your own yarn, gauge, hook, colours and size; or say any of them anew':
      'Participer avec vos fil, échantillon, crochet, couleurs et taille ; ou en changer',
    'Your gauge in the first motif’s stitch, like 15x12; later, if you have none yet':
      'Votre échantillon dans la maille du premier motif, comme 15x12 ; plus tard si besoin',
    'Your hook': 'Votre crochet',
    'Your yarn: length and weight of a ball, like 170m/100g':
      'Votre fil : longueur et poids d’une pelote, comme 170m/100g',
    'Your colours for the pattern’s, in their order, or moss=teal, sand=cream':
      'Vos couleurs pour celles du modèle, dans l’ordre, ou moss=teal, sand=cream',
    'How wide yours is to be; the pattern’s columns if not given':
      'La largeur voulue ; sans indication, les colonnes du modèle',
    'How high yours is to be': 'La hauteur voulue',
    'What one finished motif of yours measures, where you have one':
      'Ce que mesure un de vos motifs finis, si vous en avez un',
    'Minutes that one motif takes you': 'Minutes qu’il vous faut pour un motif',
    'Whether the others may see by name how far you are':
      'Si les autres peuvent voir par votre nom où vous en êtes',
    'Leave a make-along; your part in it goes with you':
      'Quitter un ouvrage suivi ; ce qui est de vous part avec vous',
    'Your own numbers for a part: rows, counts, side, yarn by colour, balls, hours':
      'Vos chiffres pour une partie : rangs, mailles, côté, fil par couleur, pelotes, heures',
    'Which part, by its number; the one you have before you if not given':
      'Quelle partie, par son numéro ; sans indication, celle que vous avez devant vous',
    'Keeps your own blanket of it with its motifs, so that progress, handouts, yardage work on it':
      'Garde votre propre couverture avec ses motifs, pour l’avancée, les fiches et le fil',
    'What yours is to be called; as the make-along is, if not given':
      'Le nom de la vôtre ; sans indication, celui de l’ouvrage',
    'yes puts it in the place of a blanket of that name': 'oui : à la place d’une couverture de ce nom',
    'Say that you are done with a part': 'Dire que vous avez fini une partie',
    'Say where you are stuck, by row and counts or in words; it is answered at once, and counted':
      'Dire où vous êtes bloquée, par rang et comptes ou en mots ; la réponse vient aussitôt',
    'The row you are stuck at, or the last one counted': 'Le rang où vous êtes bloquée, ou le dernier compté',
    'What you counted, the count of that row last': 'Ce que vous avez compté, ce rang en dernier',
    'What is wrong, in your own words': 'Ce qui ne va pas, en vos mots',
    'Whether the teacher may see, by your name, that you want help':
      'Si la meneuse peut voir, par votre nom, que vous voulez de l’aide',
    'Which kind of motif; the one of the part if not given':
      'Quelle sorte de motif ; sans indication, celle de la partie',
    'Where everybody is: who is done with each part, stuck, not begun, in numbers':
      'Où chacune en est : fini, bloquée, pas commencé, en chiffres par partie',
    'How the class comes along, how far you are yourself, and the hours you have left':
      'Où en est le groupe, où vous en êtes, et les heures qui vous restent',
    'The days of the parts as a calendar file, for any calendar that reads iCalendar':
      'Les jours des parties en fichier d’agenda, pour tout agenda qui lit iCalendar',
    'Teacher: where the class got stuck most, in numbers; who asked for help; what to show next':
      'Meneuse : où le groupe bloque le plus, en chiffres ; qui veut de l’aide ; quoi montrer',
    'Gives out the parts whose time has come, each once; in a server it says what is posted when':
      'Publie les parties échues, chacune une fois ; sur un serveur, dit ce qui paraît quand',
    'Teacher: ask somebody to lead it; whoever is asked says yes by naming nobody':
      'Meneuse : demander à quelqu’un de mener ; celle-ci dit oui sans nommer personne',
    'Whom: mention her with @; in the terminal, her name. Left out, you say yes yourself':
      'Qui : à mentionner avec @ ; au terminal, son nom. Sans indication, vous dites oui',
    'Teacher: close a make-along, so that no more parts are given out, or open it again':
      'Meneuse : fermer un ouvrage suivi, plus rien ne paraît, ou le rouvrir',
    'Close it, or open it again': 'Fermer ou rouvrir',
    'Takes back what you said last: done, stuck; of the teacher, a change of the parts as well':
      'Reprend ce que vous avez dit en dernier : fini, bloquée ; meneuse : une modification aussi',
    'What happened to the parts and who leads it, the latest first':
      'Ce qui est arrivé aux parties et qui mène, le plus récent d’abord',
    'How many of the latest things': 'Combien des derniers événements',
    'The blanket to print (PDF): yarn, layout, joining, border round by round, every motif’s rows':
      'La couverture à imprimer (PDF) : fil, disposition, assemblage, bordure, rangs de chaque motif',
    'The group blanket to print (PDF): a sheet for the wall, and a slip for each maker':
      'La couverture commune à imprimer (PDF) : une affiche et un papillon pour chacune',
    'A kind of the group blanket to make: its rows in your own terms, its chart, a handout':
      'Un motif de la couverture commune : ses rangs dans vos termes, son diagramme, une fiche',
    'What the yarn left weighs, or how many balls of it there are':
      'Ce que pèse le fil qui reste, ou combien de pelotes il y a',
    'How many whole motifs the yarn at hand makes, from one on the scale':
      'Combien de motifs entiers donne le fil en réserve, d’après un sur la balance',
    'What the yarn at hand weighs, or how many balls of it there are':
      'Ce que pèse le fil en réserve, ou combien de pelotes il y a',
  },
};
