import { sha256 } from '@noble/hashes/sha2';

/** SHA-256 of a file in hexadecimals, read piece by piece, however long it is. */
export async function hashOf(file: Blob): Promise<string> {
  const hash = sha256.create();
  const reader = file.stream().getReader();
  for (let piece = await reader.read(); !piece.done; piece = await reader.read()) hash.update(piece.value);
  return [...hash.digest()].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
