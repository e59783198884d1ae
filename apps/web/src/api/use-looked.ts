import { useState } from 'react';
import { stampOnPage } from './query-client.ts';

/**
 * The stamp of a thing as it stood when this part came onto the page: what is typed here is an answer to that, whatever
 * the page behind it shows meanwhile.
 */
export function useLooked(kind: 'pull' | 'trial' | 'combination', id: string): string | undefined {
  const [stamp] = useState(() => stampOnPage(kind, id));
  return stamp;
}
