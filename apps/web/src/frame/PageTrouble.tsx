import { type ErrorComponentProps, Link } from '@tanstack/react-router';
import { ApiTrouble } from '../api/request.ts';
import { Button } from '../parts/Button.tsx';
import { Column, PageHead } from '../parts/PageHead.tsx';
import { Trouble } from '../parts/Trouble.tsx';
import { ScreenGone } from './screen.ts';

export function NoSuchPage() {
  return (
    <>
      <PageHead title="There is no such page" />
      <p>
        The address may be old or mistyped. <Link to="/">Go to the trials</Link>.
      </p>
    </>
  );
}

/** A page cannot be shown: it is gone, the server is, or it broke. Told and not hidden. */
export function PageTrouble({ error }: ErrorComponentProps) {
  if (error instanceof ScreenGone) {
    return (
      <Column>
        <PageHead title="Pullbook was updated: reload" />
        <p>
          This page stood open meanwhile and asks for parts that are no longer there. Your book is untouched.
        </p>
        <Reload look="main" />
      </Column>
    );
  }
  if (error instanceof ApiTrouble) {
    return (
      <Column>
        <PageHead title="This page did not come" />
        <Trouble of={error} />
        <Reload look="main" />
      </Column>
    );
  }
  return (
    <Column>
      <PageHead title="This page broke" />
      <Trouble of={error instanceof Error ? error : new Error(String(error))} />
      <p>
        Your book is untouched. Reload the page, or <Link to="/">go to the trials</Link>.
      </p>
      <Reload look="plain" />
    </Column>
  );
}

function Reload({ look }: { look: 'main' | 'plain' }) {
  return (
    <div>
      <Button look={look} onPress={() => window.location.reload()}>
        Reload
      </Button>
    </div>
  );
}
