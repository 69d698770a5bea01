/** The room with Discord: interactions in, messages out. */
import { createHash } from 'node:crypto';
import { ComponentType, MessageFlags, PermissionFlagsBits } from 'discord.js';
import type {
  AutocompleteInteraction,
  BaseInteraction,
  ButtonInteraction,
  ChatInputCommandInteraction,
  MessageContextMenuCommandInteraction,
  ModalSubmitInteraction,
  StringSelectMenuInteraction,
  UserContextMenuCommandInteraction,
} from 'discord.js';
import { otherwise, readAsLine, readWords } from '../../asked/answer.ts';
import { answerWaiting } from '../../asked/completing.ts';
import { AskedBack } from '../../asked/asked-back.ts';
import type { PhotoGone, RenderedAnswer, Telling } from '../../chat/answer.ts';
import { ask } from '../../chat/ask.ts';
import { serverOf, type Context, type Maker, type Place } from '../../chat/context.ts';
import { waysOf } from '../../chat/first-ways.ts';
import { readLine, type RawOptions } from '../../chat/line.ts';
import { metaOf, type Choice } from '../../chat/options.ts';
import { exampleLine } from '../../chat/reference.ts';
import type { Route, Registry } from '../../chat/registry.ts';
import { Problem, QUESTION } from '../../core/base/problem.ts';
import type { Projects } from '../../projects/projects.ts';
import type { Settings } from '../../projects/schema.ts';
import { USUALLY, type About, type Seen } from '../../projects/servers.ts';
import type { Asked } from './asked.ts';
import type { Respond } from './callbacks.ts';
import { coded, meantBy, readButton, serialOf, type Button, type Does } from './buttons.ts';
import { Companion, isOwnTrouble } from './companion.ts';
import { pointedBy } from './context-menu.ts';
import { SEEN_BY, WORK_THIS_OUT } from './declare.ts';
import {
  attachedPicture,
  attachedText,
  outgoing,
  sent,
  type Outgoing,
  type Picture,
  type Sent,
} from './files.ts';
import type { Makers } from '../../chat/made-file.ts';
import { formIn, formKey, formOf, openedBy, opensForm, readForm, refilling, type Opening } from './forms.ts';
import type { Heard } from './heard.ts';
import { COMMAND, SUGGESTIONS } from './limits.ts';
import { chosenIn } from './menu.ts';
import { Metrics, type Outcome } from './metrics.ts';
import { askingFor, formFor, TYPED, waitingIn } from './missing.ts';
import { mentionOf, peopleAmong, whoIs, type People } from './people.ts';
import type { PhotoToShow } from './photos.ts';
import { refusalFacts, type Log } from './platform.ts';
import { CommonPace, Rate, typingPace, type OtherProcesses, type Pace } from './rate.ts';
import { Recent } from './recent.ts';
import { keptIn, lineOf, render, saysReadAs, type Drawn, type Row } from './render.ts';
import { DEFER_AFTER_MS, Reply, type Answerable, type Outbound, type Where } from './reply.ts';
import { asFilledIn, asTyped, clean, clock, escaped, fit, oneLine } from './text.ts';
import type { Thread } from './threads.ts';
import { Turns } from './turns.ts';
import { Unfoldables } from './unfoldable.ts';
import { askedAgain, isAlone, makerOf, outlineOf, placeOf, readCommand, type Pressed } from './typed.ts';

export interface RoomParts {
  readonly registry: Registry;
  readonly projects: Projects;
  readonly log: Log;
  /** Notes a fault of ours with its error; returns the id to show. */
  readonly fault: (error: unknown) => string;
  readonly makers: Makers;
  readonly pace?: Pace | undefined;
  /** Other processes of this bot, which people press as well. */
  readonly others?: OtherProcesses | undefined;
  readonly deferAfter?: number | undefined;
  /** Sends what answers an interaction at once; the client's own REST if not given. */
  readonly respond?: Respond | undefined;
  /** The moment of asking; the real clock if not given. */
  readonly now?: (() => Date) | undefined;
  /** Tells others what concerns them. */
  readonly tell?: ((tellings: readonly Telling[]) => Promise<void>) | undefined;
  /** Told of each group blanket whose board is to be shown anew. */
  readonly boardChanged?: ((board: string) => void) | undefined;
  /** Told of each make-along whose parts may be due at another time. */
  readonly alongChanged?: ((along: string) => void) | undefined;
  /** Posts a photo of somebody’s motifs; says in a sentence what came of it. Never rejects. */
  readonly showPhoto?: ((photo: PhotoToShow, context: Context) => Promise<string>) | undefined;
  /** Takes a photo away whose motifs were taken back; says in a sentence what came of it. Never rejects. */
  readonly hidePhoto?: ((photo: PhotoGone, context: Context) => Promise<string>) | undefined;
  /** The thread that an interaction comes out of; undefined for none. */
  readonly inThread?: ((interaction: BaseInteraction) => Thread | undefined) | undefined;
  /** Where attachments may be fetched from. */
  readonly attachmentHosts?: readonly string[] | undefined;
  /** The id under which the platform knows a command, once it is registered. */
  readonly commandId?: ((name: string) => string | undefined) | undefined;
}

/** Interactions and presses that are remembered, so that what arrives twice is done once. */
const REMEMBERED = 10_000;
/** The platform waits for three seconds; offers that come later help nobody. */
const SUGGEST_MS = 2_000;
/** A form that cannot be opened any more leaves time to answer without one. */
const OFFERED_MS = 1_200;

/** What may open a form. */
type OpensForms = Exclude<Answerable, ModalSubmitInteraction | StringSelectMenuInteraction>;
type FormAsked = Pick<Opening, 'found' | 'given' | 'fields' | 'again'>;
interface Opens {
  readonly interaction: OpensForms;
  readonly form: () => Promise<ReturnType<typeof formOf>>;
}

const NO_FILES: Outgoing = { files: [], notes: [] };

interface Attachments {
  readonly texts: RawOptions | undefined;
  readonly picture: Picture | undefined;
}
const NONE_ATTACHED: Attachments = { texts: undefined, picture: undefined };

/** What a question came to, before it is drawn. */
interface Answered {
  readonly found: Route;
  readonly shown: RenderedAnswer;
  /** What asks it again. */
  readonly again: Asked | undefined;
  /** What it is remembered by, where it was. */
  readonly kept?: string;
}

