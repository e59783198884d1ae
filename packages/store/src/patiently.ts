import { setTimeout as sleep } from 'node:timers/promises';

const RETRY_MS = 20;

/** Does it again while another program holds the lock, for at most `waitMs`; sleeps meanwhile, so a server answers on. */
export async function patiently<T>(waitMs: number, act: () => T | Promise<T>): Promise<T> {
  const until = performance.now() + waitMs;
  for (;;) {
    try {
      return await act();
    } catch (failure) {
      if (!isLocked(failure) || performance.now() >= until) throw failure;
      await sleep(RETRY_MS);
    }
  }
}

function isLocked(failure: unknown): boolean {
  return failure instanceof Error && 'code' in failure && /^SQLITE_(BUSY|LOCKED)/.test(String(failure.code));
}
