import type { z } from './zod.ts';

/** One thing that can be asked of the station. `path` may hold `:id` and `:version`. */
export interface Route {
  readonly method: 'GET' | 'PUT' | 'POST' | 'DELETE';
  readonly path: `/api/${string}`;
  /** What stands behind the question mark; null: nothing. */
  readonly query: z.ZodMiniType | null;
  /** The JSON that is sent; null: nothing is. */
  readonly request: z.ZodMiniType | null;
  readonly answer: z.ZodMiniType;
}

/** The names after the colons of a path: `'id' | 'version'`. */
export type ParameterOf<Path extends string> = Path extends `${string}:${infer Name}/${infer Rest}`
  ? Name | ParameterOf<`/${Rest}`>
  : Path extends `${string}:${infer Name}`
    ? Name
    : never;

/** What stands in the address of a route, by its names there. */
export type ParametersOf<R extends Route> = { readonly [Name in ParameterOf<R['path']>]: string };
/** What may stand behind the address; null: nothing. */
export type QueryOf<R extends Route> = R['query'] extends z.ZodMiniType ? z.infer<R['query']> : null;
/** What is sent; null: nothing. */
export type RequestOf<R extends Route> = R['request'] extends z.ZodMiniType ? z.infer<R['request']> : null;
/** What is answered. */
export type AnswerOf<R extends Route> = z.infer<R['answer']>;

/** The address of a route, its parameters and query filled in: `/api/launches/…`. */
export function addressOf<R extends Route>(
  route: R,
  parameters: ParametersOf<R>,
  query: { readonly [key: string]: string | undefined } = {},
): string {
  const given: { readonly [name: string]: string } = parameters;
  const path = route.path.replace(/:(\w+)/gu, (_, name: string) => encodeURIComponent(given[name] ?? ''));
  const asked = Object.entries(query)
    .filter((pair): pair is [string, string] => pair[1] !== undefined)
    .map(([key, value]) => `${encodeURIComponent(key)}=${encodeURIComponent(value)}`);
  return asked.length === 0 ? path : `${path}?${asked.join('&')}`;
}