/** Who sees answers, as far as it was chosen. */
interface Ways {
  /** By the asker, for all of hers. */
  readonly answers: Settings['answers'];
  /** For the place; undefined outside of servers. */
  readonly seen: Readonly<Record<About, Seen>> | undefined;
}

/** What an answer is drawn for. */
type Drawable = Pick<Answerable, 'id' | 'context' | 'guildId' | 'attachmentSizeLimit'> & {
  readonly user: { readonly id: string };
};

export class DiscordRoom {
  readonly metrics = new Metrics();
  private readonly rate: Rate;
  private readonly typing: Rate;
  private readonly common: CommonPace | undefined;
  private readonly companion: Companion;
  private readonly arrived = new Recent(REMEMBERED);
  private readonly pressed = new Recent(REMEMBERED);
  private readonly unfoldable: Unfoldables;
  private telling: Promise<unknown> = Promise.resolve();
  private readonly running = new Set<Promise<void>>();
  private readonly pictures = new Turns('pictures');
  private readonly sheets = new Turns('sheets');
  private closing = false;

  constructor(private readonly parts: RoomParts) {
    const seconds = () => performance.now() / 1000;
    this.rate = new Rate(seconds, parts.pace);
    this.typing = new Rate(seconds, typingPace(parts.pace));
    this.unfoldable = new Unfoldables({
      kept: parts.projects.answers,
      inCommon: parts.projects.store.inCommon === true,
      isKnown: (maker, shown) => parts.projects.isKnown(maker, shown),
      now: () => parts.now?.() ?? new Date(),
      missed: (error) => parts.log.warn(refusalFacts(error), 'an answer was not kept for its working'),
    });
    this.companion = new Companion(() => parts.projects.store.away === true);
    this.common = parts.others && new CommonPace(this.rate, parts.others);
  }

  /** Takes an interaction. Never rejects. */
  async take(interaction: BaseInteraction): Promise<void> {
    const work = this.taken(interaction);
    this.running.add(work);
    await work;
    this.running.delete(work);
  }

  private async taken(interaction: BaseInteraction): Promise<void> {
    try {
      await this.route(interaction);
    } catch (error) {
      this.parts.fault(error);
    }
  }

  /** Takes a message to the bot; `give` sends the reply. Never rejects. */
  async hear(heard: Heard, give: (message: Outbound) => Promise<void>): Promise<void> {
    if (!this.arrived.add(heard.id)) return;
    this.common?.pressed();
    const started = performance.now();
    const work = this.heard(heard, give).then((outcome) => {
      this.metrics.note(outcome, performance.now() - started);
    });
    this.running.add(work);
    await work;
    this.running.delete(work);
  }

  /** Resolves when everybody is told what was to be told. */
  async told(): Promise<void> {
    await this.telling;
  }

  /** Takes nothing more; resolves when the running answers are out, after `patience` milliseconds at the latest. */
  async close(patience: number): Promise<void> {
    this.closing = true;
    this.common?.close();
    let timer: NodeJS.Timeout | undefined;
    const enough = new Promise<void>((done) => {
      timer = setTimeout(done, patience);
    });
    await Promise.race([Promise.allSettled([...this.running, this.telling]), enough]);
    await Promise.race([this.unfoldable.keep(), enough]);
    clearTimeout(timer);
  }

  private async route(interaction: BaseInteraction): Promise<void> {
    if (interaction.isAutocomplete()) return this.suggest(interaction);
    if (
      !interaction.isChatInputCommand() &&
      !interaction.isButton() &&
      !interaction.isStringSelectMenu() &&
      !interaction.isModalSubmit() &&
      !interaction.isMessageContextMenuCommand() &&
      !interaction.isUserContextMenuCommand()
    )
      return;
    if (!this.arrived.add(interaction.id)) return;
    this.common?.pressed();
    const started = performance.now();
    const opens = this.opens(interaction);
    const outcome = (opens && (await this.openForm(opens))) ?? (await this.answer(interaction));
    this.metrics.note(outcome, performance.now() - started);
  }

  private async answer(interaction: Answerable): Promise<Outcome> {
    const button = interaction.isButton() ? readButton(interaction.customId) : undefined;
    const own = button !== undefined && button.owner === coded(interaction.user.id);
    const { log, deferAfter = DEFER_AFTER_MS, respond } = this.parts;
    const reply = new Reply(interaction, log, deferAfter, respond, this.companion);
    const went = (arrived: boolean, outcome: Outcome) => (arrived ? outcome : 'lost');
    try {
      this.admit(interaction);
      const arrived =
        interaction.isStringSelectMenu() || interaction.isModalSubmit()
          ? await this.complete(interaction, reply)
          : interaction.isButton()
            ? await this.press(interaction, button, own, reply)
            : interaction.isMessageContextMenuCommand()
              ? await this.pointedAtMessage(interaction, reply)
              : interaction.isUserContextMenuCommand()
                ? await this.pointedAtPerson(interaction, reply)
                : await this.question(interaction, reply);
      return went(arrived, 'answers');
    } catch (error) {
      const known = error instanceof Problem;
      const problem = known ? error : broken(this.parts.fault(error));
      const typed = this.typedInto(interaction);
      const message = {
        ...(known ? this.refused(problem, interaction) : refusal(problem)),
        ...(typed && refilling(typed, interaction)),
      };
      if (isOwnTrouble(error)) await reply.letOther();
      const where = stays(interaction) ? 'same' : 'new';
      return went(await reply.send(message, where, true), known ? 'refusals' : 'faults');
    }
  }

  /** What was typed into a form; undefined where nothing was, or the form is none of these. */
  private typedInto(interaction: Answerable) {
    const form = interaction.isModalSubmit() ? formIn(interaction) : undefined;
    return form && interaction.isModalSubmit()
      ? readForm(form, interaction, (path) => this.parts.registry.get(path))
      : undefined;
  }

