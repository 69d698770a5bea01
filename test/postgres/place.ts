/** A place of one's own in the PostgreSQL that the tests share. */
import { randomUUID } from 'node:crypto';
import { connect } from 'node:net';
import { inject } from 'vitest';
import pg from 'pg';

let shared: Promise<string> | undefined;

/** Where it is; the first to ask waits until it is there. */
export function sharedServer(): Promise<string> {
  shared ??= new Promise<string>((resolve, reject) => {
    let said = '';
    connect(inject('postgresPort'), '127.0.0.1')
      .on('data', (data) => (said += String(data)))
      .on('error', reject)
      .on('end', () => (said.startsWith('postgres://') ? resolve(said) : reject(new Error(said))));
  });
  return shared;
}

/** A place in it with nothing in it: its tables are found by nobody else. */
export async function newPlace(): Promise<string> {
  const url = await sharedServer();
  const schema = `s${randomUUID().replaceAll('-', '')}`;
  await asOwner(url, `create schema ${schema}`);
  return within(url, schema);
}

/** The same server, seen from one of its places. */
export const within = (url: string, schema: string) =>
  `${url}?options=${encodeURIComponent(`-c search_path=${schema}`)}`;

/** Asks it something over a connection of its own. */
export async function asOwner(
  url: string,
  text: string,
  values: unknown[] = [],
): Promise<Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query<Record<string, unknown>>(text, values)).rows;
  } finally {
    await client.end();
  }
}

/** Holds the rows of all documents of a place, as somebody who changes them and is long about it; gives how to let go. */
export async function holdRows(url: string): Promise<() => Promise<void>> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query('begin; select 1 from documents for update');
  return () => client.end();
}

/** A database of one's own: nobody else is connected with it. */
export async function newDatabase(): Promise<string> {
  const url = await sharedServer();
  const name = `d${randomUUID().replaceAll('-', '')}`;
  await asOwner(url, `create database ${name}`);
  return url.replace(/\/postgres$/, `/${name}`);
}
