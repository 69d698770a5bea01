/** What stands in the menus of messages and people: questions that say so of themselves. */
import {
  ApplicationCommandType,
  ApplicationIntegrationType,
  InteractionContextType,
  type RESTPostAPIContextMenuApplicationCommandsJSONBody,
} from 'discord.js';
import type { Pointed } from '../../chat/command.ts';
import type { Registry, Route } from '../../chat/registry.ts';

/** What is registered for the menus. */
export const menusOf = ({ routes }: Registry): RESTPostAPIContextMenuApplicationCommandsJSONBody[] =>
  routes.flatMap(({ question: { pointed } }) =>
    pointed === undefined
      ? []
      : [
          {
            type: pointed.at === 'message' ? ApplicationCommandType.Message : ApplicationCommandType.User,
            name: pointed.name,
            // People are asked about where they make something together; messages are read wherever they stand.
            contexts:
              pointed.at === 'person'
                ? [InteractionContextType.Guild]
                : [
                    InteractionContextType.Guild,
                    InteractionContextType.BotDM,
                    InteractionContextType.PrivateChannel,
                  ],
            integration_types:
              pointed.at === 'person'
                ? [ApplicationIntegrationType.GuildInstall]
                : [ApplicationIntegrationType.GuildInstall, ApplicationIntegrationType.UserInstall],
          },
        ],
  );

/** The question that an entry of a menu asks; undefined where there is none of this name any more. */
export function pointedBy<At extends Pointed['at']>(
  { routes }: Registry,
  name: string,
  at: At,
): (Extract<Pointed, { at: At }> & { readonly found: Route }) | undefined {
  for (const found of routes) {
    const { pointed } = found.question;
    if (pointed?.at === at && pointed.name === name)
      return { ...(pointed as Extract<Pointed, { at: At }>), found };
  }
  return undefined;
}
