/**
 * The platform's published schema: whether a request is one that it describes. It is read where PLATFORM_SCHEMA points
 * to, or beside the project's folder; where there is none, nothing is checked.
 *
 * Read strictly: an object has no keys but those that are named, and a key that is not named may not be sent. Read
 * liberally, as the schema's own page says: `oneOf` and `anyOf` both mean one of; an integer may be sent as digits.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gunzipSync } from 'node:zlib';
import { Ajv2020, type ErrorObject, type ValidateFunction } from 'ajv/dist/2020.js';
import { routeOf } from '../../../src/rooms/discord/platform.ts';
import type { Heard } from './stand-in/index.ts';

type Json = Readonly<Record<string, unknown>>;

interface Operation {
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly schema: Json }>> };
}

interface OpenApi {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, Json>> };
}

const PLACES = ['../shared', '../../shared'].map((folder) =>
  fileURLToPath(new URL(`../../../${folder}/platform/openapi.json.gz`, import.meta.url)),
);

/** Where the schema lies; undefined where it does not. */
export const schemaFile = () =>
  [process.env['PLATFORM_SCHEMA'] ?? '', ...PLACES].find((place) => place !== '' && existsSync(place));

/** What the client library sends beside what is meant, and the platform takes. */
const LIBERTIES: Readonly<Record<string, (value: unknown) => boolean>> = {
  tts: (value) => value === false,
  enforce_nonce: (value) => value === false,
};

/** A schema as it is read here. */
function asRead(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(asRead);
  if (typeof schema !== 'object' || schema === null) return schema;
  const { oneOf, ...rest } = schema as Json;
  const read = Object.fromEntries(Object.entries(rest).map(([key, one]) => [key, asRead(one)]));
  if (oneOf !== undefined) read['anyOf'] = asRead(oneOf);
  if (read['properties'] !== undefined && read['additionalProperties'] === undefined)
    read['additionalProperties'] = false;
  const { type } = read;
  if (type === 'integer' || (Array.isArray(type) && type.includes('integer'))) {
    const digits = { type: 'string', pattern: '^-?[0-9]+$' };
    return { anyOf: [read, digits] };
  }
  return read;
}

/** A body without the client's liberties, its files' numbers as the texts that ids are. */
function withoutLiberties(value: unknown, key = ''): unknown {
  if (Array.isArray(value)) return value.map((one) => withoutLiberties(one, key));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([name, one]) => LIBERTIES[name]?.(one) !== true)
      .map(([name, one]) => [
        name,
        key === 'attachments' && name === 'id' && typeof one === 'number'
          ? String(one)
          : withoutLiberties(one, name),
      ]),
  );
}

/** Of all that does not fit in any of several forms, what is wrong in the form that was meant: the deepest of it. */
function worst(errors: readonly ErrorObject[]): string {
  const depth = ({ instancePath, keyword }: ErrorObject) =>
    instancePath.split('/').length * 2 + (keyword === 'const' || keyword === 'anyOf' ? 0 : 1);
  const [first] = [...errors].sort((a, b) => depth(b) - depth(a));
  if (!first) return 'does not fit';
  const { instancePath, message = 'does not fit', params } = first;
  const key = (params as { additionalProperty?: string }).additionalProperty;
  return `${instancePath === '' ? 'the body' : instancePath} ${message}${key === undefined ? '' : `: ${key}`}`;
}

export class Published {
  private readonly api: OpenApi;
  private readonly ajv = new Ajv2020({ strict: false, validateFormats: false, allErrors: false });
  private readonly forms = new Map<string, ValidateFunction>();
  private readonly routes: readonly { path: string; pattern: RegExp; fixed: number }[];

  constructor(file: string) {
    const bytes = readFileSync(file);
    this.api = JSON.parse((file.endsWith('.gz') ? gunzipSync(bytes) : bytes).toString('utf8')) as OpenApi;
    this.routes = Object.keys(this.api.paths)
      .map((path) => ({
        path,
        pattern: new RegExp(`^${path.replace(/\{[^}]+\}/g, '[^/]+')}$`),
        // What is written out goes before what stands for anything.
        fixed: path.split('/').filter((part) => !part.startsWith('{')).length,
      }))
      .sort((a, b) => b.fixed - a.fixed);
    this.ajv.addSchema({ $id: 'api', components: asRead(this.api.components) as Json });
  }

  /** What is wrong with a request, in a sentence; undefined where it is one that the platform describes. */
  fault({ method, path, json, files }: Heard): string | undefined {
    const said = `${method} ${routeOf(path)}`;
    const found = this.routes.find(
      (one) => one.pattern.test(path) && this.api.paths[one.path]?.[method.toLowerCase()] !== undefined,
    );
    const operation = found && this.api.paths[found.path]?.[method.toLowerCase()];
    if (!found || !operation) return `${said}: there is no such request`;
    const content = operation.requestBody?.content;
    if (!content)
      return Object.keys(json as object).length === 0 && files === 0 ? undefined : `${said}: takes no body`;
    if (files > 0 && content['multipart/form-data'] === undefined) return `${said}: takes no files`;
    const form = this.form(`${method} ${found.path}`, content['application/json']?.schema);
    return form(withoutLiberties(json)) ? undefined : `${said}: ${worst(form.errors ?? [])}`;
  }

  private form(name: string, schema: Json = {}): ValidateFunction {
    const known = this.forms.get(name);
    if (known) return known;
    const text = JSON.stringify(asRead(schema)).replaceAll('"#/components/', '"api#/components/');
    const made = this.ajv.compile(JSON.parse(text) as Json);
    this.forms.set(name, made);
    return made;
  }
}
