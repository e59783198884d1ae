import { lazyRouteComponent } from '@tanstack/react-router';
import type { ComponentType } from 'react';
import { UNREACHABLE } from '../api/request.ts';

/** A part of the pages is gone from the server: it was built anew while this page stood open. */
export class ScreenGone extends Error {
  constructor(cause: unknown) {
    super('Pullbook was updated while this page stood open.', { cause });
    this.name = 'ScreenGone';
  }
}

/** How browsers say that a module or its style did not arrive, not that it arrived and is faulty. */
const DID_NOT_ARRIVE = /dynamically imported module|importing a module script|preload css/i;

async function whyNot(reason: unknown): Promise<unknown> {
  if (!(reason instanceof Error) || !DID_NOT_ARRIVE.test(reason.message)) return reason;
  const answers = await fetch('/api/book').then(
    (answer) => answer.ok,
    () => false,
  );
  return answers ? new ScreenGone(reason) : UNREACHABLE;
}

/** A page that is fetched when it is first gone to; where that fails, the page in its place says why. */
export function screen<Props extends object>(load: () => Promise<{ default: ComponentType<Props> }>) {
  return lazyRouteComponent(() =>
    load().catch(async (reason: unknown) => {
      throw await whyNot(reason);
    }),
  );
}
