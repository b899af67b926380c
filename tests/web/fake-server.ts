import { vi } from 'vitest';

/** Answers by operation name, as the server would; a function gets the variables. */
export type Answers = Readonly<Record<string, Answer | undefined>>;
type Answer =
  | Readonly<Record<string, unknown>>
  | ((variables: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>);

export interface FakeServer {
  answers: Answers;
  /** True: every request fails as it does without a network. */
  unreachable: boolean;
  /** What was asked, in order. */
  readonly asked: {
    readonly name: string;
    readonly variables: Readonly<Record<string, unknown>>;
    /** The language that an answer is wanted in. */
    readonly language: string | null;
  }[];
}

/** A refusal as the server's filter writes it; to be thrown by an answer. */
export class RefusalAnswer extends Error {
  constructor(
    readonly code: string,
    message: string,
    readonly faults: readonly Readonly<Record<string, unknown>>[] = [],
  ) {
    super(message);
  }
}

/** Puts a fake in the place of `fetch`, and nothing else: everything above it is the real app. */
export function fakeServer(answers: Answers): FakeServer {
  const server: FakeServer = { answers, unreachable: false, asked: [] };
  vi.stubGlobal('fetch', (_: unknown, request: RequestInit): Promise<Response> => {
    if (server.unreachable) return Promise.reject(new TypeError('fetch failed'));
    const { operationName, variables } = JSON.parse(
      typeof request.body === 'string' ? request.body : '',
    ) as {
      operationName: string;
      variables: Readonly<Record<string, unknown>>;
    };
    const language = new Headers(request.headers).get('accept-language');
    server.asked.push({ name: operationName, variables, language });
    return Promise.resolve(
      new Response(JSON.stringify(answerTo(server, operationName, variables)), {
        headers: { 'content-type': 'application/json' },
      }),
    );
  });
  return server;
}

function answerTo(
  server: FakeServer,
  name: string,
  variables: Readonly<Record<string, unknown>>,
): Readonly<Record<string, unknown>> {
  const answer = server.answers[name];
  if (answer === undefined) throw new Error(`The test has no answer to ${name}.`);
  try {
    return { data: typeof answer === 'function' ? answer(variables) : answer };
  } catch (error) {
    if (!(error instanceof RefusalAnswer)) throw error;
    const extensions = { code: error.code, faults: error.faults };
    return { data: null, errors: [{ message: error.message, extensions }] };
  }
}