  private async heard(heard: Heard, give: (message: Outbound) => Promise<void>): Promise<Outcome> {
    // Whoever writes too much at once is left waiting without a word: a reply to each would only add to it.
    if (this.rate.take(heard.user.id) > 0) return 'refusals';
    const [message, outcome] = await this.replyFor(heard);
    try {
      await give(message);
      return outcome;
    } catch (error) {
      this.parts.log.warn(refusalFacts(error), 'a reply did not go out');
      return 'lost';
    }
  }

  private async replyFor(heard: Heard): Promise<[Outbound, Outcome]> {
    const began = performance.now();
    try {
      this.admitWhileOpen();
      return [await this.answerTo(heard), 'answers'];
    } catch (error) {
      if (isOwnTrouble(error)) await this.companion.yields(began);
      if (error instanceof Problem) return [this.refused(error, heard), 'refusals'];
      return [refusal(broken(this.parts.fault(error))), 'faults'];
    }
  }

  /** Answers words as /ask does. A reply is seen by everyone in the channel: what is for her alone is not given there. */
  private async answerTo(heard: Heard): Promise<Outbound> {
    const { registry } = this.parts;
    const { maker, place, words } = heard;
    if (words === '') {
      throw new Problem('message-without-words', 'Ask in the same message.', {
        hint: 'Something like: how many 6 inch squares for a 4 by 5 foot blanket? Or /help.',
      });
    }
    const { context, ways } = await this.contextFor(maker, place, heard.id);
    if (!isAlone(heard)) {
      if (ways.answers === 'me') throw forHerAlone('Your answers are set to be seen by you alone.');
      const { verdict } = await readWords(words, registry, context);
      if (verdict.kind !== 'unclear') {
        const { question, command } = verdict.reading.route;
        if (question.private === true) throw forHerAlone('That answer is for you alone.');
        const seen = command.about && ways.seen?.[command.about];
        if (ways.answers === undefined && seen?.chosen !== undefined && seen.by === 'asker')
          throw forHerAlone('Answers of that kind are seen by the asker alone here.');
      }
    }
    const asked = await this.asked(registry.find(['ask']), { words }, context);
    if (!isAlone(heard) && isOwn(asked)) {
      throw asked.found.question.changes === true
        ? new Problem('answer-for-one', 'The answer to that is for you alone.', {
            hint: 'See how things stand with a command.',
          })
        : forHerAlone('That answer is for you alone.');
    }
    return this.drawn(heard, asked);
  }

  private admitWhileOpen(): void {
    if (this.closing)
      throw new Problem('restarting', 'I am just being restarted.', {
        hint: 'Ask again in half a minute; nothing is lost.',
      });
  }

  private admit({ user }: BaseInteraction): void {
    this.admitWhileOpen();
    const wait = this.rate.take(user.id);
    if (wait > 0) {
      throw new Problem('too-fast', 'That was a lot at once.', {
        hint: `Give me ${wait === 1 ? 'a second' : `${wait} seconds`}, then ask again.`,
      });
    }
  }

  private async question(interaction: ChatInputCommandInteraction, reply: Reply): Promise<boolean> {
    const { words, typed, attached, seenBy, people } = readCommand(
      interaction.commandName,
      interaction.options.data,
    );
    const found = this.parts.registry.find(words);
    const { context, ways } = await this.contextOf(interaction, interaction.id, people);
    const hidden = isHidden(interaction, found, seenBy, ways);
    reply.expect('new', hidden);
    const { texts, picture } =
      attached.length === 0 ? NONE_ATTACHED : await this.attached(interaction, found, attached);
    const all: RawOptions = texts ? { ...typed, ...texts } : typed;
    const answered = await this.asked(found, all, picture ? { ...context, pictured: true } : context);
    const asked = picture ? await this.withPhoto(answered, picture, context) : answered;
    // Plain words are answered to whom the question that they mean is answered.
    const alone = hidden || isHidden(interaction, asked.found, seenBy, ways);
    return this.give(interaction, reply, asked, { where: 'new', hidden: alone, open: false });
  }

  /** What is attached to a question: texts by their options, and a picture, whose option takes its name. */
  private async attached(
    interaction: ChatInputCommandInteraction,
    { question }: Route,
    attached: Pressed['attached'],
  ): Promise<Attachments> {
    const hosts = this.parts.attachmentHosts;
    let picture: Picture | undefined;
    const texts = await Promise.all(
      attached.map(async ([option, file]) => {
        const schema = question.options[option];
        if (schema === undefined || metaOf(schema).kind !== 'photo')
          return [option, await attachedText(file, option, hosts)];
        if (!mayAttach(interaction)) throw noPhotos(option);
        picture = await attachedPicture(file, option, hosts);
        return [option, oneLine(file.name)];
      }),
    );
    return { texts: Object.fromEntries(texts) as RawOptions, picture };
  }

  /** Takes away what shows motifs that were taken back, and says what came of it. */
  private async withoutPhotos(
    shown: RenderedAnswer,
    photosGone: readonly PhotoGone[],
    context: Context,
  ): Promise<RenderedAnswer> {
    const { hidePhoto } = this.parts;
    if (!hidePhoto || photosGone.length === 0) return shown;
    const said = await Promise.all(photosGone.map((photo) => hidePhoto(photo, context)));
    return { ...shown, lines: [...shown.lines, ...new Set(said)] };
  }

  /** Shows the picture that came along, where the answer says so, and says what came of it. */
  private async withPhoto(asked: Answered, picture: Picture, context: Context): Promise<Answered> {
    const { photo } = asked.shown;
    const said = photo && (await this.parts.showPhoto?.({ ...photo, picture }, context));
    if (said === undefined) return asked;
    return { ...asked, shown: { ...asked.shown, lines: [...asked.shown.lines, said] } };
  }

  /** What is asked of somebody’s message that opens no form: its words are worked out, or nothing was found in it. */
  private async pointedAtMessage(
    interaction: MessageContextMenuCommandInteraction,
    reply: Reply,
  ): Promise<boolean> {
    if (interaction.commandName === WORK_THIS_OUT.name) return this.workOut(interaction, reply);
    const pointed = pointedBy(this.parts.registry, interaction.commandName, 'message');
    const given = pointed?.finds(interaction.targetMessage.content);
    if (!pointed) throw tooOld();
    if (!given) {
      throw new Problem('nothing-found-in-message', pointed.none, {
        hint: `Type it yourself: ${exampleLine(pointed.found)}`,
      });
    }
    const { context } = await this.contextOf(interaction, interaction.id);
    const asked = await this.asked(pointed.found, given as RawOptions, context);
    return this.give(interaction, reply, asked, { where: 'new', hidden: true, open: false });
  }

