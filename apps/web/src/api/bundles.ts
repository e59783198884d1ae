/** Trials that another Pullbook gave away as one file. */

import type { ShownRemark } from '@pullbook/views';
import type { BundleLook } from '@pullbook/workshop';
import { useMutation } from '@tanstack/react-query';
import { upload } from './files.ts';
import { bookChanged } from './query-client.ts';

/** Nothing of it is in the book yet. */
type Seen = BundleLook & { remarks: ShownRemark[] };

/** Reads a bundle without keeping anything of it. */
export const lookAtBundle = (file: File): Promise<Seen> => upload('/bundles/look', file, null, () => {});

export function useOpenBundle() {
  return useMutation({
    mutationFn: (file: File) =>
      upload<{ trialId: string; remarks: ShownRemark[] }>('/bundles', file, null, () => {}),
    onSuccess: bookChanged,
  });
}
