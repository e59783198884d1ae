import { Link, type LinkProps } from '@tanstack/react-router';
import type { ReactNode, Ref } from 'react';
import { Button as AriaButton, type ButtonProps } from 'react-aria-components/Button';
import type { KeyId } from '../keys/key-list.ts';
import { shownKey } from '../keys/use-key.ts';
import styles from './button.module.css';

type Look = 'main' | 'plain' | 'quiet';

interface Shared {
  look?: Look;
  small?: boolean;
  /** The key that does the same, printed on it. */
  shortcut?: KeyId;
  children: ReactNode;
}

function classOf(look: Look, small: boolean): string {
  const base = { main: styles.main, plain: styles.button, quiet: styles.quiet }[look] ?? '';
  return small ? `${base} ${styles.small}` : base;
}

/** A small print of a key. */
export function Key({ children }: { children: ReactNode }) {
  return (
    <span className={styles.key} aria-hidden="true">
      {children}
    </span>
  );
}

export function Button({
  look = 'plain',
  small = false,
  shortcut,
  children,
  ...rest
}: Shared & Omit<ButtonProps, 'children' | 'className'> & { ref?: Ref<HTMLButtonElement> }) {
  return (
    <AriaButton {...rest} className={classOf(look, small)}>
      {children}
      {shortcut !== undefined && <Key>{shownKey(shortcut)}</Key>}
    </AriaButton>
  );
}

/** A link that is as big as a button, for what leads to another page. */
export function ButtonLink({
  look = 'plain',
  small = false,
  shortcut,
  children,
  ...rest
}: Shared & Pick<LinkProps, 'to' | 'params' | 'search'>) {
  return (
    <Link {...rest} className={classOf(look, small)}>
      {children}
      {shortcut !== undefined && <Key>{shownKey(shortcut)}</Key>}
    </Link>
  );
}

/** A file of the server's, to keep. */
export function DownloadLink({ href, look = 'plain', small = false, children }: Shared & { href: string }) {
  return (
    <a className={classOf(look, small)} href={href} download="">
      {children}
    </a>
  );
}
