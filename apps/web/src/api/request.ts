import type { ShownRemark } from '@pullbook/views';
import type { HistoryStep } from './edge.ts';

/** The server said no, or could not be reached. `message` is for a person. */
export class ApiTrouble extends Error {
  readonly code: string;
  readonly remarks: ShownRemark[];
  /** What somebody else wrote meanwhile; `null`: that is not the trouble. */
  readonly meanwhile: { since: HistoryStep[]; stamp: string } | null;
  constructor(
    code: string,
    message: string,
    remarks: ShownRemark[] = [],
    meanwhile: ApiTrouble['meanwhile'] = null,
  ) {
    super(message);
    this.name = 'ApiTrouble';
    this.code = code;
    this.remarks = remarks;
    this.meanwhile = meanwhile;
  }
}

type Query = Record<string, string | number | boolean | readonly string[] | undefined>;

/** Address under `/api` with its query; values that are `undefined` are left out. */
export function apiAddress(path: string, query: Query = {}): string {
  const search = new URLSearchParams();
  for (const [name, value] of Object.entries(query)) {
    if (Array.isArray(value)) for (const one of value) search.append(name, one);
    else if (value !== undefined) search.set(name, String(value));
  }
  const text = search.toString();
  return `/api${path}${text === '' ? '' : `?${text}`}`;
}

/** The trouble that an answer's body tells of; made up from the status where the body tells nothing. */
export function troubleFrom(status: number, body: string): ApiTrouble {
  try {
    const { error } = JSON.parse(body) as {
      error: {
        code: string;
        message: string;
        remarks?: (ShownRemark & { message?: string })[];
        since?: HistoryStep[];
        stamp?: string;
      };
    };
    const remarks = (error.remarks ?? []).map((one) => ({ ...one, text: one.text ?? one.message ?? '' }));
    const { since, stamp } = error;
    const meanwhile = since === undefined || stamp === undefined ? null : { since, stamp };
    return new ApiTrouble(error.code, error.message, remarks, meanwhile);
  } catch {
    return new ApiTrouble('unreadable', `The server answered with status ${status} and said nothing more.`);
  }
}

export const UNREACHABLE = new ApiTrouble(
  'unreachable',
  'Pullbook does not answer. Look whether it still runs in its window, start it again if not, then reload this page.',
);

async function send<T>(address: string, init: RequestInit): Promise<T> {
  let answer: Response;
  try {
    answer = await fetch(address, init);
  } catch (reason) {
    if (init.signal?.aborted) throw reason;
    throw UNREACHABLE;
  }
  if (!answer.ok) throw troubleFrom(answer.status, await answer.text());
  return (await answer.json()) as T;
}

export function getJson<T>(path: string, query: Query = {}, signal?: AbortSignal): Promise<T> {
  return send(apiAddress(path, query), signal === undefined ? {} : { signal });
}

export function sendJson<T>(
  method: 'POST' | 'PUT' | 'PATCH' | 'DELETE',
  path: string,
  body: unknown,
  signal?: AbortSignal,
): Promise<T> {
  return send(apiAddress(path), {
    method,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
    ...(signal === undefined ? {} : { signal }),
  });
}
