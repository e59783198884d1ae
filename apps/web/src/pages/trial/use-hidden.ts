import type { TrialPage } from '@pullbook/views';
import { useNavigate } from '@tanstack/react-router';
import { useMemo } from 'react';
import type { Hidden } from '../../chart/without-hidden.ts';
import type { TrialSearch } from '../../search.ts';

/** What of a trial the chart does not show. It stands in the address; the answer never knows of it. */
export interface HiddenOfTrial extends Hidden {
  /** `A, Pull 9`; '' nothing */
  text: string;
  /** Hides a combination by its key or a pull by its id, or shows it again. */
  toggle: (name: string) => void;
  showAll: () => void;
}

export function useHidden(page: TrialPage, look: TrialSearch): HiddenOfTrial {
  const navigate = useNavigate({ from: '/trials/$id' });
  const { hide } = look;
  const hidden = useMemo(() => {
    const names = new Set(hide?.split(','));
    const combinations = page.combinations.filter(({ key }) => names.has(key));
    const pulls = page.evidence.filter(({ pullId }) => names.has(pullId));
    return {
      combinations: new Set(combinations.map(({ combination }) => combination)),
      pulls: new Set(pulls.map(({ pullId }) => pullId)),
      names: [...combinations.map(({ key }) => key), ...pulls.map(({ pullId }) => pullId)],
      text: [...combinations.map(({ key }) => key), ...pulls.map(({ name }) => name)].join(', '),
    };
  }, [page.combinations, page.evidence, hide]);

  const hideOnly = (names: string[]) =>
    void navigate({
      search: (before) => ({ ...before, hide: names.length === 0 ? undefined : names.join(',') }),
      replace: true,
      resetScroll: false,
    });
  return {
    ...hidden,
    toggle: (name) =>
      hideOnly(
        hidden.names.includes(name)
          ? hidden.names.filter((other) => other !== name)
          : [...hidden.names, name],
      ),
    showAll: () => hideOnly([]),
  };
}