  /** What is asked of somebody, answered to the one who asks alone. */
  private async pointedAtPerson(
    interaction: UserContextMenuCommandInteraction,
    reply: Reply,
  ): Promise<boolean> {
    const pointed = pointedBy(this.parts.registry, interaction.commandName, 'person');
    if (!pointed) throw tooOld();
    reply.expect('new', true);
    const { targetUser, targetMember } = interaction;
    const person = makerOf({ user: targetUser, member: targetMember });
    const people = peopleAmong([{ ...person, bot: targetUser.bot }], pointed.option);
    const { context } = await this.contextOf(interaction, interaction.id, people);
    const asked = await this.asked(pointed.found, { [pointed.option]: mentionOf(person.id) }, context);
    return this.give(interaction, reply, asked, { where: 'new', hidden: true, open: false });
  }

  /** Answers the words of somebody’s message, for the one who asks alone. Nothing is changed by what somebody else wrote. */
  private async workOut(interaction: MessageContextMenuCommandInteraction, reply: Reply): Promise<boolean> {
    const words = interaction.targetMessage.content.trim();
    if (words === '') {
      throw new Problem('message-without-words', 'There are no words in that message.', {
        hint: 'Ask with /ask, in words of your own.',
      });
    }
    reply.expect('new', true);
    const { registry } = this.parts;
    const { context: here } = await this.contextOf(interaction, interaction.id);
    // What somebody else wrote lets no message of ours stand in the channel: no board is put there.
    const context: Context = { ...here, place: { ...here.place, mute: 'asker' } };
    const { verdict } = await readWords(words, registry, context);
    if (verdict.kind !== 'unclear' && verdict.reading.route.question.changes === true) {
      throw new Problem('message-would-change', 'Those words would change what is saved of you.', {
        hint: 'If you mean them, say them yourself with /ask.',
      });
    }
    const asked = await this.asked(registry.find(['ask']), { words }, context);
    return this.give(interaction, reply, asked, { where: 'new', hidden: true, open: false });
  }

  /** A refusal, with what asks for the missing thing where it is one. */
  private refused(problem: Problem, asker: Parameters<typeof askingFor>[2]): Outbound {
    const waiting = waitingOf(problem);
    return { ...refusal(problem), ...(waiting && askingFor(waiting, this.parts.registry, asker)) };
  }

  /** What form is asked for, if one is; most ask for none, and nobody waits to be told so. */
  private opens(interaction: Answerable): Opens | undefined {
    if (interaction.isModalSubmit() || interaction.isStringSelectMenu()) return undefined;
    // Opened as often as anything else is asked; too fast, it is refused like any other press.
    if (this.closing || this.rate.waits(interaction.user.id) > 0) return undefined;
    const made = interaction.isButton() ? this.missingForm(interaction) : undefined;
    if (made) return { interaction, form: () => Promise.resolve(made) };
    try {
      const opening = this.openingOf(interaction);
      return opening && { interaction, form: () => this.questionForm(interaction, opening) };
    } catch {
      // The answer says what is wrong.
      return undefined;
    }
  }

  /** Opens a form; undefined where it cannot be made. */
  private async openForm({ interaction, form }: Opens): Promise<Outcome | undefined> {
    const made = await form().catch(() => undefined);
    if (!made) return undefined;
    this.rate.take(interaction.user.id);
    try {
      await interaction.showModal(made);
      return 'answers';
    } catch (error) {
      this.parts.log.warn(refusalFacts(error), 'a form was not opened');
      return 'lost';
    }
  }

  /** The form for the one thing that plain words left out. */
  private missingForm(interaction: ButtonInteraction) {
    const button = readButton(interaction.customId);
    if (button?.does !== 'missing' || button.owner !== coded(interaction.user.id)) return undefined;
    const waiting = waitingIn(button, this.keptIn(interaction));
    return waiting && formFor(waiting, interaction.customId, this.parts.registry, interaction.locale);
  }

  /** The form of a question that is asked without what its form asks, or by a button that opens it. */
  private async questionForm(interaction: OpensForms, opening: FormAsked) {
    const { found, given } = opening;
    const offered = await this.offered(interaction, found, given);
    const asker = interaction.user.id;
    const { locale } = interaction;
    return formOf({ ...opening, asker, serial: serialOf(interaction.id), offered, locale });
  }

  private openingOf(interaction: OpensForms): FormAsked | undefined {
    const { registry } = this.parts;
    if (interaction.isButton()) {
      const button = readButton(interaction.customId);
      if (button?.does !== 'form' && button?.does !== 'refill') return undefined;
      if (button.owner !== '' && button.owner !== coded(interaction.user.id)) return undefined;
      const meant = openedBy(button, this.keptIn(interaction));
      const found = meant && registry.get(meant.path);
      // What everybody may press is answered to each alone.
      const seen = button.owner === '' ? { [SEEN_BY]: 'me' } : {};
      return found && { ...meant, found, given: { ...meant.given, ...seen } };
    }
    if (interaction.isMessageContextMenuCommand() || interaction.isUserContextMenuCommand()) {
      const pointed = pointedBy(registry, interaction.commandName, 'message');
      if (!pointed?.found.question.form || !interaction.isMessageContextMenuCommand()) return undefined;
      const given = pointed.finds(interaction.targetMessage.content) as RawOptions | undefined;
      return given && { found: pointed.found, given: { ...given, [SEEN_BY]: 'me' }, again: false };
    }
    const { commandName, options } = interaction;
    const { path, has, attaches } = outlineOf(commandName, options.data);
    const found = registry.get(path);
    if (!found?.question.form || attaches || !opensForm(found, has)) return undefined;
    const { typed, seenBy } = readCommand(commandName, options.data);
    const given = { ...typed, ...(seenBy === undefined ? {} : { [SEEN_BY]: seenBy }) };
    return { found, given, again: false };
  }

