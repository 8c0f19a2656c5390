import type { AnswerOf, ParametersOf, QueryOf, RequestOf, RouteName, Routes } from '@coreward/contract';
import type { Door } from '../access/door.ts';
import type { Who } from '../access/session.ts';

/** One question, checked and taken apart. */
export interface Call<Name extends RouteName> {
  readonly parameters: ParametersOf<Routes[Name]>;
  readonly query: QueryOf<Routes[Name]>;
  readonly request: RequestOf<Routes[Name]>;
  readonly who: Who;
  readonly door: Door;
  /** Lets the asking page be known by this from now on. */
  readonly giveCookie: (secret: string) => void;
}

/** What is done for each route; what is not to be done is thrown as `Declined` or `Refusal`. */
export type Handlers = {
  readonly [Name in RouteName]: (
    call: Call<Name>,
  ) => AnswerOf<Routes[Name]> | Promise<AnswerOf<Routes[Name]>>;
};

/** Some of them. */
export type SomeHandlers<Name extends RouteName> = Pick<Handlers, Name>;
