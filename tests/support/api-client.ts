import type { Fault } from '../../server/core/model/fault.js';

interface Answer {
  readonly data?: Record<string, unknown> | null;
  readonly errors?: readonly {
    readonly message: string;
    readonly extensions: { readonly code: string; readonly faults?: readonly Fault<string>[] };
  }[];
}

/** Why a request was refused, as a page would see it. */
export interface Refused {
  readonly code: string;
  readonly message: string;
  readonly faults: readonly Fault<string>[];
}

/** Talks GraphQL over HTTP and keeps its cookie, as a browser does. */
export class ApiClient {
  cookie = '';
  /** What the reader would rather read, as `Accept-Language` says it. */
  language = '*';
  #signingIn: Promise<unknown> | undefined;

  /** @param signInFirst is run before the first request: tests sign in only the people they use */
  constructor(
    readonly url: string,
    private readonly signInFirst?: (client: ApiClient) => Promise<unknown>,
  ) {}

  /** Sends a request and keeps a new cookie. */
  async send(query: string, variables: object = {}): Promise<Answer> {
    if (this.signInFirst !== undefined) {
      this.#signingIn ??= this.signInFirst(this);
      await this.#signingIn;
    }
    return this.post(query, variables);
  }

  /** Asks for a plain page of the server. */
  async get(path: string, headers: Readonly<Record<string, string>> = {}): Promise<Response> {
    if (this.signInFirst !== undefined) {
      this.#signingIn ??= this.signInFirst(this);
      await this.#signingIn;
    }
    return fetch(this.url + path, {
      headers: { 'accept-language': this.language, ...headers, cookie: this.cookie },
    });
  }

  private async post(query: string, variables: object): Promise<Answer> {
    const response = await fetch(`${this.url}/graphql`, {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        'accept-language': this.language,
        cookie: this.cookie,
      },
      body: JSON.stringify({ query, variables }),
    });
    const [cookie] = response.headers.getSetCookie();
    if (cookie !== undefined) this.cookie = cookie.split(';')[0] ?? '';
    return (await response.json()) as Answer;
  }

  /** @returns the data; fails if anything was refused */
  async ask<Data = Record<string, never>>(query: string, variables: object = {}): Promise<Data> {
    const { data, errors } = await this.send(query, variables);
    if (errors !== undefined) throw new Error(errors.map(({ message }) => message).join('\n'));
    return data as Data;
  }

  /** @returns why it was refused; fails if it was not */
  async refused(query: string, variables: object = {}): Promise<Refused> {
    const { data, errors } = await this.send(query, variables);
    const [error] = errors ?? [];
    if (error === undefined) throw new Error(`was not refused: ${JSON.stringify(data)}`);
    const { code, faults = [] } = error.extensions;
    return { code, message: error.message, faults };
  }

  signIn(name: string, password: string): Promise<{ signIn: { id: string; name: string } }> {
    return this.ask(
      'mutation ($name: String!, $password: String!) { signIn(name: $name, password: $password) { id name } }',
      { name, password },
    );
  }

  /** @param path of the invite page, its token last */
  async acceptInvite(path: string): Promise<void> {
    const query = 'mutation ($token: String!) { acceptInvite(token: $token) { id } }';
    const { errors } = await this.post(query, { token: path.split('/').at(-1) });
    if (errors !== undefined) throw new Error(`the invite was refused: ${path}`);
  }
}