  /** What may be chosen for the options of a form, as far as it is known in time. */
  private async offered(interaction: BaseInteraction, { question }: Route, given: RawOptions) {
    const choices = new Map<string, readonly Choice[]>();
    const began = performance.now();
    const look = async () => {
      const { context } = await this.contextOf(interaction, interaction.id);
      for (const name of question.form?.asks ?? []) {
        const schema = question.options[name];
        const { suggest, onlyOffered } = schema ? metaOf(schema) : {};
        if (suggest && onlyOffered === true) choices.set(name, await suggest('', context, given));
      }
    };
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<void>((done) => {
      timer = setTimeout(done, OFFERED_MS);
    });
    try {
      await Promise.race([look(), late]);
    } catch (error) {
      if (!(error instanceof Problem)) this.parts.fault(error);
      if (isOwnTrouble(error)) await this.companion.yields(began);
    } finally {
      clearTimeout(timer);
    }
    return new Map(choices);
  }

  /** Asks what was typed into a form. What is sent twice is counted once. */
  private async filledIn(
    interaction: ModalSubmitInteraction,
    button: Button,
    reply: Reply,
  ): Promise<boolean> {
    if (button.owner !== coded(interaction.user.id)) throw notYours();
    const typed = this.typedInto(interaction);
    if (!typed) throw lost();
    const { found } = typed;
    const { [SEEN_BY]: seenBy, ...options } = typed.given;
    const { context, ways } = await this.contextOf(
      interaction,
      formKey(interaction.user.id, interaction.customId),
    );
    const hidden = isHidden(interaction, found, seenBy, ways);
    const where = stays(interaction) && hidden ? 'same' : 'new';
    reply.expect(where, hidden);
    const asked = await this.asked(found, options, context);
    return this.give(interaction, reply, asked, { where, hidden, open: false });
  }

  /** Puts in what was missing, and answers where that was all. */
  private async complete(
    interaction: StringSelectMenuInteraction | ModalSubmitInteraction,
    reply: Reply,
  ): Promise<boolean> {
    const button = readButton(interaction.customId);
    if (button?.does === 'choose' && interaction.isStringSelectMenu())
      return this.choose(interaction, button, reply);
    const form = interaction.isModalSubmit() ? formIn(interaction) : undefined;
    if (form && interaction.isModalSubmit()) return this.filledIn(interaction, form, reply);
    const { message } = interaction;
    const kept = message && message.author.id === interaction.client.user.id ? keptIn(message.embeds) : [];
    const waiting = button?.does === 'missing' ? waitingIn(button, kept) : undefined;
    const { registry } = this.parts;
    const found = waiting && registry.get(waiting.path);
    if (!button || !message || !waiting || !found) throw lost();
    if (button.owner !== coded(interaction.user.id)) throw notYours();
    const ephemeral = message.flags.has(MessageFlags.Ephemeral);
    const { context } = await this.contextOf(interaction, interaction.id);
    const said = interaction.isModalSubmit()
      ? interaction.fields.getTextInputValue(TYPED)
      : (interaction.values[0] ?? '');
    reply.expect('same', ephemeral);
    try {
      const asked = await this.asked(found, {}, context, async () => {
        const shown = await answerWaiting(said, waiting, registry, context);
        if (shown) return shown;
        throw new AskedBack('not-understood', 'That does not say what is missing.', {
          option: waiting.option,
          hint: `Say it again, like ${exampleOf(found, waiting.option)}`,
          waiting,
        });
      });
      const same = ephemeral || isAlone(interaction) || !isOwn(asked);
      const where = same ? 'same' : 'new';
      return await this.give(interaction, reply, asked, {
        where,
        hidden: same ? ephemeral : true,
        open: false,
      });
    } catch (error) {
      if (!(error instanceof Problem) || waitingOf(error) === undefined) throw error;
      // The next thing is asked for where the last one was.
      return reply.send(
        { embeds: [], components: [], ...this.refused(error, interaction) },
        'same',
        ephemeral,
      );
    }
  }

  /** Asks what was chosen in a menu, where it stands; the same choice that arrives twice is made once. */
  private choose(interaction: StringSelectMenuInteraction, button: Button, reply: Reply): Promise<boolean> {
    if (button.owner !== coded(interaction.user.id)) throw notYours();
    const meant = reallyKept(chosenIn(button, interaction.values, this.keptIn(interaction)));
    const found = this.parts.registry.find(meant.question.split(' '));
    const key = pressKey(interaction);
    const hidden = isEphemeral(interaction);
    reply.expect('same', hidden);
    return this.once(key, reply, async () => {
      const { context } = await this.contextOf(interaction, key);
      const asked = await this.asked(found, meant.options, context);
      // What is hers alone does not go where everybody reads.
      const same = hidden || !isOwn(asked);
      const where = same ? 'same' : 'new';
      return this.give(interaction, reply, asked, { where, hidden: same ? hidden : true, open: false });
    });
  }

  private async press(
    interaction: ButtonInteraction,
    button: Button | undefined,
    own: boolean,
    reply: Reply,
  ): Promise<boolean> {
    if (!button) {
      throw new Problem(
        'button-too-old',
        'That button is from another time; nothing answers to it any more.',
        {
          hint: 'Ask the question again.',
        },
      );
    }
    const meant = meantBy(button, this.keptIn(interaction));
    switch (button.does) {
      case 'working':
      case 'fold':
        return isRemembered(button.payload)
          ? this.remembered(interaction, button, own, reply)
          : this.working(interaction, button, own, reallyKept(meant), reply);
      case 'everyone':
        // What changed something means no question: it is copied as it stands.
        return this.everyone(interaction, own, button.payload === '' ? undefined : reallyKept(meant), reply);
      case 'missing':
      case 'choose':
        throw own ? lost() : notYours();
      case 'refill':
        throw own ? lost() : notYours();
      case 'form':
      case 'ask':
        return this.action(interaction, button, own, reallyKept(meant), reply);
    }
  }

  /** Shows or folds the working; somebody else gets a copy of her own. */
  private async working(
    interaction: ButtonInteraction,
    { does }: Button,
    own: boolean,
    meant: Asked,
    reply: Reply,
  ): Promise<boolean> {
    if (own) reply.expect('same', true);
    const asked = await this.again(interaction, meant);
    const open = !own || does === 'working';
    return this.give(interaction, reply, asked, {
      where: own ? 'same' : 'new',
      hidden: !own || isEphemeral(interaction),
      open,
    });
  }

