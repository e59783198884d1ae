/** What a button of this page has begun and still shows; it need not be found again. */
const followed = new Set<string>();

export const isFollowedHere = (job: string): boolean => followed.has(job);

/** Until what is given back is called: the button is gone then. */
export function follow(job: string): () => void {
  followed.add(job);
  return () => followed.delete(job);
}
