import { type ErrorComponentProps, Link } from '@tanstack/react-router';
import { PageHead } from '../parts/PageHead.tsx';
import { Trouble } from '../parts/Trouble.tsx';

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

/** A page broke: a fault of ours, told and not hidden. */
export function PageTrouble({ error }: ErrorComponentProps) {
  return (
    <>
      <PageHead title="This page broke" />
      <Trouble of={error instanceof Error ? error : new Error(String(error))} />
      <p>
        Your book is untouched. Reload the page, or <Link to="/">go to the trials</Link>.
      </p>
    </>
  );
}
