import { z } from 'zod';

const folder = z.string().min(1).max(4096);
/** The beginning of the time of a backup: `2026-03-14`. */
const at = z.string().max(40).nullish();

export const exportQuery = z.object({ for: z.enum(['shop', 'customer', 'everyone']).default('shop') });
export const backupWanted = z.strictObject({ to: folder.nullish(), keepAll: z.boolean().default(false) });
export const folderToCheck = z.strictObject({ folder, at });
export const mergeWanted = z.strictObject({ from: folder, dryRun: z.boolean() });