  /** Shows or folds the working of what cannot be asked again. */
  private async remembered(
    interaction: ButtonInteraction,
    { does, payload }: Button,
    own: boolean,
    reply: Reply,
  ): Promise<boolean> {
    if (!own) throw notYours();
    const hidden = isEphemeral(interaction);
    reply.expect('same', hidden);
    const kept = await this.unfoldable.get(interaction.user.id, payload);
    const found = kept && this.parts.registry.get(kept.path);
    if (!found) {
      throw new Problem('answer-not-remembered', 'The working of that change is not at hand any more.', {
        hint: 'The change itself is kept; ask what it came to.',
      });
    }
    const asked: Answered = { found, shown: kept.shown, again: undefined, kept: payload };
    return this.give(interaction, reply, asked, { where: 'same', hidden, open: does === 'working' });
  }

  /** Puts an answer that only the asker sees before everyone. */
  private everyone(
    interaction: ButtonInteraction,
    own: boolean,
    meant: Asked | undefined,
    reply: Reply,
  ): Promise<boolean> {
    if (!own) throw notYours();
    reply.expect('same', true);
    return this.once(pressKey(interaction), reply, async () => {
      const message =
        meant === undefined
          ? copyOf(interaction)
          : await this.drawn(interaction, await this.again(interaction, meant));
      // The button goes; the answer comes for all to see.
      if (!(await reply.send({ components: without('everyone', interaction) }, 'same', true))) return false;
      return reply.follow(message, false);
    });
  }

  /** Asks the question of a button, as whoever presses it. */
  private async action(
    interaction: ButtonInteraction,
    button: Button,
    own: boolean,
    meant: Asked,
    reply: Reply,
  ): Promise<boolean> {
    const anyone = button.owner === '';
    const words = meant.question.split(' ');
    if (!own && !anyone) throw notYours(lineOf(meant));
    const found = this.parts.registry.find(words);
    const key = pressKey(interaction);
    const ephemeral = isEphemeral(interaction);
    // A counter or a confirmation goes on where it stands; another question gets an answer of its own.
    const stays = own && found.question.changes === true;
    const act = async () => {
      // Known before anything is read: a store that takes its time moves no counter elsewhere.
      if (stays) reply.expect('same', ephemeral);
      const { context, ways } = await this.contextOf(interaction, key);
      const hidden = anyone || ephemeral || isHidden(interaction, found, undefined, ways);
      reply.expect(stays ? 'same' : 'new', hidden);
      const asked = await this.asked(found, meant.options, context);
      const same = stays && (ephemeral || !asked.shown.private);
      const where = same ? 'same' : 'new';
      return this.give(interaction, reply, asked, { where, hidden: same ? ephemeral : hidden, open: false });
    };
    return stays ? this.once(key, reply, act) : act();
  }

  private async asked(
    found: Route,
    typed: RawOptions,
    context: Context,
    give = () => ask(found, typed, context),
  ): Promise<Answered> {
    try {
      const given = await give();
      const { photosGone } = given;
      const shown = photosGone ? await this.withoutPhotos(given, photosGone, context) : given;
      if (shown.forgets === true) await this.unfoldable.forget(context.maker.id);
      if (shown.board !== undefined) this.parts.boardChanged?.(shown.board);
      if (shown.along !== undefined) this.parts.alongChanged?.(shown.along);
      // She knows what she has just done herself.
      const tells = shown.tells?.filter((telling) => telling.maker !== context.maker.id) ?? [];
      if (tells.length > 0) this.tell(tells);
      // Plain words are shown as the question that they mean, and asked again as it.
      const { readAs } = shown;
      const meant = readAs && this.parts.registry.get(readAs.path);
      if (meant) {
        const { options } = readLine(readAs.line);
        return { found: meant, shown, again: askedAgain(meant, options, context.reader) };
      }
      return { found, shown, again: askedAgain(found, typed, context.reader) };
    } catch (error) {
      throw error instanceof Problem ? new Unanswered(error, found) : error;
    }
  }

  /** Nobody waits for what others are told; one telling waits for the one before. */
  private tell(tellings: readonly Telling[]): void {
    this.telling = this.telling
      .then(() => this.parts.tell?.(tellings))
      .catch((error: unknown) => {
        this.parts.fault(error);
      });
  }

  /** Asks again what changes nothing. */
  private async again(interaction: ButtonInteraction, { question, options }: Asked): Promise<Answered> {
    const found = this.parts.registry.find(question.split(' '));
    if (found.question.changes) throw lost();
    const { context } = await this.contextOf(interaction, interaction.id);
    const asked = await this.asked(found, options, context);
    const words = this.plainWords(interaction);
    if (words === undefined && !saysReadAs(interaction.message.content)) return asked;
    // What plain words were read as stays with their answer, and so does the way out of it.
    const { shown } = asked;
    const readAs = { path: found.path, line: readAsLine(found, options) };
    const actions = words === undefined ? shown.actions : [...shown.actions, otherwise(words)];
    return { ...asked, shown: { ...shown, readAs, actions } };
  }

  /** The plain words that the message of a button answers, as its own button for other readings carries them. */
  private plainWords(interaction: ButtonInteraction): string | undefined {
    const kept = this.keptIn(interaction);
    return interaction.message.components
      .flatMap((row) => (row.type === ComponentType.ActionRow ? row.components : []))
      .map(({ customId }) => {
        const button = readButton(customId ?? '');
        const meant = button && meantBy(button, kept);
        return meant?.question === 'ask' && meant.options['other'] === 'yes'
          ? meant.options['words']
          : undefined;
      })
      .find((words) => words !== undefined);
  }

  /** Does a press that changes something; the same press once more changes nothing, unless the first failed. */
  private async once(key: string, reply: Reply, act: () => Promise<boolean>): Promise<boolean> {
    if (!this.pressed.add(key)) return reply.nothing();
    let done = false;
    try {
      done = await act();
    } finally {
      if (!done) this.pressed.forget(key);
    }
    return done;
  }

  private contextOf(interaction: BaseInteraction, once: string, people?: People) {
    const place = placeOf(interaction, this.parts.inThread?.(interaction));
    return this.contextFor(makerOf(interaction), place, once, { locale: interaction.locale, people });
  }

