import type { TrialPage } from '@pullbook/views';
import { useNavigate } from '@tanstack/react-router';
import { useKey } from '../../keys/use-key.ts';
import { Button } from '../../parts/Button.tsx';
import type { TrialSearch } from '../../search.ts';

/** The way from the answer to what leaves the shop; there is nothing to publish before there is a chart. */
export function Publish({ page, look: { correction, from, to } }: { page: TrialPage; look: TrialSearch }) {
  const navigate = useNavigate();
  const hasPicture = page.chart !== null;
  const go = () =>
    void navigate({
      to: '/trials/$id/publish',
      params: { id: page.id },
      search: { correction, from, to },
    });
  useKey('publish', () => hasPicture && go());
  return (
    <Button look="main" shortcut="publish" isDisabled={!hasPicture} onPress={go}>
      Publish
    </Button>
  );
}
