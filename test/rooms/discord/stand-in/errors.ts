/** The platform's refusals, in its own shape. Code numbers: topics/opcodes-and-status-codes.mdx. */
import type { z } from 'zod';

export class ApiError extends Error {
  constructor(
    readonly status: number,
    readonly code: number,
    message: string,
    readonly errors?: object,
  ) {
    super(message);
  }

  get body(): object {
    return {
      message: this.message,
      code: this.code,
      ...(this.errors === undefined ? {} : { errors: this.errors }),
    };
  }
}

export const refusals = {
  unauthorized: () => new ApiError(401, 0, '401: Unauthorized'),
  notFound: () => new ApiError(404, 0, '404: Not Found'),
  unknownChannel: () => new ApiError(404, 10003, 'Unknown Channel'),
  unknownGuild: () => new ApiError(404, 10004, 'Unknown Guild'),
  unknownMessage: () => new ApiError(404, 10008, 'Unknown Message'),
  unknownUser: () => new ApiError(404, 10013, 'Unknown User'),
  unknownWebhook: () => new ApiError(404, 10015, 'Unknown Webhook'),
  unknownEvent: () => new ApiError(404, 10070, 'Unknown Guild Scheduled Event'),
  unknownInteraction: () => new ApiError(404, 10062, 'Unknown interaction'),
  unknownCommand: () => new ApiError(404, 10063, 'Unknown application command'),
  tooManyPins: () => new ApiError(400, 30003, 'Maximum number of pins reached for the channel (250)'),
  tooManyEvents: () =>
    new ApiError(400, 30038, 'Maximum number of uncompleted guild scheduled events reached (100)'),
  tooLarge: () => new ApiError(413, 40005, 'Request entity too large'),
  acknowledged: () => new ApiError(400, 40060, 'Interaction has already been acknowledged.'),
  tooManyFollowUps: () =>
    new ApiError(400, 40094, 'This interaction has reached its maximum number of follow-ups'),
  missingAccess: () => new ApiError(403, 50001, 'Missing Access'),
  notTheAuthor: () => new ApiError(403, 50005, 'Cannot edit a message authored by another user'),
  empty: () => new ApiError(400, 50006, 'Cannot send an empty message'),
  dmClosed: () => new ApiError(403, 50007, 'Cannot send messages to this user'),
  missingPermissions: () => new ApiError(403, 50013, 'Missing Permissions'),
  wrongChannelType: () => new ApiError(400, 50024, 'Cannot execute action on this channel type'),
  invalidWebhookToken: () => new ApiError(401, 50027, 'Invalid Webhook Token'),
  archivedThread: () => new ApiError(400, 50083, 'Thread is archived'),
  notJson: () => new ApiError(400, 50109, 'The request body contains invalid JSON.'),
};

interface Fault {
  readonly path: readonly PropertyKey[];
  readonly code: string;
  readonly message: string;
}

/** 50035 with its tree: every fault at its own place, `_errors` at the leaf. */
export function invalidForm(faults: readonly Fault[]): ApiError {
  const tree: Record<string, unknown> = {};
  for (const { path, code, message } of faults) {
    let node = tree;
    for (const key of path) node = (node[String(key)] ??= {}) as Record<string, unknown>;
    ((node['_errors'] ??= []) as object[]).push({ code, message });
  }
  return new ApiError(400, 50035, 'Invalid Form Body', tree);
}

/** The words beside a number are the platform's as remembered; its clients read the number and the place. */
function said(issue: z.core.$ZodIssue): { code: string; message: string } {
  const required = { code: 'BASE_TYPE_REQUIRED', message: 'This field is required' };
  // eslint-disable-next-line @typescript-eslint/switch-exhaustiveness-check -- the rest are choices of one kind or another
  switch (issue.code) {
    case 'too_big':
      return issue.origin === 'number' || issue.origin === 'int'
        ? {
            code: 'NUMBER_TYPE_MAX',
            message: `int value should be less than or equal to ${String(issue.maximum)}.`,
          }
        : {
            code: 'BASE_TYPE_MAX_LENGTH',
            message: `Must be ${String(issue.maximum)} or fewer in length.`,
          };
    case 'too_small':
      if (issue.origin === 'number' || issue.origin === 'int')
        return {
          code: 'NUMBER_TYPE_MIN',
          message: `int value should be greater than or equal to ${String(issue.minimum)}.`,
        };
      return issue.origin === 'string'
        ? required
        : { code: 'BASE_TYPE_MIN_LENGTH', message: `Must be ${String(issue.minimum)} or more in length.` };
    case 'invalid_type':
      return issue.input === undefined || issue.input === null
        ? required
        : { code: 'BASE_TYPE_INVALID', message: `Could not interpret the value as ${issue.expected}.` };
    case 'invalid_format':
      return { code: 'STRING_TYPE_REGEX', message: 'String value did not match validation regex.' };
    case 'custom':
      return {
        code: (issue.params as { code?: string } | undefined)?.code ?? 'BASE_TYPE_INVALID',
        message: issue.message,
      };
    default:
      return { code: 'BASE_TYPE_CHOICES', message: 'The value is not one of the choices.' };
  }
}

/** Checks a body; throws 50035 with every fault. What the schema does not name is let fall, as the platform does. */
export function check<T>(schema: z.ZodType<T>, body: unknown, under: readonly string[] = []): T {
  const result = schema.safeParse(body, { reportInput: true });
  if (result.success) return result.data;
  throw invalidForm(
    result.error.issues.map((issue) => ({ path: [...under, ...issue.path], ...said(issue) })),
  );
}