  private async contextFor(
    maker: Maker,
    place: Place,
    once: string,
    { locale = '', people }: { readonly locale?: string; readonly people?: People | undefined } = {},
  ) {
    const { projects } = this.parts;
    const ways = waysOf(locale);
    const server = serverOf(place);
    // Both are looked up at once: where the store is elsewhere, neither waits for the other's way there.
    const seenThere =
      server === undefined
        ? undefined
        : projects.servers.seen({ server, channel: place.channel, within: place.within });
    const untold = ways && (await projects.beginWith(maker.id, { units: ways.units, terms: ways.terms }));
    const settings = await projects.settings(maker.id);
    const context: Context = {
      maker,
      reader: { ...settings, clock },
      place,
      now: this.parts.now?.() ?? new Date(),
      once,
      whois: (typed) => whoIs(typed, people),
      projects,
      ...(ways ? { greets: () => (untold?.() === true ? ways.says : undefined) } : {}),
    };
    const seen = await seenThere;
    return { context, ways: { answers: settings.answers, seen } satisfies Ways };
  }

  private async give(
    interaction: Answerable,
    reply: Reply,
    asked: Answered,
    { where, hidden, open }: { where: Where; hidden: boolean; open: boolean },
  ): Promise<boolean> {
    const alone = hidden || isOwn(asked);
    // The text of an unfolded answer stays; its pictures need not be drawn and sent again while it does.
    const folding = where === 'same' && (asked.again ?? asked.kept) !== undefined && interaction.isButton();
    if (folding) {
      const quick = this.text(interaction, asked, { hidden: alone, open, notes: [] });
      const texts = quick.texts.length > 0 || interaction.message.attachments.some(isText);
      if (!texts && quick.content.trim() === interaction.message.content.trim())
        return reply.send(
          { embeds: quick.embeds, components: [...quick.menu, ...quick.components] },
          'same',
          alone,
        );
    }
    const files = asked.shown.files.length === 0 ? NO_FILES : await this.files(interaction, asked);
    const seen = where === 'new' ? await reply.settle(alone) : alone;
    const drawn = this.text(interaction, asked, { hidden: seen, open, notes: files.notes });
    // What is remembered of an answer is its text; its pictures stand in the message already.
    const replaceFiles = where === 'same' && asked.kept === undefined;
    return reply.send(withTexts(drawn, files.files, replaceFiles), where, alone);
  }

  private async drawn(interaction: Drawable, asked: Answered): Promise<Outbound> {
    const { files, notes } = await this.files(interaction, asked);
    return withTexts(this.text(interaction, asked, { hidden: false, open: false, notes }), files);
  }

  private files(interaction: Drawable, { shown }: Answered) {
    const { makers, fault } = this.parts;
    const { id } = interaction.user;
    const inTurn: Makers = {
      toPng: (svg) => this.pictures.take(id, () => makers.toPng(svg)),
      toPdf: (paper) => this.sheets.take(id, () => makers.toPdf(paper)),
    };
    return outgoing(shown.files, { limit: interaction.attachmentSizeLimit, makers: inTurn, fault });
  }

  private text(
    interaction: Drawable,
    asked: Answered,
    { hidden, open, notes }: { hidden: boolean; open: boolean; notes: readonly string[] },
  ): Drawn {
    const { found, shown, again } = asked;
    const kept = again === undefined ? (asked.kept ?? rememberedAs(interaction.id)) : undefined;
    const drawn = render(shown, {
      again,
      kept,
      asker: interaction.user.id,
      serial: serialOf(interaction.id),
      open,
      // What changed something cannot be asked again for its files.
      sharable:
        hidden &&
        !isOwn({ found, shown }) &&
        !isAlone(interaction) &&
        (again !== undefined || shown.files.length === 0),
      notes,
      commandId: this.parts.commandId,
    });
    if (kept !== undefined && asked.kept === undefined && isFolded(drawn))
      this.unfoldable.put(interaction.user.id, kept, {
        path: found.path,
        shown: { ...shown, files: [] },
      });
    return drawn;
  }

  /** What a message keeps, if this very bot wrote it: anybody can write an embed, but not as somebody else. */
  private keptIn({ message, client }: ButtonInteraction | StringSelectMenuInteraction) {
    return message.author.id === client.user.id ? keptIn(message.embeds) : [];
  }

  /** Offers while typing. Never rejects; no offers where something is amiss. */
  private async suggest(interaction: AutocompleteInteraction): Promise<void> {
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<undefined>((done) => {
      timer = setTimeout(() => done(undefined), SUGGEST_MS);
    });
    try {
      const offers = (await Promise.race([this.offers(interaction), late])) ?? [];
      await interaction.respond(offers);
    } catch (error) {
      // Offers that nobody waits for any more are no fault, and too many for a line each.
      this.parts.log.info(refusalFacts(error), 'offers were not taken');
    } finally {
      clearTimeout(timer);
    }
  }

  private async offers(interaction: AutocompleteInteraction): Promise<{ name: string; value: string }[]> {
    // Every key typed asks: who types faster than anybody reads offers gets none, and nobody else waits.
    if (this.closing || this.typing.take(interaction.user.id) > 0) return [];
    const began = performance.now();
    try {
      const { words, typed } = readCommand(interaction.commandName, interaction.options.data);
      const focused = interaction.options.getFocused(true);
      const found = this.parts.registry.get(words.join(' '));
      const schema = found?.question.options[focused.name];
      if (!schema) return [];
      const { context } = await this.contextOf(interaction, interaction.id);
      const offers = (await metaOf(schema).suggest?.(focused.value, context, typed)) ?? [];
      const values = new Set<string>();
      return offers
        .map(({ value, label }) => ({
          name: fit(oneLine(label ?? value), COMMAND.choiceName),
          value: asTyped(value),
        }))
        .filter(({ name, value }) => {
          const good =
            name !== '' && value !== '' && value.length <= COMMAND.choiceValue && !values.has(value);
          values.add(value);
          return good;
        })
        .slice(0, SUGGESTIONS);
    } catch (error) {
      if (!(error instanceof Problem)) this.parts.fault(error);
      if (isOwnTrouble(error)) await this.companion.yields(began);
      return [];
    }
  }
}

