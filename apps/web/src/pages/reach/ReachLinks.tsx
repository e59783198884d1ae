import type { ReachLink, ShownSource } from '@pullbook/views/reach';
import { Link } from '@tanstack/react-router';
import { Fragment } from 'react';
import styles from './reach.module.css';

/** Where a figure comes from, in words, with what can be opened. */
export function SourceLine({ from: { text, links } }: { from: ShownSource }) {
  if (text === '' && links.length === 0) return null;
  return (
    <span className={styles.from}>
      {text}
      {links.length > 0 && text !== '' && ' '}
      <ReachLinks links={links} />
    </span>
  );
}

export function ReachLinks({ links }: { links: readonly ReachLink[] }) {
  return links.map((link, place) => (
    <Fragment key={`${link.kind} ${link.id} ${link.text}`}>
      {place > 0 && ', '}
      <LinkOf link={link} />
    </Fragment>
  ));
}

function LinkOf({ link: { kind, id, text } }: { link: ReachLink }) {
  const params = { id };
  switch (kind) {
    case 'pull':
      return (
        <Link to="/pulls/$id" params={params}>
          {text}
        </Link>
      );
    case 'combination':
      return (
        <Link to="/combinations/$id" params={params}>
          {text}
        </Link>
      );
    case 'map':
      return (
        <Link to="/maps/$id" params={params}>
          {text}
        </Link>
      );
    case 'trial':
      return (
        <Link to="/trials/$id" params={params}>
          {text}
        </Link>
      );
    case 'match':
      return (
        <Link to="/combinations/$id/match" params={params}>
          {text}
        </Link>
      );
    case 'rule':
      return (
        <Link to="/rules" hash={id}>
          {text}
        </Link>
      );
    case 'parts':
      return <Link to="/shop/parts">{text}</Link>;
  }
}
