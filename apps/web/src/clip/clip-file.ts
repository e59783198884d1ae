/** Folder in the place that the browser keeps for the page, where clips stand while they are made and saved. */
const FOLDER = 'clips';
const lockOf = (name: string): string => `pullbook-clip-${name}`;

async function folder(): Promise<FileSystemDirectoryHandle> {
  const place = await navigator.storage.getDirectory();
  return place.getDirectoryHandle(FOLDER, { create: true });
}

/** The file of a clip, on disk and not in memory, however long it is. */
export async function clipFile(name: string): Promise<FileSystemFileHandle> {
  return (await folder()).getFileHandle(name, { create: true });
}

/** How often, and after how many ms, it is tried again: a worker that was ended lets go of its file a moment later. */
const TRIES = 20;
const BETWEEN_MS = 50;

export async function removeClipFile(name: string): Promise<void> {
  const place = await folder();
  for (let left = TRIES; left > 0; left -= 1) {
    const isGone = await place.removeEntry(name).then(
      () => true,
      (reason: unknown) => reason instanceof DOMException && reason.name === 'NotFoundError',
    );
    if (isGone) return;
    await new Promise((resolve) => setTimeout(resolve, BETWEEN_MS));
  }
}

/** A name that no other window takes or sweeps away as long as this one stands open. */
export function newClipName(): string {
  const name = crypto.randomUUID();
  void navigator.locks.request(lockOf(name), () => new Promise<never>(() => {}));
  return name;
}

/** Removes what windows left that are closed by now: what they saved was saved, what they did not is lost. */
export async function sweepClips(): Promise<void> {
  const { held = [] } = await navigator.locks.query();
  const inUse = new Set(held.map(({ name }) => name));
  const names: string[] = [];
  for await (const name of (await folder()).keys()) names.push(name);
  for (const name of names) if (!inUse.has(lockOf(name))) await removeClipFile(name);
}
