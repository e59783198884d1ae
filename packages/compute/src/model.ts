/** What a job can do besides its work. */
export interface JobContext {
  /** Says how far it is: 0 to 1. */
  progress(share: number): void;
}

/** A long computation: from its input alone to its result. Both must survive being sent: plain objects and arrays of numbers. */
export type Job<Input = never, Output = unknown> = (
  input: Input,
  context: JobContext,
) => Output | Promise<Output>;

/** Jobs by name. */
export type Jobs = Record<string, Job>;

export interface RunOptions {
  /**
   * The arrays of numbers in the input go over to the job instead of being copied; they are empty here afterwards. What of
   * them is needed again, the job gives back in its result.
   */
  giveAway?: boolean;
  /** Ends the job: the run then fails with the signal's reason. */
  signal?: AbortSignal;
  onProgress?: (share: number) => void;
}

type InputOf<J> = J extends (input: infer I, context: JobContext) => unknown ? I : never;
type OutputOf<J> = J extends (...all: never[]) => infer O ? Awaited<O> : never;

/** Where long computations are done: in threads of their own, or in line. */
export interface Computing<Table extends Jobs> {
  run<Name extends keyof Table & string>(
    name: Name,
    input: InputOf<Table[Name]>,
    options?: RunOptions,
  ): Promise<OutputOf<Table[Name]>>;
  /** Ends all threads; runs under way fail. */
  close(): Promise<void>;
}