const withTexts = (
  { content, embeds, components, menu, texts }: Drawn,
  files: readonly Sent[],
  replaceFiles = false,
): Outbound => ({
  content,
  embeds,
  components: menu.length === 0 ? components : [...menu, ...components],
  files:
    texts.length === 0 ? files : [...files, ...texts.map((text) => sent(text.name, text.content, text.says))],
  replaceFiles,
});

/** What a button carries of an answer that is remembered. */
const rememberedAs = (id: string) => `@${coded(id)}`;
const isRemembered = (payload: string) => payload.startsWith('@');

/** Whether there is more of it, behind a button. */
const isFolded = ({ components }: Drawn) =>
  components.some((row) =>
    row.components.some(({ custom_id: id }) => {
      const does = readButton(id)?.does;
      return does === 'working' || does === 'fold';
    }),
  );

const isText = ({ name }: { readonly name: string }) => name.endsWith('.txt');

/** A problem with a question that is known: its example is worth showing. */
class Unanswered extends Problem {
  constructor(
    readonly problem: Problem,
    readonly found: Route,
  ) {
    super(problem.code, problem.message, problem);
  }
}

/** What waits for one more thing. */
const waitingOf = (problem: Problem) => {
  const inner = problem instanceof Unanswered ? problem.problem : problem;
  return inner instanceof AskedBack ? inner.waiting : undefined;
};

/** One sentence that names the option and what is wrong, what would do, and a line that works. */
function refusal(problem: Problem): Outbound {
  const { message, option, hint } = problem;
  const named = option === undefined || option === QUESTION || message.split(/\W+/).includes(option);
  const sentence = `**${fit(asFilledIn(oneLine(message)), 900, escaped)}**${named ? '' : ` (${escaped(option)})`}`;
  // An example that rests on something saved would not work for her.
  const example =
    problem instanceof Unanswered && option !== undefined && !problem.found.question.before
      ? `\n-# For example: ${escaped(asFilledIn(exampleLine(problem.found)))}`
      : '';
  return { content: `${sentence}\n${fit(asFilledIn(clean(hint)), 600, escaped)}${fit(example, 300)}` };
}

const exampleOf = ({ question }: Route, option: string) => {
  const schema = question.options[option];
  return schema ? `${option}:${metaOf(schema).example}` : option;
};

const tooOld = () =>
  new Problem(
    'menu-too-old',
    'That entry of the menu is from another time; nothing answers to it any more.',
    {
      hint: 'Ask with a command; /help lists them.',
    },
  );

const broken = (id: string) =>
  new Problem('fault', `Something went wrong here; it is noted as ${id}.`, {
    hint: 'Ask again; if it stays, report that id.',
  });

/** Whether she may attach files there herself: the bot shows nothing for who may not. */
const mayAttach = ({ guildId, memberPermissions }: BaseInteraction) =>
  guildId === null || memberPermissions?.has(PermissionFlagsBits.AttachFiles) === true;

const noPhotos = (option: string) =>
  new Problem('photo-not-allowed', 'You may not attach files here, so no photo of yours is shown.', {
    option,
    hint: 'Hand in without it.',
  });

const forHerAlone = (sentence: string) =>
  new Problem('answer-for-one', sentence, {
    hint: 'Ask with /ask, which shows it to you alone, or write to me directly.',
  });

const lost = () =>
  new Problem('button-without-question', 'The question behind this button is not in the message any more.', {
    hint: 'Ask it again.',
  });

function reallyKept(meant: Asked | undefined): Asked {
  if (meant === undefined) throw lost();
  return meant;
}

const notYours = (line?: string) =>
  new Problem('button-of-another', 'That button answers to the one who asked.', {
    hint: line === undefined ? 'Ask the question yourself.' : `Ask it yourself: ${line}`,
  });

/** Whether only the asker is to see an answer: what is private always, otherwise as chosen, as she set it, as is set there. */
function isHidden(
  interaction: BaseInteraction,
  { question, command: { about } }: Route,
  seenBy: string | undefined,
  { answers, seen }: Ways,
): boolean {
  if (question.private) return true;
  if (seenBy !== undefined) return seenBy === 'me';
  if (isAlone(interaction)) return false;
  if (answers !== undefined) return answers === 'me';
  return about !== undefined && (seen?.[about].by ?? USUALLY[about]) === 'asker';
}

/** Her own data; and a look at a board, which itself stands in its channel: there are never two. */
const isOwn = ({ found: { question }, shown }: Pick<Answered, 'found' | 'shown'>) =>
  question.private === true || shown.private || (shown.board !== undefined && question.changes !== true);

const isEphemeral = ({ message }: ButtonInteraction | StringSelectMenuInteraction) =>
  message.flags.has(MessageFlags.Ephemeral);

/** Whether what comes of a form belongs where the form was opened from: in place of a refusal that only she sees. */
const stays = (interaction: Answerable) =>
  interaction.isModalSubmit() &&
  formIn(interaction)?.does === 'refill' &&
  interaction.message?.flags.has(MessageFlags.Ephemeral) === true;

/** The buttons of a message without those that do one thing. */
const without = (does: Does, { message }: ButtonInteraction): Row[] =>
  message.components
    .flatMap((row) => (row.type === ComponentType.ActionRow ? [row.toJSON() as Row] : []))
    .map((row) => ({
      ...row,
      components: row.components.filter(({ custom_id }) => readButton(custom_id)?.does !== does),
    }))
    .filter(({ components }) => components.length > 0);

/** What stands in a message, without its buttons. */
const copyOf = ({ message }: ButtonInteraction): Outbound => ({
  content: message.content,
  embeds: message.embeds.map(({ title, description, color, fields }) => ({
    ...(title === null ? {} : { title }),
    ...(description === null ? {} : { description }),
    ...(color === null ? {} : { color }),
    fields: fields.map(({ name, value }) => ({ name, value })),
  })),
});

/** The same for a press that arrives twice, another for the next press: a redrawn button has another id. */
function pressKey({ message, customId, user }: ButtonInteraction | StringSelectMenuInteraction): string {
  const hash = createHash('sha256').update(`${user.id} ${customId}`).digest('base64url').slice(0, 22);
  return `${message.id}.${hash}`;
}
