/** To a thread. */
export interface Order {
  name: string;
  input: unknown;
}

/** From a thread. */
export type Reply =
  | { kind: 'progress'; share: number }
  | { kind: 'done'; output: unknown }
  | { kind: 'failed'; trouble: unknown; properties: object };
